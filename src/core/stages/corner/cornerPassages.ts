import { CONDITIONS } from '../../geometry/proofs/conditions';
import { rectangleRoundCornerInHold, type LeavesArm } from '../../geometry/rectangleRoundCorner';
import { turnsRightAngle } from '../../geometry/turnsRightAngle';
import type { PieceSize, Pose } from '../../measures/piece';
import type { CornerMeasures } from './corner';
import { CROSSED, ALL_HOLDS, sizesOfHold, poseOfHold, type Hold } from '../../motion/hold';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import { openingAtMost } from '../opening/openingAtMost';
import type { Leaning, StagePassage } from '../../motion/stagePassage';
import { degrees, RIGHT_ANGLE } from '../../measures/angle';
import { ladderAtMost } from '../../geometry/proofs/ladderAtMost';
import { turnedUnderCeiling, type TurnedFaceOfPiece, type TurnedPlan } from './turnedUnderCeiling';
import { shownGiven } from '../../measures/shown';
import { closestAtFigure, closestHeld, type Closest } from '../../motion/closest';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { max, min } = Math;

/**
 * The ways round a corner, by how the piece is held before and after it: level, turning with the corner or
 * moved sideways without turning; tilted up in the first arm until it just clears the ceiling; leaning about
 * the direction of travel, which needs room to lean before the corner and to stand level after it.
 *
 * Model: two straight arms, longer than the piece, walls full height, the inner corner an upright edge, one
 * flat ceiling. A way that cannot pass and that a better one stands beside is left out.
 * @param leaning `without leaning`: those that need room to lean beside the corner are left out, the others the same
 * @source in plan: rectangleRoundCorner; tilting: trigonometry of the turned rectangle
 */
export function cornerPassages(
  measures: CornerMeasures,
  piece: PieceSize,
  leaning: Leaning = 'with leaning',
): StagePassage[] {
  const { widthIn, widthOut, ceiling, turn } = measures;
  const proved = cornerAtMost(measures, piece);
  const passages: StagePassage[] = [];
  const atCorner = closestAtFigure(
    `against the inner corner, between ${shownGiven(widthIn)} and ${shownGiven(widthOut)} mm`,
    'inner corner',
  );
  let best = -Infinity;

  const add = (
    from: Hold,
    to: Hold,
    clearance: number,
    pose: Pose,
    critical: Closest,
    beside: Pick<StagePassage, 'needsTurningRoom'> = {},
  ): void => {
    if (clearance > best) best = clearance;
    const answer = { clearance, atMost: proved.atMost, bound: proved.bound, pose, critical };
    passages.push({ from, to, answer, ...beside });
  };

  for (const hold of ALL_HOLDS) {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const under = max((ceiling - upright) / 2, -piece.length / 2);
    const level = (leaves: LeavesArm): void => {
      const most = min(
        under,
        (widthIn - across) / 2,
        (widthOut - (leaves === 'crosswise' ? along : across)) / 2,
      );
      if (most < min(0, best)) return;
      const fit = roundInHold(along, across, widthIn, widthOut, turn, leaves);
      const clearance = min(under, fit.clearance);
      const crab = fit.crabwise && hold[1] !== 'L' && under >= fit.clearance;
      add(
        hold,
        leaves === 'crosswise' ? CROSSED[hold] : hold,
        clearance,
        crab ? 'crabwise' : poseOfHold(hold),
        under < fit.clearance
          ? closestAtFigure(`under the ceiling of ${shownGiven(ceiling)} mm`, 'ceiling')
          : atCorner,
      );
    };
    level('lengthwise');
    level('crosswise');
  }

  const turned = (pose: 'tilted' | 'leaning', hold: Hold, face: TurnedFaceOfPiece): void => {
    if (pose === 'tilted' || leaning === 'with leaning') turnedOver(pose, hold, face, 'lengthwise');
    // Moved sideways it leans in one arm or in the other.
    if (leaning === 'with leaning') turnedOver(pose, hold, face, 'crosswise');
  };
  const turnedOver = (
    pose: 'tilted' | 'leaning',
    from: Hold,
    face: TurnedFaceOfPiece,
    leaves: LeavesArm,
  ): void => {
    const to = leaves === 'crosswise' ? CROSSED[from] : from;
    const level = firstClearance(passages, from, to);
    // Tilted, the side across stays as it is; leaning, it is never less than the lesser of the two turned.
    const least = pose === 'leaning' ? min(face.u, face.v) : face.a;
    const most = ((leaves === 'crosswise' ? widthIn : min(widthIn, widthOut)) - least) / 2;
    const spare = ({ plan, side }: TurnedPlan): number => {
      const [along, across] = pose === 'leaning' ? [side, plan] : [plan, side];
      // No motion beats the arms in which it comes and goes.
      const between = min(widthIn - across, widthOut - (leaves === 'crosswise' ? along : across)) / 2;
      if (between < 0) return between;
      return roundInHold(along, across, widthIn, widthOut, turn, leaves).clearance;
    };
    const fit = turnedUnderCeiling(face, ceiling, most, spare, level);
    if (!fit) return;
    const held = closestHeld(`turned ${shownGiven(degrees(fit.tilt), 0)} degrees out of level`, atCorner);
    const leans = pose === 'leaning' || leaves === 'crosswise';
    add(from, to, fit.clearance, pose, held, leans ? { needsTurningRoom: true } : {});
  };
  const { length, breadth, thickness } = piece;
  const broadFace = { u: length, v: breadth, a: thickness };
  const longSide = { u: length, v: thickness, a: breadth };
  const end = { u: breadth, v: thickness, a: length };
  turned('tilted', 'LB', broadFace);
  turned('tilted', 'LT', longSide);
  turned('tilted', 'BT', end);
  turned('leaning', 'LT', end);
  turned('leaning', 'LB', end);
  turned('leaning', 'BT', longSide);
  turned('leaning', 'TB', broadFace);
  return passages;
}

