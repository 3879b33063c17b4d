/** A point in the plane [mm]. */
export type Point = readonly [number, number];

/** A convex polygon, its corners counter-clockwise [mm]. */
export type ConvexPolygon = readonly Point[];

/** A rectangle's place: its centre [mm] and the angle [rad] of its side p. */
export interface PlanarPlace {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
}

/** Limits [mm] of the rectangle's centre. */
export interface PlanarBox {
  readonly xMin: number;
  readonly xMax: number;
  readonly yMin: number;
  readonly yMax: number;
}

/**
 * Obstacles in a plane (plan or elevation) and the box in which the centre of a moving rectangle stays.
 * Obstacles may overlap; a wall is a polygon that reaches far enough.
 */
export interface PlanarWorld {
  readonly obstacles: readonly ConvexPolygon[];
  readonly centre: PlanarBox;
}

/** Any free place with its centre in the box, at the given angle [rad], or at any angle when absent. */
export interface PlanarRegion extends PlanarBox {
  readonly angle?: number;
  /** The whole rectangle, not only its centre, lies above this y [mm]. */
  readonly wholeAbove?: number;
}

/** All that lies no farther than this from a place, along either axis [mm]. */
export const around = (x: number, y: number, by: number): PlanarRegion => ({
  xMin: x - by,
  xMax: x + by,
  yMin: y - by,
  yMax: y + by,
});

/**
 * An axis-parallel rectangle as a convex polygon, its limits in mm.
 */
export const boxPolygon = (xMin: number, yMin: number, xMax: number, yMax: number): ConvexPolygon => [
  [xMin, yMin],
  [xMax, yMin],
  [xMax, yMax],
  [xMin, yMax],
];
