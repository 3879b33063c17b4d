import { boxSolid, outside, routeAir, type AirRow, type Point } from '../support/routeAir';

/**
 * Checks a certificate without any of the code that made it: the air of the route is worked out anew from the rows as the
 * survey has them, and the piece is led through it, padded so far that what lies between two places looked at is covered.
 */

/** What a verdict that a piece passes rests on. */
export interface Certificate {
  readonly survey: string;
  readonly build: string;
  readonly piece: {
    readonly name: string;
    readonly length: number;
    readonly breadth: number;
    readonly thickness: number;
  };
  readonly verdict: string;
  /** [mm a side] */
  readonly clearance: number;
  /** The rows as they were measured, in the order of the way; steps and ramps as the flights that they are. */
  readonly measured: readonly AirRow[];
  /** The same with what was not measured supposed. */
  readonly rows: readonly AirRow[];
  /** Padding with which the motion is said to be free [mm a side]. */
  readonly padding: number;
  readonly keys: readonly Key[];
  /** What of the motion could not be drawn. */
  readonly notDrawn?: string;
}

export interface Key {
  /** Middle of the piece [mm]: x along the way in, y to the left, z up, from the middle of the first row's entry. */
  readonly at: readonly [number, number, number];
  /** Attitude as a quaternion w, x, y, z. */
  readonly turn: readonly [number, number, number, number];
  readonly row: number;
  /** It stands still in a lift car that brings it here. */
  readonly rides?: boolean;
}

export interface Checked {
  /** The piece with so much padding was followed all the way [mm a side]; undefined where something is wrong. */
  readonly padding?: number;
  readonly faults: readonly string[];
  readonly places: number;
}

/** The air may be told too large by so much at a plane, and sums of floating-point numbers are off by far less [mm]. */
const OUTWARD = 0.5;
/** A unit quaternion's length is off by at most this. */
const UNIT = 1e-9;
/** Rows to each side of the two that a move is between, whose air counts. */
const BESIDE = 6;

export function check(certificate: Certificate): Checked {
  const { rows, measured, keys, piece, padding } = certificate;
  const faults: string[] = [];
  const fault = (what: string): void => void faults.push(what);
  if (certificate.notDrawn !== undefined) fault(`not drawn: ${certificate.notDrawn}`);
  if (!(padding > 2 * OUTWARD)) fault(`padding of ${padding} mm: too little to be followed`);
  if (rows.length === 0 || keys.length < 2) fault('no motion');
  if (rows.length !== measured.length) fault('the rows are not those measured');
  measured.forEach((row, i) => {
    if (rows[i]?.stage !== row.stage) fault(`row ${i + 1} is ${rows[i]?.stage}, measured as ${row.stage}`);
    for (const [name, value] of Object.entries(row.measures)) {
      const used = rows[i]?.measures[name];
      if (value !== undefined && used !== value)
        fault(`row ${i + 1}: ${name} is ${used}, measured as ${value}`);
    }
  });
  for (const [name, value] of Object.entries(piece)) {
    if (typeof value === 'number' && !(value > 0)) fault(`the piece's ${name} is ${value}`);
  }
  keys.forEach(({ at, turn }, i) => {
    if (![...at, ...turn].every(Number.isFinite)) fault(`key ${i} is no place`);
    if (Math.abs(Math.hypot(...turn) - 1) > UNIT) fault(`key ${i} has no unit quaternion`);
  });
  if (faults.length > 0) return { faults, places: 0 };

  let air: ReturnType<typeof routeAir>;
  try {
    air = routeAir(rows);
  } catch (unknown) {
    // The checker knows no winders.
    return { faults: [String(unknown)], places: 0 };
  }
  const half = [piece.length, piece.breadth, piece.thickness].map((v) => v / 2 + padding) as unknown as Point;
  const reach = Math.hypot(...half);
  const stands = (at: readonly number[], turn: readonly number[], low: number, high: number): boolean =>
    outside(
      boxSolid(at as Point, half, axes(turn)),
      air.filter(({ row }) => row >= low && row <= high),
    ) === undefined;
  let places = 0;
  const [first, last] = [keys[0]!, keys[keys.length - 1]!];
  if (!stands(first.at, first.turn, -1, -1)) fault('it does not begin before the first row');
  const end = rows.length - 1;
  if (
    !stands(
      last.at,
      last.turn,
      rows[end]!.stage === 'room' || rows[end]!.stage === 'lift' ? end : end + 1,
      end + 1,
    )
  ) {
    fault('it does not end behind the last row');
  }
  // Half of the padding is kept; the other half covers what lies between two places.
  const step = padding - OUTWARD;
  for (let k = 1; k < keys.length && faults.length === 0; k++) {
    const [from, to] = [keys[k - 1]!, keys[k]!];
    if (to.rides) {
      const still = Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]) < 1e-6;
      if (!still || rows[to.row]?.stage !== 'lift') fault(`key ${k} rides where there is no lift`);
      continue;
    }
    const cos = Math.min(1, Math.abs(from.turn.reduce((sum, v, i) => sum + v * to.turn[i]!, 0)));
    const way = Math.hypot(...from.at.map((v, i) => to.at[i]! - v)) + 2 * Math.acos(cos) * reach;
    const parts = Math.max(1, Math.ceil(way / step));
    for (let n = 0; n <= parts; n++) {
      places++;
      const share = n / parts;
      const at = from.at.map((v, i) => v + (to.at[i]! - v) * share);
      if (
        !stands(
          at,
          turned(from.turn, to.turn, share),
          Math.min(from.row, to.row) - BESIDE,
          Math.max(from.row, to.row) + BESIDE,
        )
      ) {
        fault(`between keys ${k - 1} and ${k} it leaves the air, at ${at.map(Math.round).join(', ')}`);
        break;
      }
    }
  }
  return faults.length > 0 ? { faults, places } : { faults, places, padding: (padding - OUTWARD) / 2 };
}

/** The directions of the piece's sides (Rodrigues' formula for a unit quaternion). */
function axes([w = 1, x = 0, y = 0, z = 0]: readonly number[]): [Point, Point, Point] {
  return [
    [w * w + x * x - y * y - z * z, 2 * (x * y + w * z), 2 * (x * z - w * y)],
    [2 * (x * y - w * z), w * w - x * x + y * y - z * z, 2 * (y * z + w * x)],
    [2 * (x * z + w * y), 2 * (y * z - w * x), w * w - x * x - y * y + z * z],
  ];
}

/** Turned part of the way from one attitude to another, about one axis (Shoemake 1985). */
function turned(a: readonly number[], b: readonly number[], share: number): number[] {
  const cos = a.reduce((sum, v, i) => sum + v * b[i]!, 0);
  const to = cos < 0 ? b.map((v) => -v) : b;
  const angle = Math.acos(Math.min(1, Math.abs(cos)));
  if (angle < 1e-9) return [...to];
  return a.map(
    (v, i) => (v * Math.sin((1 - share) * angle) + to[i]! * Math.sin(share * angle)) / Math.sin(angle),
  );
}
