import type { JoistGrade } from './joistGrades';
import type { PointLoad } from './simpleSpan';

/** Load-duration classes of EN 1995-1-1 2.3.1.2; `instantaneous` is for accidents and is left out. */
export type Duration = 'permanent' | 'long' | 'medium' | 'short';

/** A joist of solid timber on two supports, and what it carries. */
export interface JoistUsesInput {
  /** Clear span between supports [mm]. */
  readonly span: number;
  /** Centre to centre [mm]. */
  readonly spacing: number;
  /** [mm] */
  readonly breadth: number;
  /** [mm] */
  readonly depth: number;
  readonly grade: JoistGrade;
  /** The floor's own weight [kN/m2]. */
  readonly dead: number;
  /** [kN/m2] */
  readonly imposed: number;
  /** Loads that stand on this one joist [N] at [mm]. */
  readonly points: readonly PointLoad[];
  readonly duration: Duration;
}

/** How much of the joist is used, 1 = full, by each of three checks. */
export interface JoistUses {
  /** [1 = full] */
  readonly bending: number;
  /** [1 = full] */
  readonly shear: number;
  /** [1 = full] */
  readonly deflection: number;
}
