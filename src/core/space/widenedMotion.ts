import { paddedPiece, type PieceSize } from '../measures/piece';
import { keyOf, placeOf, type KeyAttitude, type Motion } from './motion';
import { alikeTurns, likeness } from './quaternion';
import type { SpaceChecker } from './spaceChecker';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, floor, max, min, sqrt } = Math;

/** What is asked of a motion that is to be widened. */
export interface WideningTask {
  /** Where it begins and ends, for a padding. */
  readonly ends: (padding: number) => { readonly start: KeyAttitude; readonly goal: KeyAttitude };
  readonly piece: PieceSize;
  /** No more padding than this is asked for [mm a side]. */
  readonly most: number;
  /** Places that may yet be looked at, counted down: the motions of one stage share it. */
  readonly budget?: { left: number };
}

/** A motion that is free on its whole way, with the padding that it bears. */
export interface WidenedMotion {
  /** [mm a side] */
  readonly padding: number;
  readonly motion: Motion;
}

/** A round of widening: how far off what is near the places are pushed, and who goes on to the next. */
interface Round {
  /** [mm] */
  readonly margin: number;
  /** Who bears so much less than the widest after it is given up [mm a side]: so far behind hardly one was seen to win. */
  readonly behind: number;
  /** Nor does it gain so much more, where something is shown otherwise [mm a side]. */
  readonly gains: number;
}

/**
 * Far first, so that the places come to the middle of the air and less hangs on where they began; then nearer, where
 * it is close on two sides and so much is not to be had on both. Who was the widest in the end had been behind after these
 * rounds by no more than 54, 20, 10, 5, 2.2 and 0.8 mm in 95 of 100, of 240 seeded stages with like margins.
 */
const ROUNDS: readonly Round[] = [
  { margin: 200, behind: 130, gains: 300 },
  { margin: 80, behind: 35, gains: 60 },
  { margin: 40, behind: 18, gains: 40 },
  { margin: 20, behind: 12, gains: 20 },
  { margin: 10, behind: 5, gains: 12 },
  { margin: 4, behind: 3, gains: 4 },
  { margin: 1.5, behind: 0, gains: 0 },
];
/** The widest goes through the nearer rounds again, while it gains [mm]. */
const POLISHED = 20;
/** How often. */
const MOST_POLISHES = 2;
/** A gain below this is not looked for [mm a side]. */
const LEAST_GAIN = 0.3;
/** A round is gone through again while it gains so much of its margin. */
const WORTH_ANOTHER = 0.25;
/** Where moves between places bear less than the places, so much of the gain is tried, one after the other. */
const SHARES: readonly number[] = [1, 0.5, 0.25];
/** Where so few motions are known, each may have to be the widest, and its rounds may put a place more. */
const FEW = 4;
/** Places that a round may then put where a move bears less than its ends, so that there is something to push. */
const PLACES_MORE = 1;
/** The same where the widest is gone over again. */
const MOST_BETWEEN = 2;
/** Margins from which a motion known elsewhere is begun [mm]. */
const BEGUN_MARGINS: readonly number[] = [80, 40, 20, 10];
/** Share of the difference to its neighbours' mean that a place's displacement gives up. */
const SMOOTHED = 0.3;
/** Times one place is pushed. */
const PUSHES = 12;
/** How often a move that is not free is halved, its middle pushed off. */
const HALVINGS = 4;
/** Places that are kept, needless or not, so that there is something to push. */
const KEPT = 12;
/** Most places of a motion. */
const MOST_PLACES = 80;

/** A motion on its way to be wider. */
interface Widening {
  padding: number;
  places: readonly Float64Array[];
}

/**
 * Widens motions as far as they go without chance, and answers with the widest: every place is pushed off what it is
 * near to, moving and turning, the displacements smoothed along the motion; so much padding as the places bear then is
 * put on, and every move shown free again. All motions go through a round before any goes on to the next, and those far
 * behind are given up. The answer depends on the motions and the scene alone.
 *
 * @param known motions, each with padding [mm a side] that it bears on its whole way; those that do not are left out
 * @param shown what is shown otherwise [mm a side]: what will not beat it is given up
 * @returns undefined where none of them is free
 */
export function widestMotionOf(
  checker: SpaceChecker,
  task: WideningTask,
  known: readonly { readonly motion: Motion; readonly from: number }[],
  shown = -Infinity,
): WidenedMotion | undefined {
  const begun: Widening[] = [];
  for (const { motion, from } of known) {
    checker.hold(paddedPiece(task.piece, from));
    const places = thinned(checker, motion.map(placeOf));
    if (places) begun.push({ padding: from, places });
  }
  let going = begun;
  for (const { margin, behind, gains } of ROUNDS) {
    for (const one of going) {
      widenRound(checker, task, one, margin, known.length <= FEW ? PLACES_MORE : 0);
      // No other can be wider.
      if (one.padding > task.most - LEAST_GAIN)
        return { padding: one.padding, motion: one.places.map(keyOf) };
    }
    const least = max(greatestPadding(going) - behind, shown - gains);
    going = going.filter(({ padding }) => padding >= least);
  }
  const best = begun.find(({ padding }) => padding === greatestPadding(begun));
  if (!best) return undefined;
  if (best.padding >= shown - POLISHED) polish(checker, task, best);
  return { padding: best.padding, motion: best.places.map(keyOf) };
}

