import { entryAt } from '../lists/entryAt';

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

/** A key as the checkers take it: the centre [mm], then the attitude. */
export const placeOf = ({ at, turn }: KeyAttitude): Float64Array => Float64Array.of(...at, ...turn);

/** The attitude of such a place. */
export const turnOf = (place: Float64Array): KeyAttitude['turn'] => [
  entryAt(place, 3),
  entryAt(place, 4),
  entryAt(place, 5),
  entryAt(place, 6),
];

/** The key of such a place. */
export const keyOf = (place: Float64Array): KeyAttitude => ({
  at: [entryAt(place, 0), entryAt(place, 1), entryAt(place, 2)],
  turn: turnOf(place),
});

/** A box-shaped obstacle [mm]: centre, full sizes and attitude. */
export interface SceneBox {
  readonly centre: readonly [number, number, number];
  readonly size: readonly [number, number, number];
  readonly turn: readonly [number, number, number, number];
}
