/** A door in the side of a passage. */
export interface SideDoorMeasures {
  /** Clear width of the door [mm]. */
  readonly doorWidth: number;
  /** Clear height of the door [mm]. */
  readonly doorHeight: number;
  /** Thickness of the wall it stands in [mm]; 0 allowed. */
  readonly wallThickness: number;
  /** Width of the passage across the door [mm]. */
  readonly passageWidth: number;
  /** Height of the ceiling [mm], over the approach and the passage. */
  readonly ceiling: number;
  /** From the door's jamb nearer the closed end to that end [mm]; absent: the passage is open both ways. */
  readonly deadEnd?: number | undefined;
  /** Width of the approach [mm]; absent: as wide as the door. A narrower one than the door narrows the door. */
  readonly approachWidth?: number | undefined;
}
