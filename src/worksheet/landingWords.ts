import type { Problem } from '../core/measures/problem';
import { CLEAR_HEIGHT } from '../core/stages/usualRanges';
import { opening } from './arguments';
import type { ArgumentDescription } from './description';

/** The words that both landings share. */
export const LANDING_MOTIONS =
  'in closed form: along the pitch of both flights, on the landing level, tilted or upright, turned about in the corners or moved across (on a half landing also swung up across it), over the flights as far as headroom and nosings allow; these and a few drawn guides, on edge or flat along both flights, widened in space without chance and shown free over their whole way';

export const LANDING_SOURCE =
  'the rectangle round a corner (Moretti, College Math. J. 33(3), 2002, 196-200) and trigonometry of the pitch, own derivation; a widened motion certified by separating axes (conservative steps); the bound by a necessary condition that the working names';

export const LANDING_VALIDITY =
  'the line of nosings meets the landing at its edge, the upper flight starts one rise above it; ceilings parallel to the flights at the headroom; outer sides walls, inner sides walls or air above over_rail; flights longer than the piece. The clearance is that of the best motion found: a larger one may exist up to the bound';

export const LANDING_CEILING = {
  ...opening('landing_ceiling', 'clear height over the landing', CLEAR_HEIGHT),
  optional: { default: null, meaning: 'the headroom' },
} as const satisfies ArgumentDescription;

/** Where not even a piece made smaller was carried round: a figure would say nothing of the landing. */
export const NO_MOTION_FOUND = {
  kind: 'no answer',
  because: 'no motion was found, and the piece is larger than the flights',
  instead: 'measure again, or look for another way',
} as const satisfies Problem;
