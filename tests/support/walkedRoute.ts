import type { JointRow } from '../../src/core/joint/jointRow';
import { walkRoute, type RouteWalk } from '../../src/core/joint/walk/walkRoute';
import type { PieceSize } from '../../src/core/measures/piece';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { DRAWN_LESS, judgedChain, walkSteps } from '../../src/core/route/routeMotion';
import { stageBook } from '../../src/core/route/stageBook';
import type { StageName } from '../../src/core/stages/kinds';
import type { StageRow } from '../../src/core/survey/table/stageRow';

/** Beyond this [mm a side] more padding shows nobody more. */
const AMPLE = 300;

/** A row as a survey has it, where nothing in it is refused. */
export const stageRow = (
  row: Pick<StageRow, 'measures' | 'hand' | 'way'> & { readonly stage: StageName },
  i: number,
): StageRow => ({
  survey: 'A',
  step: i + 1,
  stage: row.stage,
  stageText: row.stage,
  measures: row.measures,
  refused: [],
  note: '',
  rowIndex: i,
  hand: row.hand,
  way: row.way,
});

/**
 * The motion that a route's worst case claims with a tape of 0, or what is judged as measured, less `DRAWN_LESS`; undefined
 * where it claims none.
 * @param allowance rows that stand close are solved together only up to this [mm a side]
 */
export function walked(
  rows: readonly JointRow[],
  piece: PieceSize,
  tapeCase: 'measured' | 'worst' = 'worst',
  allowance = 0,
): RouteWalk | undefined {
  const book = stageBook(0);
  const chain = judgedChain(prepareRoute(rows.map(stageRow), book), piece, book, allowance, tapeCase);
  if (!chain || chain.clearance < DRAWN_LESS) return undefined;
  return walkRoute(rows, walkSteps(chain.steps), piece, Math.min(chain.clearance, AMPLE) - DRAWN_LESS);
}
