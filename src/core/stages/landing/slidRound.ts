import { entryAt } from '../../lists/entryAt';
import { greatestPadding } from '../../geometry/rootFinding';
import { pairs } from '../../lists/pairs';
import { THINNEST, type PieceSize } from '../../measures/piece';
import { sizesOfHold, type Hold } from '../../motion/hold';
import type { FamilyFit, SlidPlace } from './familyFit';
import type { LandingPlan } from './landingPlan';
import { closestAt } from '../../motion/closest';

/** Where it lies along the pitch on either side of a landing. */
export const ON_FLIGHTS = closestAt('on the flights', 'sides', 'slope');
const ROUND_THE_EDGE = closestAt('round the inner edge of the landing', 'inner corner');

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, abs, atan2, ceil, cos, floor, max, min, sin } = Math;

/**
 * Sliding a piece round the inner edge of a quarter landing: it lies along the pitch from the lower flight to the
 * upper one, one end higher by as much all the way, while its inner side slides along the edge and it is turned; no
 * ladder goes round a corner better. So it begins to turn far down the lower flight, where its front is the only part
 * over the landing, and leaves nothing to be raised or laid back.
 *
 *      upper|flight           in plan, turned by y: O the inner edge, its inner side on O,
 *           |  /              its middle `past` beyond O
 *    _______O /
 *   lower  / /
 *   flight/ /
 *
 * In one attitude and place it is free when, over the lower flight, the landing and the upper flight, its lower side is
 * above what is below and its upper side under what is above: in plan these are strips of a rectangle, in height
 * straight pieces, so that a handful of corners has the highest floor and the lowest ceiling. At each of a row of
 * yaws the place along the edge is taken that leaves most between the two; between two of them the height is the same.
 * Sufficient; own derivation, replayed in the tests.
 */
/** A piece as it is slid: its sides along, upright and across, padded, and its tilt. */
interface Slid {
  readonly u: number;
  readonly v: number;
  readonly q: number;
  readonly tilt: number;
}

/** Yaws looked at: so many parts of a right angle. */
const YAWS = 45;
/** The yaws, the likeliest to be the closest first. */
const LIKELIEST_FIRST = Array.from({ length: YAWS + 1 }, (_, i) => i).sort(
  (i, j) => abs(i - YAWS / 2) - abs(j - YAWS / 2),
);
/** From one place along the edge to the next that is looked at [mm]. The places don't depend on the measures. */
const APART = 20;
/** Parts of a move from one yaw and place to the next that are looked at once more. */
const PARTS = 6;
/** What is kept back of the clearance [mm a side] for what the piece strays between two of these: it is drawn held off. */
export const STRAYS = 0.5;
/** The most air left under a piece as it is slid [mm]. */
const AIR = 10;
/** Nearer than this to what the flights leave it is these that decide [mm]. */
const NEAR = 0.05 + STRAYS;
/** How near the greatest padding has to be [mm]. */
const FINENESS = 0.005;
/** How much less is tried where a move between is not free [mm a side]. */
const LESS = [0, 0.5, 2, 8];

/**
 * The best that a piece held so on the flights leaves slid round the inner edge of a quarter landing.
 * @returns undefined where it does not leave what is asked, and on a half landing; its raise is that of the drawn motion
 */
