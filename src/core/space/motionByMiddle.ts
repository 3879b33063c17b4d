import { keyOf, placeOf, turnOf, type KeyAttitude, type Motion } from './motion';
import { multiply, quaternionFromAxes, slerp, type Quaternion } from './quaternion';
import type { SpaceTask } from './spaceTask';
import type { SpaceChecker } from './spaceChecker';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, max, min, sqrt } = Math;

/** Jumps of the rough look at a turn. */
const JUMPS = 12;
/** Smallest part of a turn that is tried when larger ones don't go. */
const FINEST = 1 / 256;

/** Attitudes and places for the middle of a motion, where they are known beforehand. */
export interface LikelyMiddles {
  readonly turns: readonly Quaternion[];
  readonly least: readonly [number, number, number];
  readonly most: readonly [number, number, number];
}

/** Places drawn for one attitude before the next is tried. */
const SPOTS = 10;
/** So many times as many for a piece stood on end, as it mostly is for a turn (common practice, no source). */
const ON_END = 3;
/** Rounds after which the halves kept are given up. */
const RENEWED = 12;
/** Most halves of a motion kept for one attitude. */
const KEPT = 4;

/**
 * Looks for motions with one hardest attitude in the middle. For a row of likely attitudes (half way between
 * start and goal; square to the room in each pose; then those turned by chance) it draws places, pushes the
 * piece out of what it stands in, and turns it from there back to the start's attitude and on to the goal's,
 * standing still or drifting towards the end, each time pushed out of what it meets; then carries it to
 * start and goal. Halves that stand apart in the same attitude are joined without turning.
 *
 * At a right-angled corner with full-height walls the free places of one attitude are connected, so there a
 * motion is found almost whenever the attitudes between allow one; on landings the piece is for a moment
 * wholly between the flights, which makes that moment's attitude the natural middle.
 * @param work places that may be looked at [count]
 * @returns null where none is found, which proves nothing
 */
export function motionByMiddle(
  task: SpaceTask,
  checker: SpaceChecker,
  next: () => number,
  work: number,
  likely?: LikelyMiddles,
): Motion | null {
  const limit = checker.work + work;
  const start = placeOf(task.start);
  const goal = placeOf(task.goal);
  const starts = alikes(task.start, task.start);
  const goals = alikes(task.goal, task.start);
  const middles = likely?.turns ?? [...goals.map((g) => slerp(turnOf(start), turnOf(g), 0.5)), ...SQUARE];
  const back: Float64Array[][][] = middles.map(() => []);
  const on: Float64Array[][][] = middles.map(() => []);
  const x = new Float64Array(7);
  for (let round = 0; checker.work < limit; round++) {
    const spread = round % 2 === 0 ? 600 : 1500;
    // Afresh now and then: halves kept in a dead end draw the search to them.
    if (round % RENEWED === 0) for (let m = 0; m < middles.length; m++) back[m]!.length = on[m]!.length = 0;
    for (let m = 0; m < middles.length && checker.work < limit; m++) {
      let middle = middles[m]!;
      let [backs, ons] = [back[m]!, on[m]!];
      if (round % 3 === 2) {
        middle = nearBy(middle, next);
        [backs, ons] = [[], []];
      }
      const spots = likely === undefined && onEnd(middle) ? ON_END * SPOTS : SPOTS;
      for (
        let t = 0;
        t < spots * (backs.length > 0 !== ons.length > 0 ? 4 : 1) && checker.work < limit;
        t++
      ) {
        // Where one half was found the other is likeliest.
        const side = next() < 0.5;
        const found = side ? backs : ons;
        const near = found.length > 0 && next() < 0.7 ? found[(next() * found.length) | 0]![0]! : null;
        const wide = next() < 0.5 ? 400 : 1000;
        for (let k = 0; k < 3; k++) {
          if (near !== null) x[k] = near[k]! + (next() * 2 - 1) * wide;
          else {
            const low = likely?.least[k] ?? max(task.least[k]!, min(start[k]!, goal[k]!) - spread);
            const high = likely?.most[k] ?? min(task.most[k]!, max(start[k]!, goal[k]!) + spread);
            x[k] = low + (high - low) * next();
          }
        }
        x.set(middle, 3);
        if (!checker.pushOut(x, 0, 12, 0.5) || !within(task, x)) continue;
        const drift = next() < 0.5 ? 0 : 900 * next();
        // In some rounds only places from which both turns look possible: where there are any they are soon found.
        if (likely === undefined && (round < 4 ? round % 2 === 0 : round % 8 === 0)) {
          const looks = (ends: readonly Float64Array[]): boolean =>
            ends.some(
              (end) =>
                roughly(checker, x, turnOf(end)) ||
                (drift > 0 && roughly(checker, x, turnOf(end), drifting(x, ends, drift))),
            );
          if (!looks(starts) || !looks(goals)) continue;
        }
        // Near a half that is known only the other is looked for.
        const b = near === null || !side ? toEnd(checker, task, x, starts, drift) : null;
        const o = near === null || side ? toEnd(checker, task, x, goals, drift) : null;
        if (b === null && o === null) continue;
        const first = b ?? nearestHalf(backs, x);
        const second = o ?? nearestHalf(ons, x);
        if (first !== null && second !== null) {
          const motion = joined(checker, task, first, second);
          if (motion !== null) return motion;
        }
        if (b !== null) keep(backs, b, next);
        if (o !== null) keep(ons, o, next);
      }
    }
  }
  return null;
}

