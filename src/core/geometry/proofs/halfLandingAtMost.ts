import { CONDITIONS } from './conditions';
import type { PieceSize } from '../../measures/piece';
import type { ProvedBound } from './provedBound';
import { boxInBoxAtMost } from './boxInBoxAtMost';
import { acrossHalfLanding } from '../landingModel';

/**
 * Half landing with a full-height spine: the piece is convex, so it never stands in both flights at once (the
 * line between would cross the spine); passing from one to the other it is for a moment in neither, that is
 * inside the box landing depth x (both flights and well) x height. If it fits in that box in no attitude, no
 * motion passes. Nothing is proved where there is air above a handrail.
 */
export function halfLandingAtMost(
  landing: {
    readonly flightWidth: number;
    readonly well: number;
    readonly landingDepth: number;
    readonly height: number;
    readonly overRail: number;
  },
  piece: PieceSize,
): ProvedBound | null {
  if (landing.overRail > 0) return null;
  const across = acrossHalfLanding(landing);
  const atMost = boxInBoxAtMost([landing.landingDepth, across, landing.height], piece);
  if (atMost === Infinity) return null;
  return { atMost, bound: CONDITIONS.onHalfLanding };
}