const greatestPadding = (all: readonly Widening[]): number =>
  all.reduce((most, { padding }) => max(most, padding), -Infinity);

function polish(checker: SpaceChecker, task: WideningTask, widening: Widening): void {
  for (let time = 0; time < MOST_POLISHES; time++) {
    const before = widening.padding;
    for (const { margin } of ROUNDS)
      if (margin <= POLISHED) widenRound(checker, task, widening, margin, MOST_BETWEEN);
    if (widening.padding < before + LEAST_GAIN) return;
  }
}

/** A motion that is known in a like scene, between its own ends, if it is free here with the most padding as it is; undefined where it is not. */
export function freeElsewhere(checker: SpaceChecker, task: WideningTask, motion: Motion): Motion | undefined {
  const { start, goal } = task.ends(task.most);
  const places = motion.map(placeOf);
  const last = places.length - 1;
  if (last < 1) return undefined;
  places[0] = alikeNear(start, places[0]!);
  places[last] = alikeNear(goal, places[last]!);
  checker.hold(paddedPiece(task.piece, task.most));
  const free = places.every((place, i) => i === last || checker.moveFree(place, 0, places[i + 1]!, 0));
  return free ? places.map(keyOf) : undefined;
}

/**
 * What a motion that is known to be free in a like scene only bears here; undefined where it does not go.
 * @param from padding to begin with [mm a side]
 */
export function widenedElsewhere(
  checker: SpaceChecker,
  task: WideningTask,
  motion: Motion,
  from: number,
): WidenedMotion | undefined {
  const places = motion.map(placeOf);
  checker.hold(paddedPiece(task.piece, from));
  for (const margin of BEGUN_MARGINS) {
    const pushed = allPushed(checker, task, places, from, margin);
    if (!pushed?.every((x) => checker.placeFree(x, 0))) continue;
    const shown = joined(checker, pushed, margin);
    const begun = typeof shown === 'number' ? undefined : thinned(checker, shown);
    if (!begun) continue;
    const widening = { padding: from, places: begun };
    for (const round of ROUNDS) widenRound(checker, task, widening, round.margin, PLACES_MORE);
    return { padding: widening.padding, motion: widening.places.map(keyOf) };
  }
  return undefined;
}

/** Pushes the places so far off what they are near to and puts on the padding that they bear, while that gains. */
function widenRound(
  checker: SpaceChecker,
  task: WideningTask,
  widening: Widening,
  margin: number,
  mostBetween: number,
): void {
  const { budget = { left: Infinity } } = task;
  let places = mostBetween;
  for (;;) {
    const most = task.most - widening.padding;
    if (most < LEAST_GAIN || budget.left <= 0) return;
    const counted = checker.work;
    const { gain, narrow } = widenOnce(checker, task, widening, margin, most);
    budget.left -= checker.work - counted;
    if (gain >= WORTH_ANOTHER * margin) continue;
    if (narrow === undefined || places-- === 0) return;
    widening.places = withPlaceAfter(widening.places, narrow);
  }
}

/** With a place more midway on a move, so that there is something to push where it is narrow. */
function withPlaceAfter(places: readonly Float64Array[], move: number): Float64Array[] {
  return places.flatMap((place, i) => (i === move ? [place, between(place, places[i + 1]!)] : [place]));
}

interface Widened {
  /** What was gained [mm a side], 0 where nothing is. */
  readonly gain: number;
  /** Where nothing is although the places bear more: the move that does not. */
  readonly narrow?: number | undefined;
}

function widenOnce(
  checker: SpaceChecker,
  task: WideningTask,
  widening: Widening,
  margin: number,
  most: number,
): Widened {
  const { padding, places } = widening;
  checker.hold(paddedPiece(task.piece, padding));
  const pushed = allPushed(checker, task, places, padding, margin);
  if (!pushed) return { gain: 0 };
  const last = pushed.length - 1;
  let room = most;
  for (let i = 1; i < last && room >= LEAST_GAIN; i++) room = checker.placeRoom(pushed[i]!, 0, room);
  let narrow: number | undefined;
  for (const share of SHARES) {
    const gain = room * share;
    if (gain < LEAST_GAIN) break;
    checker.hold(paddedPiece(task.piece, padding + gain));
    const { start, goal } = task.ends(padding + gain);
    pushed[0] = alikeNear(start, pushed[0]!);
    pushed[last] = alikeNear(goal, pushed[last]!);
    if (!checker.placeFree(pushed[0], 0) || !checker.placeFree(pushed[last], 0)) continue;
    const shown = joined(checker, pushed, margin);
    if (typeof shown === 'number') {
      narrow = shown;
      continue;
    }
    const wider = thinned(checker, shown);
    if (!wider) continue;
    widening.padding = padding + gain;
    widening.places = wider;
    return { gain };
  }
  return { gain: 0, narrow };
}

