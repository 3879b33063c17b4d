import type { PieceSize } from '../../src/core/measures/piece';
import type { AnswerWithMotion } from '../../src/core/motion/stageAnswer';
import { stairTurnWays } from '../../src/core/stages/stairTurn/stairTurn';
import { boxesOf, stairTurnMotion, stairTurnScene } from '../../src/core/stages/stairTurn/stairTurnMotion';
import type { StairTurnPlan } from '../../src/core/stages/stairTurn/turnedPlace';

/** The best answer with its motion, from the flight into the passage, and the scene (`stairTurnMotion`). */
export function stairTurnWithMotion(
  plan: StairTurnPlan,
  piece: PieceSize,
): AnswerWithMotion & { readonly motionPadding: number } {
  const ways = stairTurnWays(plan, piece, 'best');
  const best = ways.reduce((one, other) =>
    other.passage.answer.clearance > one.passage.answer.clearance ? other : one,
  );
  const motionPadding = best.passage.answer.clearance;
  return {
    ...best.passage.answer,
    motion: stairTurnMotion(plan, piece, best.hold, best.fit),
    scene: boxesOf(stairTurnScene(plan, piece)),
    motionPadding,
  };
}
