import { fillAxesOfTurn } from '../geometry/boxAxes';
import type { PieceSize } from '../measures/piece';
import type { KeyAttitude, Motion } from './motion';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, max, min, sqrt } = Math;

/** The side of a line in plan on which a place lies when x * place.x + y * place.y >= from; (x, y) is a unit. */
export interface PlanSide {
  readonly x: number;
  readonly y: number;
  readonly from: number;
}

/** A part of what is below a piece: a floor, a tread or a line of nosings over a convex part of the plan. */
export interface Ground {
  /** Height [mm] over the origin, and its rise per mm along x and along y. */
  readonly height: number;
  readonly alongX: number;
  readonly alongY: number;
  readonly within: readonly PlanSide[];
}

/** How much more than the greatest found may be claimed [mm]. */
const FINENESS = 0.5;
/** Parts that a motion may be cut into before the bound as it stands is taken. */
const MOST_PARTS = 6000;
/** Beyond this a point counts as on a side in spite of rounding [mm]. */
const ON = 1e-6;

/** A point of the piece in its own axes, and the ground it is over. */
interface Witness {
  readonly l: number;
  readonly b: number;
  readonly t: number;
  readonly ground: Ground;
}

/** Where the piece stands in one attitude. */
interface Stand {
  readonly at: readonly [number, number, number];
  readonly turn: readonly [number, number, number, number];
  readonly axes: Float64Array;
}

/**
 * The raise of a motion [mm]: the greatest, over the whole motion, of the least plumb gap between the piece and
 * what is below it. It is never understated: between key attitudes it is bounded, not sampled. A point of the piece
 * that stays over one ground through a part of a move is no higher above it than at the part's ends, plus what a
 * turn bows from its chord (r theta^2 / 8); the least of these over some points bounds the least gap; parts are
 * halved until the greatest bound is within 0.5 mm of a gap that is there.
 *
 * Given the padded piece it says how high the padding is raised; the bare piece can be carried at the bottom of it,
 * which is why its play does not count.
 *
 * @param piece as it is moved, padded [mm]
 * @returns [mm], 0 or more; 0 for a motion without attitudes
 */
export function raiseOfMotion(grounds: readonly Ground[], piece: PieceSize, motion: Motion): number {
  const half = [piece.length / 2, piece.breadth / 2, piece.thickness / 2] as const;
  const stands = motion.map(standAt);
  let found = 0;
  for (const stand of stands) found = max(found, leastGap(grounds, half, stand, 0).gap);
  let bound = found;
  let parts = 0;
  const open: [Stand, Stand][] = [];
  for (let k = 0; k + 1 < stands.length; k++) {
    const from = stands[k];
    const to = stands[k + 1];
    if (!from || !to) continue;
    open.push([from, to]);
    for (let part = open.pop(); part; part = open.pop()) {
      const [start, end] = part;
      const middle = between(start, end);
      const here = leastGap(grounds, half, middle, 0, true);
      found = max(found, here.gap);
      const most = boundOfPart(grounds, half, start, middle, end, here.witnesses);
      parts++;
      if (most <= found + FINENESS || parts > MOST_PARTS || closeBy(start, end, half))
        bound = max(bound, most);
      else open.push([start, middle], [middle, end]);
    }
  }
  return max(0, bound, found);
}

/**
 * The least plumb gap [mm] between a piece in one attitude and what is below it, negative where it stands in it.
 * @param piece as it is moved, padded [mm]
 */
export const raiseAt = (grounds: readonly Ground[], piece: PieceSize, key: KeyAttitude): number =>
  leastGap(grounds, [piece.length / 2, piece.breadth / 2, piece.thickness / 2], standAt(key), 0).gap;

function standAt({ at, turn }: KeyAttitude): Stand {
  const axes = new Float64Array(9);
  fillAxesOfTurn(axes, turn[0], turn[1], turn[2], turn[3]);
  return { at, turn, axes };
}

function between(a: Stand, b: Stand): Stand {
  const dot = a.turn[0] * b.turn[0] + a.turn[1] * b.turn[1] + a.turn[2] * b.turn[2] + a.turn[3] * b.turn[3];
  const sign = dot < 0 ? -1 : 1;
  const w = a.turn[0] + sign * b.turn[0];
  const x = a.turn[1] + sign * b.turn[1];
  const y = a.turn[2] + sign * b.turn[2];
  const z = a.turn[3] + sign * b.turn[3];
  const n = sqrt(w * w + x * x + y * y + z * z);
  return standAt({
    at: [(a.at[0] + b.at[0]) / 2, (a.at[1] + b.at[1]) / 2, (a.at[2] + b.at[2]) / 2],
    turn: [w / n, x / n, y / n, z / n],
  });
}

