import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { judgeRoute, type RouteJudgement } from '../../../src/core/route/judgeRoute';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { stageBook } from '../../../src/core/route/stageBook';
import type { MeasureName, StageMeasures } from '../../../src/core/stages/measures';
import type { StageName } from '../../../src/core/stages/kinds';
import type { StageRow } from '../../../src/core/survey/table/stageRow';

/** A row of a route as the reader of surveys gives it. */
export const row = (step: number, stage: StageName, measures: StageMeasures): StageRow => ({
  survey: 'A',
  step,
  stage,
  stageText: stage,
  measures,
  refused: [],
  note: '',
  rowIndex: step - 1,
});

/** Rows numbered from 1. */
export const route = (...steps: readonly (readonly [StageName, StageMeasures])[]): StageRow[] =>
  steps.map(([stage, measures], i) => row(i + 1, stage, measures));

/** A flight with plenty of floor and height at the foot and the head. */
export const openEnds = { footCeiling: 6000, footSpace: 9000, headCeiling: 6000, headSpace: 9000 } as const;

export function judge(
  rows: readonly StageRow[],
  piece: PieceSize,
  { allowance = 25, tape = 5 }: { allowance?: number; tape?: number } = {},
): RouteJudgement {
  const book = stageBook(tape);
  return judgeRoute(prepareRoute(rows, book), piece, book, allowance).judge('every step');
}

export const piece = sortedPiece;

/** The same row with one measure changed. */
export const withMeasure = (
  rows: readonly StageRow[],
  step: number,
  name: MeasureName,
  value: number,
): StageRow[] =>
  rows.map((r) => (r.step === step ? { ...r, measures: { ...r.measures, [name]: value } } : r));
