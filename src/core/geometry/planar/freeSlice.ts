import type { ConvexShape } from './convexShape';
import type { PlanarBox, Point } from './planarWorld';

/**
 * What a box leaves free of convex shapes, cut by upright lines into trapezoids, with its connected parts.
 * Between two lines xs[k], xs[k + 1] lie the gaps first[k] to first[k + 1] - 1, from below upwards.
 */
export interface FreeSlice {
  readonly xs: number[];
  readonly first: number[];
  readonly floorA: number[];
  readonly floorB: number[];
  readonly ceilA: number[];
  readonly ceilB: number[];
  /** The connected part of each gap, 0 to parts - 1. */
  readonly part: number[];
  readonly parts: number;
  /** A point inside each part. */
  readonly witness: Point[];
}

/** Crossings no farther apart than this are one [mm]. */
const TOUCH = 1e-9;
/** Beyond the box by so much [mm] nothing cuts it: above the rounding of a crossing. */
const OUTSIDE = 1 + 1e-6;

// Working numbers, used again by every slice, so that slices cost little garbage.
// Two lines a shape, and two of the box.
let yA = new Float64Array(66);
let yB = new Float64Array(66);
let owner = new Int32Array(66);
let lowAt = new Int32Array(32);
let upAt = new Int32Array(32);
let mid = new Float64Array(32);
let low = new Float64Array(128);
let order = new Int32Array(32);
let events = new Float64Array(256);

function makeRoom(shapes: number, corners: number): void {
  if (shapes > mid.length) {
    const room = 2 * shapes;
    yA = new Float64Array(2 * room + 2);
    yB = new Float64Array(2 * room + 2);
    owner = new Int32Array(2 * room + 2);
    lowAt = new Int32Array(room);
    upAt = new Int32Array(room);
    mid = new Float64Array(room);
    low = new Float64Array(4 * room);
    order = new Int32Array(room);
  }
  if (corners + 2 > events.length) events = new Float64Array(2 * corners + 2);
}

/**
 * Cuts the free area at every corner and crossing, so that within a strip each shape is bounded by one line
 * below and one above and their order stays.
 * @param shapes convex places that are not free [mm]
 * @param box where the middle of the piece may be [mm]
 * @returns the trapezoids that are left, and which of them hang together
 */
