import { degrees, radians } from '../measures/angle';
import type { Working } from '../measures/working';
import { couplingMultiplier, type Grip } from './couplingMultiplier';
import { frequencyMultiplier } from './frequencyMultiplier';

/** A lift with two hands, as the revised NIOSH equation needs it. */
export interface LiftInput {
  /** Hands in front of the ankles, level [mm], 100 or more. */
  readonly reach: number;
  /** Hands above the floor [mm]. */
  readonly height: number;
  /** How far the hands rise or sink [mm]. */
  readonly travel: number;
  /** How far the load stands to the side of straight ahead [rad]. */
  readonly twist: number;
  /** [1/min] */
  readonly liftsPerMinute: number;
  /** How long the lifting goes on [h], at most 8. */
  readonly hours: number;
  readonly grip: Grip;
}

/** Load constant [kg]: DHHS (NIOSH) 94-110, equation 1, metric. */
const LOAD_CONSTANT = 23;

/** Beyond it nothing may be lifted [rad]: section 1.3. */
const GREATEST_TWIST = radians(135);

const SOURCE = 'DHHS (NIOSH) 94-110';

/**
 * Recommended weight limit of the revised lifting equation, metric, at full precision. It is for a two-handed lift
 * standing still: for the van and the set-down, never for stairs, nor for carrying beyond a step or two.
 *
 * @source DHHS (NIOSH) publication 94-110, equation 1: LC x HM x VM x DM x AM x FM x CM; the multipliers' limits from
 * its section 1.3.
 * @param input lengths [mm], twist [rad], lifts a minute, hours at most 8, grip
 * @returns the limit [kg]; 0 where a multiplier is 0
 * @example
 * liftLimit({ reach: 250, height: 750, travel: 250, twist: 0, liftsPerMinute: 0.2, hours: 1, grip: 'good' }) // 23
 */
export function liftLimit(input: LiftInput, working?: Working): number {
  const reach = input.reach / 10;
  const height = input.height / 10;
  const travel = input.travel / 10;
  const hm = reach > 63 ? 0 : Math.min(1, 25 / reach);
  const vm = height > 175 ? 0 : 1 - 0.003 * Math.abs(height - 75);
  const dm = travel > 175 ? 0 : travel <= 25 ? 1 : 0.82 + 4.5 / travel;
  const am = input.twist > GREATEST_TWIST ? 0 : 1 - 0.0032 * degrees(input.twist);
  const fm = frequencyMultiplier(input.liftsPerMinute, input.hours, input.height);
  const cm = couplingMultiplier(input.grip, input.height);
  const limit = LOAD_CONSTANT * hm * vm * dm * am * fm * cm;
  if (working) {
    const step = (what: string, formula: string, value: number, unit = ''): void =>
      working({ what, formula, value, unit, source: SOURCE });
    step('Load constant', '23', LOAD_CONSTANT, 'kg');
    step('Reach multiplier', '25 / reach in cm; 1 within 25 cm, 0 beyond 63', hm);
    step('Height multiplier', '1 - .003 |height in cm - 75|; 0 above 175 cm', vm);
    step('Travel multiplier', '.82 + 4.5 / travel in cm; 1 within 25 cm, 0 beyond 175', dm);
    step('Twist multiplier', '1 - .0032 twist; 0 beyond 135 degrees', am);
    step('Frequency multiplier', 'table 5, the next more frequent row', fm);
    step('Grip multiplier', 'table 7', cm);
    step('Recommended weight limit', 'the product of all seven', limit, 'kg');
  }
  return limit;
}
