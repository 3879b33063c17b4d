import { CAUTIONS } from '../core/measures/cautions';

/** What every clearance gives. */
export const CLEARANCE_RESULT = {
  meaning: 'the even padding the piece could wear and still pass; negative: what it would have to lose',
  unit: 'mm a side',
} as const;

/** A clearance speaks of space alone. */
export const SPACE_CAUTION = CAUTIONS.route;
