import type { ProvedBound } from '../../geometry/proofs/provedBound';
import type { PieceSize } from '../../measures/piece';
import type { Hold } from '../../motion/hold';
import { landingGuides } from './landingGuides';
import type { SearchedStage } from './landingPassages';
import type { LandingPlan } from './landingPlan';
import type { SearchTask } from './landingSearch';

/**
 * A landing as it is solved: its families and guides by its plan, its scene with its handrail and with walls in place of it.
 * @param task the scene, and the piece's ends in it
 */
export function landingStage<Measures extends { readonly overRail: number }>(
  measures: Measures,
  plan: LandingPlan,
  task: (measures: Measures, piece: PieceSize, hold: Hold) => SearchTask,
  proved: (measures: Measures, piece: PieceSize) => ProvedBound,
): SearchedStage {
  const { overRail } = measures;
  return {
    plan,
    guides: (piece, hold) => {
      const { start, goal } = task(measures, piece, hold).ends(-piece.length / 2);
      return landingGuides(plan, hold, start, goal, overRail);
    },
    task: (piece, hold) => task(measures, piece, hold),
    walled: overRail > 0 ? (piece, hold) => task({ ...measures, overRail: 0 }, piece, hold) : undefined,
    proved: (piece) => proved(measures, piece),
  };
}
