import type { ConvexPolygon, Point } from '../../geometry/planar/planarWorld';
import { rotate } from '../../space/quaternion';
import type { SceneBox } from '../../space/motion';
import type { Vec3 } from '../place/frame';
import { lastOf } from '../../lists/ends';
import { entryAt } from '../../lists/entryAt';

/** Coordinates of a plane in space, and a third across it. */
export type Seen = (p: Vec3) => Vec3;

/** Faces that only touch the layer are not in it [mm]. */
const SKIN = 1e-4;

/**
 * What of the boxes lies in the layer low < third < high [mm], as convex polygons in the first two of the coordinates
 * seen.
 */
export function slicedBoxes(
  boxes: readonly SceneBox[],
  seen: Seen,
  low: number,
  high: number,
): ConvexPolygon[] {
  const polygons: ConvexPolygon[] = [];
  for (const box of boxes) {
    const corners = cornersOf(box).map(seen);
    const thirds = corners.map((p) => p[2]);
    if (Math.max(...thirds) <= low + SKIN || Math.min(...thirds) >= high - SKIN) continue;
    const kept: Point[] = [];
    corners.forEach((p, i) => {
      if (p[2] >= low && p[2] <= high) kept.push([p[0], p[1]]);
      for (const bit of [1, 2, 4]) {
        const q = entryAt(corners, i ^ bit);
        if (i & bit) continue;
        for (const level of [low, high]) {
          const [a, b] = [p[2] - level, q[2] - level];
          if (a * b >= 0) continue;
          const s = a / (a - b);
          kept.push([p[0] + (q[0] - p[0]) * s, p[1] + (q[1] - p[1]) * s]);
        }
      }
    });
    const hull = hullOf(kept);
    if (hull.length >= 3) polygons.push(hull);
  }
  return polygons;
}

function cornersOf({ centre, size, turn }: SceneBox): Vec3[] {
  return Array.from({ length: 8 }, (_, i): Vec3 => {
    const half: Vec3 = [
      ((i & 1 ? 1 : -1) * size[0]) / 2,
      ((i & 2 ? 1 : -1) * size[1]) / 2,
      ((i & 4 ? 1 : -1) * size[2]) / 2,
    ];
    const p = rotate(turn, half);
    return [centre[0] + p[0], centre[1] + p[1], centre[2] + p[2]];
  });
}

/** The convex hull, anticlockwise (Andrew's monotone chain, Information Processing Letters 9, 1979). */
function hullOf(points: readonly Point[]): Point[] {
  // Corners that stand upon each other but for rounding would be taken in the wrong order.
  const rounded = points.map(([x, y]): Point => [Math.round(x * 1e6) / 1e6, Math.round(y * 1e6) / 1e6]);
  const sorted = rounded.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (row: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of row) {
      while (chain.length >= 2) {
        const a = entryAt(chain, chain.length - 2);
        const b = lastOf(chain);
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-7) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain;
  };
  const low = half(sorted);
  const up = half([...sorted].reverse());
  return [...low.slice(0, -1), ...up.slice(0, -1)];
}
