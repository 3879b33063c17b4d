import { paddedPiece, type PieceSize, type Pose } from '../measures/piece';
import { motionByMiddle, type LikelyMiddles } from '../space/motionByMiddle';
import { seededStream } from '../space/seededStream';
import { SpaceChecker } from '../space/spaceChecker';
import { rotate } from '../space/quaternion';
import type { KeyAttitude, Motion, SceneBox } from './stageAnswer';
import type { NamedBox } from './stairScene';

/** A stair's turning place as a task in space. */
export interface LandingTask {
  readonly obstacles: readonly NamedBox[];
  readonly least: readonly [number, number, number];
  readonly most: readonly [number, number, number];
  /** Where the piece is held before and after, for a padding. */
  readonly ends: (padding: number) => { readonly start: KeyAttitude; readonly goal: KeyAttitude };
  readonly middles: LikelyMiddles;
  /** Padding at which the piece just fits the flights as it is held. */
  readonly mostPadding: number;
  /** Height of the floor or of the line of nosings at a place in plan [mm]. */
  readonly floor: (x: number, y: number) => number;
}

/** What was found: a motion for the padded piece, and where it is closest. */
export interface LandingFound {
  readonly clearance: number;
  readonly motion: Motion;
  readonly scene: readonly SceneBox[];
  readonly pose: Pose;
  readonly critical: string;
  readonly lift: number;
}

/** How finely a padding is looked for [mm]. */
const FINENESS = 1;

/**
 * The largest padding for which a motion is found, by halving; each motion is shown free on its whole way.
 * Every padding is a search of its own, bounded in places looked at. The result is a clearance that is held;
 * that nothing larger was found proves nothing.
 *
 * @param work places looked at for one padding; about 1 to 2 million a second
 */
export function landingMotion(
  task: LandingTask,
  piece: PieceSize,
  atMost: number,
  work: number,
): LandingFound | null {
  const scene = task.obstacles.map((o) => o.box);
  const checker = new SpaceChecker(scene);
  const attempt = (padding: number): Motion | null => {
    checker.hold(paddedPiece(piece, padding));
    const { start, goal } = task.ends(padding);
    const space = { piece, scene, least: task.least, most: task.most, start, goal };
    const place = Float64Array.of(...start.at, ...start.turn);
    if (!checker.placeFree(place, 0)) return null;
    place.set([...goal.at, ...goal.turn]);
    if (!checker.placeFree(place, 0)) return null;
    return motionByMiddle(space, checker, seededStream(7), work, task.middles);
  };
  let low = -piece.length / 2;
  let high = Math.min(task.mostPadding - 0.5, atMost);
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
  while (high - low > FINENESS) {
    const padding = (low + high) / 2;
    const motion = attempt(padding);
    if (motion === null) high = padding;
    else {
      low = padding;
      best = motion;
    }
  }
  if (best === null) return null;
  const padded = paddedPiece(piece, low);
  checker.hold(padded);
  const motion = settled(checker, task, best, padded);
  return {
    clearance: low,
    motion,
    scene,
    ...closest(checker, task, motion),
    lift: liftOf(task, motion, padded),
  };
}

/** Lowers the places of a motion as far as it stays free, so that no lift is claimed that is not needed. */
function settled(checker: SpaceChecker, task: LandingTask, motion: Motion, padded: PieceSize): Motion {
  const places = motion.map((k) => Float64Array.of(...k.at, ...k.turn));
  for (let round = 0; round < 3; round++) {
    for (let i = 1; i + 1 < places.length; i++) {
      const place = places[i]!;
      let drop = lowest(task, place, padded) - 1;
      for (let n = 0; n < 4 && drop > 2; n++, drop /= 2) {
        const z = place[2]!;
        place[2] = z - drop;
        if (checker.moveFree(places[i - 1]!, 0, place, 0) && checker.moveFree(place, 0, places[i + 1]!, 0))
          break;
        place[2] = z;
      }
    }
  }
  return places.map((p) => ({ at: [p[0]!, p[1]!, p[2]!], turn: [p[3]!, p[4]!, p[5]!, p[6]!] }));
}

/** How high the piece's lowest corner stands above the floor below it. */
function lowest(task: LandingTask, place: Float64Array, p: PieceSize): number {
  let least = Infinity;
  for (let i = 0; i < 8; i++) {
    const v = rotate(
      [place[3]!, place[4]!, place[5]!, place[6]!],
      [
        ((i & 1 ? 1 : -1) * p.length) / 2,
        ((i & 2 ? 1 : -1) * p.breadth) / 2,
        ((i & 4 ? 1 : -1) * p.thickness) / 2,
      ],
    );
    least = Math.min(least, place[2]! + v[2] - task.floor(place[0]! + v[0], place[1]! + v[1]));
  }
  return least;
}

function liftOf(task: LandingTask, motion: Motion, p: PieceSize): number {
  return Math.max(0, ...motion.map((k) => lowest(task, Float64Array.of(...k.at, ...k.turn), p)));
}

/** Pose and obstacle at the closest of the motion's places. */
function closest(checker: SpaceChecker, task: LandingTask, motion: Motion): { pose: Pose; critical: string } {
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
export function poseOf(key: KeyAttitude): Pose {
  const l = Math.abs(rotate(key.turn, [1, 0, 0])[2]);
  const b = Math.abs(rotate(key.turn, [0, 1, 0])[2]);
  const t = Math.abs(rotate(key.turn, [0, 0, 1])[2]);
  // Within 5 degrees of level or upright counts as that.
  const upright = 0.996;
  if (l > upright) return 'on end';
  if (b > upright) return 'on edge';
  if (t > upright) return 'flat';
  return l > 0.087 ? 'tilted' : 'leaning';
}
