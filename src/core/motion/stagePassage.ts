import type { Hold } from './hold';
import type { StageAnswer } from './stageAnswer';

/** Whether passages that need room to lean beside the stage are wanted. */
export type Leaning = 'with leaning' | 'without leaning';

/**
 * One way through a stage: how the piece is held before it and after it, and what that way's motion shows.
 * A stage lists every pair it can show; a pair that is not listed is not shown (which proves nothing).
 * `needsTurningRoom`: the piece is taken up into `answer.pose` (leaning, tilted) before the stage and set
 * level again after it, so the places on both sides must have room for that.
 * `onLanding`: of its length along the way before the stage and after it, so much may stand on the landing [mm];
 * only the rest needs the flight, where that flight is solved by itself from level to level.
 */
export interface StagePassage {
  readonly from: Hold;
  readonly to: Hold;
  readonly answer: StageAnswer;
  readonly needsTurningRoom?: boolean;
  readonly onLanding?: { readonly before: number; readonly after: number };
}

/** Of ways through a stage the first of those that leave most. */
export const roomiest = <Way extends { readonly passage: StagePassage }>(ways: readonly Way[]): Way =>
  ways.reduce((best, next) => (next.passage.answer.clearance > best.passage.answer.clearance ? next : best));