/** The half that begins nearest to a place. */
function nearestHalf(halves: readonly Float64Array[][], x: Float64Array): Float64Array[] | null {
  let least = Infinity;
  let nearest: Float64Array[] | null = null;
  for (const half of halves) {
    const p = half[0]!;
    const d = (p[0]! - x[0]!) ** 2 + (p[1]! - x[1]!) ** 2 + (p[2]! - x[2]!) ** 2;
    if (d < least) {
      least = d;
      nearest = half;
    }
  }
  return nearest;
}

/** Keeps a few halves, new ones in place of old ones by chance. */
function keep(halves: Float64Array[][], half: Float64Array[], next: () => number): void {
  if (halves.length < KEPT) halves.push(half);
  else halves[(next() * KEPT) | 0] = half;
}

/** The six poses square to the room: length along x, y or z, and each of the other two ways up. */
const SQUARE: readonly Quaternion[] = [
  quaternionFromAxes([0, 0, 1], [0, 1, 0], [-1, 0, 0]),
  quaternionFromAxes([0, 0, 1], [1, 0, 0], [0, 1, 0]),
  quaternionFromAxes([0, 1, 0], [0, 0, 1], [1, 0, 0]),
  quaternionFromAxes([1, 0, 0], [0, 0, 1], [0, -1, 0]),
  quaternionFromAxes([0, 1, 0], [-1, 0, 0], [0, 0, 1]),
  quaternionFromAxes([1, 0, 0], [0, 1, 0], [0, 0, 1]),
];

/** Whether the length stands within some 25 degrees of upright. */
const onEnd = ([w, x, y, z]: Quaternion): boolean => abs(2 * (x * z - w * y)) > 0.9;

/** An attitude turned a little by chance. */
function nearBy(q: Quaternion, next: () => number): Quaternion {
  const r: Quaternion = [1, next() - 0.5, next() - 0.5, next() - 0.5];
  const n = sqrt(1 + r[1] ** 2 + r[2] ** 2 + r[3] ** 2);
  return multiply(q, [1 / n, r[1] / n, r[2] / n, r[3] / n]);
}

function within(task: SpaceTask, x: Float64Array): boolean {
  for (let k = 0; k < 3; k++) if (x[k]! < task.least[k]! || x[k]! > task.most[k]!) return false;
  return true;
}

/** A drift of so many mm from x towards the ends. */
function drifting(x: Float64Array, ends: readonly Float64Array[], drift: number): number[] {
  const d = [0, 1, 2].map((k) => ends[0]![k]! - x[k]!);
  const far = sqrt(d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2) + 1e-9;
  return d.map((v) => (v / far) * drift);
}

/** From place x to one of the ends that look alike; null when none is reached. */
function toEnd(
  checker: SpaceChecker,
  task: SpaceTask,
  x: Float64Array,
  ends: readonly Float64Array[],
  drift: number,
): Float64Array[] | null {
  const way = drifting(x, ends, drift);
  for (const alike of ends) {
    const places = turnTo(checker, x, turnOf(alike), way);
    if (places === null || !carryTo(checker, places, alike)) continue;
    if (places.every((p) => within(task, p))) return places;
  }
  return null;
}

