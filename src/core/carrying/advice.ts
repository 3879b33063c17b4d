/**
 * What to do next where a result passes guidance: the same words everywhere, short enough for a cell. They name a step,
 * never a permission.
 */
export const ADVICE = {
  /** A carrier's share over the guideline for one of a team. */
  share:
    'over the guideline: use a mechanical aid, add hands where they can stand, or choose a build with lighter ' +
    'pieces, after an assessment by a competent person',
  /** More hands than guidance covers. */
  team:
    'use a mechanical aid (stair climber, skates, straps) with a written assessment by a competent person, or ' +
    'choose a build with lighter pieces',
  /** A floor or a joist used beyond 1, or a load over the code's. */
  floor:
    'over the allowance: spread the load, choose another place or another build, and ask a licensed structural ' +
    'engineer before delivery',
  /** A flight or a tread loaded beyond the code's value. */
  stair:
    'over the allowance of a stair: put fewer people on the flight, choose a build with lighter pieces, and ask a ' +
    'licensed structural engineer before anybody carries',
} as const;
