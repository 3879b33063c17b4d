/**
 * Checks certificates of verdicts, and imports nothing but the reading of files: whoever trusts none of the other files
 * reads this one.
 *
 *     npx tsx tests/certify/check.ts dist/certificates/*.json
 *
 * That a piece passes is checked by its motion: the air of the route is worked out from the rows, and the piece is led
 * through it, larger by so much that what lies between two places looked at is covered. That a piece cannot go is checked
 * by a section that is too small, a rod in it that comes out of no door, a space that it has to stand in, or a line that its
 * middle has to cross, round a corner or over a landing: for the last three every attitude lies in some cell, and in every cell the piece is too large however
 * it lies there.
 *
 * Rounding is outward. Sums here have fewer than a hundred terms of less than 1e6 mm, so that floating-point numbers are
 * off by less than 1e-8 mm: ROUNDING is a hundred times that, and always against the certificate.
 *
 * Lengths in mm, angles in radians but for a corner's turn, which stays in degrees as it was surveyed.
 */

import { readFileSync } from 'node:fs';

const ROUNDING = 1e-6;

export type Point = readonly [number, number, number];
type Measures = Readonly<Record<string, number | undefined>>;

/** A row of the route, with its columns as the survey has them. */
export interface Row {
  readonly stage: string;
  readonly measures: Measures;
  readonly hand?: 'left' | 'right' | undefined;
  readonly way?: 'up' | 'down' | undefined;
  /** A side door leads into its passage. */
  readonly into?: boolean | undefined;
  /** Of two widths that meet, where the narrower stands across the wider: 0 left, 1 right. */
  readonly place?: number | undefined;
}

export interface Piece {
  readonly name: string;
  readonly length: number;
  readonly breadth: number;
  readonly thickness: number;
}

interface Named {
  readonly survey: string;
  readonly build: string;
  readonly piece: Piece;
  /** The rows as they were measured, in the order of the way; steps and ramps as the flights that they are. */
  readonly measured: readonly Row[];
}

/** What it rests on that a piece passes. */
export interface PassCertificate extends Named {
  readonly verdict: 'passes as measured';
  /** What is said to be left [mm a side]. */
  readonly clearance: number;
  /** The rows with what was not measured supposed. */
  readonly rows: readonly Row[];
  /** With which the motion is said to be free [mm a side]. */
  readonly padding: number;
  readonly keys: readonly Key[];
  /** What of the motion could not be drawn. */
  readonly notDrawn?: string;
}

export interface Key {
  /** Middle of the piece: x along the way in, y to the left, z up, from the middle of the first row's entry. */
  readonly at: Point;
  /** Attitude as a unit quaternion w, x, y, z. */
  readonly turn: readonly [number, number, number, number];
  readonly row: number;
  /** It stands still in a lift car that brings it here. */
  readonly rides?: boolean;
}

/** What it rests on that a piece cannot go. */
export interface ShutCertificate extends Named {
  readonly verdict: 'cannot go';
  /** How far off each measure may be [mm]: rows are taken so much larger, the piece so much smaller. */
  readonly tape: number;
  /** Place among the rows of the one that is not passed, from 0. */
  readonly row: number;
  readonly proof: Proof;
}

export type Proof =
  /** The middle of the piece crosses a plane in which only a rectangle is open. */
  | { readonly by: 'section'; readonly which: 'way in' | 'way out' | 'square to the pitch' }
  /** The piece has to stand wholly in a room or a car: too thick, too large in sum, too long across. */
  | { readonly by: 'sizes' }
  /** The same, for each attitude. */
  | { readonly by: 'inside'; readonly cells: readonly AttitudeCell[] }
  /** The middle of the piece has to cross a line in plan, from the inner wall of a corner to an outer one. */
  | {
      readonly by: 'line';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly cells: readonly AttitudeCell[];
    }
  /** Out of a side door: with its tail so deep before the passage no rod in it reaches as little into the passage [mm]. */
  | { readonly by: 'rod'; readonly depth: number }
  /** The same over a landing, from the inner edge or the end of the spine: for each steepness that the stairs may have. */
  | {
      readonly by: 'landing';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly parts: readonly {
        readonly slope: readonly [least: number, most: number];
        readonly cells: readonly PlacedCell[];
      }[];
    };

/**
 * Attitudes: the unit quaternions w (1, x, y, z) with x, y, z within a box, by its middle and half its sides; and by how
 * much [mm] all that holds the piece may give way without its finding a place in any of them.
 */
export type AttitudeCell = readonly [
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
  bound: number,
];

/** The same on a part of a line, by its middle and half its length, from 0 to 1 along the line. */
export type PlacedCell = readonly [
  x: number,
  y: number,
  z: number,
  place: number,
  dx: number,
  dy: number,
  dz: number,
  dPlace: number,
  bound: number,
];

export type Certificate = PassCertificate | ShutCertificate;

export interface Checked {
  readonly faults: readonly string[];
  /** Of a motion: so much was kept all the way [mm a side]. */
  readonly padding?: number;
  /** Places of the motion, or cells of attitudes, that were looked at. */
  readonly looked: number;
}

/** @returns no fault: the certificate is verified. A fault says what could not be verified. */
export function check(certificate: Certificate): Checked {
  const faults: string[] = [];
  for (const side of ['length', 'breadth', 'thickness'] as const) {
    const value = certificate.piece[side];
    if (!(value > 0 && value < Infinity)) faults.push(`the piece's ${side} is ${value}`);
  }
  if (faults.length > 0) return { faults, looked: 0 };
  try {
    return certificate.verdict === 'cannot go' ? checkShut(certificate) : checkPass(certificate);
  } catch (unknown) {
    if (!(unknown instanceof NotVerified)) throw unknown;
    return { faults: [unknown.message], looked: 0 };
  }
}

class NotVerified extends Error {}
function refuse(why: string): never {
  throw new NotVerified(why);
}

// --- That a piece passes ---------------------------------------------------------------------------------------------

/** What is kept to spare between two cells of air that meet, and of the padding at each place looked at. */
const KEPT = 0.01;
/** Rows to each side of the two that a move is between, whose air counts. */
const BESIDE = 6;

