/** A point of a line in the upright section along a way [mm]. */
type Spot = readonly [x: number, z: number];

/** A way in its upright section: all is solid below the floor's line and above the ceiling's, from its first x to its last. */
export interface WaySection {
  /** From left to right; two spots at one x: a step. */
  readonly floor: readonly Spot[];
  readonly ceiling: readonly Spot[];
}

/** Steps of the search [mm], [rad]. */
const ALONG = 25;
const TURN = Math.PI / 180;

/** A rectangle turned by an angle: its corners about its middle. */
function cornersOf(u: number, v: number, angle: number): Spot[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a, b]): Spot => [(a! * u * c - b! * v * s) / 2, (a! * u * s + b! * v * c) / 2]);
}

/** Height of a line at an x, by the spots just left of it and just right of it. */
function heightsAt(line: readonly Spot[], x: number): number[] {
  const found: number[] = [];
  for (let k = 0; k + 1 < line.length; k++) {
    const [a, b] = [line[k]!, line[k + 1]!];
    if (b[0] === a[0]) {
      if (x === a[0]) found.push(a[1], b[1]);
    } else if (x >= a[0] && x <= b[0]) found.push(a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]));
  }
  return found;
}

/** Lower (or upper) boundary of a convex figure at an x within it. */
function boundary(corners: readonly Spot[], x: number, upper: boolean): number | undefined {
  let best: number | undefined;
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length]!;
    if (x < Math.min(a[0], b[0]) || x > Math.max(a[0], b[0])) return;
    const zs = a[0] === b[0] ? [a[1], b[1]] : [a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
    for (const z of zs) if (best === undefined || (upper ? z > best : z < best)) best = z;
  });
  return best;
}

/**
 * Whether a rectangle passes a way in its upright section, in plane motion, from standing clear at its left end to its
 * right: every place along it and every angle is looked at, by the range of heights that it can have there, and ranges
 * of neighbouring places that overlap are joined. It shares nothing with the project.
 *
 * Between neighbours no point moves farther than some `ALONG` + `TURN` u / 2, so what is asked about a rectangle so much
 * larger all round is shown for the rectangle itself: `ROUNDED`.
 */
export function passesSection(way: WaySection, u: number, v: number, from: number, to: number): boolean {
  const angles = Math.round(Math.PI / TURN);
  const across = Math.floor((to - from) / ALONG);
  const shapes = Array.from({ length: angles }, (_, n) => {
    const corners = cornersOf(u, v, n * TURN - Math.PI / 2);
    return { corners, reach: Math.max(...corners.map(([x]) => x)) };
  });
  const [left, right] = [way.floor[0]![0], way.floor[way.floor.length - 1]![0]];
  const ranges = new Map<number, readonly [number, number] | undefined>();
  const rangeAt = (i: number, n: number): readonly [number, number] | undefined => {
    const key = i * angles + n;
    if (ranges.has(key)) return ranges.get(key);
    const { corners, reach } = shapes[n]!;
    const x = from + i * ALONG;
    let range: readonly [number, number] | undefined;
    if (x - reach >= left && x + reach <= right) {
      let [low, high] = [-Infinity, Infinity];
      const looked = [
        ...corners.map(([dx]) => dx),
        ...way.floor.map(([at]) => at - x),
        ...way.ceiling.map(([at]) => at - x),
      ].filter((dx) => Math.abs(dx) <= reach);
      for (const dx of looked) {
        const under = boundary(corners, dx, false);
        const over = boundary(corners, dx, true);
        if (under !== undefined) for (const z of heightsAt(way.floor, x + dx)) low = Math.max(low, z - under);
        if (over !== undefined)
          for (const z of heightsAt(way.ceiling, x + dx)) high = Math.min(high, z - over);
      }
      if (low <= high) range = [low, high];
    }
    ranges.set(key, range);
    return range;
  };
  const seen = new Set<number>();
  const stack: number[] = [];
  for (let n = 0; n < angles; n++) if (rangeAt(0, n)) stack.push(n);
  for (const key of stack) seen.add(key);
  while (stack.length > 0) {
    const key = stack.pop()!;
    const [i, n] = [Math.floor(key / angles), key % angles];
    if (i === across) return true;
    const here = rangeAt(i, n)!;
    for (const [j, m] of [
      [i + 1, n],
      [i - 1, n],
      [i, (n + 1) % angles],
      [i, (n + angles - 1) % angles],
    ] as const) {
      if (j < 0 || j > across) continue;
      const other = j * angles + m;
      if (seen.has(other)) continue;
      const there = rangeAt(j, m);
      if (!there || there[0] > here[1] || there[1] < here[0]) continue;
      seen.add(other);
      stack.push(other);
    }
  }
  return false;
}

/** So much larger all round [mm] a rectangle has to be asked about, that a motion is shown for one with a side of u. */
export const roundedUp = (u: number): number => ALONG / 2 + (TURN * u) / 4 + 1;
