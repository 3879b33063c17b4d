import { lastOf } from '../core/lists/ends';
import { entryAt } from '../core/lists/entryAt';
import { pairs, sides } from '../core/lists/pairs';

/** A point of a view [mm]: x to the right, y up. */
export type Point = readonly [number, number];

/** The corners of a polygon or the points of a line, in order. */
export type Points = readonly Point[];

/** The corners of a rectangle, in order. */
export type Corners = readonly [Point, Point, Point, Point];

/** A rectangle square to the axes. */
export const box = (x1: number, y1: number, x2: number, y2: number): Corners => [
  [x1, y1],
  [x2, y1],
  [x2, y2],
  [x1, y2],
];

/** Convex hull, anticlockwise. @source Andrew's monotone chain, Inf. Proc. Letters 9(5), 1979 */
export function hull(points: Points): Points {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (from: Points): Point[] => {
    const chain: Point[] = [];
    for (const p of from) {
      while (chain.length > 1 && cross(entryAt(chain, chain.length - 2), lastOf(chain), p) <= 0) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const cross = (o: Point, a: Point, b: Point): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** A point of a face and how far the piece is from it [mm]. */
export interface Nearness {
  readonly at: Point;
  readonly distance: number;
}

/**
 * Where a polygon comes nearest to the faces round it, nearest first, one place for each face line; a place
 * where they cross has the distance 0.
 */
export function nearestPlaces(polygon: Points, faces: readonly Points[]): Nearness[] {
  const places: Nearness[] = [];
  for (const face of faces) {
    for (const [from, to] of pairs(face)) {
      let best: Nearness | undefined;
      for (const [corner, next] of sides(polygon)) {
        const near = nearSegments(from, to, corner, next);
        if (!best || near.distance < best.distance) best = near;
      }
      if (best) places.push(best);
    }
  }
  return places.sort((a, b) => a.distance - b.distance);
}

function nearSegments(a: Point, b: Point, c: Point, d: Point): Nearness {
  const meeting = crossing(a, b, c, d);
  if (meeting) return { at: meeting, distance: 0 };
  const onFace = [c, d].map((p) => ({ at: nearestOn(a, b, p), to: p }));
  const onPiece = [a, b].map((p) => ({ at: p, to: nearestOn(c, d, p) }));
  return [...onFace, ...onPiece]
    .map(({ at, to }) => ({ at, distance: Math.hypot(at[0] - to[0], at[1] - to[1]) }))
    .reduce((best, next) => (next.distance < best.distance ? next : best));
}

function nearestOn(a: Point, b: Point, p: Point): Point {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length2;
  const k = Math.min(1, Math.max(0, t));
  return [a[0] + k * dx, a[1] + k * dy];
}

function crossing(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const r: Point = [b[0] - a[0], b[1] - a[1]];
  const s: Point = [d[0] - c[0], d[1] - c[1]];
  const det = r[0] * s[1] - r[1] * s[0];
  if (Math.abs(det) < 1e-9) return undefined;
  const t = ((c[0] - a[0]) * s[1] - (c[1] - a[1]) * s[0]) / det;
  const u = ((c[0] - a[0]) * r[1] - (c[1] - a[1]) * r[0]) / det;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? [a[0] + t * r[0], a[1] + t * r[1]] : undefined;
}
