import type { Vector } from '../space/vector';
import type { PlanarPlace } from '../geometry/planar/planarWorld';
import { goingOn, quaternionFromAxes } from '../space/quaternion';
import { sidesOfHold, type Hold, type PieceSide } from './hold';
import type { KeyAttitude, Motion } from '../space/motion';

type Quaternion = readonly [number, number, number, number];

/** A way of holding a piece, turned about a level axis by `tilt` [rad]. */
export interface TurnedHold {
  readonly hold: Hold;
  /** Tilted: the side along the way rises at its front; leaning: the side across rises. */
  readonly turned?: 'tilted' | 'leaning' | undefined;
  readonly tilt?: number | undefined;
}

/** The attitude (unit quaternion w, x, y, z) with the side along the way at `angle` [rad] in plan. */
export function attitudeInPlan({ hold, turned, tilt = 0 }: TurnedHold, angle: number): Quaternion {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  let along: Vector = [c, s, 0];
  let across: Vector = [-s, c, 0];
  let upright: Vector = [0, 0, 1];
  const ct = Math.cos(tilt);
  const st = Math.sin(tilt);
  if (turned === 'tilted') {
    along = [c * ct, s * ct, st];
    upright = [-c * st, -s * st, ct];
  } else if (turned === 'leaning') {
    across = [-s * ct, c * ct, st];
    upright = [s * st, -c * st, ct];
  }
  return turnOfAxes(hold, along, across, upright);
}

/** The attitude (unit quaternion) of a piece held so, its sides along, across and upright in these directions. */
export function turnOfAxes(hold: Hold, along: Vector, across: Vector, upright: Vector): Quaternion {
  const sides = sidesOfHold(hold);
  const axisOf = (side: PieceSide): Vector =>
    side === sides.along ? along : side === sides.upright ? upright : across;
  const axes = { L: axisOf('L'), B: axisOf('B'), T: axisOf('T') };
  const { L: l, B: b, T: t } = axes;
  // A box looks the same with one axis reversed; a turn must not reflect.
  const determinant =
    l[0] * (b[1] * t[2] - b[2] * t[1]) -
    l[1] * (b[0] * t[2] - b[2] * t[0]) +
    l[2] * (b[0] * t[1] - b[1] * t[0]);
  const sign = determinant < 0 ? -1 : 1;
  axes[sides.across] = [across[0] * sign, across[1] * sign, across[2] * sign];
  return quaternionFromAxes(axes.L, axes.B, axes.T);
}

/**
 * The attitude (unit quaternion) of a piece on edge that leans over to its right by `lean` [rad], its long side then tilted
 * by `tilt` [rad] along x.
 */
export function leaningAttitude(lean: number, tilt: number): Quaternion {
  const [s, c] = [Math.sin(tilt), Math.cos(tilt)];
  const [sl, cl] = [Math.sin(lean), Math.cos(lean)];
  return turnOfAxes('LB', [c, 0, s], [sl * s, cl, -sl * c], [-cl * s, sl, cl * c]);
}

/** A planar path as a motion at one height [mm] of the centre, the side `p` of the path being the one along. */
export function motionInPlan(path: readonly PlanarPlace[], attitude: TurnedHold, height: number): Motion {
  const keys: KeyAttitude[] = [];
  for (const { x, y, angle } of path) {
    keys.push({
      at: [x, y, height],
      turn: goingOn(attitudeInPlan(attitude, angle), keys[keys.length - 1]?.turn),
    });
  }
  return keys;
}