/** The angle [rad] from one attitude to another, never understated. */
function angleBetween(a: Stand, b: Stand): number {
  const dot = abs(
    a.turn[0] * b.turn[0] + a.turn[1] * b.turn[1] + a.turn[2] * b.turn[2] + a.turn[3] * b.turn[3],
  );
  const cosine = min(1, sqrt((1 + min(1, dot)) / 2));
  return cosine >= 1 ? 0 : (4 * sqrt(1 - cosine * cosine)) / cosine + 1e-7;
}

type Half = readonly [number, number, number];

const reachOf = (half: Half): number => sqrt(half[0] ** 2 + half[1] ** 2 + half[2] ** 2);

function travelOf(a: Stand, b: Stand, half: Half): number {
  const far = sqrt((a.at[0] - b.at[0]) ** 2 + (a.at[1] - b.at[1]) ** 2 + (a.at[2] - b.at[2]) ** 2);
  return far + reachOf(half) * angleBetween(a, b);
}

const closeBy = (a: Stand, b: Stand, half: Half): boolean => travelOf(a, b, half) < 0.02;

/** The least over points that stay over one ground of how high they are above it at most, in a part of a move. */
function boundOfPart(
  grounds: readonly Ground[],
  half: Half,
  start: Stand,
  middle: Stand,
  end: Stand,
  here: readonly Witness[],
): number {
  const angle = angleBetween(start, end);
  const travel = travelOf(start, end, half) / 2;
  const bow = (reachOf(half) * angle * angle) / 8 + ON;
  let least = Infinity;
  const look = (witnesses: readonly Witness[]): void => {
    for (const witness of witnesses) {
      const { ground } = witness;
      if (!staysOver(ground, witness, start, bow) || !staysOver(ground, witness, end, bow)) continue;
      const steep = sqrt(1 + ground.alongX ** 2 + ground.alongY ** 2);
      least = min(least, max(gapOf(witness, start), gapOf(witness, end)) + steep * bow);
    }
  };
  look(here);
  look(leastGap(grounds, half, middle, travel + 2 * bow, true).witnesses);
  if (least < Infinity) return least;
  // It may stand over an edge of which no point of it stays on one side: over the lowest that is near, then.
  const corners = cornersOf(half);
  for (const [l, b, t] of corners) {
    const [x, y, z] = placeOf(middle, l, b, t);
    let low = Infinity;
    for (const ground of grounds) {
      if (!ground.within.every((side) => side.x * x + side.y * y >= side.from - travel - ON)) continue;
      const steep = sqrt(ground.alongX ** 2 + ground.alongY ** 2);
      low = min(low, ground.height + ground.alongX * x + ground.alongY * y - steep * travel);
    }
    least = min(least, z + travel - low);
  }
  return least;
}

function staysOver({ within }: Ground, { l, b, t }: Witness, stand: Stand, bow: number): boolean {
  const [x, y] = placeOf(stand, l, b, t);
  return within.every((side) => side.x * x + side.y * y >= side.from + bow);
}

const gapOf = ({ l, b, t, ground }: Witness, stand: Stand): number => {
  const [x, y, z] = placeOf(stand, l, b, t);
  return z - ground.height - ground.alongX * x - ground.alongY * y;
};

function placeOf({ at, axes }: Stand, l: number, b: number, t: number): [number, number, number] {
  const [a0 = 0, a1 = 0, a2 = 0, a3 = 0, a4 = 0, a5 = 0, a6 = 0, a7 = 0, a8 = 0] = axes;
  return [
    at[0] + l * a0 + b * a3 + t * a6,
    at[1] + l * a1 + b * a4 + t * a7,
    at[2] + l * a2 + b * a5 + t * a8,
  ];
}

const cornersOf = ([l, b, t]: Half): [number, number, number][] =>
  [-1, 1].flatMap((i) =>
    [-1, 1].flatMap((j) => [-1, 1].map((k) => [i * l, j * b, k * t] as [number, number, number])),
  );

/** Pairs of a box's corners that an edge joins, as `cornersOf` numbers them. */
const EDGES: readonly (readonly [number, number])[] = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) =>
  [1, 2, 4].filter((bit) => (i & bit) === 0).map((bit) => [i, i | bit] as const),
);
const EDGE_FROM = Int32Array.from(EDGES, ([i]) => i);
const EDGE_TO = Int32Array.from(EDGES, ([, j]) => j);

