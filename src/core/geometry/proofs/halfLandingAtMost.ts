import { CONDITIONS } from './conditions';
import type { PieceSize } from '../../measures/piece';
import type { ProvedBound } from './provedBound';
import { boxInBoxAtMost } from './boxInBoxAtMost';
import { acrossHalfLanding } from '../landingModel';

/**
 * The greatest padding [mm a side] with which a piece may pass a half landing, by the box that the landing is: no motion
 * has more. All measures in mm.
 *
 * With a full-height spine: the piece is convex, so it never stands in both flights at once (the
 * line between would cross the spine); passing from one to the other it is for a moment in neither, that is
 * inside the box landing depth x (both flights and well) x height. If it fits in that box in no attitude, no
 * motion passes. Nothing is proved where there is air above a handrail.
 * @source own derivation, with the box in a box (`boxInBoxAtMost`)
 * @returns null where nothing is proved
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
