/** A point [mm] and an attitude, a unit quaternion [w, x, y, z] that turns the piece's axes L, B, T. */
export interface KeyAttitude {
  readonly at: readonly [number, number, number];
  readonly turn: readonly [number, number, number, number];
}

/**
 * The motion of a piece: straight moves between key attitudes, position in a line and attitude about one
 * axis at an even rate (slerp). Coordinates are the stage model's own, see the stage's doc comment.
 */
export type Motion = readonly KeyAttitude[];

/** A box-shaped obstacle [mm]: centre, full sizes and attitude. */
export interface SceneBox {
  readonly centre: readonly [number, number, number];
  readonly size: readonly [number, number, number];
  readonly turn: readonly [number, number, number, number];
}
