import type { PieceSize } from '../measures/piece';
import { poseOfHeld, type Held } from './held';
import type { LandingFound } from '../stages/landing/landingMotion';
import type { ProvedBound } from '../stages/opening/openingAtMost';
import type { ShownAnswer, StageAnswer } from './stageAnswer';

/** In place of where it is closest, where nothing was found. */
export const NO_MOTION = 'no motion was found';

/** An answer from what was found and what was proved; without a motion the piece shrunk to a point. */
export function shownAnswer(
  found: LandingFound | null,
  piece: PieceSize,
  held: Held,
  proved: ProvedBound,
  overRail: number,
): ShownAnswer {
  const bound = proved.atMost === Infinity ? {} : { bound: proved.bound };
  const { atMost } = proved;
  if (found === null) {
    return {
      clearance: -piece.length / 2,
      atMost,
      ...bound,
      pose: poseOfHeld(held),
      critical: NO_MOTION,
      motion: [],
      scene: [],
    };
  }
  const { clearance, pose, critical, lift, motion, scene } = found;
  const over = overRail > 0 && lift > overRail;
  return {
    clearance,
    atMost,
    ...bound,
    pose,
    critical,
    lift,
    ...(over ? { overRail: true } : {}),
    motion,
    scene,
  };
}

/** The answer alone, for a cell. */
export function withoutMotion(shown: ShownAnswer): StageAnswer {
  const answer: Partial<ShownAnswer> = { ...shown };
  delete (answer as { motion?: unknown }).motion;
  delete (answer as { scene?: unknown }).scene;
  return answer as StageAnswer;
}
