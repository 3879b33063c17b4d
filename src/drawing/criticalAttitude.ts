import type { PieceSize } from '../core/measures/piece';
import { slerp } from '../core/space/quaternion';
import { SpaceChecker } from '../core/space/spaceChecker';
import type { KeyAttitude, Motion, SceneBox } from '../core/stages/stageAnswer';

/** Places looked at between one key attitude and the next: for a drawing, not for a proof. */
const BETWEEN = 12;
/** Gaps above this are all the same to a drawing [mm]. */
const ENOUGH = 2000;

/** Where a motion comes nearest to the scene, as far as the places looked at show it. */
export function criticalAttitude(
  motion: Motion,
  scene: readonly SceneBox[],
  size: PieceSize,
): { readonly attitude: KeyAttitude; readonly index: number } {
  const checker = new SpaceChecker(scene);
  checker.hold(size);
  let attitude = motion[0]!;
  let index = 0;
  let least = Infinity;
  for (let i = 0; i < motion.length; i++) {
    for (const place of placesFrom(motion, i)) {
      const gap = checker.placeGap(Float64Array.from([...place.at, ...place.turn]), 0, ENOUGH);
      if (gap >= least) continue;
      least = gap;
      attitude = place;
      index = i;
    }
  }
  return { attitude, index };
}

function placesFrom(motion: Motion, i: number): KeyAttitude[] {
  const from = motion[i]!;
  const to = motion[i + 1];
  if (!to) return [from];
  return Array.from({ length: BETWEEN }, (_, k) => {
    const s = k / BETWEEN;
    const at = from.at.map((v, j) => v + s * (to.at[j]! - v)) as [number, number, number];
    return { at, turn: slerp(from.turn, to.turn, s) };
  });
}