export function freeSlice(shapes: readonly ConvexShape[], box: PlanarBox): FreeSlice {
  const { xMin, xMax, yMin, yMax } = box;
  const used: ConvexShape[] = [];
  let corners = 0;
  for (const s of shapes) {
    const left = s.lowX[0]!;
    const right = s.lowX[s.lowX.length - 1]!;
    if (right <= xMin || left >= xMax) continue;
    used.push(s);
    corners += s.lowX.length + s.upX.length;
  }
  const k = used.length;
  makeRoom(k, corners);
  let cuts = 0;
  events[cuts++] = xMin;
  events[cuts++] = xMax;
  for (const { lowX, upX } of used) {
    for (let i = 0; i < lowX.length; i++) if (lowX[i]! > xMin && lowX[i]! < xMax) events[cuts++] = lowX[i]!;
    for (let i = 0; i < upX.length; i++) if (upX[i]! > xMin && upX[i]! < xMax) events[cuts++] = upX[i]!;
  }
  sortUpTo(events, cuts);

  // Crossings of the boundaries within each strip.
  lowAt.fill(0, 0, k);
  upAt.fill(0, 0, k);
  const above = yMax + OUTSIDE;
  const below = yMin - OUTSIDE;
  const xs: number[] = [xMin];
  for (let e = 0; e + 1 < cuts; e++) {
    const a = events[e]!;
    const b = events[e + 1]!;
    if (b - a <= TOUCH) continue;
    let lines = 2;
    yA[0] = yB[0] = yMin;
    yA[1] = yB[1] = yMax;
    owner[0] = owner[1] = -1;
    for (let i = 0; i < k; i++) {
      const { lowX, lowY, upX, upY } = used[i]!;
      if (lowX[0]! > a + TOUCH || lowX[lowX.length - 1]! < b - TOUCH) continue;
      lowAt[i] = advance(lowX, lowAt[i]!, a, b);
      upAt[i] = advance(upX, upAt[i]!, a, b);
      // A line outside the box crosses nothing in it.
      const lowA = height(lowX, lowY, lowAt[i]!, a);
      const lowB = height(lowX, lowY, lowAt[i]!, b);
      if (!((lowA > above && lowB > above) || (lowA < below && lowB < below))) {
        owner[lines] = i;
        yA[lines] = lowA;
        yB[lines++] = lowB;
      }
      const upA = height(upX, upY, upAt[i]!, a);
      const upB = height(upX, upY, upAt[i]!, b);
      if (!((upA > above && upB > above) || (upA < below && upB < below))) {
        owner[lines] = i;
        yA[lines] = upA;
        yB[lines++] = upB;
      }
    }
    const start = xs.length;
    for (let i = 0; i < lines; i++) {
      const iA = yA[i]!;
      const iB = yB[i]!;
      for (let j = i + 1; j < lines; j++) {
        const dA = iA - yA[j]!;
        const dB = iB - yB[j]!;
        if ((dA > 0 && dB < 0) || (dA < 0 && dB > 0)) {
          if (owner[i] === owner[j]) continue;
          // Crossings outside the box cut nothing.
          const t = dA / (dA - dB);
          const y = iA + (iB - iA) * t;
          if (y < yMin - 1 || y > yMax + 1) continue;
          xs.push(a + (b - a) * t);
        }
      }
    }
    sortFrom(xs, start);
    xs.push(b);
  }
  let write = 1;
  for (let i = 1; i < xs.length; i++) if (xs[i]! - xs[write - 1]! > TOUCH) xs[write++] = xs[i]!;
  xs.length = write;
  if (xs.length < 2) xs.push(xMax);

  const first: number[] = [0];
  const floorA: number[] = [];
  const floorB: number[] = [];
  const ceilA: number[] = [];
  const ceilB: number[] = [];
  const parent: number[] = [];
  const size: number[] = [];
  lowAt.fill(0, 0, k);
  upAt.fill(0, 0, k);
  for (let strip = 0; strip + 1 < xs.length; strip++) {
    const a = xs[strip]!;
    const b = xs[strip + 1]!;
    let among = 0;
    for (let i = 0; i < k; i++) {
      const { lowX, lowY, upX, upY } = used[i]!;
      if (lowX[0]! > a + TOUCH || lowX[lowX.length - 1]! < b - TOUCH) continue;
      lowAt[i] = advance(lowX, lowAt[i]!, a, b);
      upAt[i] = advance(upX, upAt[i]!, a, b);
      const lA = height(lowX, lowY, lowAt[i]!, a);
      const lB = height(lowX, lowY, lowAt[i]!, b);
      if (lA + lB >= 2 * yMax) continue;
      const uA = height(upX, upY, upAt[i]!, a);
      const uB = height(upX, upY, upAt[i]!, b);
      if (uA + uB <= 2 * yMin) continue;
      low[4 * i] = lA;
      low[4 * i + 1] = lB;
      low[4 * i + 2] = uA;
      low[4 * i + 3] = uB;
      mid[i] = lA + lB;
      let j = among++;
      while (j > 0 && mid[order[j - 1]!]! > mid[i]!) {
        order[j] = order[j - 1]!;
        j--;
      }
      order[j] = i;
    }
    let fA = yMin;
    let fB = yMin;
    const open = floorA.length;
    for (let n = 0; n <= among; n++) {
      // The lower side of the next shape, or the top of the box.
      const i = n < among ? order[n]! : -1;
      const cA = i < 0 ? yMax : low[4 * i]!;
      const cB = i < 0 ? yMax : low[4 * i + 1]!;
      if (cA + cB > fA + fB && cA + cB - fA - fB > 2 * TOUCH) {
        const g = floorA.length;
        floorA.push(fA);
        floorB.push(fB);
        ceilA.push(Math.max(fA, cA));
        ceilB.push(Math.max(fB, cB));
        parent.push(g);
        size.push((b - a) * (cA + cB - fA - fB));
      }
      if (i < 0) break;
      const uA = low[4 * i + 2]!;
      const uB = low[4 * i + 3]!;
      if (uA + uB > fA + fB) {
        fA = uA;
        fB = uB;
      }
    }
    // Join to the gaps of the strip before.
    const before = strip > 0 ? first[strip - 1]! : open;
    for (let i = before, j = open; i < open && j < floorA.length;) {
      const overlap = Math.min(ceilB[i]!, ceilA[j]!) - Math.max(floorB[i]!, floorA[j]!);
      if (overlap > TOUCH) {
        const ri = rootOf(parent, i);
        const rj = rootOf(parent, j);
        if (ri !== rj) parent[Math.max(ri, rj)] = Math.min(ri, rj);
      }
      if (ceilB[i]! < ceilA[j]!) i++;
      else j++;
    }
    first.push(floorA.length);
  }

  const part: number[] = [];
  const witness: Point[] = [];
  const largest: number[] = [];
  const number: number[] = [];
  let parts = 0;
  let strip = 0;
  for (let g = 0; g < floorA.length; g++) {
    while (first[strip + 1]! <= g) strip++;
    const r = rootOf(parent, g);
    number[r] ??= parts++;
    const n = number[r];
    part.push(n);
    if (!(size[g]! <= (largest[n] ?? -1))) {
      largest[n] = size[g]!;
      witness[n] = insideGap(xs[strip]!, xs[strip + 1]!, floorA[g]!, floorB[g]!, ceilA[g]!, ceilB[g]!);
    }
  }
  return { xs, first, floorA, floorB, ceilA, ceilB, part, parts, witness };
}

