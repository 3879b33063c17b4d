import type { PieceSize } from '../../src/core/measures/piece';
import type { KeyAttitude, Motion } from '../../src/core/space/motion';

// Taken out of Math once: jest is slow at looking them up.
const { abs, acos, ceil, hypot, max, min, sin } = Math;

type Point3 = readonly [number, number, number];

/** What is below a piece at a place in plan [mm], and the lines in plan on which it breaks off or bends. */
export interface StairFloor {
  readonly heightAt: (x: number, y: number) => number;
  /** Lines x * n[0] + y * n[1] = n[2]. */
  readonly lines: readonly Point3[];
}

/** A quarter landing of `width` across the lower flight, seen as in the product; written for the tests alone. */
export const quarterFloor = (width: number, rise: number, going: number): StairFloor => ({
  heightAt: (x, y) => (y > width ? rise + ((y - width) * rise) / going : x < 0 ? (x * rise) / going : 0),
  lines: [
    [1, 0, 0],
    [0, 1, width],
  ],
});

/** A half landing, whose flights meet at `parting` across it. */
export const halfFloor = (parting: number, rise: number, going: number): StairFloor => ({
  heightAt: (x, y) => (x >= 0 ? 0 : y < parting ? (x * rise) / going : rise - (x * rise) / going),
  lines: [
    [1, 0, 0],
    [0, 1, parting],
  ],
});

/** The least plumb gap of a box in one attitude, at its corners and where its edges pass the lines, on both sides. */
export function gapAt(floor: StairFloor, piece: PieceSize, { at, turn }: KeyAttitude): number {
  const half = [piece.length / 2, piece.breadth / 2, piece.thickness / 2] as const;
  const corner = (i: number): Point3 => {
    const v = turned(turn, [
      i & 1 ? half[0] : -half[0],
      i & 2 ? half[1] : -half[1],
      i & 4 ? half[2] : -half[2],
    ]);
    return [at[0] + v[0], at[1] + v[1], at[2] + v[2]];
  };
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map(corner);
  let least = Infinity;
  const look = ([x, y, z]: Point3): void => {
    least = min(least, z - floor.heightAt(x, y));
  };
  corners.forEach(look);
  for (let i = 0; i < 8; i++)
    for (const bit of [1, 2, 4]) {
      const [p, q] = [corners[i]!, corners[i ^ bit]!];
      for (const [nx, ny, from] of floor.lines) {
        const [d, e] = [nx * p[0] + ny * p[1] - from, nx * q[0] + ny * q[1] - from];
        if (d * e >= 0) continue;
        for (const aside of [-1e-6, 1e-6]) {
          const part = min(1, max(0, d / (d - e) + aside));
          look([0, 1, 2].map((k) => p[k]! + (q[k]! - p[k]!) * part) as unknown as Point3);
        }
      }
    }
  return least;
}

/** The greatest of it over a motion, a place looked at every `step` mm that the farthest corner moves. */
export function sampledRaise(floor: StairFloor, piece: PieceSize, motion: Motion, step: number): number {
  const reach = hypot(piece.length, piece.breadth, piece.thickness) / 2;
  let most = -Infinity;
  for (let k = 0; k + 1 < motion.length; k++) {
    const [a, b] = [motion[k]!, motion[k + 1]!];
    const dot = a.turn.reduce((sum, v, i) => sum + v * b.turn[i]!, 0);
    const angle = acos(min(1, abs(dot)));
    const far = hypot(b.at[0] - a.at[0], b.at[1] - a.at[1], b.at[2] - a.at[2]) + 2 * angle * reach;
    const parts = max(1, ceil(far / step));
    for (let n = 0; n <= parts; n++) {
      const s = n / parts;
      const [from, to] =
        angle < 1e-9 ? [1 - s, s] : [sin((1 - s) * angle) / sin(angle), sin(s * angle) / sin(angle)];
      const turn = a.turn.map(
        (v, i) => v * from + b.turn[i]! * to * (dot < 0 ? -1 : 1),
      ) as unknown as KeyAttitude['turn'];
      const at = a.at.map((v, i) => v + (b.at[i]! - v) * s) as unknown as KeyAttitude['at'];
      most = max(most, gapAt(floor, piece, { at, turn }));
    }
  }
  return most;
}

/** A vector turned by a quaternion, as a product of quaternions q v q*. */
function turned([w, x, y, z]: KeyAttitude['turn'], [a, b, c]: Point3): Point3 {
  const n = w * w + x * x + y * y + z * z;
  const [tw, tx, ty, tz] = [
    -x * a - y * b - z * c,
    w * a + y * c - z * b,
    w * b + z * a - x * c,
    w * c + x * b - y * a,
  ];
  return [
    (tx * w - tw * x - ty * z + tz * y) / n,
    (ty * w - tw * y - tz * x + tx * z) / n,
    (tz * w - tw * z - tx * y + ty * x) / n,
  ];
}
