/** A place or a direction in space, x, y and z [mm]. */
export type Vector = readonly [number, number, number];

/** One of the three axes, as the place of its entry in a vector. */
export type Axis = 0 | 1 | 2;
/** The three axes, in order. */
export const AXES: readonly Axis[] = [0, 1, 2];

/** The axis after one, and before the first again: x, y, z, x. */
export const nextAxis = (axis: Axis): Axis => (axis === 0 ? 1 : axis === 1 ? 2 : 0);

/** A vector from what is worked out for each axis. @example byAxis((k) => [1, 2, 3][k] / 2) // [0.5, 1, 1.5] */
export const byAxis = (entry: (axis: Axis) => number): Vector => [entry(0), entry(1), entry(2)];

/** A place moved by so much along a direction. */
export const moved = (at: Vector, along: Vector, by: number): Vector => [
  at[0] + along[0] * by,
  at[1] + along[1] * by,
  at[2] + along[2] * by,
];

/** The place between two that is as far along as `part` says, 0 at the first and 1 at the second. */
export const partWay = (from: Vector, to: Vector, part: number): Vector => [
  from[0] + part * (to[0] - from[0]),
  from[1] + part * (to[1] - from[1]),
  from[2] + part * (to[2] - from[2]),
];

/** From one place to another. */
export const between = (from: Vector, to: Vector): Vector => [
  to[0] - from[0],
  to[1] - from[1],
  to[2] - from[2],
];

/** How far a vector reaches along a unit direction [mm]. */
export const reach = (vector: Vector, along: Vector): number =>
  vector[0] * along[0] + vector[1] * along[1] + vector[2] * along[2];
