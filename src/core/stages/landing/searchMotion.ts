import { paddedPiece, type PieceSize, type Pose } from '../../measures/piece';
import { motionByMiddle, type LikelyMiddles } from '../../space/motionByMiddle';
import { seededStream } from '../../space/seededStream';
import { SpaceChecker } from '../../space/spaceChecker';
import { raiseAt, raiseOfMotion, type Ground } from '../../space/raiseOfMotion';
import { rotate, type Quaternion } from '../../space/quaternion';
import type { KeyAttitude, Motion } from '../../space/motion';
import type { FoundMotion } from '../../motion/answerOfMotion';
import type { NamedBox } from './stairScene';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, max, min, sqrt } = Math;

/** A stair's turning place as a task in space. */
export interface SearchTask {
  readonly obstacles: readonly NamedBox[];
  readonly least: readonly [number, number, number];
  readonly most: readonly [number, number, number];
  /** Where the piece is held before and after, for a padding. */
  readonly ends: (padding: number) => { readonly start: KeyAttitude; readonly goal: KeyAttitude };
  readonly middles: LikelyMiddles;
  /** Padding at which the piece just fits the flights as it is held. */
  readonly mostPadding: number;
  /** Floors, treads and lines of nosings below the piece; a handrail is none. */
  readonly grounds: readonly Ground[];
  /** The same with full-height walls in place of a handrail; absent where there is no handrail. */
  readonly walls?: readonly NamedBox[];
}

/** How finely a padding is searched for [mm], before the motion found is widened. */
const SEARCHED = 6;
/** How much less padding other motions are begun with, to be widened past the first [mm]. */
const OTHERS = 20;
/** Steps of padding in which a motion is widened [mm]. */
const WIDENED: Widening = { steps: [8, 4, 2, 1, 0.5], tries: 24 };
/** The same within a route, where a few millimetres decide nothing that the tape does not. */
const WIDENED_IN_ROUTE: Widening = { steps: [8, 4, 2], tries: 24 };
/** The same where a known motion is gone over again. */
const RETRACED: Widening = { steps: [4, 2], tries: 8 };
/** Of the work, what a padding gets in a route whose failing costs only a coarser figure. */
const LESS_WORK = 0.6;

interface Widening {
  readonly steps: readonly number[];
  /** Chances at each place. */
  readonly tries: number;
}

/** A motion known beforehand, with the padding it is known to bear, perhaps in a like scene. */
export interface KnownMotion {
  readonly clearance: number;
  readonly motion: Motion;
}

/**
 * The largest padding for which a motion is found, by halving; each motion is shown free on its whole way.
 * Every padding is a search of its own, bounded in places looked at. The result is a clearance that is held;
 * that nothing larger was found proves nothing. What is proved
 * impossible is not used here, so that a test can set the one against the other.
 *
 * @param work places looked at for one padding; about 1 to 2 million a second
 * @param known a motion that may serve here too: the result is no less than what it bears here
 * @returns its clearance [mm a side] and the motion; null where none is found
 */
export function searchForMotion(
  task: SearchTask,
  piece: PieceSize,
  work: number,
  known?: KnownMotion,
): FoundMotion | null {
  const checker = new SpaceChecker(task.obstacles.map((o) => o.box));
  const attempt = searchIn(checker, task, piece, work);
  let low = -piece.length / 2;
  let high = task.mostPadding - 0.5;
  if (high <= low) return null;
  let best: Motion | null = null;
  // Round figures first: most pieces are about as large as the way.
  for (const first of [high, 25, 0, -50, -150]) {
    if (first > high || first <= low) continue;
    const motion = attempt(first);
    if (motion !== null) {
      low = first;
      best = motion;
      break;
    }
    high = first;
  }
  while (high - low > SEARCHED) {
    const padding = (low + high) / 2;
    const motion = attempt(padding);
    if (motion === null) high = padding;
    else {
      low = padding;
      best = motion;
    }
  }
  const most = task.mostPadding - 0.5;
  if (best !== null) {
    [low, best] = widened(checker, task, piece, low, best, most);
    // Other chances may find another way round that widens further.
    for (const seed of [8, 9]) {
      const less = min(low - OTHERS, most);
      const other = attempt(less, seed);
      if (other === null) continue;
      const [padding, motion] = widened(checker, task, piece, less, other, most);
      if (padding > low) [low, best] = [padding, motion];
    }
  }
  const borne = known && borneBy(checker, task, piece, known, known.clearance, most, WIDENED);
  if (borne && (best === null || borne[0] > low)) [low, best] = borne;
  return best && foundAt(checker, task, piece, low, best);
}