function checkPass({ rows, measured, keys, piece, padding, notDrawn }: PassCertificate): Checked {
  if (notDrawn !== undefined) refuse(`not drawn: ${notDrawn}`);
  if (!(padding > 4 * KEPT && padding < Infinity))
    refuse(`padding of ${padding} mm: too little to be followed`);
  if (rows.length === 0 || keys.length < 2) refuse('no motion');
  if (rows.length !== measured.length) refuse('the rows are not those measured');
  measured.forEach((row, i) => {
    if (rows[i]!.stage !== row.stage) refuse(`row ${i + 1} is ${rows[i]!.stage}, measured as ${row.stage}`);
    for (const said of ['hand', 'way'] as const)
      if (row[said] !== undefined && rows[i]![said] !== row[said])
        refuse(`row ${i + 1}: ${said} is ${rows[i]![said]}, measured as ${row[said]}`);
    for (const [name, value] of Object.entries(row.measures)) {
      const used = rows[i]!.measures[name];
      if (value !== undefined && used !== value)
        refuse(`row ${i + 1}: ${name} is ${used}, measured as ${value}`);
    }
  });
  keys.forEach(({ at, turn }, i) => {
    if (![...at, ...turn].every(Number.isFinite)) refuse(`key ${i} is no place`);
    if (Math.abs(Math.hypot(...turn) - 1) > ROUNDING) refuse(`key ${i} has no unit quaternion`);
  });
  const air = airOf(rows);
  const half = [piece.length, piece.breadth, piece.thickness].map((v) => v / 2 + padding) as unknown as Point;
  const reach = Math.hypot(...half);
  const stands = (at: Point, turn: readonly number[], low: number, high: number): boolean =>
    inside(
      box(at, half, axesOf(turn)),
      air.filter(({ row }) => row >= low && row <= high),
    );
  const [first, last, end] = [keys[0]!, keys[keys.length - 1]!, rows.length - 1];
  if (!stands(first.at, first.turn, -1, -1)) refuse('it does not begin before the first row');
  const within = rows[end]!.stage === 'room' || rows[end]!.stage === 'lift';
  if (!stands(last.at, last.turn, within ? end : end + 1, end + 1))
    refuse('it does not end behind the last row');
  // At the places looked at it stands with all of its padding; between two it moves by no more than that from one of them.
  const step = padding - 2 * KEPT;
  let looked = 0;
  let reached: readonly number[] = [-1];
  for (let k = 1; k < keys.length; k++) {
    const [from, to] = [keys[k - 1]!, keys[k]!];
    if (to.rides) {
      const still = Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]) < ROUNDING && alike(from, to);
      if (!still || rows[to.row]?.stage !== 'lift') refuse(`key ${k} rides where there is no lift`);
      if (!reached.includes(to.row)) refuse(`key ${k} rides before it is in the lift`);
      reached = [to.row];
      continue;
    }
    const cos = Math.min(1, Math.abs(dot(from.turn, to.turn)));
    const way = Math.hypot(...from.at.map((v, i) => to.at[i]! - v)) + 2 * Math.acos(cos) * reach;
    const parts = Math.max(1, Math.ceil(way / step));
    for (let n = 0; n <= parts; n++) {
      looked++;
      const at = from.at.map((v, i) => v + ((to.at[i]! - v) * n) / parts) as unknown as Point;
      const turn = between(from.turn, to.turn, n / parts);
      if (!stands(at, turn, Math.min(from.row, to.row) - BESIDE, Math.max(from.row, to.row) + BESIDE)) {
        refuse(`between keys ${k - 1} and ${k} it leaves the air, at ${at.map(Math.round).join(', ')}`);
      }
    }
    reached = rowsReached(air, reached, from.at, to.at);
    if (reached.length === 0) refuse(`between keys ${k - 1} and ${k} it leaves the way from row to row`);
  }
  if (!reached.includes(end) && !reached.includes(end + 1)) refuse('it does not come to the last row');
  return { faults: [], looked, padding: padding / 2 };
}

/**
 * The rows in which the middle of the piece may be at the end of a straight, when it was in one of some at its beginning and
 * has come through each row into one beside it: the way leads through the house, and not round it over the open ground.
 */
function rowsReached(
  air: readonly Cell[],
  before: readonly number[],
  from: Point,
  to: Point,
): readonly number[] {
  const through = air.flatMap(({ row, planes }) => {
    let [t0, t1] = [0, 1];
    for (const p of planes) {
      const [u, v] = [over(p, from) - KEPT, over(p, to) - KEPT];
      if (u > 0 && v > 0) return [];
      if (u > 0) t0 = Math.max(t0, u / (u - v));
      else if (v > 0) t1 = Math.min(t1, u / (u - v));
    }
    return t0 <= t1 ? [{ row, t0, t1, since: t0 === 0 && before.includes(row) ? 0 : Infinity }] : [];
  });
  for (let changed = true; changed;) {
    changed = false;
    for (const one of through) {
      for (const next of through) {
        if (Math.abs(one.row - next.row) > 1) continue;
        const since = Math.max(one.since, next.t0);
        if (since > Math.min(one.t1, next.t1) || since >= next.since) continue;
        next.since = since;
        changed = true;
      }
    }
  }
  return [...new Set(through.filter(({ since, t1 }) => since <= t1 && t1 === 1).map(({ row }) => row))];
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, v, i) => sum + v * b[i]!, 0);
const alike = (from: Key, to: Key): boolean => Math.abs(dot(from.turn, to.turn)) > 1 - ROUNDING ** 2;

/** The directions of a box's sides (Rodrigues' formula), whatever the quaternion's length. */
function axesOf(q: readonly number[]): [Point, Point, Point] {
  const size = Math.hypot(...q);
  const [w, x, y, z] = q.map((v) => v / size) as [number, number, number, number];
  return [
    [w * w + x * x - y * y - z * z, 2 * (x * y + w * z), 2 * (x * z - w * y)],
    [2 * (x * y - w * z), w * w - x * x + y * y - z * z, 2 * (y * z + w * x)],
    [2 * (x * z + w * y), 2 * (y * z - w * x), w * w - x * x - y * y + z * z],
  ];
}

/** Turned part of the way from one attitude to another, about one axis (Shoemake 1985). */
function between(a: readonly number[], b: readonly number[], share: number): number[] {
  const cos = dot(a, b);
  const to = cos < 0 ? b.map((v) => -v) : b;
  const angle = Math.acos(Math.min(1, Math.abs(cos)));
  if (angle < 1e-9) return [...to];
  return a.map((v, i) => v * Math.sin((1 - share) * angle) + to[i]! * Math.sin(share * angle));
}

// --- The air of a route: convex cells, each within some planes n . p <= d ------------------------------------------------

type Plane = readonly [number, number, number, number];
/** Air of a row: -1 before the first, the number of rows behind the last. */
export interface Cell {
  readonly row: number;
  readonly planes: readonly Plane[];
}
type Span = readonly [number, number];

const FAR = 20000;
const HIGH = 30000;
/** A wall between two rooms that was not given, and of a door that was not measured. */
const SHEET = 0.3;
const WALL = 110;
/** How high a lift goes here. */
const RISE = 40000;

/** Where a row begins: s along the way, t to the left of it, or to the right where it is mirrored. */
interface Frame {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly heading: number;
  readonly flip: 1 | -1;
}

function moved(f: Frame, s: number, t: number, up = 0, turned = 0): Frame {
  const [c, n] = [Math.cos(f.heading), Math.sin(f.heading)];
  return {
    ...f,
    x: f.x + s * c - f.flip * t * n,
    y: f.y + s * n + f.flip * t * c,
    z: f.z + up,
    heading: f.heading + f.flip * turned,
  };
}

/** a s + b t + c z <= d, as it lies in space. */
function plane(f: Frame, a: number, b: number, c: number, d: number): Plane {
  const [cos, sin, left] = [Math.cos(f.heading), Math.sin(f.heading), f.flip * b];
  const n = [a * cos - left * sin, a * sin + left * cos, c] as const;
  const size = Math.hypot(...n);
  return [n[0] / size, n[1] / size, c / size, (d + n[0] * f.x + n[1] * f.y + c * f.z) / size];
}

const block = (f: Frame, [s0, s1]: Span, [t0, t1]: Span, [z0, z1]: Span): Plane[] => [
  plane(f, -1, 0, 0, -s0),
  plane(f, 1, 0, 0, s1),
  plane(f, 0, -1, 0, -t0),
  plane(f, 0, 1, 0, t1),
  plane(f, 0, 0, -1, -z0),
  plane(f, 0, 0, 1, z1),
];

const isLanding = (row?: Row): boolean => row?.stage === 'quarter landing' || row?.stage === 'half landing';
const isStraight = (row?: Row): boolean => row?.stage === 'passage' || row?.stage === 'room';
const isTurn = (row?: Row): boolean => row?.stage === 'corner' || row?.stage === 'side door';
const onStair = (row?: Row): boolean => row?.stage === 'flight' || row?.stage === 'winder' || isLanding(row);

/** Which end of a flight lies before it, and which behind. */
const endAt = ({ way }: Row, side: 'before' | 'after'): 'foot' | 'head' =>
  (way === 'down') === (side === 'before') ? 'head' : 'foot';
