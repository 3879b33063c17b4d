import { attitudeInPlan, turnOfAxes } from '../../motion/attitude';
import type { Hold } from '../../motion/hold';
import type { KeyAttitude, Motion } from '../../space/motion';
import { nearestAlike, slerp, type Quaternion } from '../../space/quaternion';
import type { Vector } from '../../space/vector';
import type { LandingPlan } from './landingPlan';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, abs, atan2, ceil, cos, max, sin } = Math;

/**
 * Guides: the ways in which a piece mostly goes round, each drawn down the middle of the air for the piece shrunk to a
 * point. They are what a widening begins with (`widenedMotion`), and depend on the measures without a jump, so that a
 * little more room leads to a like motion.
 */

/** A way round as a guide sees it. */
export interface WayRound {
  /** How far it turns in plan [rad]. */
  readonly turn: number;
  /** [rad] */
  readonly pitch: number;
  /** The middle of the air, a part 0 to 1 of the way round [mm]. */
  readonly middleAt: (part: number) => Vector;
  readonly hold: Hold;
  /** On the lower flight, and on the upper one. */
  readonly start: KeyAttitude;
  readonly goal: KeyAttitude;
}

/** Turned by no more than so far between two key attitudes [rad]. */
const STEP = PI / 24;
/** One end raised: steeper than any pitch, and far from upright [rad]. */
export const STEEP = (50 / 180) * PI;
/** Parts of a swing up or down. */
const SWING_PARTS = 12;

/** Raised to a tilt [rad] before the turn, turned about in it, and laid back. */
export function tiltedGuide(way: WayRound, tilt: number): Motion {
  const { turn, pitch, hold } = way;
  const attitude = (yaw: number, at: number): Quaternion =>
    attitudeInPlan({ hold, turned: 'tilted', tilt: at }, yaw);
  const between = (from: number, to: number, part: number): number => from + (to - from) * part;
  return drawn(way, [
    ...parts(tilt - pitch).map((part) => [0, attitude(0, between(pitch, tilt, part))] as const),
    ...parts(turn).map((part) => [part, attitude(turn * part, tilt)] as const),
    ...parts(tilt - pitch).map((part) => [1, attitude(turn, between(tilt, pitch, part))] as const),
  ]);
}

/**
 * Swung up across a half landing, moved over, and swung down: in the first quarter of the way, the middle half and the
 * last quarter.
 * @param side which way the side that was upright points
 */
function swungGuide(way: WayRound, side: 1 | -1): Motion {
  const { hold, start, goal } = way;
  const stood = nearestAlike(turnOfAxes(hold, [0, 0, 1], [side, 0, 0], [0, -side, 0]), start.turn);
  const laid = nearestAlike(goal.turn, stood);
  const row = Array.from({ length: SWING_PARTS + 1 }, (_, i) => i / SWING_PARTS);
  return drawn(way, [
    ...row.map((part) => [part / 4, slerp(start.turn, stood, part)] as const),
    ...row.map((part) => [0.25 + part / 2, stood] as const),
    ...row.map((part) => [0.75 + part / 4, slerp(stood, laid, part)] as const),
  ]);
}

const parts = (angle: number): number[] => {
  const count = max(1, ceil(abs(angle) / STEP));
  return Array.from({ length: count + 1 }, (_, i) => i / count);
};

/** A box looks the same in four attitudes; the one nearest to the last is meant. */
function drawn(
  { middleAt, start, goal }: WayRound,
  keys: readonly (readonly [number, Quaternion])[],
): Motion {
  let last = start;
  const motion = [start];
  const push = (at: Vector, turn: Quaternion): void => {
    last = { at, turn: nearestAlike(turn, last.turn) };
    motion.push(last);
  };
  for (const [part, turn] of keys) push(middleAt(part), turn);
  push(goal.at, goal.turn);
  return motion;
}

/**
 * Round a landing, the likeliest first; and above a rail, where there is one [mm]:
 *
 *     along the pitch      one end raised        level            on end          swung up (half landing)
 *          __/                  /               ______               |                 across: |
 *       __/                    /                                     |                 from /  to  \
 */
export function landingGuides(
  plan: LandingPlan,
  hold: Hold,
  start: KeyAttitude,
  goal: KeyAttitude,
  rail: number,
): Motion[] {
  const { across, rise, going } = plan;
  const pitch = atan2(rise, going);
  const turn = across === undefined ? PI / 2 : PI;
  const way: WayRound = { turn, pitch, middleAt: (part) => middleOfLanding(plan, part), hold, start, goal };
  const turned = [pitch, STEEP, 0, PI / 2].map((tilt) => tiltedGuide(way, tilt));
  if (rail > 0) {
    // Midway between rail and ceiling it may be turned over what the rail stands on.
    const middleAt = (part: number): Vector => {
      const [x, y, z] = way.middleAt(part);
      return [x, y, max(z, (rail + rise + plan.ceiling) / 2)];
    };
    turned.push(...[0, pitch].map((tilt) => tiltedGuide({ ...way, middleAt }, tilt)));
  }
  return across === undefined ? turned : [...turned, swungGuide(way, 1), swungGuide(way, -1)];
}

/** On a quarter of an ellipse about the inner corner, or half of one about the end of the spine. */
export function middleOfLanding(plan: LandingPlan, part: number): Vector {
  const { across, widthIn, widthOut, depthIn, ceiling, rise, headroom } = plan;
  const heights = [headroom / 2, ceiling / 2, rise + headroom / 2] as const;
  const z =
    part < 0.5
      ? heights[0] + (heights[1] - heights[0]) * 2 * part
      : heights[1] + (heights[2] - heights[1]) * (2 * part - 1);
  if (across === undefined) {
    const angle = (part * PI) / 2;
    return [(widthOut / 2) * sin(angle), widthIn - (widthIn / 2) * cos(angle), z];
  }
  const angle = part * PI;
  const lane = part < 0.5 ? widthIn : widthOut;
  return [(depthIn / 2) * sin(angle), across / 2 - ((across - lane) / 2) * cos(angle), z];
}
