import type { PieceSize } from '../../src/core/measures/piece';
import type { AnswerWithMotion } from '../../src/core/motion/stageAnswer';
import { facingDoorWays } from '../../src/core/stages/facingDoor/facingDoor';
import type { FacingDoorMeasures } from '../../src/core/stages/facingDoor/facingDoorFit';
import { facingDoorMotion } from './facingDoorMotion';

/** A drawn motion is free with this less than the closed form says [mm a side]. */
const DRAWN = 0.5;

/**
 * The best answer with its motion and the scene it is free in, for the piece padded by `motionPadding`, half a
 * millimetre below the clearance: x along the way up, z up, y to the left; the origin on the floor at the first riser,
 * or at the top nosing.
 */
export function facingDoorWithMotion(
  measures: FacingDoorMeasures,
  piece: PieceSize,
): AnswerWithMotion & { readonly motionPadding: number } {
  const way = facingDoorWays(measures, piece).reduce((best, next) =>
    next.passage.answer.clearance > best.passage.answer.clearance ? next : best,
  );
  const motionPadding = Math.max(way.passage.answer.clearance - DRAWN, -piece.length / 2);
  return { ...way.passage.answer, ...facingDoorMotion(measures, way, motionPadding), motionPadding };
}
