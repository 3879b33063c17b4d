/** What every clearance gives. */
export const CLEARANCE_RESULT = {
  meaning: 'the even padding the piece could wear and still pass; negative: what it would have to lose',
  unit: 'mm a side',
} as const;

/** A clearance speaks of space alone. */
export const SPACE_CAUTION =
  'Space alone: who carries it and what the floor and stairs bear are questions of their own. A measured route is no promise; where it is tight, try a template or a frame first.';
