import type { PieceSize } from '../../src/core/measures/piece';
import { seededStream } from '../../src/core/space/seededStream';

// Taken out of Math once: jest is slow at looking them up.
const { ceil, cos, max, min, sin, PI } = Math;

type Point3 = readonly [number, number, number];
type Place = readonly [number, number];

/** A landing with its flights as they are built: treads and risers, sloping ceilings, upright walls. */
export interface BuiltLanding {
  readonly rise: number;
  readonly going: number;
  readonly headroom: number;
  readonly landingCeiling: number;
  /** Depth [mm] of the landing along the lower flight. */
  readonly depth: number;
  /** Width [mm] of the lower flight, from y = 0. */
  readonly lower: number;
  /** The upper flight leaves at a right angle; or beside the lower one, from `from` to `to` across. */
  readonly upper: 'square' | { readonly from: number; readonly to: number };
}

/** So far on either side of the landing's edge a point is looked at where an edge of the box crosses it [mm]. */
const BESIDE = 1e-4;

/** Where the edges of a box cross the upright planes through the landing's edges, a little on either side. */
function crossings(b: BuiltLanding, [cx, cy]: Place, box: readonly Point3[]): Point3[] {
  const planes: [axis: 0 | 1, at: number][] = [[0, -cx]];
  if (b.upper === 'square') planes.push([1, b.lower - cy]);
  const points: Point3[] = [];
  // The points of an edge stand in rows of four, of which these are the ends.
  for (let i = 0; i < box.length; i += 4) {
    const [p, q] = [box[i]!, box[i + 3]!];
    for (const [axis, at] of planes) {
      const run = q[axis] - p[axis];
      for (const beside of [-BESIDE, BESIDE]) {
        const t = (at + beside - p[axis]) / run;
        if (!(t >= 0 && t <= 1)) continue;
        points.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]);
      }
    }
  }
  return points;
}

/**
 * Whether a box stands at some height with its centre over `place`: every corner, points along every edge and where
 * these cross the landing's edges are looked at one by one against treads, risers, ceilings and walls; upright edges of
 * the walls against its shadow.
 */
function stands(b: BuiltLanding, place: Place, edges: readonly Point3[]): boolean {
  const { upper } = b;
  const [cx, cy] = place;
  const box = [...edges, ...crossings(b, place, edges)];
  let low = -Infinity;
  let high = Infinity;
  for (const [dx, dy, dz] of box) {
    const x = cx + dx;
    const y = cy + dy;
    if (y < 0 || x > b.depth || (upper !== 'square' && y > upper.to)) return false;
    let floor = 0;
    let ceiling = b.landingCeiling;
    if (x < 0 && y <= b.lower) {
      floor = -b.rise * ceil(-x / b.going);
      ceiling = b.headroom + (x * b.rise) / b.going;
    } else {
      const onUpper = upper === 'square' ? y - b.lower : x < 0 && y >= upper.from ? -x : 0;
      if (x < 0 && (upper === 'square' || y < upper.from)) return false;
      if (onUpper > 0) {
        floor = b.rise * ceil(onUpper / b.going);
        ceiling = b.rise + b.headroom + (onUpper * b.rise) / b.going;
      }
    }
    low = max(low, floor - dz);
    high = min(high, ceiling - dz);
    if (low > high) return false;
  }
  // The solid inner part, seen from every side on which a line can part it from the shadow.
  const last = upper === 'square' ? SIDES.length / 2 : SIDES.length;
  for (let i = 0; i < last; i++) {
    const [nx, ny] = SIDES[i]!;
    let solid = ny * b.lower;
    if (upper !== 'square') solid = min(solid, ny * upper.from);
    let parted = true;
    for (const [x, y] of box) {
      if (nx * (x + cx) + ny * (y + cy) > solid) {
        parted = false;
        break;
      }
    }
    if (parted) return true;
  }
  return false;
}

/** Level directions from across the lower flight round to back across it, by degrees. */
const SIDES: readonly Place[] = Array.from({ length: 182 }, (_, i) => [
  -sin((i * PI) / 181),
  cos((i * PI) / 181),
]);

/** Corners and points along the edges of a box turned by yaw, tilt and lean: four in a row for each edge. */
function boxPoints(size: PieceSize, yaw: number, tilt: number, lean: number): Point3[] {
  const [cy, sy, ct, st] = [cos(yaw), sin(yaw), cos(tilt), sin(tilt)];
  const [cl, sl] = [cos(lean), sin(lean)];
  const about = ([x, y, z]: Point3): Point3 => {
    const [y1, z1] = [y * cl - z * sl, y * sl + z * cl];
    const [x2, z2] = [x * ct - z1 * st, x * st + z1 * ct];
    return [x2 * cy - y1 * sy, x2 * sy + y1 * cy, z2];
  };
  const steps = [-0.5, -0.2, 0.2, 0.5];
  const ends = [-0.5, 0.5];
  const points: Point3[] = [];
  for (const one of ends)
    for (const other of ends) {
      for (const a of steps)
        points.push(about([a * size.length, one * size.breadth, other * size.thickness]));
      for (const b of steps)
        points.push(about([one * size.length, b * size.breadth, other * size.thickness]));
      for (const c of steps)
        points.push(about([one * size.length, other * size.breadth, c * size.thickness]));
    }
  return points;
}

/**
 * The greatest padding [mm a side] found by trying places on a line and attitudes at random and bettering the best:
 * a box of that size does stand there. Never more than is true, often a little less.
 */
export function greatestStanding(
  b: BuiltLanding,
  line: readonly [Place, Place],
  piece: PieceSize,
  seed: number,
) {
  const next = seededStream(seed);
  const at = (x: readonly number[], e: number): boolean => {
    const size = {
      length: max(0, piece.length + 2 * e),
      breadth: max(0, piece.breadth + 2 * e),
      thickness: max(0, piece.thickness + 2 * e),
    };
    const place: Place = [
      line[0][0] + x[0]! * (line[1][0] - line[0][0]),
      line[0][1] + x[0]! * (line[1][1] - line[0][1]),
    ];
    return stands(b, place, boxPoints(size, 2 * PI * x[1]!, (PI / 2) * x[2]!, PI * x[3]!));
  };
  const most = (x: readonly number[], known: number): number => {
    if (!at(x, known + 0.5)) return -Infinity;
    let low = known + 0.5;
    let high = 500;
    while (high - low > 1) {
      const middle = (low + high) / 2;
      if (at(x, middle)) low = middle;
      else high = middle;
    }
    return low;
  };
  const least = -piece.breadth / 2;
  const tried = Array.from({ length: 200 }, () => [next(), next(), next(), next()])
    .map((x) => ({ x, e: most(x, least) }))
    .sort((p, q) => q.e - p.e);
  let best = least;
  for (const start of tried.slice(0, 4)) {
    let { x, e } = start;
    let stride = 0.2;
    for (let i = 0; i < 150; i++) {
      const y = x.map((v) => v + (next() - 0.5) * stride * (next() < 0.5 ? 1 : 0.1));
      y[0] = min(1, max(0, y[0]!));
      const better = most(y, max(e, least));
      if (better > e) {
        e = better;
        x = y;
      } else stride = max(0.003, stride * 0.95);
    }
    best = max(best, e);
  }
  return best;
}
