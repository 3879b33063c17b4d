import type { PieceSize } from '../../src/core/measures/piece';
import type { Motion, SceneBox } from '../../src/core/space/motion';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, ceil, cos, hypot, max, sin, sqrt } = Math;

/**
 * Replays a shown motion by another method than the planner's: many places along it, the distance of the
 * two boxes' corner sets by Gilbert, Johnson & Keerthi's algorithm (IEEE J. Robotics & Automation 4(2),
 * 1988), attitudes as matrices by Rodrigues' formula. Shares no code with src/core/space.
 */
export interface Replay {
  readonly collides: boolean;
  /**
   * How deep the piece stands in an obstacle at worst [mm]: the padding that it would have to lose a side to
   * come free there, to 0.1 mm; 0 when nothing touches.
   */
  readonly worstPenetration: number;
  /** Least distance found [mm]; 0 on contact. */
  readonly leastDistance: number;
  readonly at?: { readonly key: number; readonly part: number; readonly obstacle: number };
}

export interface ReplayOptions {
  /** Padding [mm] that the piece wears. */
  readonly padding?: number;
  /** The farthest any point of the piece moves between two places looked at [mm]. */
  readonly step?: number;
}

type V = [number, number, number];

const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const sub = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export function replay(
  shown: { readonly motion: Motion; readonly scene: readonly SceneBox[] },
  piece: PieceSize,
  options: ReplayOptions = {},
): Replay {
  const padding = options.padding ?? 0;
  const step = options.step ?? 4;
  const sizes: V = [
    max(0, piece.length + 2 * padding),
    max(0, piece.breadth + 2 * padding),
    max(0, piece.thickness + 2 * padding),
  ];
  const obstacles = shown.scene.map((box) => corners([...box.size], matrixOf(box.turn), [...box.centre]));
  const centres = shown.scene.map((box) => [...box.centre] as V);
  const radii = shown.scene.map((box) => hypot(...box.size) / 2);
  const reach = hypot(...sizes) / 2;
  let least = Infinity;
  let worst = 0;
  let at: Replay['at'];
  // An obstacle seen at a distance need not be looked at again before any point has moved that far.
  const resume = new Float64Array(obstacles.length);
  const look = (place: V, m: V[], key: number, part: number, travelled: number): void => {
    let body: V[] | undefined;
    for (let i = 0; i < obstacles.length; i++) {
      if (travelled < resume[i]!) continue;
      const far = hypot(...sub(place, centres[i]!)) - reach - radii[i]!;
      if (far > 50) {
        resume[i] = travelled + far;
        continue;
      }
      body ??= corners(sizes, m, place);
      const d = gjkDistance(body, obstacles[i]!);
      if (d < least) least = d;
      resume[i] = travelled + d;
      if (d > 0) continue;
      const depth = depthOf(sizes, m, place, obstacles[i]!, worst);
      if (depth > worst || at === undefined) {
        worst = max(worst, depth);
        at = { key, part, obstacle: i };
      }
    }
  };
  if (shown.motion.length === 1) look([...shown.motion[0]!.at], matrixOf(shown.motion[0]!.turn), 0, 0, 0);
  let travelled = 0;
  for (let k = 0; k + 1 < shown.motion.length; k++) {
    const a = shown.motion[k]!;
    const b = shown.motion[k + 1]!;
    const from = matrixOf(a.turn);
    const { axis, angle } = axisAngleBetween(a.turn, b.turn);
    const travel = hypot(...sub([...b.at], [...a.at])) + angle * reach;
    const steps = max(1, ceil(travel / step));
    for (let s = 0; s <= steps; s++) {
      const part = s / steps;
      const place: V = [0, 1, 2].map((j) => a.at[j]! + (b.at[j]! - a.at[j]!) * part) as V;
      look(place, rodrigues(axis, angle * part, from), k, part, travelled + part * travel);
    }
    travelled += travel;
  }
  return {
    collides: least === 0,
    worstPenetration: worst,
    leastDistance: least,
    ...(at === undefined ? {} : { at }),
  };
}

/** Columns of the rotation matrix: where the piece's axes L, B, T point. */
function matrixOf(q: readonly [number, number, number, number]): V[] {
  const n = hypot(...q);
  const [w, x, y, z] = q.map((c) => c / n) as [number, number, number, number];
  return [
    [w * w + x * x - y * y - z * z, 2 * (x * y + w * z), 2 * (x * z - w * y)],
    [2 * (x * y - w * z), w * w - x * x + y * y - z * z, 2 * (y * z + w * x)],
    [2 * (x * z + w * y), 2 * (y * z - w * x), w * w - x * x - y * y + z * z],
  ];
}

/** The turn (in the room) that leads from one attitude to another, at most half a turn. */
function axisAngleBetween(
  a: readonly [number, number, number, number],
  b: readonly [number, number, number, number],
): { axis: V; angle: number } {
  // b * conj(a)
  let w = b[0] * a[0] + b[1] * a[1] + b[2] * a[2] + b[3] * a[3];
  let v: V = [
    -b[0] * a[1] + b[1] * a[0] - b[2] * a[3] + b[3] * a[2],
    -b[0] * a[2] + b[2] * a[0] - b[3] * a[1] + b[1] * a[3],
    -b[0] * a[3] + b[3] * a[0] - b[1] * a[2] + b[2] * a[1],
  ];
  if (w < 0) {
    w = -w;
    v = [-v[0], -v[1], -v[2]];
  }
  const s = hypot(...v);
  if (s < 1e-12) return { axis: [1, 0, 0], angle: 0 };
  return { axis: [v[0] / s, v[1] / s, v[2] / s], angle: 2 * Math.atan2(s, w) };
}

