import type { KeyAttitude, SceneBox } from '../../space/motion';
import { multiply, quaternionAbout } from '../../space/quaternion';
import type { Vector } from '../../space/vector';

/** A place or a direction in the coordinates of a scene. */
export type Vec3 = Vector;

/** Where the way crosses a plane: the midpoint of the section on the floor [mm], and the way's direction in plan [rad]. */
export interface Frame {
  readonly at: Vec3;
  /** From the x axis, anticlockwise seen from above [rad]. */
  readonly heading: number;
}

/** How one set of coordinates lies in another: mirrored in y first, then turned about the upright, then shifted. */
export interface Placing {
  readonly mirrored: boolean;
  /** [rad] */
  readonly turn: number;
  readonly shift: Vec3;
}

/** Where a route begins: at the origin, along the x axis. */
export const START: Frame = { at: [0, 0, 0], heading: 0 };

/** The same plane walked the other way. */
export const reversed = ({ at, heading }: Frame): Frame => ({ at, heading: heading + Math.PI });

/** A frame moved `forward` along the way, `left` across it and `up` [mm]. */
export function movedFrame({ at, heading }: Frame, forward: number, left = 0, up = 0): Frame {
  const c = Math.cos(heading);
  const s = Math.sin(heading);
  return { at: [at[0] + c * forward - s * left, at[1] + s * forward + c * left, at[2] + up], heading };
}

/** The placing that brings a frame of some coordinates on to another, the coordinates as they are or mirrored in y. */
export function placingOf(from: Frame, to: Frame, as: 'seen' | 'mirrored' = 'seen'): Placing {
  const mirrored = as === 'mirrored';
  const y = mirrored ? -from.at[1] : from.at[1];
  const turn = to.heading - (mirrored ? -from.heading : from.heading);
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return {
    mirrored,
    turn,
    shift: [to.at[0] - (c * from.at[0] - s * y), to.at[1] - (s * from.at[0] + c * y), to.at[2] - from.at[2]],
  };
}

/** A point [mm] brought into other coordinates. */
export function placedPoint({ mirrored, turn, shift }: Placing, p: Vec3): [number, number, number] {
  const y = mirrored ? -p[1] : p[1];
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return [shift[0] + c * p[0] - s * y, shift[1] + s * p[0] + c * y, shift[2] + p[2]];
}

/** A frame brought into other coordinates. */
export const placedFrame = (placing: Placing, { at, heading }: Frame): Frame => ({
  at: placedPoint(placing, at),
  heading: placing.turn + (placing.mirrored ? -heading : heading),
});

/** The attitude of a box; mirrored it is a turn again, since a box looks the same with an axis reversed. */
export function placedTurn({ mirrored, turn }: Placing, q: KeyAttitude['turn']): KeyAttitude['turn'] {
  const own: KeyAttitude['turn'] = mirrored ? [q[0], -q[1], q[2], -q[3]] : q;
  return turn === 0 ? own : multiply(quaternionAbout([0, 0, 1], turn), own);
}

/** A place on a motion brought into other coordinates. */
export const placedKey = (placing: Placing, { at, turn }: KeyAttitude): KeyAttitude => ({
  at: placedPoint(placing, at),
  turn: placedTurn(placing, turn),
});

/** A box brought into other coordinates. */
export const placedBox = (placing: Placing, { centre, size, turn }: SceneBox): SceneBox => ({
  centre: placedPoint(placing, centre),
  size,
  turn: placedTurn(placing, turn),
});
