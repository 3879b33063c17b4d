import { centreCutBlocks } from '../../src/core/geometry/proofs/centreCutBlocks';
import type { CornerRoom } from '../../src/core/geometry/proofs/cornerRoom';
import { greatestNotBlocked } from '../../src/core/geometry/proofs/greatestNotBlocked';
import { halfLandingCutBlocks, type HalfAtMost } from '../../src/core/geometry/proofs/halfLandingCutBlocks';
import {
  quarterLandingCutBlocks,
  type QuarterAtMost,
} from '../../src/core/geometry/proofs/quarterLandingCutBlocks';
import { yawCutBlocks } from '../../src/core/geometry/proofs/yawCutBlocks';
import type { PieceSize } from '../../src/core/measures/piece';

// The greatest padding [mm a side] that a proof leaves open: a route asks only whether it blocks the piece as it is, a
// test wants to know how far off a motion it is. Infinity where it excludes nothing.

/** How near [mm] the padding is looked for. */
const CORNER_FINENESS = 0.5;
const LANDING_FINENESS = 2;

/** By the centre cut at a corner, to half a millimetre. */
export function centreCutAtMost(corner: CornerRoom, piece: PieceSize): number {
  const most = Math.max(corner.widthIn, corner.widthOut) / 2;
  return greatestNotBlocked(piece, most, (p) => centreCutBlocks(corner, p), -Infinity, CORNER_FINENESS);
}

/** By the centre cut on a half landing, to 2 mm. */
export function halfLandingCutAtMost(landing: HalfAtMost, piece: PieceSize): number {
  const most = Math.max(landing.landingDepth, landing.flightWidth) / 2;
  return greatestNotBlocked(
    piece,
    most,
    (p) => halfLandingCutBlocks(landing, p),
    -Infinity,
    LANDING_FINENESS,
  );
}

/** By the centre cut on a quarter landing, to 2 mm. */
export function quarterLandingCutAtMost(landing: QuarterAtMost, piece: PieceSize): number {
  const most = Math.max(landing.widthIn, landing.widthOut) / 2;
  return greatestNotBlocked(
    piece,
    most,
    (p) => quarterLandingCutBlocks(landing, p),
    -Infinity,
    LANDING_FINENESS,
  );
}

/** By the yaw cut at a corner. */
export function yawCutAtMost(corner: CornerRoom, piece: PieceSize): number {
  const most = Math.max(corner.widthIn, corner.widthOut) / 2;
  return greatestNotBlocked(piece, most, (p) => yawCutBlocks(corner, p));
}
