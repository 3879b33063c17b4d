import type { ConvexPolygon, PlanarPlace } from '../../../../src/core/geometry/planar/planarWorld';

/**
 * Replays a planar path by another method than the planner's: many places along it, and at each the area
 * that the rectangle shares with each obstacle, by clipping (Sutherland & Hodgman, Comm. ACM 17(1), 1974).
 * Returns the greatest width of overlap found, as area over the rectangle's perimeter [mm]; 0: none.
 */
export function overlapAlong(
  obstacles: readonly ConvexPolygon[],
  p: number,
  q: number,
  path: readonly PlanarPlace[],
  step = 2,
): number {
  let worst = 0;
  const radius = Math.hypot(p, q) / 2;
  for (let k = 0; k + 1 < path.length; k++) {
    const a = path[k]!;
    const b = path[k + 1]!;
    const travel = Math.hypot(b.x - a.x, b.y - a.y) + Math.abs(b.angle - a.angle) * radius;
    const steps = Math.max(1, Math.ceil(travel / step));
    for (let s = 0; s <= steps; s++) {
      const t = s / steps;
      const body = rectangle(
        a.x + (b.x - a.x) * t,
        a.y + (b.y - a.y) * t,
        a.angle + (b.angle - a.angle) * t,
        p,
        q,
      );
      for (const o of obstacles) worst = Math.max(worst, areaOf(clip(body, o)) / (2 * (p + q)));
    }
  }
  return worst;
}

type P = readonly [number, number];

function rectangle(x: number, y: number, angle: number, p: number, q: number): P[] {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [
    [-p, -q],
    [p, -q],
    [p, q],
    [-p, q],
  ].map(([u, v]) => [x + (u! * c - v! * s) / 2, y + (u! * s + v! * c) / 2] as const);
}

function clip(subject: readonly P[], by: ConvexPolygon): P[] {
  let out: P[] = [...subject];
  for (let i = 0; i < by.length && out.length > 0; i++) {
    const [ax, ay] = by[i]!;
    const [bx, by_] = by[(i + 1) % by.length]!;
    const side = ([x, y]: P): number => (bx - ax) * (y - ay) - (by_ - ay) * (x - ax);
    const next: P[] = [];
    for (let j = 0; j < out.length; j++) {
      const from = out[j]!;
      const to = out[(j + 1) % out.length]!;
      const f = side(from);
      const t = side(to);
      if (f >= 0) next.push(from);
      if (f >= 0 !== t >= 0) {
        const k = f / (f - t);
        next.push([from[0] + (to[0] - from[0]) * k, from[1] + (to[1] - from[1]) * k]);
      }
    }
    out = next;
  }
  return out;
}

function areaOf(polygon: readonly P[]): number {
  let twice = 0;
  polygon.forEach(([x, y], i) => {
    const [x2, y2] = polygon[(i + 1) % polygon.length]!;
    twice += x * y2 - x2 * y;
  });
  return Math.abs(twice) / 2;
}
