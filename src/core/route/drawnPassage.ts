import type { BookPassage } from './stageBook';

/**
 * The way through a stage that belongs to its verdict, to be drawn: the first with the clearance and the pose that
 * were judged; where the route as a whole decides, and no way through the stage alone has them, the widest.
 * @param ways the ways of a piece through one stage, as measured
 * @param clearance as judged [mm a side]; undefined: none was shown
 * @param pose as judged
 * @returns undefined when there is no way
 */
export function drawnPassage(
  passages: readonly BookPassage[],
  clearance: number | undefined,
  pose: string | undefined,
): BookPassage | undefined {
  const judged = passages.find((passage) => passage.clearance === clearance && passage.answer.pose === pose);
  if (judged || passages.length === 0) return judged;
  return passages.reduce((best, next) => (next.clearance > best.clearance ? next : best));
}
