import { paddedPiece, type PieceSize, type Pose } from '../../measures/piece';
import { motionByMiddle, type LikelyMiddles } from '../../space/motionByMiddle';
import { freeElsewhere, widenedElsewhere, widestMotionOf } from '../../space/widenedMotion';
import { seededStream } from '../../space/seededStream';
import { SpaceChecker } from '../../space/spaceChecker';
import { raiseAt, raiseOfMotion, type Ground } from '../../space/raiseOfMotion';
import { rotate } from '../../space/quaternion';
import { keyOf, placeOf, type KeyAttitude, type Motion } from '../../space/motion';
import { entryAt } from '../../lists/entryAt';
import { firstOf } from '../../lists/ends';
import { RAISE_BY_HAND } from '../../motion/raiseByHand';
import type { FoundMotion } from '../../motion/answerOfMotion';
import type { NamedBox } from './namedBoxes';
import { closestAt, type Closest } from '../../motion/closest';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, max, min } = Math;

/** A place in which motions are widened. */
export interface MotionTask {
  readonly obstacles: readonly NamedBox[];
  /** Where the piece is held before and after, for a padding. */
  readonly ends: (padding: number) => { readonly start: KeyAttitude; readonly goal: KeyAttitude };
  /** Padding at which the piece just fits where it is held before and after. */
  readonly mostPadding: number;
  /** Floors, treads and lines of nosings below the piece; a handrail is none. */
  readonly grounds: readonly Ground[];
  /** The same with full-height walls in place of a handrail; absent where there is no handrail. */
  readonly walls?: readonly NamedBox[];
}

/** A stair's turning place as a task in space, in which motions are looked for, too. */
export interface SearchTask extends MotionTask {
  readonly least: readonly [number, number, number];
  readonly most: readonly [number, number, number];
  readonly middles: LikelyMiddles;
}

/** How much less than it bore a motion is begun with where it is gone over again [mm a side], one after the other. */
const RETRACED = [4, 12, 24, 48];
/** How much less than its claim a motion is begun with [mm a side]: with room about it fewer places describe it. */
const BEGUN = 20;
/** The stream of chances of a search. */
const SEED = 7;

/** A motion known beforehand, with the padding it is known to bear, perhaps in a like scene. */
export interface KnownMotion {
  /** [mm a side] */
  readonly clearance: number;
  readonly motion: Motion;
}

/**
 * A motion that is known otherwise, with where it is closest.
 * @param raise how high it is raised above what is below it, at most [mm]
 */