export function slidRound(
  plan: LandingPlan,
  piece: PieceSize,
  hold: Hold,
  atLeast = -piece.length / 2,
): Omit<FamilyFit, 'raise'> | undefined {
  if (plan.across !== undefined) return undefined;
  const edge = edgeOf(plan);
  const { along, upright, across } = sizesOfHold(piece, hold);
  const slid = (c: number): Slid => ({
    u: along + 2 * c,
    v: upright + 2 * c,
    q: max(THINNEST, across + 2 * c),
    tilt: edge.pitch,
  });
  const lip = min(plan.ceiling, plan.headroom + plan.rise);
  const channel = min(plan.headroom, lip - plan.rise) * cos(edge.pitch);
  const most = min(min(plan.widthIn, plan.widthOut) - across, channel - upright) / 2;
  const least = max(atLeast, (THINNEST - min(along, upright)) / 2) + STRAYS;
  // What each yaw leaves by itself comes first, where it is mostly closest; then whether that is one way.
  let padding: number | undefined = most;
  for (const i of LIKELIEST_FIRST) {
    const spare = (c: number): number => columnAt(edge, slid(c), yawAt(i)).most;
    if (spare(padding) < 0) padding = greatestPadding(least, padding, spare, FINENESS);
    if (padding === undefined) return undefined;
  }
  padding = greatestPadding(least, padding, (c) => widestWay(edge, slid(c)).spare, FINENESS);
  if (padding === undefined) return undefined;
  for (const less of LESS) {
    if (padding - less < least) return undefined;
    const found = joined(edge, slid(padding - less));
    if (!found) continue;
    const clearance = padding - less - STRAYS;
    return {
      clearance,
      hold,
      as: 'slid',
      tilt: edge.pitch,
      sideways: false,
      raisedTo: 0,
      critical: clearance >= most - NEAR ? ON_FLIGHTS : ROUND_THE_EDGE,
      slid: found,
    };
  }
  return undefined;
}

/** What lies about the inner edge: the flights run down along -x and up along +y, the outer walls `a` and `b` away. */
interface InnerEdge {
  readonly a: number;
  readonly b: number;
  readonly slope: number;
  readonly pitch: number;
  readonly rise: number;
  readonly headroom: number;
  readonly ceiling: number;
}

const edgeOf = ({ depthOut, depthIn, rise, going, headroom, ceiling }: LandingPlan): InnerEdge => ({
  a: depthOut,
  b: depthIn,
  slope: rise / going,
  pitch: atan2(rise, going),
  rise,
  headroom,
  ceiling,
});

/** The places along the edge that the outer walls leave at one yaw. */
interface Column {
  /** Number of the first: it is as many times APART beyond the edge. */
  readonly first: number;
  /** At each of them the lowest and the highest place of its lower back corner [mm]. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** The most between floor and ceiling at any of them; where the walls leave none, less than nothing. */
  readonly most: number;
}

const yawAt = (part: number): number => (PI / 2 / YAWS) * part;

const lengthInPlan = ({ u, v, tilt }: Slid): number => u * cos(tilt) + v * sin(tilt);

/** How far its middle may be beyond the edge so that its outer corners are inside the outer walls. */
function between(
  edge: InnerEdge,
  slid: Slid,
  yaw: number,
): { readonly least: number; readonly most: number } {
  const half = lengthInPlan(slid) / 2;
  const [c, s] = [cos(yaw), sin(yaw)];
  if (slid.q * c > edge.a || slid.q * s > edge.b) return { least: half, most: -half };
  // Along the lower flight its lower back corner is over that; along the upper one its upper front corner is past the
  // edge: so nothing comes nearer as it is slid along the pitch.
  const leans = slid.v * sin(slid.tilt);
  return {
    least: s > SQUARE ? max(c > SQUARE ? -half : leans - half, half - (edge.a - slid.q * c) / s) : -half,
    most: c > SQUARE ? min(s > SQUARE ? half : half - leans, (edge.b - slid.q * s) / c - half) : half,
  };
}

/** Below this a sine counts as none. */
const SQUARE = 1e-9;

function columnAt(edge: InnerEdge, slid: Slid, yaw: number): Column {
  const { least, most: last } = between(edge, slid, yaw);
  const first = ceil(least / APART);
  const count = max(0, floor(last / APART) - first + 1);
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  let most = min(0, last - least) - APART;
  const heights = new Heights(edge, slid, yaw);
  for (let k = 0; k < count; k++) {
    heights.lookAt((first + k) * APART);
    low[k] = heights.low;
    high[k] = heights.high;
    most = max(most, heights.high - heights.low);
  }
  return { first, low, high, most };
}

/** No place before. */
const NONE = -1;