/** The middle of the wider half of a trapezoid (a triangle has its room at one end). */
function insideGap(a: number, b: number, fA: number, fB: number, cA: number, cB: number): Point {
  const left = cA - fA;
  const right = cB - fB;
  const t = left + right > 0 ? (left + 2 * right) / (3 * (left + right)) : 0.5;
  return [a + (b - a) * t, (fA + cA) / 2 + ((fB + cB - fA - cA) / 2) * t];
}

/** The first of the gaps that are joined to one; shortens the way to it. */
function rootOf(parent: number[], i: number): number {
  while (parent[i] !== i) i = parent[i] = parent[parent[i]!]!;
  return i;
}

/** Sorts the first of some numbers by insertion: they are few, and mostly in order. */
function sortUpTo(values: Float64Array, count: number): void {
  for (let i = 1; i < count; i++) {
    const v = values[i]!;
    let j = i;
    while (j > 0 && values[j - 1]! > v) {
      values[j] = values[j - 1]!;
      j--;
    }
    values[j] = v;
  }
}

function sortFrom(values: number[], start: number): void {
  for (let i = start + 1; i < values.length; i++) {
    const v = values[i]!;
    let j = i;
    while (j > start && values[j - 1]! > v) {
      values[j] = values[j - 1]!;
      j--;
    }
    values[j] = v;
  }
}

/** Steps along a chain to the side that spans the strip. */
function advance(xs: number[], at: number, a: number, b: number): number {
  const middle = (a + b) / 2;
  while (at + 2 < xs.length && xs[at + 1]! < middle) at++;
  return at;
}

function height(xs: number[], ys: number[], at: number, x: number): number {
  const x0 = xs[at]!;
  const x1 = xs[at + 1]!;
  return ys[at]! + ((ys[at + 1]! - ys[at]!) * (x - x0)) / (x1 - x0);
}

/**
 * The gap of a slice that holds a point.
 * @param x of the point [mm]
 * @param y of the point [mm]
 * @returns its number, or -1 where the point is not free
 */
function gapAt(slice: FreeSlice, x: number, y: number): number {
  const { xs, first, floorA, floorB, ceilA, ceilB } = slice;
  if (x < xs[0]! || x > xs[xs.length - 1]!) return -1;
  let lo = 0;
  let hi = xs.length - 2;
  while (lo < hi) {
    const m = (lo + hi + 1) >> 1;
    if (xs[m]! <= x) lo = m;
    else hi = m - 1;
  }
  const t = (x - xs[lo]!) / (xs[lo + 1]! - xs[lo]!);
  for (let g = first[lo]!; g < first[lo + 1]!; g++) {
    const floor = floorA[g]! + (floorB[g]! - floorA[g]!) * t;
    const ceil = ceilA[g]! + (ceilB[g]! - ceilA[g]!) * t;
    if (y >= floor && y <= ceil) return g;
  }
  return -1;
}

