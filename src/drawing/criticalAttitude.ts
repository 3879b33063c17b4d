import type { PieceSize } from '../core/measures/piece';
import { rotate, slerp } from '../core/space/quaternion';
import { SpaceChecker } from '../core/space/spaceChecker';
import type { KeyAttitude, Motion, SceneBox } from '../core/space/motion';

/** Places looked at between one key attitude and the next: for a drawing, not for a proof. */
const BETWEEN = 12;
/** Points looked at along each edge of the piece. */
const ON_EDGE = 24;
/** Gaps above this are all the same to a drawing [mm]. */
const ENOUGH = 2000;

type Three = readonly [number, number, number];

/**
 * Where a motion comes nearest to the scene, as far as the places looked at show it. The gap of the checker is
 * a lower bound of the distance, so it only says which places need a closer look.
 */
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
      const distance = gap < 0 ? gap : nearness(place, size, scene);
      if (distance >= least) continue;
      least = distance;
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

/** About how near the piece is to the scene [mm]: its edges to the boxes, and their corners to it. */
function nearness(place: KeyAttitude, size: PieceSize, scene: readonly SceneBox[]): number {
  const piece: SceneBox = {
    centre: place.at,
    size: [size.length, size.breadth, size.thickness],
    turn: place.turn,
  };
  const edges = edgePoints(piece, ON_EDGE);
  let least = Infinity;
  for (const solid of scene) {
    for (const point of edges) least = Math.min(least, toBox(point, solid));
    for (const point of edgePoints(solid, 1)) least = Math.min(least, toBox(point, piece));
  }
  return least;
}

/** Points on the edges of a box, `parts` intervals to each edge. */
function edgePoints({ centre, size, turn }: SceneBox, parts: number): Three[] {
  const points: Three[] = [];
  for (let axis = 0; axis < 3; axis++) {
    for (let side = 0; side < 4; side++) {
      for (let k = 0; k <= parts; k++) {
        const share: [number, number, number] = [0, 0, 0];
        share[axis] = k / parts - 0.5;
        share[(axis + 1) % 3] = side & 1 ? 0.5 : -0.5;
        share[(axis + 2) % 3] = side & 2 ? 0.5 : -0.5;
        const [x, y, z] = rotate(turn, [share[0] * size[0], share[1] * size[1], share[2] * size[2]]);
        points.push([centre[0] + x, centre[1] + y, centre[2] + z]);
      }
    }
  }
  return points;
}

/** Distance of a point from a box, 0 inside it. */
function toBox(point: Three, { centre, size, turn: [w, x, y, z] }: SceneBox): number {
  const own = rotate([w, -x, -y, -z], [point[0] - centre[0], point[1] - centre[1], point[2] - centre[2]]);
  const out = own.map((v, i) => Math.max(0, Math.abs(v) - size[i]! / 2));
  return Math.hypot(out[0]!, out[1]!, out[2]!);
}
