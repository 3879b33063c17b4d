import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { ADVICE } from './advice';

/** Best-case guideline weight for one handler [kg]: HSE INDG143 and L23, close to the body at knuckle height. */
export const GUIDELINE_EACH = 25;

/**
 * Part of the sum of the individual limits that a team of 1, 2 or 3 may take: HSE L23. Nothing is published for 4, and
 * more than 4 are unlikely to work together.
 */
export const TEAM_FACTORS = [1, 2 / 3, 1 / 2] as const;

/** The largest team for which a factor is published. */
export const LARGEST_TEAM = TEAM_FACTORS.length;

const SOURCE = 'HSE L23, team handling: 2/3 for two, 1/2 for three; level floor, good posture, never stairs';

/** A team on level ground. */
export interface TeamLimitInput {
  /** How many handlers, a whole number from 1. */
  readonly handlers: number;
  /** What each may handle alone [kg], at most 25. */
  readonly limitEach: number;
}

/**
 * The mass that a team may handle by the guideline, on a level floor and in good posture; never stairs.
 *
 * @source HSE L23, guidance on the Manual Handling Operations Regulations: 2/3 of the sum of the individual limits for
 * two, 1/2 for three.
 * @param input handlers, a whole number; limit each [kg], at most 25
 * @returns the limit [kg]
 * @problems `no answer` above 3 handlers, for which no factor is published.
 * @example teamLimit({ handlers: 2, limitEach: 25 }) // 33.3
 */
export function teamLimit(input: TeamLimitInput, working?: Working): Outcome<number> {
  const factor = TEAM_FACTORS[input.handlers - 1];
  if (factor === undefined) {
    return refused({
      kind: 'no answer',
      because: `no factor is published for a team of ${input.handlers}, only for up to ${LARGEST_TEAM}`,
      instead: ADVICE.team,
    });
  }
  const sum = input.handlers * input.limitEach;
  working?.({
    what: 'Sum of the individual limits',
    formula: 'handlers x limit_each',
    value: sum,
    unit: 'kg',
    source: 'HSE INDG143 and L23: at most 25 kg each',
  });
  working?.({ what: 'Team factor', formula: '1, 2/3, 1/2', value: factor, unit: '', source: SOURCE });
  const limit = sum * factor;
  working?.({
    what: 'Limit of the team',
    formula: 'sum x team factor',
    value: limit,
    unit: 'kg',
    source: SOURCE,
  });
  return found(limit);
}
