import { opening } from './arguments';
import type { ArgumentDescription } from './description';

/** The words that both landings share. */
export const LANDING_MOTIONS =
  'on edge or flat along both flights; on the landing on end, on edge, flat or tilted, turned both ways, found by a seeded search of bounded work and shown free over its whole way';

export const LANDING_SOURCE =
  'a motion found and certified by separating axes (conservative steps); the bound by a necessary condition that the working names';

export const LANDING_VALIDITY =
  'the line of nosings meets the landing at its edge, the upper flight starts one rise above it; ceilings parallel to the flights at the headroom; outer sides walls, inner sides walls or air above over_rail; flights longer than the piece. The clearance is that of the best motion found: a larger one may exist up to the bound';

export const LANDING_CEILING: ArgumentDescription = {
  ...opening('landing_ceiling', 'clear height over the landing'),
  optional: { default: null, meaning: 'the headroom' },
};