/**
 * A motion that is known otherwise, with where it is closest.
 * @param raise how high it is raised above what is below it, at most [mm]
 */
export function checkedMotion(
  task: SearchTask,
  piece: PieceSize,
  known: KnownMotion,
  raise: number,
): FoundMotion {
  const checker = new SpaceChecker(task.obstacles.map((o) => o.box));
  checker.hold(paddedPiece(piece, known.clearance));
  return {
    ...known,
    scene: task.obstacles.map((o) => o.box),
    ...closest(checker, task, known.motion),
    raise,
    overRail: false,
  };
}

/** What is asked of a search within a route. */
export interface RouteSearch {
  /** Clearance above which nothing depends on more [mm a side]. */
  readonly enough: number;
  readonly known?: KnownMotion | undefined;
  /** Padding that is shown otherwise [mm a side]: only more is looked for. */
  readonly above?: number | undefined;
}

/** Paddings tried within a route until one goes [mm]. */
const LADDER = [150, 25, 0, -50, -150, -400];
/** How much a motion may be widened [mm]: one found so far below what is shown otherwise may still beat it. */
const WIDENS = 60;
/** A usual allowance [mm]: beyond it only a little more is tried at a time. */
const USUAL = 25;
/** How much more padding each further search asks for [mm]. */
const FURTHER = 12;

/**
 * As `searchForMotion`, with far fewer searches: the first padding of a short row that goes, widened; then others
 * a little above what is held, until one fails or there is enough. A clearance that is held, and coarser.
 * @param work places looked at for one padding
 * @returns its clearance [mm a side] and the motion; null where none beyond `above` is found
 */
export function searchForRoute(
  task: SearchTask,
  piece: PieceSize,
  work: number,
  { enough, known, above = -Infinity }: RouteSearch,
): FoundMotion | null {
  const checker = new SpaceChecker(task.obstacles.map((o) => o.box));
  const attempt = searchIn(checker, task, piece, work);
  const lessAttempt = searchIn(checker, task, piece, work * LESS_WORK);
  const high = min(task.mostPadding - 0.5, enough);
  const least = -piece.length / 2;
  if (high <= least) return null;
  let [low, best] = (known &&
    borneBy(checker, task, piece, known, min(known.clearance, high), high, WIDENED_IN_ROUTE)) ?? [
    least,
    null,
  ];
  const ladder = above < USUAL ? [high, ...LADDER, above + FURTHER] : [above + FURTHER];
  for (const first of best === null ? ladder : []) {
    if (first > high || first <= max(least, above - WIDENS) || (first === high && best !== null)) continue;
    // Whether it passes at all, and by a usual allowance, gets all the work.
    const motion = (first === 25 || first === 0 ? attempt : lessAttempt)(first);
    if (motion === null) continue;
    [low, best] = widened(checker, task, piece, first, motion, high, WIDENED_IN_ROUTE);
    break;
  }
  if (best === null) return null;
  // A piece that is far from passing is not asked how far.
  for (let next = low + FURTHER; low >= -5 * FURTHER && next <= high; next = low + FURTHER) {
    const motion = (low < 25 ? attempt : lessAttempt)(next);
    if (motion === null) break;
    [low, best] = widened(checker, task, piece, next, motion, high, WIDENED_IN_ROUTE);
  }
  return low > above ? foundAt(checker, task, piece, low, best) : null;
}

/**
 * What a motion found elsewhere bears here, without a search: its places are pushed out of what they meet and
 * every move is shown free again. Null where it bears nothing down to `least`.
 *
 * @param task a like task: measures a little off, a piece a little larger
 * @param least padding below which it is not asked [mm a side]
 */
export function retraceMotion(
  task: SearchTask,
  piece: PieceSize,
  known: KnownMotion,
  least: number,
): FoundMotion | null {
  const checker = new SpaceChecker(task.obstacles.map((o) => o.box));
  const most = task.mostPadding - 0.5;
  for (let less = 8; ; less *= 2) {
    const padding = max(least, min(known.clearance - less, most));
    if (padding > most) return null;
    const borne = borneBy(checker, task, piece, known, padding, min(most, known.clearance), RETRACED);
    if (borne !== null) return foundAt(checker, task, piece, ...borne);
    if (padding === least) return null;
  }
}

