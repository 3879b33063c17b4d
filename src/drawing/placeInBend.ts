import { rectangleRoundCorner } from '../core/geometry/rectangleRoundCorner';
import type { Point } from './plane';

/** Where a rectangle stands at its closest in a bend, in the bend's own coordinates (see `bendShape`). */
export interface BendPlace {
  readonly centre: Point;
  /** Angle of the long side to the way in [rad], to the right. */
  readonly angle: number;
  /** Padding in plan [mm a side] at that place. */
  readonly clearance: number;
}

/**
 * The shape of a bend in its own coordinates: the way in runs up along y between x = 0 (outer wall) and
 * x = widthIn (inner wall); the inner corner is at (widthIn, 0); the way out turns right by `turn` [rad].
 */
export function bendShape(widthIn: number, widthOut: number, turn: number) {
  const inner: Point = [widthIn, 0];
  /** Direction of the way out, and the normal from its inner to its outer wall. */
  const out: Point = [Math.sin(turn), Math.cos(turn)];
  const normal: Point = [-Math.cos(turn), Math.sin(turn)];
  /** The point `s` along the way out, `across` from its inner wall. */
  const alongOut = (s: number, across: number): Point => [
    inner[0] + s * out[0] + across * normal[0],
    inner[1] + s * out[1] + across * normal[1],
  ];
  /** How far along the way out the line x = `x` meets the line `across` from the inner wall. */
  const meets = (x: number, across: number): number => (x - inner[0] - across * normal[0]) / out[0];
  return { inner, out, normal, alongOut, meets, outer: alongOut(meets(0, widthOut), widthOut) };
}

/**
 * The critical place of a rectangle p x q in a bend: at the closest angle, padded by its clearance in plan, it
 * touches both outer walls and a line through the inner corner that parts it from the inner walls.
 */
export function placeInBend(
  p: number,
  q: number,
  widthIn: number,
  widthOut: number,
  turn: number,
): BendPlace {
  const { angle } = rectangleRoundCorner(p, q, widthIn, widthOut, turn);
  const long = Math.max(p, q);
  const short = Math.min(p, q);
  const { inner, normal } = bendShape(widthIn, widthOut, turn);
  const u: Point = [Math.sin(angle), Math.cos(angle)];
  const v: Point = [-u[1], u[0]];
  /** Half of the rectangle's extent towards n, and how fast that grows with the padding. */
  const reach = (n: Point) => {
    const alongU = Math.abs(dot(u, n));
    const alongV = Math.abs(dot(v, n));
    return { half: (long * alongU + short * alongV) / 2, rate: alongU + alongV };
  };
  // Each of the three lines: centre . n >= from + half + rate * padding.
  const walls = [
    { n: [1, 0] as Point, from: 0 },
    { n: [-normal[0], -normal[1]] as Point, from: -dot(inner, normal) - widthOut },
  ];
  const separators: Point[] = [[-1, 0], normal, v, [-v[0], -v[1]], u, [-u[0], -u[1]]];
  let best: BendPlace = { centre: inner, angle, clearance: -Infinity };
  for (const n of separators) {
    // n = k1 (-1, 0) + k2 normal, neither negative: between the inner walls' normals.
    const k2 = n[1] / normal[1];
    const k1 = -(n[0] - k2 * normal[0]);
    if (k1 < -1e-9 || k2 < -1e-9) continue;
    const lines = [...walls, { n, from: dot(inner, n) }].map((line) => ({ ...line, ...reach(line.n) }));
    const [first, second, third] = lines as [Line, Line, Line];
    // Weighted by k1, k2 and 1 the normals add up to nothing, so the padding alone remains.
    const room = -(k1 * first.from + k2 * second.from + third.from);
    const half = k1 * first.half + k2 * second.half + third.half;
    const rate = k1 * first.rate + k2 * second.rate + third.rate;
    const clearance = (room - half) / rate;
    if (clearance <= best.clearance) continue;
    best = { centre: meet(first, second, clearance), angle, clearance };
  }
  return best;
}

interface Line {
  readonly n: Point;
  readonly from: number;
  readonly half: number;
  readonly rate: number;
}

/** The centre that touches two lines with this padding. */
function meet(a: Line, b: Line, padding: number): Point {
  const ra = a.from + a.half + a.rate * padding;
  const rb = b.from + b.half + b.rate * padding;
  const det = a.n[0] * b.n[1] - a.n[1] * b.n[0];
  return [(ra * b.n[1] - rb * a.n[1]) / det, (rb * a.n[0] - ra * b.n[0]) / det];
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
