import type { StageName } from '../../stages/kinds';
import type { MeasureName, StageMeasures } from '../../stages/measures';

/** A measure that cannot be taken as it stands in its cell. */
export interface RefusedMeasure {
  readonly measure: MeasureName;
  /** What the cell holds. */
  readonly got: unknown;
  /** A clause that continues "… cannot be taken:". */
  readonly why: string;
}

/** One row of a route, read: nothing in it has been guessed at or repaired. */
export interface StageRow {
  readonly survey: string;
  /** The step as written: a number, or NaN when it is missing or no number. */
  readonly step: number;
  /** The stage, or undefined when the word is not one of ours. */
  readonly stage: StageName | undefined;
  /** The stage as written. */
  readonly stageText: string;
  readonly measures: StageMeasures;
  /** Measures that hold something that cannot be taken: refused, not skipped. */
  readonly refused: readonly RefusedMeasure[];
  readonly note: string;
  /** The side towards which the way leaves a turn, in row order; absent where it is not said. */
  readonly hand?: 'left' | 'right' | undefined;
  /** The way a stair row is walked, in row order; absent where it is not said. */
  readonly way?: 'up' | 'down' | undefined;
  /** Zero-based place in the range as given, header not counted. */
  readonly rowIndex: number;
}