const atEnd = ({ measures: m }: Row, end: 'foot' | 'head', what: 'Space' | 'Ceiling'): number | undefined =>
  m[`${end}${what}`];

/** The ceiling that a row gives over the floor beside a flight. */
const ownCeiling = (row?: Row): number =>
  (isLanding(row) || row?.stage === 'side door'
    ? (row?.measures['ceiling'] ?? row?.measures['height'])
    : isTurn(row) || isStraight(row)
      ? row?.measures['height']
      : undefined) ?? Infinity;

/** The air that the rows describe, and no more. */
export function airOf(rows: readonly Row[]): Cell[] {
  const cells: Cell[] = [];
  const add = (row: number, planes: Plane[]): void => void cells.push({ row, planes });
  let frame: Frame = { x: 0, y: 0, z: 0, heading: 0, flip: 1 };
  let width: number | undefined;
  /** The middle of what follows stands off the middle of what was before, where they are not as wide. */
  const enter = (own: number, place = 0.5): Frame => {
    if (width !== undefined) frame = moved(frame, 0, ((width - own) / 2) * (1 - 2 * place));
    return frame;
  };
  const leave = (at: Frame, own: number): void => {
    frame = { ...at, flip: 1 };
    width = own;
  };
  const flight = (i: number, row: Row, before?: Row, after?: Row): void => {
    const { width: own = 0, height = 0, rise = 0, going = 1, risers = 0 } = row.measures;
    const start = enter(own, row.place);
    const up = row.way !== 'down';
    const [run, slope, top] = [(risers - 1) * going, rise / going, risers * rise];
    const [footSide, headSide] = up ? [before, after] : [after, before];
    const floor = (end: 'foot' | 'head', beside?: Row): number => {
      const space = atEnd(row, end, 'Space') ?? 0;
      if (!beside || beside.stage === 'door' || beside.stage === 'lift') return space;
      // Of a turn behind it the space holds the turn's own width.
      const { width: wide = 0, widthOut = 0, depth = 0 } = beside.measures;
      if (beside !== after) return 0;
      if (beside.stage === 'corner') return Math.max(0, space - widthOut);
      return beside.stage === 'side door' ? Math.max(0, space - wide - depth) : 0;
    };
    const [footFloor, headFloor] = [floor('foot', footSide), floor('head', headSide)];
    const foot = Math.min(atEnd(row, 'foot', 'Ceiling') ?? Infinity, ownCeiling(footSide));
    const head = Math.min(atEnd(row, 'head', 'Ceiling') ?? Infinity, ownCeiling(headSide));
    const footCeiling = foot < Infinity ? foot : rise + height;
    const headCeiling = head < Infinity ? head : height;
    // Seen upward from the first riser.
    const base = up ? moved(start, footFloor, 0) : moved(start, headFloor + run, 0, -top, Math.PI);
    const across: Span = [-own / 2, own / 2];
    const overNosings = (planes: Plane[]): Plane[] => [...planes, plane(base, slope, 0, -1, -rise)];
    const underLine = plane(base, -slope, 0, 1, rise + height);
    if (run > 0) {
      add(i, [...overNosings(block(base, [0, run], across, [0, HIGH])), underLine]);
      // Where the ceiling over the foot meets the line of the stair's own.
      const trimmer = (footCeiling - rise - height) / slope;
      if (trimmer > 0 && !isLanding(footSide) && footSide?.stage !== 'winder')
        add(i, overNosings(block(base, [0, Math.min(trimmer, run)], across, [0, footCeiling])));
      if (trimmer < 0) add(i, [...block(base, [trimmer, 0], across, [0, HIGH]), underLine]);
    }
    if (footFloor > 0) add(i, block(base, [-footFloor, 0], across, [0, footCeiling]));
    if (headFloor > 0) add(i, block(base, [run, run + headFloor], across, [top, top + headCeiling]));
    leave(moved(start, run + footFloor + headFloor, 0, up ? top : -top), own);
  };
  /** Without a flight beside it a landing or a winder has a long one of its own. */
  const supposed = (i: number, { way, stage, measures: m }: Row, lower: boolean): void => {
    const { going = 1, height, rise } = m;
    const own = lower || stage === 'half landing' ? m['width'] : (m['widthOut'] ?? m['width']);
    const measures = { width: own, height, rise, going, risers: Math.ceil(9000 / going) + 1 };
    flight(i, { stage: 'flight', way, measures });
  };
  /** The straight that leaves a turn, where what follows does not begin at once. */
  const runOf = ({ stage, measures: m }: Row, next?: Row): number => {
    if (!next || isStraight(next)) return 0;
    const space = next.stage === 'flight' ? atEnd(next, endAt(next, 'before'), 'Space') : undefined;
    const taken = (m['width'] ?? 0) + (stage === 'side door' ? (m['depth'] ?? 0) : 0);
    return m['run'] ?? Math.max(0, (space ?? 0) - taken);
  };
  add(-1, block(frame, [-FAR, 0], [-FAR, FAR], [0, HIGH]));
  rows.forEach((row, i) => {
    const [before, after] = [rows[i - 1], rows[i + 1]];
    const m = row.measures;
    const { width: own = 0, widthOut = 0, height = 0, ceiling = height, depth = 0, length = 0 } = m;
    const flip = row.hand === 'right' ? -1 : 1;
    const up = row.way !== 'down';
    /** Over one floor the least of the ceilings given holds. */
    const least = (high: number): Span => {
      const told = [
        before?.stage === 'flight' ? atEnd(before, endAt(before, 'after'), 'Ceiling') : undefined,
        after?.stage === 'flight' ? atEnd(after, endAt(after, 'before'), 'Ceiling') : undefined,
      ];
      return [0, Math.min(high, ...told.map((v) => v ?? Infinity))];
    };
    const across = (wide: number): Span => [-wide / 2, wide / 2];
    const turnsOnStair = isLanding(row) || row.stage === 'winder';
    if (turnsOnStair && !onStair(before)) supposed(i, row, up);
    switch (row.stage) {
      case 'door': {
        const [at, wall] = [enter(own, row.place), m['wall'] ?? WALL];
        add(i, block(at, [0, wall], across(own), [0, height]));
        return leave(moved(at, wall, 0), own);
      }
      case 'passage':
      case 'room': {
        const at = enter(own, row.place);
        add(i, block(at, [0, length], across(own), least(height)));
        if (row.stage === 'passage' || row.hand === undefined || !after)
          return leave(moved(at, length, 0), own);
        return leave(moved({ ...at, flip }, length / 2, own / 2, 0, Math.PI / 2), length);
      }
      case 'corner': {
        const turn = ((m['turn'] ?? 90) * Math.PI) / 180;
        // The inner edge, with the arm in before it.
        const edge = moved({ ...enter(own, row.place), flip }, 0, own / 2);
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        add(i, [
          plane(edge, -1, 0, 0, 0),
          plane(edge, 0, -1, 0, own),
          plane(edge, s, -c, 0, widthOut),
          plane(edge, c, s, 0, 0),
          plane(edge, 0, 0, -1, 0),
          plane(edge, 0, 0, 1, least(height)[1]),
        ]);
        const [out, run] = [moved(edge, 0, 0, 0, turn), runOf(row, after)];
        if (run > 0) add(i, block(out, [0, run], [-widthOut, 0], least(height)));
        return leave(moved(out, run, -widthOut / 2), widthOut);
      }
      case 'side door': {
        const { wall = 0 } = m;
        const [head, run, beyond] = [Math.min(height, ceiling), runOf(row, after), m['depth'] ?? FAR];
        const comes = isTurn(before) ? before?.measures['widthOut'] : before?.measures['width'];
        if (row.into ?? (!before || before.stage === 'door' || comes !== widthOut)) {
          const at = { ...enter(own, row.place), flip } as const;
          const thick = Math.max(wall, SHEET);
          add(i, block(at, [0, thick], across(own), [0, head]));
          add(i, block(at, [thick, wall + widthOut], [-own / 2 - beyond, own / 2 + run], least(ceiling)));
          return leave(moved(at, wall + widthOut / 2, own / 2 + run, 0, Math.PI / 2), widthOut);
        }
        const at = { ...enter(widthOut, row.place), flip } as const;
        add(i, block(at, [0, own + beyond], across(widthOut), least(ceiling)));
        add(i, block(at, [0, own], [widthOut / 2, widthOut / 2 + Math.max(wall, run, SHEET)], [0, head]));
        return leave(moved(at, own / 2, widthOut / 2 + Math.max(wall, run), 0, Math.PI / 2), own);
      }
      case 'lift': {
        const door = Math.min(own, widthOut);
        const at = enter(door, row.place);
        for (const floor of after ? [at, moved(at, 0, 0, RISE)] : [at]) {
          add(i, block(floor, [0, SHEET], across(door), [0, Math.min(height, ceiling)]));
          add(i, block(floor, [SHEET, depth], across(widthOut), [0, ceiling]));
        }
        return leave(after ? moved(at, 0, 0, RISE, Math.PI) : at, door);
      }
      case 'flight':
        return flight(i, row, before, after);
      case 'quarter landing': {
        // Width is the lower flight's.
        const [comes, goes] = up ? [own, widthOut] : [widthOut, own];
        const at = { ...enter(comes, row.place), flip } as const;
        add(i, block(at, [0, goes], across(comes), [0, ceiling]));
        leave(moved(at, goes / 2, comes / 2, 0, Math.PI / 2), goes);
        break;
      }
      case 'half landing': {
        const { well = 0 } = m;
        const at = { ...enter(own, row.place), flip } as const;
        add(i, block(at, [0, depth], [-own / 2, own * 1.5 + well], [0, ceiling]));
        leave(moved(at, 0, own + well, 0, Math.PI), own);
        break;
      }
      case 'winder': {
        const turn = ((m['turn'] ?? 90) * Math.PI) / 180;
        const { rise = 0, going = 1, treads = Math.max(1, Math.round(turn / (Math.PI / 6) + 1e-9)) } = m;
        const out = m['widthOut'] ?? own;
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        // Seen upward, turning left round the inner edge: first nosing at s = 0, a going behind the flight's last.
        const edge: Frame = up
          ? moved({ ...enter(own, row.place), flip }, going, own / 2)
          : (({ x, y, z, heading }: Frame): Frame => {
              // It comes in over the upper flight's first nosing, which lies along (s, -c), and looks back.
              const seen: Frame = { x: 0, y: 0, z: 0, heading: 0, flip: flip === 1 ? -1 : 1 };
              const head = { ...seen, heading: heading + Math.PI - seen.flip * turn };
              const to = moved(head, (s * out) / 2, (-c * out) / 2);
              return { ...head, x: x - to.x, y: y - to.y, z: z - treads * rise };
            })(enter(out, row.place));
        const walls = [
          plane(edge, 0, -1, 0, own),
          plane(edge, s, -c, 0, out),
          // Beyond 120 degrees a wall faces the lower flight.
          ...(turn > (120 * Math.PI) / 180 ? [plane(edge, 1, 0, 0, own)] : []),
        ];
        add(i, [
          ...block(edge, [-going, 0], [-own, 0], [0, HIGH]),
          plane(edge, rise / going, 0, -1, -rise),
          plane(edge, -rise / going, 0, 1, rise + height),
        ]);
        for (let n = 0; n < treads; n++) {
          const [from, to] = [(turn * n) / treads, (turn * (n + 1)) / treads];
          // A tread lies between the nosings at `from` and `to`, turned from the one that points to the outer wall.
          add(i, [
            ...walls,
            plane(edge, -Math.cos(from), -Math.sin(from), 0, 0),
            plane(edge, Math.cos(to), Math.sin(to), 0, 0),
            plane(edge, 0, 0, -1, -(n + 1) * rise),
            plane(edge, 0, 0, 1, (n + 1) * rise + height),
          ]);
        }
        const top = moved(edge, (s * out) / 2, (-c * out) / 2, treads * rise, turn);
        leave(up ? top : moved(moved(edge, -going, -own / 2), 0, 0, 0, Math.PI), up ? out : own);
        break;
      }
      default:
        refuse(`what air a ${row.stage} leaves is not known here`);
    }
    if (turnsOnStair && !onStair(after)) supposed(i, row, !up);
  });
  const last = rows[rows.length - 1];
  const walled =
    last?.stage === 'room' ||
    last?.stage === 'lift' ||
    (last?.stage === 'flight' && atEnd(last, endAt(last, 'after'), 'Space') !== undefined);
  if (!walled) add(rows.length, block(frame, [0, FAR], [-FAR, FAR], [0, HIGH]));
  return cells;
}

