import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { ADVICE } from './advice';
import { liftLimit, type LiftInput } from './liftLimit';

/** A lift as its recommended limit needs it, with the load. */
export interface LiftIndexInput extends LiftInput {
  /** [kg] */
  readonly mass: number;
}

/**
 * Lifting index: the load over its recommended weight limit. Above 1 the lift is over the guidance for some workers.
 *
 * @source DHHS (NIOSH) 94-110, equation 2.
 * @param input mass [kg] and the lift as in `liftLimit`
 * @returns load / limit
 * @problems `no answer` when the limit is 0.
 * @example
 * liftIndex({ mass: 23, reach: 250, height: 750, travel: 250, twist: 0, liftsPerMinute: 0.2, hours: 1, grip: 'good' }) // 1
 */
export function liftIndex(input: LiftIndexInput, working?: Working): Outcome<number> {
  const limit = liftLimit(input, working);
  if (limit === 0) {
    return refused({
      kind: 'no answer',
      because: 'the recommended weight limit of such a lift is 0',
      instead: `change the reach, height, travel, twist or frequency, or ${ADVICE.team}`,
    });
  }
  const index = input.mass / limit;
  if (working && index > 1) {
    working({ what: 'Next', formula: 'an index over 1', value: ADVICE.share, unit: '', source: '' });
  }
  working?.({
    what: 'Lifting index',
    formula: 'mass / recommended weight limit',
    value: index,
    unit: '',
    source: 'DHHS (NIOSH) 94-110, equation 2',
  });
  return found(index);
}