/** Clearance of the first passage between two ways of being held; -Infinity where there is none. */
function firstClearance(passages: readonly StagePassage[], from: Hold, to: Hold): number {
  for (const passage of passages) {
    if (passage.from === from && passage.to === to) return passage.answer.clearance;
  }
  return -Infinity;
}

/** As `rectangleRoundCornerInHold`, quickly where the turn is a right angle. */
function roundInHold(
  along: number,
  across: number,
  widthIn: number,
  widthOut: number,
  turn: number,
  leaves: LeavesArm,
): { clearance: number; crabwise: boolean } {
  if (turn !== RIGHT_ANGLE || leaves === 'crosswise') {
    return rectangleRoundCornerInHold(along, across, widthIn, widthOut, turn, leaves);
  }
  // Lengthwise in both arms or crosswise in both: a quarter turn between, whichever side leads.
  const arms = max(min(widthIn, widthOut) - across, -max(along, across)) / 2;
  const p = max(along, across);
  const q = min(along, across);
  const turning = arms <= -q / 2 ? -q / 2 : turnsRightAngle(p, q, widthIn, widthOut);
  return { clearance: min(arms, turning), crabwise: false };
}

/**
 * Greatest padding with which a box can pass a corner by any motion. Its longest diagonal, of length
 * D = sqrt(L^2 + B^2 + T^2), never shows less than sqrt(D^2 - H^2) in plan under a ceiling H, so a ladder of
 * that length has to come round; and each arm is an opening that it passes.
 * @source the ladder round a corner, calculus textbooks; rounded outward
 */
export function cornerAtMost(measures: CornerMeasures, piece: PieceSize): ProvedBound {
  const { widthIn, widthOut, ceiling } = measures;
  const arm = openingAtMost(
    { width: min(widthIn, widthOut), height: ceiling },
    piece,
    'one of the two passages',
  );
  const ladder = ladderAtMost(measures, piece);
  if (ladder < arm.atMost) {
    return { atMost: ladder, bound: CONDITIONS.roundCorner };
  }
  return arm;
}