/** A search for one padding; null where none is found. */
function searchIn(
  checker: SpaceChecker,
  task: SearchTask,
  piece: PieceSize,
  work: number,
): (padding: number, seed?: number) => Motion | null {
  const scene = task.obstacles.map((o) => o.box);
  return (padding, seed = 7) => {
    checker.hold(paddedPiece(piece, padding));
    const { start, goal } = task.ends(padding);
    const space = { piece, scene, least: task.least, most: task.most, start, goal };
    const place = Float64Array.of(...start.at, ...start.turn);
    if (!checker.placeFree(place, 0)) return null;
    place.set([...goal.at, ...goal.turn]);
    if (!checker.placeFree(place, 0)) return null;
    return motionByMiddle(space, checker, seededStream(seed), work, task.middles);
  };
}

/** The padding, from one on, that a known motion bears here, and the motion as it then goes. */
function borneBy(
  checker: SpaceChecker,
  task: SearchTask,
  piece: PieceSize,
  known: KnownMotion,
  from: number,
  most: number,
  widening: Widening,
): [number, Motion] | null {
  const padding = min(from, most);
  checker.hold(paddedPiece(piece, padding));
  const places = widerPlaces(
    checker,
    task,
    known.motion.map(placeOf),
    padding,
    seededStream(5),
    widening.tries,
  );
  return places && widened(checker, task, piece, padding, places.map(keyOf), most, widening);
}

function foundAt(
  checker: SpaceChecker,
  task: SearchTask,
  piece: PieceSize,
  clearance: number,
  best: Motion,
): FoundMotion {
  const padded = paddedPiece(piece, clearance);
  checker.hold(padded);
  const motion = settled(checker, task, best, padded);
  return {
    clearance,
    motion,
    scene: task.obstacles.map((o) => o.box),
    ...closest(checker, task, motion),
    raise: raiseOfMotion(task.grounds, padded, motion),
    overRail: task.walls !== undefined && !passesAmong(task.walls, motion, padded),
  };
}

const placeOf = (k: KeyAttitude): Float64Array => Float64Array.of(...k.at, ...k.turn);
const keyOf = (p: Float64Array): KeyAttitude => ({
  at: [p[0]!, p[1]!, p[2]!],
  turn: [p[3]!, p[4]!, p[5]!, p[6]!],
});

/**
 * Widens a motion: each of its places is pushed out of what a larger piece meets there, turned a little by
 * chance where that is not enough, and the moves between are shown free again.
 */
function widened(
  checker: SpaceChecker,
  task: SearchTask,
  piece: PieceSize,
  from: number,
  motion: Motion,
  most: number,
  { steps, tries: chances }: Widening = WIDENED,
): [number, Motion] {
  const next = seededStream(5);
  let padding = from;
  let places: Float64Array[] = motion.map(placeOf);
  for (const step of steps) {
    for (let tries = 0; tries < 12 && padding + step <= most; tries++) {
      checker.hold(paddedPiece(piece, padding + step));
      const wider = widerPlaces(checker, task, places, padding + step, next, chances);
      if (wider === null) break;
      padding += step;
      places = wider;
    }
  }
  return [padding, places.map(keyOf)];
}

function widerPlaces(
  checker: SpaceChecker,
  task: SearchTask,
  places: readonly Float64Array[],
  padding: number,
  next: () => number,
  chances: number,
): Float64Array[] | null {
  const { start, goal } = task.ends(padding);
  // The ends' attitudes are the task's own, which another pitch tilts a little.
  const first = alikeNear(start, places[0]!);
  const end = alikeNear(goal, places[places.length - 1]!);
  if (!checker.placeFree(first, 0) || !checker.placeFree(end, 0)) return null;
  const wider: Float64Array[] = [first];
  for (let i = 1; i < places.length; i++) {
    const last: Float64Array = wider[wider.length - 1]!;
    let found: Float64Array | null = null;
    for (let t = 0; t < chances && found === null; t++) {
      const x = i === places.length - 1 ? end : Float64Array.from(places[i]!);
      if (i < places.length - 1) {
        if (t > 0) nudge(x, (0.01 * (1 + t)) / 4, next);
        if (!checker.pushOut(x, 0, 12, 0.3 + 0.2 * (t & 3))) continue;
      }
      if (checker.moveFree(last, 0, x, 0)) found = x;
      else {
        // Half way first, pushed out.
        const half = new Float64Array(7);
        const dot = last[3]! * x[3]! + last[4]! * x[4]! + last[5]! * x[5]! + last[6]! * x[6]!;
        for (let k = 0; k < 7; k++) half[k] = (last[k]! + x[k]! * (k > 2 && dot < 0 ? -1 : 1)) / 2;
        unit(half);
        if (
          checker.pushOut(half, 0, 12, 0.5) &&
          checker.moveFree(last, 0, half, 0) &&
          checker.moveFree(half, 0, x, 0)
        ) {
          wider.push(half);
          found = x;
        }
      }
    }
    if (found === null) return null;
    wider.push(found);
  }
  return wider;
}