/** The way from yaw to yaw and place to place on which floor and ceiling are farthest apart where they are closest. */
function widestWay(
  edge: InnerEdge,
  slid: Slid,
): { readonly spare: number; readonly way: readonly (readonly [yaw: number, place: number])[] } {
  const columns: Column[] = [];
  // Where the way to each place comes from: its number among all of this column and the one before.
  const origins: Int32Array[] = [];
  let reached = new Float64Array(0);
  for (let i = 0; i <= YAWS; i++) {
    const column = columnAt(edge, slid, yawAt(i));
    if (column.most < 0) return { spare: column.most, way: [] };
    const { first, low, high } = column;
    const count = low.length;
    const before = columns[i - 1];
    const next = new Float64Array(count).fill(before ? -APART : 0);
    const origin = new Int32Array(count).fill(NONE);
    const through = (k: number, other: Column, j: number, value: number, number: number): void => {
      const joint = min(value, min(high[k]!, other.high[j]!) - max(low[k]!, other.low[j]!));
      if (joint <= next[k]!) return;
      next[k] = joint;
      origin[k] = number;
    };
    for (let k = 0; k < count; k++) {
      if (!before) next[k] = high[k]! - low[k]!;
      else {
        const middle = first + k - before.first;
        const last = min(middle + 1, before.low.length - 1);
        for (let j = max(0, middle - 1); j <= last; j++) through(k, before, j, reached[j]!, count + j);
      }
    }
    // Along the edge at one yaw, forward and back.
    for (let k = 1; k < count; k++) through(k, column, k - 1, next[k - 1]!, k - 1);
    for (let k = count - 2; k >= 0; k--) through(k, column, k + 1, next[k + 1]!, k + 1);
    columns.push(column);
    origins.push(origin);
    reached = next;
  }
  let at = 0;
  reached.forEach((value, k) => {
    if (value > reached[at]!) at = k;
  });
  const spare = reached[at]!;
  const way: (readonly [number, number])[] = [];
  for (let i = YAWS; i >= 0;) {
    const { first, low } = entryAt(columns, i);
    way.push([i, first + at]);
    const number = entryAt(origins, i)[at]!;
    if (number === NONE) break;
    at = number;
    if (number >= low.length) {
      at -= low.length;
      i--;
    }
  }
  return { spare, way: way.reverse() };
}

/** The places of the widest way; undefined where it is not free between two of them. */
function joined(edge: InnerEdge, slid: Slid): SlidPlace[] | undefined {
  const { spare, way } = widestWay(edge, slid);
  if (spare < 0) return undefined;
  const moves: Move[] = [];
  pairs(way).forEach(([[yaw, n], [next, m]]) => {
    const parts = Array.from({ length: PARTS + 1 }, (_, k) => k / PARTS);
    const stops = parts.map(
      (part) => [yawAt(yaw + (next - yaw) * part), APART * (n + (m - n) * part)] as const,
    );
    moves.push(moveThrough(edge, slid, stops));
  });
  if (moves.some(({ free }) => free < 0)) return undefined;
  const heights = moves.map(({ highest, free }) => highest + min(AIR, free / 2));
  return way.map(([yaw, n], i) => {
    const to = heights[i] ?? entryAt(heights, heights.length - 1);
    return { yaw: yawAt(yaw), past: APART * n, from: heights[i - 1] ?? to, to };
  });
}

/** A move at one height: the highest that what is below asks for on it, and what is free above. */
interface Move {
  readonly highest: number;
  readonly free: number;
}

function moveThrough(
  edge: InnerEdge,
  slid: Slid,
  stops: readonly (readonly [yaw: number, past: number])[],
): Move {
  let [highest, roof] = [-Infinity, Infinity];
  for (const [yaw, past] of stops) {
    const { least, most } = between(edge, slid, yaw);
    // The outer walls bow from the chord between two yaws.
    if (past < least - STRAYS / 2 || past > most + STRAYS / 2) return { highest, free: -1 };
    const heights = new Heights(edge, slid, yaw);
    heights.lookAt(past);
    const { low, high } = heights;
    highest = max(highest, low);
    roof = min(roof, high);
  }
  return { highest, free: roof - highest };
}

