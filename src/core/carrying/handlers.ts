import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { ADVICE } from './advice';
import { LARGEST_TEAM, teamLimit } from './teamLimit';
import { shownDown } from '../measures/shown';

/** What the number of handlers is worked out from. */
export interface HandlersInput {
  /** [kg] */
  readonly mass: number;
  /** What each may handle alone [kg], at most 25. */
  readonly limitEach: number;
}

/**
 * The fewest handlers whose team limit covers a mass, on a level floor and in good posture; never stairs.
 *
 * @source HSE L23, see `teamLimit`.
 * @param input mass [kg]; limit each [kg], at most 25
 * @returns how many, 1 to 3
 * @problems `no answer` when 3 are not enough.
 * @example handlers({ mass: 30, limitEach: 25 }) // 2
 */
export function handlers(input: HandlersInput, working?: Working): Outcome<number> {
  let greatest = 0;
  for (let team = 1; team <= LARGEST_TEAM; team++) {
    const limit = teamLimit({ handlers: team, limitEach: input.limitEach });
    if (!limit.ok) return limit;
    greatest = limit.value;
    working?.({
      what: `Limit of a team of ${team}`,
      formula: 'handlers x limit_each x team factor',
      value: greatest,
      unit: 'kg',
      source: 'HSE L23, team handling',
    });
    if (input.mass <= greatest) {
      working?.({
        what: 'Fewest handlers',
        formula: 'the first team whose limit is at least the mass',
        value: team,
        unit: '',
        source: 'HSE L23, team handling; level floor, never stairs',
      });
      return found(team);
    }
  }
  return refused({
    kind: 'no answer',
    because: `the mass is over the guideline for ${LARGEST_TEAM} handlers, ${shownDown(greatest, 1)} kg`,
    instead: ADVICE.team,
  });
}