/** Joins two halves that begin in the same attitude, at the same place or at another. */
function joined(
  checker: SpaceChecker,
  task: SpaceTask,
  back: readonly Float64Array[],
  on: readonly Float64Array[],
): Motion | null {
  const bridge = [back[0]!];
  if (back[0]!.some((v, k) => v !== on[0]![k]) && !carryTo(checker, bridge, on[0]!)) return null;
  if (!bridge.every((p) => within(task, p))) return null;
  return [...[...back].reverse(), ...bridge.slice(1), ...on.slice(1)].map(keyOf);
}

/**
 * Turns the piece from place x to an attitude, pushed off what it meets on the way.
 * @param x the centre [mm] and the attitude, as the checker takes them
 * @param drift by how much the centre moves meanwhile [mm]; it stands still where that is absent
 * @returns the places on the way; null where it cannot be turned so
 */
export function turnTo(
  checker: SpaceChecker,
  x: Float64Array,
  to: Quaternion,
  drift?: readonly number[],
): Float64Array[] | null {
  const from = turnOf(x);
  const places = [Float64Array.from(x)];
  const y = new Float64Array(7);
  // First a rough look: most tries end here.
  if (!roughly(checker, x, to, drift)) return null;
  let done = 0;
  let step = 1 / 16;
  while (done < 1) {
    const aim = min(1, done + step);
    const last = places[places.length - 1]!;
    y.set(last);
    y.set(slerp(from, to, aim), 3);
    if (drift) for (let k = 0; k < 3; k++) y[k]! += drift[k]! * (aim - done);
    if (checker.pushOut(y, 0, 12, 16 * step * 0.5) && checker.moveFree(last, 0, y, 0)) {
      places.push(Float64Array.from(y));
      done = aim;
      step = min(1 / 16, step * 2);
    } else {
      step /= 2;
      if (step < FINEST) return null;
    }
  }
  return places;
}

/** Whether the turn goes when looked at in jumps only. */
function roughly(checker: SpaceChecker, x: Float64Array, to: Quaternion, drift?: readonly number[]): boolean {
  const from = turnOf(x);
  const y = Float64Array.from(x);
  for (let jump = 1; jump <= JUMPS; jump++) {
    y.set(slerp(from, to, jump / JUMPS), 3);
    if (drift) for (let k = 0; k < 3; k++) y[k]! += drift[k]! / JUMPS;
    if (!checker.pushOut(y, 0, 12, 1)) return false;
  }
  return true;
}

/**
 * Carries the piece without turning from the last of the places to the aim: straight, or pushed round things. The places on
 * the way are added to the list.
 * @returns whether it came there
 */
export function carryTo(checker: SpaceChecker, places: Float64Array[], aim: Float64Array): boolean {
  const y = new Float64Array(7);
  for (let n = 0; n < 40; n++) {
    const last = places[places.length - 1]!;
    if (checker.moveFree(last, 0, aim, 0)) {
      places.push(Float64Array.from(aim));
      return true;
    }
    const d = [0, 1, 2].map((k) => aim[k]! - last[k]!);
    const far = sqrt(d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2);
    y.set(last);
    for (let k = 0; k < 3; k++) y[k]! += d[k]! * min(1, 120 / far);
    if (!checker.pushOut(y, 0, 12, 0.5)) return false;
    const left = sqrt((aim[0]! - y[0]!) ** 2 + (aim[1]! - y[1]!) ** 2 + (aim[2]! - y[2]!) ** 2);
    if (left > far - 5 || !checker.moveFree(last, 0, y, 0)) return false;
    places.push(Float64Array.from(y));
  }
  return false;
}

/** The four attitudes in which the box looks like the goal, the nearest to the start first. */
function alikes(goal: KeyAttitude, start: KeyAttitude): Float64Array[] {
  const [w, a, b, c] = goal.turn;
  const turns: Quaternion[] = [
    [w, a, b, c],
    [a, -w, -c, b],
    [b, c, -w, -a],
    [c, -b, a, -w],
  ];
  const near = (t: Quaternion): number => abs(t.reduce((sum, v, k) => sum + v * start.turn[k]!, 0));
  return turns.sort((s, t) => near(t) - near(s)).map((turn) => Float64Array.of(...goal.at, ...turn));
}
