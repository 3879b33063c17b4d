import { CONDITIONS } from '../../geometry/proofs/conditions';
import { rectangleThroughOpening } from '../../geometry/rectangleThroughOpening';
import type { PieceSize } from '../../measures/piece';
import { ALL_HOLDS, sizesOfHold, poseOfHold } from '../../motion/hold';
import type { StagePassage } from '../../motion/stagePassage';
import { closestAt } from '../../motion/closest';

/** A room, level and clear of furniture. */
export interface RoomMeasures {
  /** [mm] */
  readonly length: number;
  /** [mm] */
  readonly width: number;
  /** [mm] */
  readonly height: number;
}

/**
 * Whether a piece fits in a room at all, level in each way of being held and turned in plan by any angle: the
 * best static fit. How it comes in is the business of the stage before.
 *
 * Proved: the room's least side takes the thickness, and a box never fits inside one whose edges sum to less.
 * @source in plan: Carver's condition (Wetzel 2000); sum of edges: Winkler, Mathematical Mind-Benders
 */
export function roomPassages(measures: RoomMeasures, piece: PieceSize): StagePassage[] {
  const { length, width, height } = measures;
  const bySum = (length + width + height - (piece.length + piece.breadth + piece.thickness)) / 6;
  const byLeast = (Math.min(length, width, height) - piece.thickness) / 2;
  const outward = (value: number): number => value + 1e-9 * (1 + Math.abs(value));
  // Padding that takes the thickness away changes the sum; the bound is only used to refuse at 0.
  const sumHolds = bySum >= -piece.thickness / 2;
  const atMost = outward(sumHolds ? Math.min(bySum, byLeast) : byLeast);
  const bound =
    sumHolds && bySum < byLeast
      ? CONDITIONS.sizesInside('the room')
      : CONDITIONS.thicknessInside("the room's");
  return ALL_HOLDS.map((hold) => {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const plan = rectangleThroughOpening(length, width, along, across).clearance;
    const under = Math.max((height - upright) / 2, -piece.length / 2);
    return {
      from: hold,
      to: hold,
      answer: {
        clearance: Math.min(plan, under),
        atMost,
        bound,
        pose: poseOfHold(hold),
        critical:
          under < plan
            ? closestAt('under the ceiling of the room', 'ceiling')
            : closestAt('between the walls of the room', 'sides', 'far wall'),
      },
    };
  });
}
