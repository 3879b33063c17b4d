/** A corner between full-height walls, under one flat ceiling, as the proofs see it. */
export interface CornerRoom {
  /** Clear widths of the two arms [mm]. */
  readonly widthIn: number;
  /** [mm] */
  readonly widthOut: number;
  /** [mm] */
  readonly ceiling: number;
  /** By how much the way turns [rad]. */
  readonly turn: number;
}