/** A convex solid by its faces. */
type Solid = readonly (readonly Point[])[];

export function box(at: Point, half: Point, axes: readonly [Point, Point, Point]): Solid {
  const corner = (signs: Point): Point =>
    ([0, 1, 2] as const).map(
      (k) => at[k] + axes.reduce((sum, axis, i) => sum + signs[i]! * half[i]! * axis[k], 0),
    ) as unknown as Point;
  const around = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const;
  return [-1, 1].flatMap((k) => [
    around.map(([p, q]) => corner([k, p, q])),
    around.map(([p, q]) => corner([p, k, q])),
    around.map(([p, q]) => corner([p, q, k])),
  ]);
}

const over = ([a, b, c, d]: Plane, p: Point): number => a * p[0] + b * p[1] + c * p[2] - d;

/** Whether all of a solid lies in the air: what is left when one cell after another is cut out of it is nothing. */
export function inside(solid: Solid, cells: readonly Cell[], from = 0): boolean {
  let left = solid;
  for (let k = from; k < cells.length; k++) {
    const { planes } = cells[k]!;
    if (planes.some((p) => left.every((face) => face.every((q) => over(p, q) >= -ROUNDING)))) continue;
    for (const p of planes) {
      // What is thinner than this is no wall, but the rounding of two cells that meet.
      if (left.every((face) => face.every((q) => over(p, q) <= KEPT))) continue;
      if (!inside(part(left, p, -1), cells, k + 1)) return false;
      left = part(left, p, 1);
      if (left.length < 4) return true;
    }
    return true;
  }
  return false;
}

/** What of a convex solid lies on one side of a plane. */
function part(solid: Solid, p: Plane, keep: 1 | -1): Solid {
  const faces: Point[][] = [];
  const seam: Point[] = [];
  for (const face of solid) {
    const kept: Point[] = [];
    face.forEach((from, k) => {
      const to = face[(k + 1) % face.length]!;
      const [u, v] = [-keep * over(p, from), -keep * over(p, to)];
      if (u >= 0) kept.push(from);
      if (u === 0) seam.push(from);
      if ((u > 0 && v < 0) || (u < 0 && v > 0)) {
        const at = from.map((x, i) => x + ((to[i]! - x) * u) / (u - v)) as unknown as Point;
        kept.push(at);
        seam.push(at);
      }
    });
    if (kept.length >= 3) faces.push(kept);
  }
  if (seam.length >= 3) faces.push(inOrder(seam, p));
  return faces;
}