const NO_WITNESSES: readonly Witness[] = [];

// Working numbers of `leastGap`: the corners' places and heights over a ground, and how far each is beyond its sides.
const xs = new Float64Array(8);
const ys = new Float64Array(8);
const zs = new Float64Array(8);
const heights = new Float64Array(8);
let beyond = new Float64Array(8 * 8);

/**
 * The least gap over corners of the piece and points where its edges pass the sides of a ground (moved inward by so
 * much): what is least over a convex body is found there, but for a ground's own corners, which only makes it more.
 */
function leastGap(
  grounds: readonly Ground[],
  half: Half,
  stand: Stand,
  inward: number,
  collect = false,
): { readonly gap: number; readonly witnesses: readonly Witness[] } {
  const [hl, hb, ht] = half;
  const { at, axes } = stand;
  for (let i = 0; i < 8; i++) {
    const l = (i & 4) === 0 ? -hl : hl;
    const b = (i & 2) === 0 ? -hb : hb;
    const t = (i & 1) === 0 ? -ht : ht;
    xs[i] = at[0] + l * axes[0]! + b * axes[3]! + t * axes[6]!;
    ys[i] = at[1] + l * axes[1]! + b * axes[4]! + t * axes[7]!;
    zs[i] = at[2] + l * axes[2]! + b * axes[5]! + t * axes[8]!;
  }
  const witnesses: Witness[] = [];
  let gap = Infinity;
  for (const ground of grounds) {
    const sides = ground.within;
    const count = sides.length;
    if (8 * count > beyond.length) beyond = new Float64Array(16 * count);
    if (!reaches(sides, inward)) continue;
    const seen = witnesses.length;
    let [lowest, highest] = [Infinity, -Infinity];
    for (let i = 0; i < 8; i++) {
      heights[i] = zs[i]! - ground.height - ground.alongX * xs[i]! - ground.alongY * ys[i]!;
      highest = max(highest, heights[i]!);
      if (!within(i, count)) continue;
      lowest = min(lowest, heights[i]!);
      if (collect) witnesses.push(cornerOf(half, i, ground));
    }
    for (let edge = 0; edge < 12; edge++) {
      const i = EDGE_FROM[edge]!;
      const j = EDGE_TO[edge]!;
      for (let n = 0; n < count; n++) {
        const p = beyond[i * count + n]!;
        const q = beyond[j * count + n]!;
        if (p < 0 === q < 0) continue;
        const part = p / (p - q);
        if (!partWithin(i, j, part, n, count)) continue;
        lowest = min(lowest, heights[i]! + (heights[j]! - heights[i]!) * part);
        if (!collect) continue;
        const from = cornerOf(half, i, ground);
        const to = cornerOf(half, j, ground);
        witnesses.push({
          l: from.l + (to.l - from.l) * part,
          b: from.b + (to.b - from.b) * part,
          t: from.t + (to.t - from.t) * part,
          ground,
        });
      }
    }
    // The way leads back over itself: that one is above all of the piece.
    if (highest < 0) witnesses.length = seen;
    else gap = min(gap, lowest);
  }
  return { gap, witnesses: collect ? witnesses : NO_WITNESSES };
}

/** Fills in how far each corner is beyond each side; whether some corner is on the inside of each. */
function reaches(sides: readonly PlanSide[], inward: number): boolean {
  const count = sides.length;
  for (let n = 0; n < count; n++) {
    const { x, y, from } = sides[n]!;
    let most = -Infinity;
    for (let i = 0; i < 8; i++) {
      const far = x * xs[i]! + y * ys[i]! - from - inward;
      beyond[i * count + n] = far;
      if (far > most) most = far;
    }
    if (most < -2 * ON) return false;
  }
  return true;
}

function within(i: number, count: number): boolean {
  for (let n = 0; n < count; n++) if (!(beyond[i * count + n]! >= -ON)) return false;
  return true;
}

/** Whether a point of an edge, on side `but`, is within the others. */
function partWithin(i: number, j: number, part: number, but: number, count: number): boolean {
  for (let m = 0; m < count; m++) {
    if (m === but) continue;
    const from = beyond[i * count + m]!;
    if (!(from + (beyond[j * count + m]! - from) * part >= -ON)) return false;
  }
  return true;
}

function cornerOf([l, b, t]: Half, i: number, ground: Ground): Witness {
  return { l: (i & 4) === 0 ? -l : l, b: (i & 2) === 0 ? -b : b, t: (i & 1) === 0 ? -t : t, ground };
}
