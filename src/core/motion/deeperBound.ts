import { bracket } from '../geometry/rootFinding';
import { paddedPiece, type PieceSize } from '../measures/piece';
import type { StageAnswer } from './stageAnswer';

/** How near the least padding that a deep proof excludes is looked for [mm a side]: each look takes some 10 to 50 ms. */
const FINENESS = 8;

/**
 * An answer with the least bound that a deep proof gives between what is shown and what the quick proofs exclude; the
 * answer as it is where the deep proof excludes no less. A larger piece contains the smaller one, so that from an excluded
 * padding up all are.
 * @param proves the condition that a padded piece fails, in words; undefined where nothing is proved of it
 */
export function deeperBound(
  answer: StageAnswer,
  piece: PieceSize,
  proves: (padded: PieceSize) => string | undefined,
): StageAnswer {
  const { clearance, atMost } = answer;
  const quick = Math.min(atMost, clearance + MOST_OPEN);
  if (quick <= clearance) return answer;
  let bound = atMost === quick ? answer.bound : proves(paddedPiece(piece, quick));
  if (bound === undefined) return answer;
  const excluded = (padding: number): boolean => {
    const words = padding === quick ? bound : proves(paddedPiece(piece, padding));
    bound = words ?? bound;
    return words !== undefined;
  };
  const { holds } = bracket(quick, clearance, excluded, FINENESS);
  return { ...answer, atMost: holds, bound };
}

/** Nothing is looked for farther above what is shown than this [mm a side]. */
const MOST_OPEN = 600;
