import type { PieceSize, Pose } from '../core/measures/piece';
import type { StageName } from '../core/stages/kinds';

/** What a step's pictures say besides its motion. */
export interface StepFacts {
  /** `step 3`, or the step's own label. */
  readonly name: string;
  readonly stage: StageName;
  readonly pieceName: string;
  readonly size: PieceSize;
  /** Where the piece is too large: the size that just passes, which is drawn dashed in its stead. */
  readonly smaller?: PieceSize | undefined;
  readonly pose: Pose | undefined;
  /** Clearance of the step [mm a side], as STAGES gives it. */
  readonly clearance: number | undefined;
  /** Where it is closest, or why no way is shown. */
  readonly closest: string;
  /** The measure that decides there, in words: `Height 2040`; where those of `closest` do not give it. */
  readonly decidingMeasure?: string | undefined;
  /** What the drawing supposes and the survey does not say, sentences without their points. */
  readonly supposed: readonly string[];
  /** What was measured there, in words: `Width 880, Height 2040`. */
  readonly measures: string;
  /** How far it is raised on the way, at most [mm], as MOVES gives it. */
  readonly raise: number;
  /** The verdict says that it passes here, so that a motion that is missing is one that could not be drawn. */
  readonly passes: boolean;
  /** Rise and going [mm] of the steps of a row; undefined where it has none, or a slope. */
  readonly stepsAt: (row: number) => { readonly rise: number; readonly going: number } | undefined;
  /** Which way the stair of a row is walked. */
  readonly wayAt: (row: number) => 'up' | 'down' | undefined;
}
