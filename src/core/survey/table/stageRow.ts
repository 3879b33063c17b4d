import type { StageName } from '../../stages/kinds';
import { lastOf } from '../../lists/ends';
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
  /** The step as written where it is no number: a label; absent where there is none. */
  readonly label?: string | undefined;
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
  /** The width was measured clear. */
  readonly clear?: boolean | undefined;
  /** How far off the measures of this survey may be [mm]; absent where it is not said. */
  readonly tape?: number | undefined;
  /** Words that cannot be taken as they stand in their cells. */
  readonly doubts?: readonly WordDoubt[] | undefined;
  /** What keeps the whole survey from being judged, told at this row. */
  readonly fault?: RouteFault | undefined;
  /** Zero-based place in the range as given, header not counted. */
  readonly rowIndex: number;
}

/** A column of words, or of a tape, with what it may hold. */
export interface WordDoubt {
  readonly column: 'Hand' | 'Way' | 'Clear' | 'Tape';
  readonly got: unknown;
  readonly allowed: string;
}

/** What keeps a survey from being judged, whatever was measured. */
export type RouteFault =
  | { readonly kind: 'rows apart'; readonly survey: string }
  | { readonly kind: 'two tapes'; readonly one: number; readonly other: number }
  | { readonly kind: 'between is missing'; readonly one: StageName; readonly other: StageName }
  | { readonly kind: 'space shorter than the turn'; readonly space: number; readonly width: number };

/** How far off a survey's measures may be [mm]: its own tape, where it gives one, over what is asked for. */
export const tapeOf = (rows: readonly StageRow[], asked: number): number =>
  rows.find(({ tape }) => tape !== undefined)?.tape ?? asked;

const hasName = ({ step, label }: StageRow): boolean => !Number.isNaN(step) || label !== undefined;

/** A step in a sentence: `step 3`, `step Front door`; one without a name of its own by its place, `row 3`. */
export const stepCalled = (row: StageRow, place: number): string =>
  hasName(row) ? `step ${stepName(row, place)}` : `row ${place + 1}`;

/**
 * Several steps of one survey in a sentence, each with its place in it.
 * @example stepsCalled(readRoute([['Step', 'Stage'], [1, 'door'], [2, 'room']]).rows.map((row, i) => [row, i])) // 'steps 1 and 2'
 */
export function stepsCalled(steps: readonly (readonly [row: StageRow, place: number])[]): string {
  const alike = steps.every(([row]) => hasName(row));
  const names = [
    ...new Set(steps.map(([row, place]) => String(alike ? stepName(row, place) : stepCalled(row, place)))),
  ];
  const last = lastOf(names);
  const listed = names.length === 1 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
  if (!alike) return listed;
  return `${names.length === 1 ? 'step' : 'steps'} ${listed}`;
}

/** The name of a step in every answer: its number, its label, or its place where it has neither. */
export const stepName = ({ step, label }: StageRow, place: number): number | string =>
  Number.isNaN(step) ? (label ?? `row ${place + 1}`) : step;
