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
  /** Padding from which on no more is looked for [mm a side]; up to there it changes nothing. */
  readonly enough?: number;
  /** What is shown otherwise [mm a side]: a motion that stays far below it is left as it is. */
  readonly shown?: number;
  /** Places that may yet be looked at, counted down: the motions of one stage share it. */
  readonly budget?: { left: number };
}

/** Steps of padding [mm], each taken as often as it succeeds. */
const STEPS = [128, 64, 32, 16, 8, 4, 2, 1, 0.5];
/** Step of padding down to which it is widened first [mm]. */
const COARSE = 16;
/** What then stays so far below what is shown otherwise does not beat it in smaller steps [mm a side]. */
const FAR = 40;
/** What little margins add is less than this [mm]: they are not tried where that would not beat what is shown. */
const CLOSE = 8;
/**
 * How far off what is near the places are pushed [mm], the next where the one before does not succeed: far first, so that
 * they come to the middle of the air and less hangs on where they began.
 */
const MARGINS: readonly number[] = [80, 40, 20, 10];
/** The same once these succeed no more: where it is close on two sides, so much is not to be had on both. */
const CLOSE_MARGINS: readonly number[] = [4, 1.5];
/** Share of the difference to its neighbours' mean that a place's displacement gives up. */
const SMOOTHED = 0.3;
/** Rounds of pushing one place. */
const PUSHES = 12;
/** How often a move that is not free is halved, its middle pushed off. */
const HALVINGS = 4;
/** Places that are kept, needless or not, so that there is something to push. */
const KEPT = 12;
/** Most places of a motion. */
const MOST_PLACES = 80;

/**
 * Widens a motion as far as it goes without chance: padded a little more, every place is pushed off what it is
 * near to, moving and turning; the displacements are smoothed along the motion, and every move is shown free
 * again. The answer depends on the motion and the scene alone.
 *
 * @param motion free on its whole way for the piece padded by `from`
 * @returns the greatest padding shown [mm a side], and the motion that bears it; undefined where it is not free
 */
export function widenedMotion(
  checker: SpaceChecker,
  task: WideningTask,
  motion: Motion,
  from: number,
): { readonly padding: number; readonly motion: Motion } | undefined {
  checker.hold(paddedPiece(task.piece, from));
  const places = thinned(checker, motion.map(placeOf));
  return places && widenedFurther(checker, task, places, from);
}

/**
 * The same for a motion that is known to be free in a like scene only; undefined where it does not go here.
 * @param from padding to begin with [mm a side]
 */
export function widenedElsewhere(
  checker: SpaceChecker,
  task: WideningTask,
  motion: Motion,
  from: number,
): { readonly padding: number; readonly motion: Motion } | undefined {
  const places = widenedBy(checker, task, motion.map(placeOf), from, MARGINS, { along: 0 });
  return places && widenedFurther(checker, task, places, from);
}

function widenedFurther(
  checker: SpaceChecker,
  task: WideningTask,
  from: readonly Float64Array[],
  bears: number,
): { readonly padding: number; readonly motion: Motion } {
  let places = from;
  let padding = bears;
  const { budget = { left: Infinity }, enough = Infinity } = task;
  const tight: Tight = { along: 0 };
  let counted = checker.work;
  for (const margins of [MARGINS, CLOSE_MARGINS]) {
    const close = margins === CLOSE_MARGINS;
    for (const step of STEPS) {
      if (close && step > CLOSE) continue;
      if (step < COARSE && padding + (close ? CLOSE : FAR) < (task.shown ?? -Infinity)) break;
      while (padding < enough && padding + step <= task.most) {
        budget.left -= checker.work - counted;
        counted = checker.work;
        if (budget.left <= 0) break;
        const wider = widenedBy(checker, task, places, padding + step, margins, tight);
        if (!wider) break;
        padding += step;
        places = wider;
      }
    }
  }
  return { padding, motion: places.map(keyOf) };
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

/** The motion for more padding, or undefined where it does not go so. */
function widenedBy(
  checker: SpaceChecker,
  task: WideningTask,
  places: readonly Float64Array[],
  padding: number,
  margins: readonly number[],
  tight: Tight,
): Float64Array[] | undefined {
  checker.hold(paddedPiece(task.piece, padding));
  const { start, goal } = task.ends(padding);
  const last = places.length - 1;
  if (last < 1) return undefined;
  const first = alikeNear(start, places[0]!);
  const end = alikeNear(goal, places[last]!);
  if (!checker.placeFree(first, 0) || !checker.placeFree(end, 0)) return undefined;
  for (const margin of margins) {
    const smooth = allPushedFree(checker, places, first, end, margin, tight);
    if (!smooth) continue;
    const shown = joined(checker, smooth, margin);
    if (shown) return thinned(checker, shown);
  }
  return undefined;
}

/** Where along a motion, from 0 to 1, a place was last not free: most likely it is not there again. */
interface Tight {
  along: number;
}

/**
 * The places between the first and the last pushed off what they are near to, their displacements smoothed, and pushed
 * again; undefined where one of them is not free then, since no move leads to it. Most motions are refused for one place,
 * so that where it was last is looked at first, and no more places are pushed than that takes.
 */
function allPushedFree(
  checker: SpaceChecker,
  places: readonly Float64Array[],
  first: Float64Array,
  end: Float64Array,
  margin: number,
  tight: Tight,
): Float64Array[] | undefined {
  const last = places.length - 1;
  const pushed: Float64Array[] = [];
  pushed[0] = first;
  pushed[last] = end;
  const pushedAt = (i: number): Float64Array => {
    const known = pushed[i];
    if (known) return known;
    const x = Float64Array.from(places[i]!);
    checker.pushApart(x, 0, PUSHES, margin);
    return (pushed[i] = x);
  };
  const ways: Float64Array[] = [];
  ways[0] = first;
  ways[last] = end;
  const from = min(last - 1, max(1, floor(tight.along * last)));
  for (let step = 0; step < last - 1; step++) {
    const i = 1 + ((from - 1 + step) % (last - 1));
    const x = smoothed(places, i, pushedAt);
    checker.pushApart(x, 0, PUSHES, margin);
    if (!checker.placeFree(x, 0)) {
      tight.along = (i + 0.5) / last;
      return undefined;
    }
    ways[i] = x;
  }
  return ways;
}

/** A place with its displacement drawn towards the mean of its neighbours'. */
function smoothed(
  before: readonly Float64Array[],
  i: number,
  after: (i: number) => Float64Array,
): Float64Array {
  const y = new Float64Array(7);
  const [previous, own, next] = [after(i - 1), after(i), after(i + 1)];
  for (let k = 0; k < 7; k++) {
    const move = own[k]! - before[i]![k]!;
    const beside = (previous[k]! - before[i - 1]![k]! + (next[k]! - before[i + 1]![k]!)) / 2;
    y[k] = before[i]![k]! + move + SMOOTHED * (beside - move);
  }
  unit(y);
  return y;
}

/** The places with every move between shown free; where one is not, its middle is pushed off and stands between. */
function joined(
  checker: SpaceChecker,
  places: readonly Float64Array[],
  margin: number,
): Float64Array[] | undefined {
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
  for (let i = 0; i + 1 < places.length; i++)
    if (!join(places[i]!, places[i + 1]!, HALVINGS)) return undefined;
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
