import type { Survey } from './survey';
import { BASEMENTS } from './surveys/basements';
import { LIFTS } from './surveys/lifts';
import { SIDE_DOORS } from './surveys/sideDoors';
import { SLIPS } from './surveys/slips';
import { STRAIGHT_STAIRS } from './surveys/straightStairs';
import { TURNS } from './surveys/turns';
import { WINDERS } from './surveys/winders';

/** Every survey of the sample month, in the order of their visits. */
export const SAMPLE_SURVEYS: readonly Survey[] = [
  ...STRAIGHT_STAIRS,
  ...TURNS,
  ...BASEMENTS,
  ...LIFTS,
  ...SIDE_DOORS,
  ...WINDERS,
  ...SLIPS,
];
