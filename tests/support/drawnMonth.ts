import { carryMoves } from '../../src/core/crew/carryMoves';
import { judgeRoute } from '../../src/core/route/judgeRoute';
import { prepareRoute, type PreparedRoute } from '../../src/core/route/preparedRoute';
import { stageBook, type StageBook } from '../../src/core/route/stageBook';
import { tapeOf } from '../../src/core/survey/table/stageRow';
import { carriedRoute } from '../../src/drawing/carriedRoute';
import { SAMPLE_PIECES } from '../../src/sample/pieces';
import { ROUTE_COLUMNS, routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { surveysOf } from '../../src/worksheet/routeInputs';

/** Every so many surveys of the month are drawn, every step of them; `MONTH=1` draws them all. */
const EACH = Number(process.env['MONTH'] ?? 5);
const ALLOWANCE = 25;
const HEADERS = ROUTE_COLUMNS.map(([header]) => header);

/** The route of a survey of the month, with its book. */
export function routeOfMonth(id: string): { readonly route: PreparedRoute; readonly book: StageBook } {
  const read = surveysOf('routes', [HEADERS, ...routeRows(SAMPLE_SURVEYS.filter((one) => one.id === id))]);
  const [first] = read.ok ? read.value.surveys : [];
  if (!first) throw new Error(`${id} is not read`);
  const book = stageBook(tapeOf(first.rows, 5));
  return { route: prepareRoute(first.rows, book), book };
}

/** Surveys of the month as they are drawn, each with the piece of its build that leaves least. */
export const drawnMonth = SAMPLE_SURVEYS.filter((_, i) => i % EACH === 0).flatMap((survey) => {
  const { route, book } = routeOfMonth(survey.id);
  const known = route.steps.every(({ problem }) => problem === undefined);
  const [decides] = SAMPLE_PIECES.filter(({ build }) => build === survey.build)
    .map((piece) => ({
      piece,
      left: known ? judgeRoute(route, piece, book, ALLOWANCE).measured.widest : -piece.length,
    }))
    .sort((one, other) => one.left - other.left);
  const { piece } = decides!;
  const size = { length: piece.length, breadth: piece.breadth, thickness: piece.thickness };
  const carried = carriedRoute(route, size, piece.piece, book, ALLOWANCE);
  const moves = known ? carryMoves(route, book, { size, allowance: ALLOWANCE }) : [];
  return route.steps.map(({ row }, i) => ({
    name: `${survey.id}, step ${i + 1}, ${row.stage}`,
    passes: (carried.chain?.clearance ?? -1) >= 0,
    /** Of the step, as STAGES has it. */
    clearance: carried.chain?.steps[i]?.clearance,
    moves: moves.filter((move) => move.row === i),
    drawn: carried.draw(i, `m-${survey.id}-${i}`),
    small: carried.drawSmall(i, `s-${survey.id}-${i}`),
  }));
});