function rodrigues(k: V, angle: number, columns: V[]): V[] {
  const c = cos(angle);
  const s = sin(angle);
  return columns.map((v) => {
    const kv = cross(k, v);
    const d = dot(k, v) * (1 - c);
    return [
      v[0] * c + kv[0] * s + k[0] * d,
      v[1] * c + kv[1] * s + k[1] * d,
      v[2] * c + kv[2] * s + k[2] * d,
    ];
  });
}

function corners(sizes: readonly number[], m: V[], at: V): V[] {
  const out: V[] = [];
  for (let i = 0; i < 8; i++) {
    const f = [i & 1 ? 0.5 : -0.5, i & 2 ? 0.5 : -0.5, i & 4 ? 0.5 : -0.5];
    const p: V = [...at];
    for (let k = 0; k < 3; k++) for (let j = 0; j < 3; j++) p[j]! += m[k]![j]! * f[k]! * sizes[k]!;
    out.push(p);
  }
  return out;
}

function farthest(points: V[], d: V): V {
  let best = points[0]!;
  let most = -Infinity;
  for (const p of points) {
    const s = dot(p, d);
    if (s > most) {
      most = s;
      best = p;
    }
  }
  return best;
}

/** Distance of the convex hulls of two sets of points; 0 when they meet. */
export function gjkDistance(a: V[], b: V[]): number {
  const support = (d: V): V => sub(farthest(a, d), farthest(b, [-d[0], -d[1], -d[2]]));
  let simplex: V[] = [support([1, 0, 0])];
  let nearest = simplex[0]!;
  for (let turn = 0; turn < 100; turn++) {
    const d2 = dot(nearest, nearest);
    if (d2 < 1e-14) return 0;
    const w = support([-nearest[0], -nearest[1], -nearest[2]]);
    // No point of the difference lies nearer along this direction: done.
    if (d2 - dot(nearest, w) <= 1e-12 * d2 + 1e-12) return sqrt(d2);
    if (simplex.some((p) => p[0] === w[0] && p[1] === w[1] && p[2] === w[2])) return sqrt(d2);
    const next = nearestOfSimplex([...simplex, w]);
    if (next === null) return 0;
    if (dot(next.point, next.point) >= d2) return sqrt(d2);
    simplex = next.kept;
    nearest = next.point;
  }
  return sqrt(dot(nearest, nearest));
}

/** The point of a simplex nearest the origin and the corners it hangs on, by trying every face; null inside. */
function nearestOfSimplex(s: V[]): { point: V; kept: V[] } | null {
  let best: { point: V; kept: V[] } | undefined;
  let least = Infinity;
  const n = s.length;
  for (let mask = 1; mask < 1 << n; mask++) {
    const face = s.filter((_, i) => mask & (1 << i));
    const point = nearestOnAffine(face);
    if (point === null) continue;
    if (point === 'inside') return null;
    const d2 = dot(point, point);
    if (d2 < least - 1e-14) {
      least = d2;
      best = { point, kept: face };
    }
  }
  return best!;
}

/** Foot of the origin on the flat through the face, null when outside the face. */
function nearestOnAffine(f: V[]): V | 'inside' | null {
  if (f.length === 1) return f[0]!;
  const base = f[0]!;
  const e = f.slice(1).map((p) => sub(p, base));
  const n = e.length;
  const g = e.map((u) => e.map((v) => dot(u, v)));
  const r = e.map((u) => -dot(u, base));
  const t = solve(g, r);
  if (t === null) return null;
  if (t.some((x) => x < 0) || t.reduce((x, y) => x + y, 0) > 1) return null;
  if (n === 3) return 'inside';
  const p: V = [...base];
  for (let i = 0; i < n; i++) for (let j = 0; j < 3; j++) p[j]! += t[i]! * e[i]![j]!;
  return p;
}

function solve(g: number[][], r: number[]): number[] | null {
  const n = r.length;
  const m = g.map((row, i) => [...row, r[i]!]);
  // Flat simplexes are left to their faces: a height under 1e-5 of the length says nothing.
  const flat = 1e-10 * max(...g.map((row, i) => row[i]!));
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let i = c + 1; i < n; i++) if (abs(m[i]![c]!) > abs(m[pivot]![c]!)) pivot = i;
    if (abs(m[pivot]![c]!) < flat) return null;
    [m[c], m[pivot]] = [m[pivot]!, m[c]!];
    for (let i = 0; i < n; i++) {
      if (i === c) continue;
      const f = m[i]![c]! / m[c]![c]!;
      for (let k = c; k <= n; k++) m[i]![k]! -= f * m[c]![k]!;
    }
  }
  return m.map((row, i) => row[n]! / row[i]!);
}

/** The padding [mm] the piece must lose a side to stand clear of one obstacle in this place, to 0.1 mm. */
function depthOf(sizes: V, m: V[], at: V, obstacle: V[], worst: number): number {
  const apartAt = (c: number): boolean =>
    gjkDistance(
      corners(
        sizes.map((x) => max(0, x - 2 * c)),
        m,
        at,
      ),
      obstacle,
    ) > 0;
  // Only a deeper place than the worst so far matters.
  if (worst > 0 && apartAt(worst)) return worst;
  let low = worst;
  let high = max(...sizes) / 2;
  while (high - low > 0.1) {
    const c = (low + high) / 2;
    if (apartAt(c)) high = c;
    else low = c;
  }
  return high;
}
