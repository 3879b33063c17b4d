import { weightInKN } from '../measures/gravity';
import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { besideTheCode } from './besideTheCode';

/** A table on its feet. */
export interface FootLoadInput {
  /** Mass of the table [kg]. */
  readonly mass: number;
  /** How many feet, a whole number from 1. */
  readonly feet: number;
  /** Part of the weight on the worst foot, 1/feet to 1; a table rocks on two, so 2/feet when not given. */
  readonly worstShare?: number | undefined;
}

/**
 * The load at the worst foot of a table.
 *
 * @source statics; a stiff table on an uneven floor rocks on two opposite feet, so that the worst foot takes 2/feet of
 * the weight until it is levelled: the usual careful assumption, common practice, no source.
 * @param input mass [kg], feet, worst share
 * @returns load [kN]
 * @problems `out of range` when the share is below 1/feet or above 1.
 * @example footLoad({ mass: 400, feet: 4 }) // 1.961
 */
export function footLoad(input: FootLoadInput, working?: Working): Outcome<number> {
  const { mass, feet } = input;
  const even = 1 / feet;
  const share = input.worstShare ?? Math.min(1, 2 / feet);
  if (!(share >= even && share <= 1)) {
    return refused({
      kind: 'out of range',
      argument: 'worst_share',
      got: share,
      allowed: `${even} to 1, that is 1/feet to 1`,
    });
  }
  const weight = weightInKN(mass);
  working?.({
    what: 'Weight',
    formula: 'mass x 9.80665 / 1000',
    value: weight,
    unit: 'kN',
    source: 'standard gravity, CGPM 1901',
  });
  working?.({
    what: 'Part on the worst foot',
    formula: input.worstShare === undefined ? 'min(1, 2 / feet)' : 'worst_share',
    value: share,
    unit: '',
    source: shareSource(input),
  });
  const load = weight * share;
  if (working) besideTheCode(working, load, 'dwelling', 'point');
  working?.({
    what: 'Load at the worst foot',
    formula: 'weight x part on the worst foot',
    value: load,
    unit: 'kN',
    source: 'statics',
  });
  return found(load);
}

/** What a part of the weight supposes: the table level on all of its feet, or rocking on two of them. */
function shareSource({ worstShare, feet }: FootLoadInput): string {
  if (worstShare === undefined)
    return 'a table rocks on two feet, each with half of it: common practice, no source';
  return worstShare === 1 / feet ? 'as given: levelled, so that every foot bears alike' : 'as given';
}
