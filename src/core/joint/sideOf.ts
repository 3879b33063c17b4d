import type { ConvexPolygon, Point } from '../geometry/planar/planarWorld';
import type { SceneBox } from '../space/motion';
import { rotate } from '../space/quaternion';
import { snapped } from './planWorld';

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

/** A box seen from the side, x along and z up: all of it, however much of it is in the lane. */
export function sideOf(box: SceneBox): ConvexPolygon {
  const points = cornersOf(box).map(([x, , z]): Point => [x, z]);
  return hullOf(points) ?? points.slice(0, 3);
}

/** Its corners, numbered by the signs of three bits. */
function cornersOf(box: SceneBox): (readonly [number, number, number])[] {
  const axes = halfAxes(box);
  return Array.from({ length: 8 }, (_, m) => {
    const at = (n: 0 | 1 | 2): number =>
      axes.reduce((sum, axis, k) => sum + ((m >> k) & 1 ? 1 : -1) * axis[n], box.centre[n]);
    return [snapped(at(0)), snapped(at(1)), snapped(at(2))] as const;
  });
}

/** What of a box lies between two heights [mm], seen from above; undefined where nothing does. */
export function planBetween(box: SceneBox, low: number, high: number): ConvexPolygon | undefined {
  const corners = cornersOf(box);
  const heights = corners.map((p) => p[2]);
  if (Math.min(...heights) >= high - 1e-6 || Math.max(...heights) <= low + 1e-6) return undefined;
  const points: Point[] = corners.filter((p) => p[2] >= low && p[2] <= high).map((p) => [p[0], p[1]]);
  // An edge joins two corners that differ in one bit.
  for (let m = 0; m < 8; m++) {
    for (const bit of [1, 2, 4]) {
      const n = m | bit;
      const [p, q] = [corners[m], corners[n]];
      if (n === m || !p || !q) continue;
      for (const z of [low, high]) {
        const [zp, zq] = [p[2], q[2]];
        if (zp < z === zq < z) continue;
        const t = (z - zp) / (zq - zp);
        points.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]);
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
