import type { KeyAttitude } from './motion';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, acos, cos, max, min, sin, sqrt } = Math;

/** A unit quaternion [w, x, y, z]. */
export type Quaternion = KeyAttitude['turn'];

/** The turn by `angle` [rad] about an axis (any length but 0). */
export function quaternionAbout(axis: readonly [number, number, number], angle: number): Quaternion {
  const scale = sin(angle / 2) / sqrt(axis[0] ** 2 + axis[1] ** 2 + axis[2] ** 2);
  return [cos(angle / 2), axis[0] * scale, axis[1] * scale, axis[2] * scale];
}

/** a then applied after b: the turn b first, then a. */
export function multiply(a: Quaternion, b: Quaternion): Quaternion {
  return [
    a[0] * b[0] - a[1] * b[1] - a[2] * b[2] - a[3] * b[3],
    a[0] * b[1] + a[1] * b[0] + a[2] * b[3] - a[3] * b[2],
    a[0] * b[2] - a[1] * b[3] + a[2] * b[0] + a[3] * b[1],
    a[0] * b[3] + a[1] * b[2] - a[2] * b[1] + a[3] * b[0],
  ];
}

/** The attitude whose columns are the given right-handed orthonormal axes. */
export function quaternionFromAxes(
  x: readonly [number, number, number],
  y: readonly [number, number, number],
  z: readonly [number, number, number],
): Quaternion {
  // Of the four equivalent formulas the one with the largest divisor is taken: no loss of digits.
  const four = [
    1 + x[0] + y[1] + z[2],
    1 + x[0] - y[1] - z[2],
    1 - x[0] + y[1] - z[2],
    1 - x[0] - y[1] + z[2],
  ];
  const most = max(...four);
  const largest = four.indexOf(most);
  const root = sqrt(most);
  const s = 0.5 / root;
  const a = (y[2] - z[1]) * s;
  const b = (z[0] - x[2]) * s;
  const c = (x[1] - y[0]) * s;
  const d = (y[0] + x[1]) * s;
  const e = (z[0] + x[2]) * s;
  const f = (z[1] + y[2]) * s;
  if (largest === 0) return [root / 2, a, b, c];
  if (largest === 1) return [a, root / 2, d, e];
  if (largest === 2) return [b, d, root / 2, f];
  return [c, e, f, root / 2];
}

/** Turns a vector by an attitude. */
export function rotate(q: Quaternion, v: readonly [number, number, number]): [number, number, number] {
  const [w, x, y, z] = q;
  const tx = 2 * (y * v[2] - z * v[1]);
  const ty = 2 * (z * v[0] - x * v[2]);
  const tz = 2 * (x * v[1] - y * v[0]);
  return [v[0] + w * tx + y * tz - z * ty, v[1] + w * ty + z * tx - x * tz, v[2] + w * tz + x * ty - y * tx];
}

/** How alike two attitudes are, as quaternions: 1 the same, -1 the same written the other way. */
export const likeness = (a: Quaternion, b: Quaternion): number =>
  a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3];

/** An attitude written so that it goes on from another: a quaternion and its negative are the same turn. */
export const goingOn = (turn: Quaternion, from: Quaternion | undefined): Quaternion =>
  from && likeness(from, turn) < 0 ? [-turn[0], -turn[1], -turn[2], -turn[3]] : turn;

/** The four attitudes in which a box looks the same, the given one first. */
export const alikeTurns = (turn: Quaternion): readonly [Quaternion, ...Quaternion[]] => {
  const [w, x, y, z] = turn;
  return [turn, [x, -w, -z, y], [y, z, -w, -x], [z, -y, x, -w]];
};

/** Of the attitudes in which a box looks the same that nearest to another, written so that it goes on from it. */
export function nearestAlike(turn: Quaternion, to: Quaternion): Quaternion {
  const near = (t: Quaternion): number => abs(likeness(t, to));
  return goingOn(
    alikeTurns(turn).reduce((best, t) => (near(t) > near(best) ? t : best)),
    to,
  );
}

/** The attitude a part `s` [0..1] of the way from a to b at an even rate, the shorter way round. */
export function slerp(a: Quaternion, b: Quaternion, s: number): Quaternion {
  let dot = likeness(a, b);
  const sign = dot < 0 ? -1 : 1;
  dot = min(1, abs(dot));
  const angle = acos(dot);
  const sine = sin(angle);
  const u = sine < 1e-9 ? 1 - s : sin((1 - s) * angle) / sine;
  const v = (sine < 1e-9 ? s : sin(s * angle) / sine) * sign;
  const q = [a[0] * u + b[0] * v, a[1] * u + b[1] * v, a[2] * u + b[2] * v, a[3] * u + b[3] * v] as const;
  const n = sqrt(q[0] ** 2 + q[1] ** 2 + q[2] ** 2 + q[3] ** 2);
  return [q[0] / n, q[1] / n, q[2] / n, q[3] / n];
}
