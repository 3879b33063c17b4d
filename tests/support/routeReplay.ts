import { boxSolid, outside, type Cell, type Point } from './routeAir';

/** A place of the piece: its middle, its attitude as w, x, y, z, and the row that it belongs to. */
export interface ReplayedKey {
  readonly at: readonly number[];
  readonly turn: readonly number[];
  readonly row: number;
  /** It stands still in a lift car that carries it here. */
  readonly rides?: true | undefined;
}

/** Where a padded piece leaves the air. */
export interface Stray {
  readonly key: number;
  readonly row: number;
  readonly point: Point;
}

/** Rows before and after the one moved in whose air counts. */
const BESIDE = 6;

/** The directions of a box's sides (Rodrigues' formula for a unit quaternion). */
function axesOf([w = 1, x = 0, y = 0, z = 0]: readonly number[]): [Point, Point, Point] {
  const size = Math.hypot(w, x, y, z);
  const [a, b, c, d] = [w / size, x / size, y / size, z / size];
  return [
    [a * a + b * b - c * c - d * d, 2 * (b * c + a * d), 2 * (b * d - a * c)],
    [2 * (b * c - a * d), a * a - b * b + c * c - d * d, 2 * (c * d + a * b)],
    [2 * (b * d + a * c), 2 * (c * d - a * b), a * a - b * b - c * c + d * d],
  ];
}

function between(p: ReplayedKey, q: ReplayedKey, share: number): { at: Point; turn: number[] } {
  const at = [0, 1, 2].map((k) => p.at[k]! + (q.at[k]! - p.at[k]!) * share) as unknown as Point;
  const dot = p.turn.reduce((sum, v, k) => sum + v * q.turn[k]!, 0);
  const other = dot < 0 ? q.turn.map((v) => -v) : [...q.turn];
  const angle = Math.acos(Math.min(1, Math.abs(dot)));
  if (angle < 1e-9) return { at, turn: other };
  const [one, two] = [Math.sin((1 - share) * angle), Math.sin(share * angle)].map((v) => v / Math.sin(angle));
  return { at, turn: p.turn.map((v, k) => v * one! + other[k]! * two!) };
}

/** How far no point of the piece moves farther between two places [mm]. */
function moved(p: ReplayedKey, q: ReplayedKey, radius: number): number {
  const dot = Math.abs(p.turn.reduce((sum, v, k) => sum + v * q.turn[k]!, 0));
  return Math.hypot(...[0, 1, 2].map((k) => q.at[k]! - p.at[k]!)) + 2 * Math.acos(Math.min(1, dot)) * radius;
}

/**
 * Goes along a motion in steps and cuts the padded piece against the air of the rows near where it is.
 * @param step no point of it moves farther between two places looked at [mm]
 * @returns the first place where it stands outside, or undefined
 */
export function strays(
  keys: readonly ReplayedKey[],
  piece: { readonly length: number; readonly breadth: number; readonly thickness: number },
  padding: number,
  air: readonly Cell[],
  step: number,
): Stray | undefined {
  const half = [piece.length, piece.breadth, piece.thickness].map((v) =>
    Math.max(0, v / 2 + padding),
  ) as unknown as Point;
  const radius = Math.hypot(...half);
  for (let k = 0; k + 1 < keys.length; k++) {
    const [p, q] = [keys[k]!, keys[k + 1]!];
    if (q.rides) continue;
    const [low, high] = [Math.min(p.row, q.row) - BESIDE, Math.max(p.row, q.row) + BESIDE];
    const near = air.filter(({ row }) => row >= low && row <= high);
    const parts = Math.max(1, Math.ceil(moved(p, q, radius) / step));
    for (let n = 0; n <= parts; n++) {
      const { at, turn } = between(p, q, n / parts);
      const point = outside(boxSolid(at, half, axesOf(turn)), near);
      if (point) return { key: k, row: q.row, point };
    }
  }
  return undefined;
}
