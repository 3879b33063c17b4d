import type { PieceSize, Pose } from '../measures/piece';
import type { Motion, SceneBox } from '../space/motion';
import { poseOfHold, type Hold } from './hold';
import type { ProvedBound } from '../geometry/proofs/provedBound';
import type { AnswerWithMotion, StageAnswer } from './stageAnswer';
import { closestAt, type Closest } from './closest';

/** What was found: a motion for the padded piece, and where it is closest. */
export interface FoundMotion {
  /** [mm a side] */
  readonly clearance: number;
  readonly motion: Motion;
  readonly scene: readonly SceneBox[];
  readonly pose: Pose;
  readonly critical: Closest;
  /** How high it is raised above what is below it, at most [mm]. */
  readonly raise: number;
  /** It passes above a handrail, where a wall would stop it. */
  readonly overRail: boolean;
}

/** In place of where it is closest, where nothing was found. */
export const NO_MOTION = closestAt('no motion was found');

/**
 * An answer from what was found and what was proved; without a motion that of the piece shrunk to a point.
 */
export function answerOfMotion(
  found: FoundMotion | null,
  piece: PieceSize,
  hold: Hold,
  proved: ProvedBound,
): AnswerWithMotion {
  const bound = proved.atMost === Infinity ? {} : { bound: proved.bound };
  const { atMost } = proved;
  if (found === null) {
    return {
      clearance: -piece.length / 2,
      atMost,
      ...bound,
      pose: poseOfHold(hold),
      critical: NO_MOTION,
      nothingFound: true,
      motion: [],
      scene: [],
    };
  }
  const { clearance, pose, critical, raise, overRail, motion, scene } = found;
  return {
    clearance,
    atMost,
    ...bound,
    pose,
    critical,
    raise,
    ...(overRail ? { overRail: true } : {}),
    motion,
    scene,
  };
}

/** The answer alone, for a cell. */
export function withoutMotion(shown: AnswerWithMotion): StageAnswer {
  const answer: Partial<AnswerWithMotion> = { ...shown };
  delete (answer as { motion?: unknown }).motion;
  delete (answer as { scene?: unknown }).scene;
  return answer as StageAnswer;
}