/** Points of one plane in the order round their middle. */
function inOrder(points: readonly Point[], [a, b, c]: Plane): Point[] {
  const middle = ([0, 1, 2] as const).map((k) => points.reduce((sum, p) => sum + p[k], 0) / points.length);
  const cross = (p: Point, q: Point): Point => [
    p[1] * q[2] - p[2] * q[1],
    p[2] * q[0] - p[0] * q[2],
    p[0] * q[1] - p[1] * q[0],
  ];
  const e = cross([a, b, c], Math.abs(a) < 0.6 ? [1, 0, 0] : [0, 1, 0]);
  const f = cross([a, b, c], e);
  const angle = (p: Point): number => {
    const v = p.map((x, k) => x - middle[k]!);
    return Math.atan2(dot(v, f), dot(v, e));
  };
  return [...points].sort((p, q) => angle(p) - angle(q));
}

// --- That a piece cannot go ------------------------------------------------------------------------------------------

/** Half the sides of a piece. */
type Half = Point;

function checkShut({ measured, row: i, piece, tape, proof }: ShutCertificate): Checked {
  const row = measured[i] ?? refuse(`there is no row ${i + 1}`);
  if (!(tape >= 0 && tape < Infinity)) refuse(`a tape of ${tape} mm`);
  const half = halfOf(piece, tape);
  switch (proof.by) {
    case 'section':
      if (!tooLargeFor(half, sectionOf(measured, i, proof.which, tape))) refuse('it may pass the section');
      return { faults: [], looked: 1 };
    case 'sizes':
      if (!tooLargeToStand(half, spaceOf(measured, i, tape))) refuse('it may stand there');
      return { faults: [], looked: 1 };
    case 'inside': {
      const space = spaceOf(measured, i, tape);
      return everyCell(proof.cells, half, (cell) => standsNowhere(cell, half, space));
    }
    case 'line': {
      if (row.stage !== 'corner') refuse(`a line across a ${row.stage}`);
      const corner = cornerOf(row, tape);
      const [inward, outward] = crosses(corner, proof.from, proof.to, Math.hypot(...half));
      if (straightBefore(measured, i, tape, inward) < inward) refuse('the way in is not known far enough');
      if (straightAfter(measured, i, tape, outward) < outward) refuse('the way out is not known far enough');
      return everyCell(proof.cells, half, (cell) => nowhereOnLine(cell, half, corner, proof.from, proof.to));
    }
    case 'rod':
      return checkRod(measured, i, half, tape, proof.depth);
    case 'landing':
      return checkLanding(measured, i, half, tape, proof);
  }
}

/** The piece as small as the tape allows, by half its sides. */
export const halfOf = ({ length, breadth, thickness }: Piece, tape: number): Half => {
  const [l, b, t] = [length, breadth, thickness]
    .sort((p, q) => q - p)
    .map((v) => Math.max(ROUNDING, v - tape) / 2);
  return [l!, b!, t!];
};

const given = (row: Row, name: string): number =>
  row.measures[name] ?? refuse(`${name} of the ${row.stage} is not measured`);

/** What is open in the plane through which the way leads, as wide and high as the tape allows. */
function sectionOf(
  rows: readonly Row[],
  i: number,
  which: 'way in' | 'way out' | 'square to the pitch',
  tape: number,
): readonly [number, number] {
  const row = rows[i]!;
  if (which === 'square to the pitch') return squareToPitch(rows, i, tape);
  const out = which === 'way out';
  const sized = (width: string, height: number): [number, number] => [
    given(row, width) + tape,
    height + tape,
  ];
  switch (row.stage) {
    case 'door':
    case 'passage':
    case 'lift':
      return sized('width', given(row, 'height'));
    case 'corner':
      return sized(out ? 'widthOut' : 'width', given(row, 'height'));
    case 'side door':
      return sized(
        out ? 'widthOut' : 'width',
        out ? (row.measures['ceiling'] ?? given(row, 'height')) : given(row, 'height'),
      );
    case 'flight':
      return sized('width', Infinity);
    default:
      return refuse(`no section of a ${row.stage} is known here`);
  }
}

/**
 * The plane through a nosing, square to the line of nosings: below the nosing it is in the stair, and above it ends at the
 * flight's own ceiling, where that one is there.
 */
function squareToPitch(rows: readonly Row[], i: number, tape: number): readonly [number, number] {
  const row = rows[i]!;
  if (row.stage !== 'flight') refuse(`no pitch of a ${row.stage} is known here`);
  const [risers, height] = [given(row, 'risers'), given(row, 'height') + tape];
  const [least, most] = steepnessOf(row, tape / risers);
  const clear = height / Math.hypot(1, least);
  // The plane meets the ceiling so far before its nosing; one nosing lies less than a going from any place before the last.
  const before = clear * Math.sin(Math.atan(most));
  if (!(underOwnCeiling(rows, i, tape) >= before + given(row, 'going') + tape + ROUNDING))
    refuse('the ceiling over the stair is not known to reach so far');
  return [given(row, 'width') + tape, clear];
}

/** Rise for each mm of going, least and most, each of the two being off by so much. */
function steepnessOf(row: Row, off: number): readonly [number, number] {
  const [rise, going] = [given(row, 'rise'), given(row, 'going')];
  if (!(rise > off && going > off)) refuse(`a stair of ${rise} and ${going} mm`);
  return [(rise - off) / (going + off), (rise + off) / (going - off)];
}

/** Length in plan, before its last nosing, over which a flight's own ceiling is known, whatever is over its foot. */
function underOwnCeiling(rows: readonly Row[], i: number, tape: number): number {
  const row = rows[i]!;
  const below = rows[row.way === 'down' ? i + 1 : i - 1];
  const foot =
    atEnd(row, 'foot', 'Ceiling') ?? (isStraight(below) || isLanding(below) ? ownCeiling(below) : Infinity);
  const risers = given(row, 'risers');
  const over = foot + tape - given(row, 'rise') + tape / risers - (given(row, 'height') - tape);
  const [least] = steepnessOf(row, tape / risers);
  return (risers - 1) * given(row, 'going') - tape - Math.max(0, over / least);
}

/**
 * With its middle in the plane a box shows a section that holds a disc as wide as it is thick and a chord as long as it is
 * broad, and whose area is no less than breadth by thickness.
 */
const tooLargeFor = ([, b, t]: Half, [width, height]: readonly [number, number]): boolean =>
  2 * t > Math.min(width, height) + ROUNDING ||
  2 * b > Math.hypot(width, height) + ROUNDING ||
  4 * b * t > width * height + 2 * ROUNDING * (width + height);

/** The space in which a piece has to stand wholly: a car with its door shut, the room in which the way ends. */
function spaceOf(rows: readonly Row[], i: number, tape: number): Point {
  const row = rows[i]!;
  const names = row.stage === 'lift' ? (['widthOut', 'depth'] as const) : (['width', 'length'] as const);
  if (row.stage !== 'lift' && !(row.stage === 'room' && i === rows.length - 1))
    refuse('it need not stand there wholly');
  const height =
    row.stage === 'lift' ? (row.measures['ceiling'] ?? given(row, 'height')) : given(row, 'height');
  return [given(row, names[0]) + tape, given(row, names[1]) + tape, height + tape];
}

/** A box in a box is no thicker, no longer across, and its edges sum to no more (Winkler, Mathematical Mind-Benders). */
const tooLargeToStand = (half: Half, space: Point): boolean =>
  2 * half[2] > Math.min(...space) + ROUNDING ||
  2 * Math.hypot(...half) > Math.hypot(...space) + ROUNDING ||
  2 * (half[0] + half[1] + half[2]) > space[0] + space[1] + space[2] + ROUNDING;

/** Half-width of a box as it lies, along a direction. */
const halfWidth = (axes: readonly Point[], half: Half, n: Point): number =>
  axes.reduce((sum, axis, k) => sum + half[k]! * Math.abs(dot(axis, n)), 0);

