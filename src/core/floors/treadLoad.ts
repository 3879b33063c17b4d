import { weightInKN } from '../measures/gravity';
import type { Working } from '../measures/working';
import { besideTheCode } from './besideTheCode';

/** A carrier on one tread. */
export interface TreadLoadInput {
  /** [kg] */
  readonly bodyMass: number;
  /** What the carrier holds up [kg]. */
  readonly share: number;
}

/**
 * A carrier and what he holds up, on one tread, standing still; a step down lands harder than that.
 *
 * @source statics, standard gravity.
 * @param input masses [kg]
 * @returns load [kN]
 * @example treadLoad({ bodyMass: 90, share: 84 }) // 1.706
 */
export function treadLoad(input: TreadLoadInput, working?: Working): number {
  const mass = input.bodyMass + input.share;
  const load = weightInKN(mass);
  if (working) {
    working({
      what: 'Carrier and share',
      formula: 'body_mass + share',
      value: mass,
      unit: 'kg',
      source: 'a sum',
    });
    besideTheCode(working, load, 'stairs', 'point');
    working({
      what: 'Load on the tread',
      formula: 'carrier and share x 9.80665 / 1000',
      value: load,
      unit: 'kN',
      source: 'standard gravity, CGPM 1901',
    });
  }
  return load;
}