/** Between which heights its lower back corner may be at one yaw, place after place. */
class Heights {
  /** At the place looked at last [mm above the landing]. */
  low = 0;
  high = 0;
  private readonly c: number;
  private readonly s: number;
  private readonly p: number;
  private readonly tan: number;
  /** How far along it its lower back corner and its upper front corner are. */
  private readonly back: number;
  private readonly front: number;
  private readonly backHeight: number;
  private readonly top: number;
  private readonly q: number;

  constructor(
    private readonly edge: InnerEdge,
    slid: Slid,
    yaw: number,
  ) {
    const { u, v, q, tilt } = slid;
    const [ct, st] = [cos(tilt), sin(tilt)];
    this.c = cos(yaw);
    this.s = sin(yaw);
    this.p = u * ct + v * st;
    this.tan = st / ct;
    this.back = v * st;
    this.front = u * ct;
    this.backHeight = v * ct;
    this.top = u * st + v * ct;
    this.q = q;
  }

  /** With its middle so far beyond the edge. */
  lookAt(past: number): void {
    const { c, s, p, q, back, front } = this;
    const { slope, rise, headroom, ceiling } = this.edge;
    // So far along its inner side it passes the edge; so far along its outer side the landing begins and ends.
    const begins = past - p / 2;
    this.begins = begins;
    this.low = -Infinity;
    this.high = Infinity;
    const lowerEnd = min(p, -begins);
    const comes = c > SQUARE ? -begins - (q * s) / c : 0;
    const leaves = s > SQUARE ? -begins + (q * c) / s : p;
    if (lowerEnd > 0 && c > SQUARE) {
      // Over the lower flight the floor is highest at its outer side or the landing's edge, the ceiling lowest at its inner.
      this.onLower(0);
      this.onLower(clamp(back, 0, lowerEnd));
      this.onLower(clamp(comes, 0, lowerEnd));
      this.onLower(lowerEnd);
      const under = slope * c;
      this.roof(0, under * begins + headroom);
      const at = clamp(front, 0, lowerEnd);
      this.roof(at, under * (begins + at) + headroom);
      this.roof(lowerEnd, under * (begins + lowerEnd) + headroom);
    }
    const from = clamp(comes, 0, p);
    const to = clamp(leaves, 0, p);
    if (from <= to) {
      this.floor(clamp(back, from, to), 0);
      this.roof(clamp(front, from, to), ceiling);
    }
    const upperFrom = max(0, -begins);
    if (upperFrom < p && s > SQUARE) {
      // Over the upper flight the floor is highest at its inner side, the ceiling lowest at its outer or the edge.
      const up = slope * s;
      this.floor(upperFrom, rise + up * (begins + upperFrom));
      const at = clamp(back, upperFrom, p);
      this.floor(at, rise + up * (begins + at));
      this.floor(p, rise + up * (begins + p));
      this.underUpper(upperFrom, rise + headroom);
      this.underUpper(clamp(front, upperFrom, p), rise + headroom);
      this.underUpper(clamp(leaves, upperFrom, p), rise + headroom);
      this.underUpper(p, rise + headroom);
    }
  }

  /** Its inner side begins so far beyond the edge. */
  private begins = 0;

  private floor(along: number, height: number): void {
    const { back } = this;
    const under = along < back ? (back - along) / this.tan : (along - back) * this.tan;
    if (height - under > this.low) this.low = height - under;
  }

  private roof(along: number, height: number): void {
    const { front } = this;
    const over = along < front ? this.backHeight + along * this.tan : this.top - (along - front) / this.tan;
    if (height - over < this.high) this.high = height - over;
  }

  private onLower(along: number): void {
    this.floor(along, this.edge.slope * min(0, (this.begins + along) * this.c + this.q * this.s));
  }

  private underUpper(along: number, atEdge: number): void {
    this.roof(along, atEdge + this.edge.slope * max(0, (this.begins + along) * this.s - this.q * this.c));
  }
}

const clamp = (x: number, from: number, to: number): number => min(to, max(from, x));