/**
 * The connected part of a slice that holds a point [mm].
 * @returns its number, or -1 where the point is not free
 */
export function partAt(slice: FreeSlice, [x, y]: Point): number {
  const g = gapAt(slice, x, y);
  return g < 0 ? -1 : slice.part[g]!;
}

/** A point of each part within a box, by part; parts that miss the box are absent. */
export function partsInBox(slice: FreeSlice, box: PlanarBox): Map<number, Point> {
  const found = new Map<number, Point>();
  const { xs, first, floorA, floorB, ceilA, ceilB, part } = slice;
  for (let k = 0; k + 1 < xs.length; k++) {
    const a = Math.max(xs[k]!, box.xMin);
    const b = Math.min(xs[k + 1]!, box.xMax);
    if (b < a) continue;
    for (let g = first[k]!; g < first[k + 1]!; g++) {
      if (found.has(part[g]!)) continue;
      // Where the gap, clipped at a and b, reaches into the box: looked at in the middle, at both ends and where it enters.
      const width = xs[k + 1]! - xs[k]!;
      const lines = [(a + b) / 2, a, b];
      for (const [yA, yB, edge] of [
        [floorA[g]!, floorB[g]!, box.yMax],
        [ceilA[g]!, ceilB[g]!, box.yMin],
      ] as const) {
        if (yB !== yA) lines.push(xs[k]! + ((edge - yA) / (yB - yA)) * width);
      }
      for (const x of lines) {
        if (x < a || x > b) continue;
        const t = (x - xs[k]!) / width;
        const low = Math.max(box.yMin, floorA[g]! + (floorB[g]! - floorA[g]!) * t);
        const high = Math.min(box.yMax, ceilA[g]! + (ceilB[g]! - ceilA[g]!) * t);
        if (low <= high) {
          found.set(part[g]!, [x, (low + high) / 2]);
          break;
        }
      }
    }
  }
  return found;
}

/** A way of straight moves between two points of one part; undefined when they lie in different parts. */
export function routeInSlice(slice: FreeSlice, from: Point, to: Point): Point[] | undefined {
  const start = gapAt(slice, from[0], from[1]);
  const goal = gapAt(slice, to[0], to[1]);
  if (start < 0 || goal < 0 || slice.part[start] !== slice.part[goal]) return undefined;
  const { xs, first, floorA, floorB, ceilA, ceilB } = slice;
  const strips: number[] = [];
  for (let k = 0; k + 1 < xs.length; k++) for (let g = first[k]!; g < first[k + 1]!; g++) strips.push(k);
  const cameFrom = new Map<number, { readonly gap: number; readonly at: Point }>();
  const queue = [start];
  const seen = new Set(queue);
  for (let head = 0; head < queue.length && !seen.has(goal); head++) {
    const g = queue[head]!;
    const k = strips[g]!;
    for (const side of [-1, 1]) {
      const other = k + side;
      if (other < 0 || other + 1 >= xs.length) continue;
      for (let h = first[other]!; h < first[other + 1]!; h++) {
        if (seen.has(h)) continue;
        const [l, r] = side < 0 ? [h, g] : [g, h];
        const low = Math.max(floorB[l]!, floorA[r]!);
        const high = Math.min(ceilB[l]!, ceilA[r]!);
        if (high - low <= TOUCH) continue;
        seen.add(h);
        cameFrom.set(h, { gap: g, at: [side < 0 ? xs[k]! : xs[k + 1]!, (low + high) / 2] });
        queue.push(h);
      }
    }
  }
  if (!seen.has(goal)) return undefined;
  const way: Point[] = [to];
  for (let g = goal; g !== start;) {
    const step = cameFrom.get(g)!;
    way.push(step.at);
    g = step.gap;
  }
  way.push(from);
  return way.reverse();
}