/**
 * The places between the first and the last pushed off what they are near to, their displacements smoothed, and pushed
 * again; undefined where there is nothing between.
 */
function allPushed(
  checker: SpaceChecker,
  task: WideningTask,
  places: readonly Float64Array[],
  padding: number,
  margin: number,
): Float64Array[] | undefined {
  const last = places.length - 1;
  if (last < 1) return undefined;
  const { start, goal } = task.ends(padding);
  const once = places.map((place, i) => {
    if (i === 0) return alikeNear(start, place);
    if (i === last) return alikeNear(goal, place);
    const x = Float64Array.from(place);
    checker.pushApart(x, 0, PUSHES, margin);
    return x;
  });
  return once.map((own, i) => {
    if (i === 0 || i === last) return own;
    const x = smoothed(places, once, i);
    checker.pushApart(x, 0, PUSHES, margin);
    return x;
  });
}

/** Leaves out places that a longer free move makes needless; undefined where a move is not free. */
function thinned(checker: SpaceChecker, places: readonly Float64Array[]): Float64Array[] | undefined {
  const kept: Float64Array[] = [];
  const longest = max(1, floor((places.length - 1) / KEPT));
  let i = 0;
  let stride = 1;
  for (const first of places.slice(0, 1)) kept.push(first);
  while (i + 1 < places.length) {
    stride = min(2 * stride, longest, places.length - 1 - i);
    while (stride > 0 && !checker.moveFree(places[i]!, 0, places[i + stride]!, 0)) stride >>= 1;
    if (stride === 0) return undefined;
    i += stride;
    kept.push(places[i]!);
  }
  return kept;
}

/** A place with its displacement drawn towards the mean of its neighbours'. */
function smoothed(before: readonly Float64Array[], after: readonly Float64Array[], i: number): Float64Array {
  const y = new Float64Array(7);
  const [previous, own, next] = [after[i - 1]!, after[i]!, after[i + 1]!];
  for (let k = 0; k < 7; k++) {
    const move = own[k]! - before[i]![k]!;
    const beside = (previous[k]! - before[i - 1]![k]! + (next[k]! - before[i + 1]![k]!)) / 2;
    y[k] = before[i]![k]! + move + SMOOTHED * (beside - move);
  }
  unit(y);
  return y;
}

/**
 * The places with every move between shown free; where one is not, its middle is pushed off and stands between. If that
 * does not do, the number of the move that is not free.
 */
function joined(
  checker: SpaceChecker,
  places: readonly Float64Array[],
  margin: number,
): Float64Array[] | number {
  const kept: Float64Array[] = [places[0]!];
  const join = (a: Float64Array, b: Float64Array, halvings: number): boolean => {
    if (checker.moveFree(a, 0, b, 0)) {
      kept.push(b);
      return kept.length <= MOST_PLACES;
    }
    if (halvings === 0) return false;
    const middle = between(a, b);
    checker.pushApart(middle, 0, PUSHES, margin);
    return join(a, middle, halvings - 1) && join(middle, b, halvings - 1);
  };
  for (let i = 0; i + 1 < places.length; i++) if (!join(places[i]!, places[i + 1]!, HALVINGS)) return i;
  return kept;
}

function between(a: Float64Array, b: Float64Array): Float64Array {
  const x = new Float64Array(7);
  const dot = a[3]! * b[3]! + a[4]! * b[4]! + a[5]! * b[5]! + a[6]! * b[6]!;
  for (let k = 0; k < 7; k++) x[k] = (a[k]! + b[k]! * (k > 2 && dot < 0 ? -1 : 1)) / 2;
  unit(x);
  return x;
}

function unit(x: Float64Array): void {
  const n = sqrt(x[3]! ** 2 + x[4]! ** 2 + x[5]! ** 2 + x[6]! ** 2);
  for (let k = 3; k < 7; k++) x[k]! /= n;
}

/** A place in whichever of the four attitudes in which a box looks the same is nearest to another's. */
function alikeNear({ at, turn }: KeyAttitude, to: Float64Array): Float64Array {
  const other = [to[3]!, to[4]!, to[5]!, to[6]!] as const;
  const nearest = alikeTurns(turn).reduce((s, t) =>
    abs(likeness(t, other)) > abs(likeness(s, other)) ? t : s,
  );
  const sign = likeness(nearest, other) < 0 ? -1 : 1;
  return Float64Array.of(...at, ...nearest.map((v) => v * sign));
}
