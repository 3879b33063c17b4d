/** A lift: its door, its car, and the floor before it. */
export interface LiftCarMeasures {
  /** Clear width of the car's door [mm]. */
  readonly doorWidth: number;
  /** Clear height of the car's door [mm]. */
  readonly doorHeight: number;
  /** Inside, along the door's wall [mm], the door in its middle. */
  readonly carWidth: number;
  /** Inside, from the closed door to the back wall [mm]. */
  readonly carDepth: number;
  /** [mm] */
  readonly carHeight: number;
}
