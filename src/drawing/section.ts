import type { PieceSize } from '../core/measures/piece';
import type { KeyAttitude, SceneBox } from '../core/space/motion';
import { rotate } from '../core/space/quaternion';
import { hull, type Point, type Points } from './plane';

type Three = readonly [number, number, number];

/** A plane that is looked at: from `origin`, `right` to the right and `up` upwards, both of length 1 and square. */
export interface ViewPlane {
  readonly origin: Three;
  readonly right: Three;
  readonly up: Three;
}

/** The level plane at a height [mm], seen from above. */
export const levelPlane = (height: number): ViewPlane => ({
  origin: [0, 0, height],
  right: [1, 0, 0],
  up: [0, 1, 0],
});

/** The upright plane through a point, seen from the side, along a heading [rad] in plan. */
export const uprightPlane = (at: Three, heading: number): ViewPlane => ({
  origin: [at[0], at[1], 0],
  right: [Math.cos(heading), Math.sin(heading), 0],
  up: [0, 0, 1],
});

const dot = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** The eight corners of a box. */
export function boxCorners({ centre, size, turn }: SceneBox): Three[] {
  return Array.from({ length: 8 }, (_, i): Three => {
    const half = [1, 2, 4].map((bit, k) => ((i & bit ? 1 : -1) * (size[k] ?? 0)) / 2) as unknown as Three;
    const [x, y, z] = rotate(turn, half);
    return [centre[0] + x, centre[1] + y, centre[2] + z];
  });
}

/** A piece in a place, as a box. */
export const pieceBox = ({ at, turn }: KeyAttitude, { length, breadth, thickness }: PieceSize): SceneBox => ({
  centre: at,
  size: [length, breadth, thickness],
  turn,
});

/** Where a point is in a view. */
export function inView({ origin, right, up }: ViewPlane, p: Three): Point {
  const d: Three = [p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]];
  return [dot(d, right), dot(d, up)];
}

/** The outline of a box as it looks square to the plane. */
export const outlineIn = (plane: ViewPlane, solid: SceneBox): Points =>
  hull(boxCorners(solid).map((corner) => inView(plane, corner)));

/** Corners nearer to the plane than this [mm] count as one side of it. */
const ON_PLANE = 1e-6;

/** The section of a box with the plane; empty where it does not reach it. */
export function sectionIn(plane: ViewPlane, solid: SceneBox): Points {
  const { origin, right, up } = plane;
  const normal: Three = [
    right[1] * up[2] - right[2] * up[1],
    right[2] * up[0] - right[0] * up[2],
    right[0] * up[1] - right[1] * up[0],
  ];
  const corners = boxCorners(solid);
  const heights = corners.map((p) => dot([p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]], normal));
  const points: Point[] = [];
  corners.forEach((a, i) => {
    for (const bit of [1, 2, 4]) {
      const b = corners[i | bit];
      const [ha, hb] = [heights[i] ?? 0, heights[i | bit] ?? 0];
      if (i & bit || !b || ha < ON_PLANE === hb < ON_PLANE) continue;
      const s = ha / (ha - hb);
      points.push(
        inView(plane, [a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])]),
      );
    }
  });
  return points.length < 3 ? [] : hull(points);
}

/** A convex polygon as far as it lies in a convex window. @source Sutherland & Hodgman, CACM 17(1), 1974 */
export function clipped(polygon: Points, window: Points): Points {
  let kept: Points = polygon;
  window.forEach((a, i) => {
    const b = window[(i + 1) % window.length] ?? a;
    const inside = (p: Point): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    const next: Point[] = [];
    kept.forEach((p, j) => {
      const q = kept[(j + 1) % kept.length] ?? p;
      const [dp, dq] = [inside(p), inside(q)];
      if (dp >= 0) next.push(p);
      if (dp >= 0 !== dq >= 0) {
        const s = dp / (dp - dq);
        next.push([p[0] + s * (q[0] - p[0]), p[1] + s * (q[1] - p[1])]);
      }
    });
    kept = next;
  });
  return kept;
}