const attitudeOf = ([x, y, z]: AttitudeCell): [Point, Point, Point] => axesOf([1, x, y, z]);

/**
 * How far any point of a box moves at most between a cell's middle attitude and any other in it: the sphere of quaternions
 * is no longer than its tangent plane in which x, y, z are measured, shorter by 1 over their distance; a turn is twice
 * the angle between quaternions.
 */
export function movesInCell([x, y, z, dx, dy, dz]: AttitudeCell, half: Half): number {
  const off = (v: number, d: number): number => Math.max(0, Math.abs(v) - d);
  const nearest = 1 + off(x, dx) ** 2 + off(y, dy) ** 2 + off(z, dz) ** 2;
  const turn = (2 * Math.hypot(dx, dy, dz)) / Math.sqrt(nearest);
  return 2 * Math.sin(Math.min(Math.PI, turn) / 2) * Math.hypot(...half) + ROUNDING;
}

/** In no attitude of the cell does the box fit in the space. */
export function standsNowhere(cell: AttitudeCell, half: Half, space: Point): boolean {
  const axes = attitudeOf(cell);
  const along: readonly Point[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  return along.some((n, k) => 2 * (halfWidth(axes, half, n) - cell[6]) > space[k]! + ROUNDING);
}

/**
 * All attitudes are looked at: of the four quaternions in which a box looks alike one has its first part largest, so that
 * x, y, z from -1 to 1 hold them all. The cells have to fill that cube, and each has to be shut by more than the box moves
 * within it.
 */
function everyCell(
  cells: readonly AttitudeCell[],
  half: Half,
  shut: (cell: AttitudeCell) => boolean,
): Checked {
  fills([0, 0, 0], [1, 1, 1], cells);
  cells.forEach((cell, k) => {
    if (!(cell[6] >= movesInCell(cell, half))) refuse(`cell ${k} is wider than its bound of ${cell[6]} mm`);
    if (!shut(cell)) refuse(`in cell ${k} it may stand, its bound being ${cell[6]} mm`);
  });
  return { faults: [], looked: cells.length };
}

/** Cells that are no cell of a box halved again and again leave a gap, or are one too many. */
function fills(
  middle: readonly number[],
  side: readonly number[],
  cells: readonly (readonly number[])[],
): void {
  const [cell] = cells;
  const sides = middle.length;
  const same = cell && [...middle, ...side].every((v, k) => cell[k] === v);
  if (same && cells.length === 1) return;
  for (let k = 0; k < sides; k++) {
    const low = cells.filter((c) => c[k]! < middle[k]!);
    const high = cells.filter((c) => c[k]! > middle[k]!);
    const apart = cells.every((c) => Math.abs(c[k]! - middle[k]!) >= c[sides + k]!);
    if (low.length === 0 || high.length === 0 || low.length + high.length < cells.length || !apart) continue;
    const halved = side.map((v, j) => (j === k ? v / 2 : v));
    const shifted = (by: number): number[] => middle.map((v, j) => (j === k ? v + by : v));
    fills(shifted(-halved[k]!), halved, low);
    fills(shifted(halved[k]!), halved, high);
    return;
  }
  refuse(`the cells leave a gap, or overlap, about attitude ${middle.join(', ')}`);
}

/** A corner in plan: its inner edge at the origin, the way in along x between y = 0 and y = -`widthIn`, turning left. */
interface Corner {
  readonly widthIn: number;
  readonly widthOut: number;
  readonly ceiling: number;
  readonly cos: number;
  readonly sin: number;
}
type Flat = readonly [number, number];

export function cornerOf(row: Row, tape: number): Corner {
  const turn = ((row.measures['turn'] ?? 90) * Math.PI) / 180;
  if (!(turn > 0 && turn < Math.PI)) refuse(`a turn of ${row.measures['turn']} degrees`);
  const [widthIn, widthOut, ceiling] = ['width', 'widthOut', 'height'].map((name) => given(row, name) + tape);
  return {
    widthIn: widthIn!,
    widthOut: widthOut!,
    ceiling: ceiling!,
    cos: Math.cos(turn),
    sin: Math.sin(turn),
  };
}

/** How far into the wall between the two arms, and beyond the outer wall of each, a place of the plan lies. */
const beyondOut = ({ cos, sin, widthOut }: Corner, [x, y]: Flat): number => sin * x - cos * y - widthOut;

/**
 * The line has to lead from the wall between the arms to an outer wall: then the middle of whatever goes from one arm to
 * the other crosses it.
 * @returns how far each arm has to be known from the inner edge on, for what reaches so far from its middle
 */
export function crosses(corner: Corner, from: Flat, to: Flat, reach: number): readonly [number, number] {
  const { cos, sin, widthIn } = corner;
  if (![...from, ...to].every(Number.isFinite)) refuse('the line is none');
  if (from[1] < 0 || sin * from[0] - cos * from[1] > ROUNDING)
    refuse('the line does not begin in the inner wall');
  if (-to[1] < widthIn - ROUNDING && beyondOut(corner, to) < -ROUNDING)
    refuse('the line does not lead to an outer wall');
  const out = (p: Flat): number => cos * p[0] + sin * p[1];
  return [reach - Math.min(from[0], to[0]), reach + Math.max(out(from), out(to))];
}

/** In no attitude of the cell can the middle of the box be on the line. */
export function nowhereOnLine(cell: AttitudeCell, half: Half, corner: Corner, from: Flat, to: Flat): boolean {
  const { widthIn, widthOut, ceiling, cos, sin } = corner;
  const axes = attitudeOf(cell);
  const spare = cell[6] + ROUNDING;
  if (2 * (halfWidth(axes, half, [0, 0, 1]) - spare) > ceiling) return true;
  const walls: readonly Wall[] = [
    [0, -1, widthIn],
    [sin, -cos, widthOut],
  ];
  const left = betweenWalls(axes, half, spare, walls, [from, to], [0, 1]);
  return !left || !partedFrom(axes, half, spare, { at: [0, 0], n0: [0, 1], n1: [-sin, cos] }, left);
}

/** Everything is at nx x + ny y <= at. */
type Wall = readonly [nx: number, ny: number, at: number];
/** An edge of a convex upright solid, and the normals, into it, of the two faces that meet there. */
interface Edge {
  readonly at: Flat;
  readonly n0: Flat;
  readonly n1: Flat;
}
type Axes = readonly Point[];

/** The ends of what outer walls leave a box's middle of a part of a line; undefined: nothing. */
function betweenWalls(
  axes: Axes,
  half: Half,
  spare: number,
  walls: readonly Wall[],
  [from, to]: readonly [Flat, Flat],
  [low, high]: readonly [number, number],
): readonly [Flat, Flat] | undefined {
  let [k0, k1] = [low, high];
  for (const [nx, ny, at] of walls) {
    const left = at - halfWidth(axes, half, [nx, ny, 0]) + spare - (nx * from[0] + ny * from[1]);
    const slope = nx * (to[0] - from[0]) + ny * (to[1] - from[1]);
    if (Math.abs(slope) < ROUNDING) {
      if (left < -ROUNDING) return undefined;
    } else if (slope > 0) k1 = Math.min(k1, left / slope + ROUNDING);
    else k0 = Math.max(k0, left / slope - ROUNDING);
  }
  if (k0 > k1) return undefined;
  const at = (k: number): Flat => [from[0] + k * (to[0] - from[0]), from[1] + k * (to[1] - from[1])];
  return [at(k0), at(k1)];
}

/**
 * A line through an edge, square to something between the normals of its faces, has to part the box from the solid. How much
 * it is short of that is convex along the way, and concave in straight pieces over the normals.
 */
function partedFrom(
  axes: Axes,
  half: Half,
  spare: number,
  { at, n0, n1 }: Edge,
  ends: readonly [Flat, Flat],
): boolean {
  const shares = [0, 1];
  for (const axis of axes) {
    const [p, q] = [axis[0] * n0[0] + axis[1] * n0[1], axis[0] * n1[0] + axis[1] * n1[1]];
    if (p * q < 0) shares.push(p / (p - q));
  }
  return shares.some((m) => {
    const [nx, ny] = [(1 - m) * n0[0] + m * n1[0], (1 - m) * n0[1] + m * n1[1]];
    return ends.some(
      ([x, y]) => nx * (at[0] - x) + ny * (at[1] - y) >= halfWidth(axes, half, [nx, ny, 0]) - spare,
    );
  });
}

// A side door in plan: the passage between y = 0 and its width, the door below it, in a wall, and the floor before the door.

/**
 * Under a ceiling H a diagonal D of the piece never shows less than sqrt(D^2 - H^2) in plan: a rod of that length, with the
 * piece's middle for its own, has to come out of the door. Its tail is at every depth for the last time after its head has
 * come into the doorway for good. There, at `depth`, the rod leads from the tail through the doorway into the passage: too
 * long to lie in the doorway, or with its head in it and its tail on the floor before. So it is no flatter than doorway and
 * floor are wide for what is deep of them, and what reaches into the passage is no more than that is wide.
 */
function checkRod(rows: readonly Row[], i: number, half: Half, tape: number, depth: number): Checked {
  const row = rows[i]!;
  if (row.stage !== 'side door' || row.into === undefined) refuse(`a rod out of a ${row.stage}`);
  const ceiling = row.measures['ceiling'] ?? given(row, 'height');
  const diagonal = 2 * Math.hypot(...half);
  const [door, passage] = [given(row, 'width') + tape, given(row, 'widthOut') + tape];
  const wall = Math.max(0, given(row, 'wall') - tape);
  const [toDoor, toPassage] = row.into ? ([-1, 1] as const) : ([1, -1] as const);
  const floor = Math.max(door, widthBeside(rows, i, toDoor, diagonal, ceiling, tape) + tape);
  if (widthBeside(rows, i, toPassage, diagonal + door, ceiling, tape) > given(row, 'widthOut'))
    refuse('the passage is wider beyond');
  const rod = Math.sqrt(Math.max(0, diagonal ** 2 - (ceiling + tape) ** 2)) - ROUNDING;
  if (!(rod > Math.hypot(door, wall) + ROUNDING)) refuse('it may lie in the doorway');
  if (!(depth >= 0)) refuse(`a tail ${depth} mm deep`);
  if (depth > wall && !(rod > floor && depth < Math.sqrt(rod ** 2 - floor ** 2) - ROUNDING))
    refuse('its head may be in the doorway with its tail so deep');
  const flattest = depth > wall ? Math.max(wall / door, depth / floor) : depth / door;
  if (!((rod * flattest) / Math.hypot(1, flattest) > passage + depth + ROUNDING)) refuse('it may come out');
  return { faults: [], looked: 1 };
}

/** Greatest width of the doors and passages beside a side door, which have to be known so far, and be no higher. */
function widthBeside(
  rows: readonly Row[],
  i: number,
  side: 1 | -1,
  far: number,
  ceiling: number,
  tape: number,
): number {
  // A straight row begins at once; else the door's run tells how far the way goes on as it is.
  const own = side === 1 && !isStraight(rows[i + 1]) ? (rows[i]!.measures['run'] ?? 0) - tape : 0;
  let [known, widest] = [Math.max(0, own), 0];
  for (let k = i + side; known < far; k += side) {
    const { stage, measures: m } = rows[k] ?? refuse('the ways beside it are not known far enough');
    if (stage !== 'door' && stage !== 'passage') refuse('the ways beside it are not known far enough');
    if (!(Number(m['height']) <= ceiling)) refuse('the ways beside it are higher');
    widest = Math.max(widest, given(rows[k]!, 'width'));
    known += Math.max(0, (stage === 'door' ? (m['wall'] ?? 0) : (m['length'] ?? 0)) - tape);
  }
  return widest;
}

// A landing in plan: the lower flight leads up along x and ends at x = 0, its outer wall at y = 0; the landing lies behind.

interface Landing {
  readonly walls: readonly Wall[];
  /** Of the one solid inside the turn: to be clear of one edge is to be clear of it. */
  readonly edges: readonly Edge[];
  /** From where lines lead that its middle has to cross: any place between these two. */
  readonly inner: readonly [Flat, Flat];
  /** The upper flight begins at `edge`, and leads up along y, or back along x. */
  readonly upper: { readonly along: 'y' | 'back'; readonly edge: number };
  /** The lower flight is at y up to this. */
  readonly lowerWidth: number;
  readonly ceiling: number;
  readonly headroom: number;
  /** Over the lower flight: infinite where its own ceiling is not known to begin far enough down. */
  readonly lowerHeadroom: number;
  readonly rise: number;
  readonly slope: readonly [number, number];
}

export function landingOf(rows: readonly Row[], i: number, half: Half, tape: number): Landing {
  const row = rows[i] ?? refuse(`there is no row ${i + 1}`);
  if (!isLanding(row)) refuse(`a line over a ${row.stage}`);
  if ((row.measures['overRail'] ?? 0) > 0) refuse('there is air above a rail');
  const reach = Math.hypot(...half);
  const [down, up] = row.way === 'down' ? [i + 1, i - 1] : [i - 1, i + 1];
  const covered = flightBeside(rows, i, down, 'width', reach, tape);
  flightBeside(rows, i, up, row.stage === 'half landing' ? 'width' : 'widthOut', reach, tape);
  const width = given(row, 'width') + tape;
  const headroom = given(row, 'height') + tape;
  const same = {
    ceiling: (row.measures['ceiling'] ?? given(row, 'height')) + tape,
    headroom,
    lowerHeadroom: covered ? headroom : Infinity,
    rise: given(row, 'rise') + tape,
    slope: steepnessOf(row, tape),
    lowerWidth: width,
  };
  if (row.stage === 'quarter landing') {
    const out = given(row, 'widthOut') + tape;
    return {
      ...same,
      walls: [
        [0, -1, 0],
        [1, 0, out],
      ],
      edges: [{ at: [0, width], n0: [0, 1], n1: [-1, 0] }],
      inner: [
        [0, width],
        [0, width],
      ],
      upper: { along: 'y', edge: width },
    };
  }
  // Where the spine stands however the measures err.
  const [near, far] = [width, given(row, 'width') - tape + Math.max(0, given(row, 'well') - tape)];
  if (far < near) refuse('there may be no spine');
  return {
    ...same,
    walls: [
      [0, -1, 0],
      [0, 1, 2 * width + given(row, 'well') + tape],
      [1, 0, given(row, 'depth') + tape],
    ],
    edges: [
      { at: [0, near], n0: [0, 1], n1: [-1, 0] },
      { at: [0, far], n0: [-1, 0], n1: [0, -1] },
    ],
    inner: [
      [0, near],
      [0, far],
    ],
    upper: { along: 'back', edge: far },
  };
}

/**
 * A flight beside a landing has to be as its landing says, as far as the piece reaches from there. Where no stair is
 * surveyed beside it a long one is supposed, as in the air of a route.
 * @returns whether its own ceiling is known so far
 */
function flightBeside(
  rows: readonly Row[],
  i: number,
  k: number,
  width: string,
  reach: number,
  tape: number,
): boolean {
  const [row, flight] = [rows[i]!, rows[k]];
  if (!onStair(flight)) return true;
  if (flight?.stage !== 'flight') return refuse('another turn follows at once');
  for (const name of ['rise', 'going'])
    if (given(flight, name) !== given(row, name)) refuse(`the flight beside it has another ${name}`);
  if (given(flight, 'width') > given(row, width)) refuse('the flight beside it is wider');
  if (given(flight, 'height') > given(row, 'height')) refuse('the flight beside it is higher');
  if ((given(flight, 'risers') - 1) * given(row, 'going') - tape < reach)
    refuse('the flight beside it is not known far enough');
  return underOwnCeiling(rows, k, tape) >= reach;
}

function checkLanding(
  rows: readonly Row[],
  i: number,
  half: Half,
  tape: number,
  { from, to, parts }: Extract<Proof, { by: 'landing' }>,
): Checked {
  const landing = landingOf(rows, i, half, tape);
  if (![...from, ...to].every(Number.isFinite)) refuse('the line is none');
  const [first, last] = landing.inner;
  if (from[0] !== 0 || from[1] < first[1] || from[1] > last[1])
    refuse('the line does not begin at the inner edge');
  if (to[0] < 0 || (landing.upper.along === 'y' && to[1] > landing.upper.edge))
    refuse('the line does not lie over the landing');
  if (landing.walls.every(([nx, ny, at]) => nx * to[0] + ny * to[1] < at - ROUNDING))
    refuse('the line does not lead to an outer wall');
  let [known, looked] = [landing.slope[0], 0];
  for (const { slope, cells } of parts) {
    if (!(slope[0] <= known && slope[1] > slope[0] - ROUNDING)) refuse('some steepness is left out');
    known = slope[1];
    fills([0, 0, 0, 0.5], [1, 1, 1, 0.5], cells);
    cells.forEach((cell, n) => {
      const bound = cell[8];
      if (!(bound >= movesInCell(attitudesOf(cell), half)))
        refuse(`cell ${n} is wider than its bound of ${bound} mm`);
      if (!nowhereOverLanding(cell, half, { ...landing, slope }, from, to))
        refuse(`in cell ${n} it may stand, its bound being ${bound} mm`);
    });
    looked += cells.length;
  }
  if (!(known >= landing.slope[1])) refuse('some steepness is left out');
  return { faults: [], looked };
}

/** The attitudes of a cell, wherever it is. */
export const attitudesOf = ([x, y, z, , dx, dy, dz, , bound]: PlacedCell): AttitudeCell => [
  ...([x, y, z, dx, dy, dz] as const),
  bound,
];

/** In no attitude of the cell can the middle of the box be on its part of the line. */
export function nowhereOverLanding(
  cell: PlacedCell,
  half: Half,
  landing: Landing,
  from: Flat,
  to: Flat,
): boolean {
  const axes = attitudeOf(attitudesOf(cell));
  const spare = cell[8] + ROUNDING;
  const [place, dPlace] = [cell[3], cell[7]];
  const ends = betweenWalls(
    axes,
    half,
    spare,
    landing.walls,
    [from, to],
    [place - dPlace - ROUNDING, place + dPlace + ROUNDING],
  );
  if (!ends) return true;
  if (!landing.edges.some((edge) => partedFrom(axes, half, spare, edge, ends))) return true;
  // Each corner of the box is above what is floor there and below what is ceiling, with the middle at one height.
  const span = (k: 0 | 1): Span => [Math.min(ends[0][k], ends[1][k]), Math.max(ends[0][k], ends[1][k])];
  const [xs, ys] = [span(0), span(1)];
  let [low, high] = [-Infinity, Infinity];
  for (let n = 0; n < 8; n++) {
    const corner = ([0, 1, 2] as const).map((k) =>
      axes.reduce((sum, axis, j) => sum + (n & (1 << j) ? 1 : -1) * half[j]! * axis[k], 0),
    ) as unknown as Point;
    const wide = ([a, b]: Span, off: number): Span => [a + off - spare, b + off + spare];
    const [lowest, highest] = heightsOver(landing, wide(xs, corner[0]), wide(ys, corner[1]));
    low = Math.max(low, lowest - corner[2] - spare);
    high = Math.min(high, highest - corner[2] + spare);
  }
  return low > high + ROUNDING;
}

/**
 * The lowest floor and the highest ceiling anywhere over a rectangle of the plan. A tread is at most a rise below the line
 * of nosings, which over the lower flight ends at the landing's edge, and over the upper begins there a rise higher.
 */
function heightsOver(landing: Landing, [x0, x1]: Span, [y0, y1]: Span): Span {
  const { lowerWidth, upper, ceiling, headroom, lowerHeadroom, rise } = landing;
  const [gentle, steep] = landing.slope;
  let [lowest, highest] = [Infinity, -Infinity];
  const add = (low: number, high: number): void => {
    lowest = Math.min(lowest, low);
    highest = Math.max(highest, high);
  };
  if (x1 >= 0 && (upper.along === 'back' || y0 <= upper.edge)) add(0, ceiling);
  if (x0 < 0 && y0 <= lowerWidth) add(steep * x0 - rise, gentle * Math.min(0, x1) + lowerHeadroom);
  const [near, far] =
    upper.along === 'y' ? [y0 - upper.edge, y1 - upper.edge] : [-x1, y1 >= upper.edge ? -x0 : -1];
  if (far > 0) add(gentle * Math.max(0, near), steep * far + rise + headroom);
  return [lowest, highest];
}

/** How far from a corner on the way is known to be no wider and no higher than the corner is there [mm]. */
function straightBefore(rows: readonly Row[], i: number, tape: number, need: number): number {
  let known = 0;
  for (let k = i - 1; k >= 0 && known < need; k--) {
    const row = rows[k]!;
    if (isTurn(row)) return k === i - 1 ? Math.max(0, (row.measures['run'] ?? 0) - tape) : known;
    const length = straightOf(row, rows[i]!, 'width', tape);
    if (length === undefined) return known;
    known += length;
  }
  return known;
}

function straightAfter(rows: readonly Row[], i: number, tape: number, need: number): number {
  const next = rows[i + 1];
  // A passage, a room or a flight begins at once.
  const own =
    next && !isStraight(next) && next.stage !== 'flight' ? (rows[i]!.measures['run'] ?? 0) - tape : 0;
  let known = Math.max(0, own);
  for (let k = i + 1; k < rows.length && known < need; k++) {
    const length = straightOf(rows[k]!, rows[i]!, 'widthOut', tape);
    if (length === undefined) return known;
    known += length;
  }
  return known;
}

/** Length of a door or passage beside a corner; undefined where it is another row, or wider or higher than the corner. */
function straightOf(
  { stage, measures: m }: Row,
  corner: Row,
  side: string,
  tape: number,
): number | undefined {
  if (stage !== 'door' && stage !== 'passage') return undefined;
  if (!(Number(m['width']) <= given(corner, side) && Number(m['height']) <= given(corner, 'height')))
    return undefined;
  return Math.max(0, (stage === 'door' ? (m['wall'] ?? WALL) : (m['length'] ?? 0)) - tape);
}

// --- By itself: files of certificates are named, and each is answered for in a line ---------------------------------------

if (require.main === module) {
  for (const file of process.argv.slice(2)) {
    for (const one of JSON.parse(readFileSync(file, 'utf8')) as Certificate[]) {
      const { faults, looked } = check(one);
      const what = `${one.survey}, ${one.build}, ${one.piece.name}: ${one.verdict}`;
      console.log(
        faults.length === 0
          ? `${what}: verified, ${looked} looked at`
          : `${what}: NOT VERIFIED: ${faults.join('; ')}`,
      );
      if (faults.length > 0) process.exitCode = 1;
    }
  }
}
