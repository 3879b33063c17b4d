import { askedBy } from './askedBy';
import { stepCalled, tapeOf } from '../core/survey/table/stageRow';
import type { Build } from '../core/route/buildVerdict';
import { prepareRoute } from '../core/route/preparedRoute';
import { remeasure } from '../core/route/remeasure';
import { stageBook, type StageBook } from '../core/route/stageBook';
import { problemsOfRoute } from '../core/survey/checks/checkRoute';
import type { RouteRead } from '../core/survey/table/readRoute';
import { problemWords } from '../core/survey/words/problemWords';
import type { StageRow } from '../core/survey/table/stageRow';
import { carriedRoute } from '../drawing/carriedRoute';
import { drawStage } from '../drawing/drawStage';
import type { Table } from '../worksheet/description';
import { buildsOf, surveysOf } from '../worksheet/routeInputs';
import type { Explanation, Month, MonthSurvey } from './month';
import { decidingFirst } from './remeasureWords';

/** Greatest size of a drawing [px]: beside its words on an A4 page. */
const DRAWING = { width: 280, height: 250 } as const;

/**
 * Adds to each survey what the check of its route asks to look at, and to each that does not go the drawing of its
 * deciding stage, with the piece that decides, and what to measure again: from the tables of the same workbook,
 * through the same core, with the same allowance and tape, its own where a survey has one.
 * @param routes table of the routes, its header row first
 * @param pieces table of the pieces, its header row first
 */
export function explainMonth(month: Month, routes: Table, pieces: Table): Month {
  const surveys = surveysOf('routes', routes);
  const builds = buildsOf(pieces);
  if (!surveys.ok || !builds.ok) return month;
  const books = new Map<number, StageBook>();
  const bookOf = (rows: readonly StageRow[]): StageBook => {
    const tape = tapeOf(rows, month.tape);
    const book = books.get(tape) ?? stageBook(tape);
    books.set(tape, book);
    return book;
  };
  const checks = toCheck(surveys.value);
  return {
    ...month,
    surveys: month.surveys.map((given, i) => {
      const found = checks.get(given.survey.trim().toLowerCase());
      const survey = found ? { ...given, toCheck: found } : given;
      if (survey.verdict === 'goes') return survey;
      const { rows, build } = askedBy(survey, surveys.value, builds.value);
      if (!rows || !build) {
        const undrawn = rows
          ? 'The pieces of this build are not known.'
          : 'The route of this survey is not known.';
        return { ...survey, explanation: { remeasure: [], undrawn } };
      }
      const book = bookOf(rows);
      return {
        ...survey,
        explanation: {
          remeasure: decidingFirst(remeasure(rows, [build], book, month.allowance), survey.step),
          ...drawn(survey, rows, build, book, month.allowance, `stage-${i + 1}`),
        },
      };
    }),
  };
}

/** The warnings of the check by survey, each with its step; what keeps a row from being judged is in the reason. */
function toCheck(read: RouteRead): Map<string, string[]> {
  const at = new Map<number, readonly [survey: string, step: string]>();
  for (const { name, rows } of read.surveys) {
    rows.forEach((row, i) => at.set(row.rowIndex, [name.trim().toLowerCase(), stepCalled(row, i)]));
  }
  const checks = new Map<string, string[]>();
  for (const problem of problemsOfRoute(read)) {
    const [survey, step] = at.get(problem.rowIndex) ?? [];
    if (problem.severity !== 'warning' || survey === undefined || step === undefined) continue;
    const text = `${step}: ${problemWords(problem)}`;
    checks.set(survey, [...(checks.get(survey) ?? []), text]);
  }
  return checks;
}

function drawn(
  survey: MonthSurvey,
  rows: readonly StageRow[],
  build: Build,
  book: StageBook,
  allowance: number,
  id: string,
): Pick<Explanation, 'drawings' | 'undrawn' | 'drawnClearance'> {
  const route = prepareRoute(rows, book);
  // Two steps may have one number, by mistake.
  const at = route.steps.findIndex(
    ({ row, name }) => String(name) === survey.step && (row.stage ?? '') === survey.stage,
  );
  const step = route.steps[at];
  if (!step) return { undrawn: 'No drawing: no step with a number of its own decides.' };
  const { row } = step;
  if (!row.stage) return { undrawn: `No drawing: "${row.stageText}" is no stage we know.` };
  const piece = build.pieces.find(({ name }) => name === survey.piece);
  const pictures = piece?.size
    ? carriedRoute(route, piece.size, piece.name, book, allowance).draw(at, id, DRAWING.width)
    : undefined;
  if (pictures) {
    const { pictures: drawings, clearance } = pictures;
    return { drawings, ...(clearance === undefined ? {} : { drawnClearance: clearance }) };
  }
  const alone = drawStage(row.stage, row.measures, { ...DRAWING, id });
  return alone ? { drawings: [alone] } : { undrawn: notDrawn(row, step.problem) };
}

/** A plan of a bend is only drawn for a turn whose walls meet; all else that stops a drawing stops the verdict too. */
function notDrawn({ stage, measures }: StageRow, problem: string | undefined): string {
  if (problem !== undefined) return 'No drawing: a measure that it needs is missing or cannot be taken.';
  return `No drawing: a ${stage} that turns ${measures.turn} degrees is not drawn.`;
}
