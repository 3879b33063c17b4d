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
      const here = leastGap(grounds, half, middle, 0).gap;
      found = max(found, here);
      const most = boundOfPart(grounds, half, start, middle, end);
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
): number {
  const angle = angleBetween(start, end);
  const travel = travelOf(start, end, half) / 2;
  const bow = (reachOf(half) * angle * angle) / 8 + ON;
  let least = Infinity;
  const look = (inward: number): void => {
    for (const witness of leastGap(grounds, half, middle, inward, true).witnesses) {
      const { ground } = witness;
      if (!staysOver(ground, witness, start, bow) || !staysOver(ground, witness, end, bow)) continue;
      const steep = sqrt(1 + ground.alongX ** 2 + ground.alongY ** 2);
      least = min(least, max(gapOf(witness, start), gapOf(witness, end)) + steep * bow);
    }
  };
  look(0);
  look(travel + 2 * bow);
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
): { readonly gap: number; readonly witnesses: Witness[] } {
  const corners = cornersOf(half);
  const places = corners.map(([l, b, t]) => placeOf(stand, l, b, t));
  const witnesses: Witness[] = [];
  let gap = Infinity;
  for (const ground of grounds) {
    const sides = ground.within;
    const beyond = places.map(([x, y]) => sides.map((s) => s.x * x + s.y * y - s.from - inward));
    const heights = places.map(([x, y, z]) => z - ground.height - ground.alongX * x - ground.alongY * y);
    corners.forEach(([l, b, t], i) => {
      if (!(beyond[i] ?? []).every((d) => d >= -ON)) return;
      gap = min(gap, heights[i] ?? Infinity);
      if (collect) witnesses.push({ l, b, t, ground });
    });
    for (const [i, j] of EDGES) {
      const [from, to] = [beyond[i], beyond[j]];
      const [a, b] = [corners[i], corners[j]];
      if (!from || !to || !a || !b) continue;
      for (let n = 0; n < sides.length; n++) {
        const p = from[n] ?? 0;
        const q = to[n] ?? 0;
        if (p < 0 === q < 0) continue;
        const part: number = p / (p - q);
        if (!from.every((d, m) => m === n || d + ((to[m] ?? 0) - d) * part >= -ON)) continue;
        const [high = 0, low = 0] = [heights[i], heights[j]];
        gap = min(gap, high + (low - high) * part);
        if (collect)
          witnesses.push({
            l: a[0] + (b[0] - a[0]) * part,
            b: a[1] + (b[1] - a[1]) * part,
            t: a[2] + (b[2] - a[2]) * part,
            ground,
          });
      }
    }
  }
  return { gap, witnesses };
}