export function checkedMotion(
  task: MotionTask,
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

/** How far motions are widened [mm a side]. */
export interface Widening {
  /** More than this is not claimed. */
  readonly enough: number;
  /** What is shown otherwise: a motion that stays far below it is of no use. */
  readonly shown: number;
  /** Places that may yet be looked at, counted down. */
  readonly budget: { left: number };
}

/**
 * The widest of some motions, widened without chance, each from a little below what it is known to bear.
 * @returns the padding shown [mm a side] and the motion; undefined where none is free to begin with
 */
export const widestFrom = (
  task: MotionTask,
  piece: PieceSize,
  starts: readonly KnownMotion[],
  widening: Widening,
): KnownMotion | undefined =>
  widestIn(
    task,
    piece,
    starts.map(({ clearance, motion }) => ({
      clearance: max(-piece.length / 2, clearance - BEGUN),
      motion,
    })),
    widening,
  );

/** The same from all that they bear in a like scene; undefined where none of them is free. */
export function widestIn(
  task: MotionTask,
  piece: PieceSize,
  starts: readonly KnownMotion[],
  { enough, shown, budget }: Widening,
): KnownMotion | undefined {
  const checker = new SpaceChecker(task.obstacles.map((o) => o.box));
  const asked = { piece, ends: task.ends, most: min(task.mostPadding - 0.5, enough), budget };
  const known = starts.map(({ clearance, motion }) => ({ motion, from: clearance }));
  const wider = widestMotionOf(checker, asked, known, shown);
  // With less padding it is free too.
  return wider && { clearance: min(wider.padding, enough), motion: wider.motion };
}

/**
 * What a motion found elsewhere bears here, without chance: its places are pushed off what they meet and every move
 * is shown free again. Null where it bears nothing near what it bore.
 *
 * @param task a like task: measures a little off, a piece a little larger
 * @param enough padding [mm a side] above which more is of no interest
 */
export function retracedMotion(
  task: MotionTask,
  piece: PieceSize,
  known: FoundMotion,
  enough = Infinity,
): FoundMotion | null {
  const checker = new SpaceChecker(task.obstacles.map((o) => o.box));
  const most = min(task.mostPadding - 0.5, known.clearance);
  const clearance = min(most, enough);
  const asItIs = freeElsewhere(checker, { piece, ends: task.ends, most: clearance }, known.motion);
  const found = asItIs && foundMotion(task, piece, { clearance, motion: asItIs });
  // With less padding it may not be let down as far.
  if (found && found.raise <= max(RAISE_BY_HAND, known.raise)) return found;
  const asked = { piece, ends: task.ends, most };
  for (const less of RETRACED) {
    const padding = known.clearance - less;
    if (padding > most) continue;
    const wider = widenedElsewhere(checker, asked, known.motion, padding);
    if (wider) return foundMotion(task, piece, { clearance: wider.padding, motion: wider.motion });
  }
  return null;
}

/**
 * A motion of the piece as it is, found by chance among likely middles: it says that the piece passes. Another place,
 * larger in every measure, may be one where nothing is found, so that it is no figure.
 * @param work places looked at
 */
export function motionByChance(task: SearchTask, piece: PieceSize, work: number): KnownMotion | null {
  const scene = task.obstacles.map((o) => o.box);
  const checker = new SpaceChecker(scene);
  checker.hold(piece);
  const { start, goal } = task.ends(0);
  if (![start, goal].every((key) => checker.placeFree(placeOf(key), 0))) return null;
  const space = { piece, scene, least: task.least, most: task.most, start, goal };
  const motion = motionByMiddle(space, checker, seededStream(SEED), work, task.middles);
  return motion && { clearance: 0, motion };
}

/** A motion that was found, with where it is closest and how high it is raised. */
export function foundMotion(task: MotionTask, piece: PieceSize, known: KnownMotion): FoundMotion {
  return foundAt(
    new SpaceChecker(task.obstacles.map((o) => o.box)),
    task,
    piece,
    known.clearance,
    known.motion,
  );
}

function foundAt(
  checker: SpaceChecker,
  task: MotionTask,
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

/** Lowers the places of a motion as far as it stays free, so that no lift is claimed that is not needed. */
function settled(checker: SpaceChecker, task: MotionTask, motion: Motion, padded: PieceSize): Motion {
  const places = motion.map(placeOf);
  for (let round = 0; round < 3; round++) {
    for (let i = 1; i + 1 < places.length; i++) {
      const [before, place, after] = [entryAt(places, i - 1), entryAt(places, i), entryAt(places, i + 1)];
      let drop = raiseAt(task.grounds, padded, keyOf(place)) - 1;
      for (let n = 0; n < 4 && drop > 2; n++, drop /= 2) {
        const z = entryAt(place, 2);
        place[2] = z - drop;
        if (checker.moveFree(before, 0, place, 0) && checker.moveFree(place, 0, after, 0)) break;
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
function closest(checker: SpaceChecker, task: MotionTask, motion: Motion): { pose: Pose; critical: Closest } {
  let least = Infinity;
  let at = firstOf(motion);
  for (const k of motion) {
    const gap = checker.placeGap(Float64Array.of(...k.at, ...k.turn), 0, 1e6);
    if (gap < least) {
      least = gap;
      at = k;
    }
  }
  const nearest = checker.nearest(Float64Array.of(...at.at, ...at.turn), 0);
  return {
    pose: poseOf(at),
    critical: closestAt(`at ${task.obstacles[nearest]?.name ?? 'the landing'}`, 'anything'),
  };
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