/** A place in whichever of the four attitudes in which a box looks the same is nearest to another's. */
function alikeNear({ at, turn: [w, a, b, c] }: KeyAttitude, to: Float64Array): Float64Array {
  const alike: Quaternion[] = [
    [w, a, b, c],
    [a, -w, -c, b],
    [b, c, -w, -a],
    [c, -b, a, -w],
  ];
  const near = (t: Quaternion): number => abs(t.reduce((sum, v, k) => sum + v * to[3 + k]!, 0));
  return Float64Array.of(...at, ...alike.reduce((s, t) => (near(t) > near(s) ? t : s)));
}

function nudge(x: Float64Array, most: number, next: () => number): void {
  for (let k = 3; k < 7; k++) x[k]! += (next() * 2 - 1) * most;
  unit(x);
}

function unit(x: Float64Array): void {
  const n = sqrt(x[3]! ** 2 + x[4]! ** 2 + x[5]! ** 2 + x[6]! ** 2);
  for (let k = 3; k < 7; k++) x[k]! /= n;
}

/** Lowers the places of a motion as far as it stays free, so that no lift is claimed that is not needed. */
function settled(checker: SpaceChecker, task: SearchTask, motion: Motion, padded: PieceSize): Motion {
  const places = motion.map(placeOf);
  for (let round = 0; round < 3; round++) {
    for (let i = 1; i + 1 < places.length; i++) {
      const place = places[i]!;
      let drop = raiseAt(task.grounds, padded, keyOf(place)) - 1;
      for (let n = 0; n < 4 && drop > 2; n++, drop /= 2) {
        const z = place[2]!;
        place[2] = z - drop;
        if (checker.moveFree(places[i - 1]!, 0, place, 0) && checker.moveFree(place, 0, places[i + 1]!, 0))
          break;
        place[2] = z;
      }
    }
  }
  return places.map(keyOf);
}

/** Whether a motion stays clear of other obstacles too. */
function passesAmong(others: readonly NamedBox[], motion: Motion, padded: PieceSize): boolean {
  const checker = new SpaceChecker(others.map((o) => o.box));
  checker.hold(padded);
  const places = motion.map(placeOf);
  return places.every((place, i) => {
    const next = places[i + 1];
    return next ? checker.moveFree(place, 0, next, 0) : checker.placeFree(place, 0);
  });
}

/** Pose and obstacle at the closest of the motion's places. */
function closest(checker: SpaceChecker, task: SearchTask, motion: Motion): { pose: Pose; critical: string } {
  let least = Infinity;
  let at = motion[0]!;
  for (const k of motion) {
    const gap = checker.placeGap(Float64Array.of(...k.at, ...k.turn), 0, 1e6);
    if (gap < least) {
      least = gap;
      at = k;
    }
  }
  const nearest = checker.nearest(Float64Array.of(...at.at, ...at.turn), 0);
  return { pose: poseOf(at), critical: `at ${task.obstacles[nearest]?.name ?? 'the landing'}` };
}

/** The trade's word for an attitude. */
function poseOf(key: KeyAttitude): Pose {
  const l = abs(rotate(key.turn, [1, 0, 0])[2]);
  const b = abs(rotate(key.turn, [0, 1, 0])[2]);
  const t = abs(rotate(key.turn, [0, 0, 1])[2]);
  // Within 5 degrees of level or upright counts as that.
  const upright = 0.996;
  if (l > upright) return 'on end';
  if (b > upright) return 'on edge';
  if (t > upright) return 'flat';
  return l > 0.087 ? 'tilted' : 'leaning';
}
