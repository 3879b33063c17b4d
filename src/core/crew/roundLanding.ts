import type { WalkKey } from '../joint/walk/carrier';
import { RIGHT_ANGLE } from '../measures/angle';
import type { Pose } from '../measures/piece';
import { SIDE_AXES, poseOfHold, sidesOfHold, type Hold } from '../motion/hold';
import { rotate } from '../space/quaternion';
import type { StageName } from '../stages/kinds';

/** One thing that is done on the way round a landing. */
export interface MoveRoundLanding {
  readonly kind:
    | 'approach'
    | 'tilt'
    | 'level'
    | 'stand'
    | 'raise'
    | 'quarter'
    | 'second quarter'
    | 'round'
    | 'aside'
    | 'go on';
  readonly pose: Pose;
  /** [rad] */
  readonly tilt: number;
  /** [mm] */
  readonly raise: number;
}

/** What is known of the motion round a landing or winding treads. */
export interface RoundLanding {
  readonly stage: StageName;
  readonly from: Hold;
  readonly to: Hold;
  /** The pose in which it goes round. */
  readonly pose: Pose;
  /** Of the flights [rad]. */
  readonly pitch: number;
  /** In which it goes round [rad]. */
  readonly tilt: number;
  /** [mm] */
  readonly raise: number;
  /** How far it is turned in plan [rad]; undefined where that is not drawn. */
  readonly turned: number | undefined;
}

/** A tilt steeper than the pitch by less than this [rad] is the pitch. */
const STEEPER = 0.02;
/** A raise below this [mm] is what a motion strays between its places. */
export const RAISED = 5;

/**
 * The moves round a landing one by one: on to it along the slope, brought into the attitude in which it goes round, raised
 * where it has to be, turned quarter by quarter or moved across, and on along the other slope. Round winding treads it is
 * turned as far as they turn, and no farther than a quarter in one move where that is whole quarters.
 *
 * @returns undefined where how it is turned is not drawn, or is no whole number of quarters
 */
export function movesRoundLanding(round: RoundLanding): MoveRoundLanding[] | undefined {
  const { stage, from, to, pose, pitch, tilt, raise, turned } = round;
  const quarters = stage === 'quarter landing' ? 1 : stage === 'half landing' ? 2 : undefined;
  const winding = stage === 'winder';
  if (turned === undefined || (quarters === undefined && !winding)) return undefined;
  const whole = Math.round(Math.abs(turned) / RIGHT_ANGLE);
  const even = Math.abs(Math.abs(turned) - whole * RIGHT_ANGLE) <= STEEPER * 5 && whole <= 2;
  if (!winding && (!even || (whole !== quarters && !(whole === 0 && quarters === 2)))) return undefined;
  const raised = raise >= RAISED ? raise : 0;
  const held = { pose, tilt, raise: 0 };
  const onWay = { pose, tilt, raise: raised };
  const along = (hold: Hold) => ({ pose: poseOfHold(hold), tilt: pitch, raise: 0 });
  const brought: MoveRoundLanding[] =
    pose === 'tilted'
      ? tilt > pitch + STEEPER
        ? [{ kind: 'tilt', ...held }]
        : []
      : pose === poseOfHold(from)
        ? [{ kind: 'level', ...held }]
        : [{ kind: 'stand', ...held }];
  const turns: MoveRoundLanding[] =
    winding && (!even || whole === 0)
      ? [{ kind: 'round', ...onWay }]
      : whole === 0
        ? [{ kind: 'aside', ...onWay }]
        : whole === 1
          ? [{ kind: 'quarter', ...onWay }]
          : [
              { kind: 'quarter', ...onWay },
              { kind: 'second quarter', ...onWay },
            ];
  return [
    { kind: 'approach', ...along(from) },
    ...brought,
    ...(raised > 0 ? [{ kind: 'raise' as const, ...onWay }] : []),
    ...turns,
    { kind: 'go on', ...along(to) },
  ];
}

/** A side is seen in plan where it lies no steeper than this [sine of the angle]. */
const IN_PLAN = 0.2;

/**
 * How far a piece is turned in plan on a row's part of a motion [rad], anticlockwise from above positive: by the side that
 * lies across the way.
 * @returns undefined where nothing of the row is drawn, or where that side does not stay level
 */
export function turnedInPlan(keys: readonly WalkKey[], row: number, hold: Hold): number | undefined {
  const axis = SIDE_AXES[sidesOfHold(hold).across];
  let before: number | undefined;
  let turned = 0;
  let seen = false;
  for (const [k, key] of keys.entries()) {
    if (key.row !== row && keys[k + 1]?.row !== row) continue;
    const [x, y, z] = rotate(key.turn, axis);
    if (Math.abs(z) > IN_PLAN) return undefined;
    const heading = Math.atan2(y, x);
    if (before !== undefined) {
      // A side has no front: the smaller of the turns that look the same.
      const by = heading - before;
      turned += by - Math.PI * Math.round(by / Math.PI);
      seen = true;
    }
    before = heading;
  }
  return seen ? turned : undefined;
}
