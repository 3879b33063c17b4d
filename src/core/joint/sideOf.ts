import type { ConvexPolygon, Point } from '../geometry/planar/planarWorld';
import type { SceneBox } from '../space/motion';
import { rotate } from '../space/quaternion';

/** Half of each of a box's three extents, as it is turned [mm]. */
function halfAxes({ size, turn }: SceneBox): readonly (readonly [number, number, number])[] {
  return [0, 1, 2].map((k) => {
    const axis: [number, number, number] = [0, 0, 0];
    axis[k] = (size[k] ?? 0) / 2;
    return rotate(turn, axis);
  });
}

/** Whether a box reaches into the lane between two sides across the x axis [mm]. */
export function reachesInto(box: SceneBox, right: number, left: number): boolean {
  const half = halfAxes(box).reduce((sum, axis) => sum + Math.abs(axis[1]), 0);
  return box.centre[1] + half > right && box.centre[1] - half < left;
}

/** A box with one axis along y, seen from the side: x along, z up. */
export function sideOf(box: SceneBox): ConvexPolygon {
  const { centre } = box;
  const axes = [...halfAxes(box)].sort(
    (one, other) => Math.hypot(other[0], other[2]) - Math.hypot(one[0], one[2]),
  );
  const [a, b] = axes;
  if (!a || !b) return [];
  const anticlockwise = a[0] * b[2] - a[2] * b[0] >= 0;
  const corners = SIGNS.map(([i, j]): Point => [
    centre[0] + i * a[0] + j * b[0],
    centre[2] + i * a[2] + j * b[2],
  ]);
  return anticlockwise ? corners : corners.reverse();
}

const SIGNS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const;

/** What of a box lies between two heights, seen from above; undefined where nothing does. */
export function planBetween(box: SceneBox, low: number, high: number): ConvexPolygon | undefined {
  const [a, b, c] = halfAxes(box);
  if (!a || !b || !c) return undefined;
  const corners = [-1, 1].flatMap((i) =>
    [-1, 1].flatMap((j) =>
      [-1, 1].map((k) => [0, 1, 2].map((n) => box.centre[n]! + i * a[n]! + j * b[n]! + k * c[n]!)),
    ),
  );
  const heights = corners.map((p) => p[2]!);
  if (Math.min(...heights) >= high - 1e-6 || Math.max(...heights) <= low + 1e-6) return undefined;
  const points: Point[] = corners.filter((p) => p[2]! >= low && p[2]! <= high).map((p) => [p[0]!, p[1]!]);
  // Corners are numbered by the signs of three bits: an edge joins two that differ in one.
  for (let m = 0; m < 8; m++) {
    for (const bit of [1, 2, 4]) {
      const n = m | bit;
      const [p, q] = [corners[m], corners[n]];
      if (n === m || !p || !q) continue;
      for (const z of [low, high]) {
        const [zp, zq] = [p[2]!, q[2]!];
        if (zp < z === zq < z) continue;
        const t = (z - zp) / (zq - zp);
        points.push([p[0]! + (q[0]! - p[0]!) * t, p[1]! + (q[1]! - p[1]!) * t]);
      }
    }
  }
  return hullOf(points);
}

/** The convex hull, anticlockwise; undefined where it has no area (Andrew's monotone chain, Inf. Proc. Letters 9(5), 1979). */
function hullOf(points: readonly Point[]): ConvexPolygon | undefined {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const chain = (row: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const p of row) {
      for (;;) {
        const [o, q] = [kept[kept.length - 2], kept[kept.length - 1]];
        if (!o || !q || (q[0] - o[0]) * (p[1] - o[1]) - (q[1] - o[1]) * (p[0] - o[0]) > 1e-9) break;
        kept.pop();
      }
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  const hull = [...chain(sorted), ...chain(sorted.reverse())];
  return hull.length >= 3 ? hull : undefined;
}
