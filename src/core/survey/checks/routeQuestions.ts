import { isStair, kindOf, roleOf } from '../../stages/kinds';
import type { StageRow } from '../table/stageRow';
import type { RouteProblem, RouteQuestion } from './surveyProblem';
import { entryAt } from '../../lists/entryAt';

/** The longest piece that is usual, with what it is padded by [mm]: what is shorter is met while it turns. */
const LONG_PIECE = 2000;

/**
 * What a route leaves open and is supposed meanwhile, each at its row.
 * @param rows one survey, in the order of its steps
 * @param tape how far off a measure may be [mm]
 */
export function routeQuestions(rows: readonly StageRow[], tape: number): RouteProblem[] {
  return rows.flatMap((row, i) =>
    questionsAt(rows, i, tape).map((about): RouteProblem => ({
      kind: 'asked',
      severity: 'question',
      rowIndex: row.rowIndex,
      about,
    })),
  );
}

function questionsAt(rows: readonly StageRow[], i: number, tape: number): RouteQuestion[] {
  const row = entryAt(rows, i);
  const { stage, measures } = row;
  if (!stage) return [];
  const before = rows[i - 1];
  const after = rows[i + 1];
  const questions: RouteQuestion[] = [];
  if (isStair(stage) && row.way === undefined && !(before?.stage && isStair(before.stage))) {
    questions.push({ kind: 'which way the stair goes' });
  }
  if (stage === 'flight') {
    questions.push(...atFlight(row, before, after, tape));
    questions.push(...spaceAtLanding(row, before, after));
  }
  if (kindOf(stage).stair === 'landing') {
    if (before?.stage !== 'flight') questions.push({ kind: 'no flight beside the landing', side: 'before' });
    if (after?.stage !== 'flight') questions.push({ kind: 'no flight beside the landing', side: 'after' });
  }
  const downward = measuredDownward(row, before, after, tape);
  if (downward) questions.push(downward);
  if (stage === 'side door' && measures.depth === undefined) {
    questions.push({ kind: 'passage goes on beside the door' });
  }
  if (stage === 'passage' && measures.length === undefined && before && after) {
    questions.push({ kind: 'openings face each other' });
  }
  if (stage === 'corner' && after) {
    const next = after.measures.width;
    const arm = measures.widthOut;
    const straight = after.stage === 'passage' || after.stage === 'flight';
    if (straight && next !== undefined && arm !== undefined && Math.abs(next - arm) > 2 * tape) {
      questions.push({ kind: 'arm and next row differ', arm, next });
    }
    const { run } = measures;
    if (after.stage === 'flight' && run !== undefined && measures.width !== undefined) {
      const space = after.way === 'down' ? after.measures.headSpace : after.measures.footSpace;
      const { width } = measures;
      if (space !== undefined && Math.abs(run - Math.max(0, space - width)) > 2 * tape) {
        questions.push({ kind: 'straight and space differ', run, space, width });
      }
    }
  }
  const close = closeTurn(rows, i);
  if (close !== undefined && row.hand === undefined) questions.push({ kind: 'which hand', straight: close });
  return questions;
}

/** A quarter landing whose Width is the upper flight's, and Width out the lower one's: the widths look exchanged. */
function measuredDownward(
  { stage, measures, way }: StageRow,
  before: StageRow | undefined,
  after: StageRow | undefined,
  tape: number,
): RouteQuestion | undefined {
  if (stage !== 'quarter landing' || before?.stage !== 'flight' || after?.stage !== 'flight')
    return undefined;
  const down = (way ?? before.way ?? after.way) === 'down';
  const lower = (down ? after : before).measures.width;
  const upper = (down ? before : after).measures.width;
  const { width, widthOut } = measures;
  if (lower === undefined || upper === undefined || width === undefined || widthOut === undefined)
    return undefined;
  const near = (one: number, other: number): boolean => Math.abs(one - other) <= 2 * tape;
  const asWritten = near(width, lower) && near(widthOut, upper);
  const exchanged = near(width, upper) && near(widthOut, lower);
  return exchanged && !asWritten ? { kind: 'landing measured downward', lower, upper } : undefined;
}

/**
 * A landing measures the end of the flight beside it, so that a space there is another end's: the flight was measured the
 * other way than its rows go. Where the way is not told it is asked anyway.
 */
function spaceAtLanding(
  { way, measures }: StageRow,
  before: StageRow | undefined,
  after: StageRow | undefined,
): RouteQuestion[] {
  const atLanding = (row: StageRow | undefined): boolean =>
    row?.stage !== undefined && kindOf(row.stage).stair === 'landing';
  if (way === undefined || atLanding(before) === atLanding(after)) return [];
  const end = (way === 'up') === atLanding(before) ? 'foot' : 'head';
  const { footSpace, headSpace } = measures;
  const [there, other] = end === 'foot' ? [footSpace, headSpace] : [headSpace, footSpace];
  return there !== undefined && other === undefined ? [{ kind: 'space at the landing', end }] : [];
}

function atFlight(
  flight: StageRow,
  before: StageRow | undefined,
  after: StageRow | undefined,
  tape: number,
): RouteQuestion[] {
  const down = flight.way === 'down';
  const { footSpace, headSpace } = flight.measures;
  const ends = [
    { beside: before, end: down ? 'head' : 'foot', space: down ? headSpace : footSpace },
    { beside: after, end: down ? 'foot' : 'head', space: down ? footSpace : headSpace },
  ] as const;
  return ends.flatMap(({ beside, end, space }): RouteQuestion[] => {
    if (space === undefined || !beside) return [];
    const length = beside.stage === 'passage' ? beside.measures.length : undefined;
    if (length !== undefined && Math.abs(length - space) > 2 * tape) {
      return [{ kind: 'floor and passage differ', space, length }];
    }
    if (space >= LONG_PIECE || (beside.stage !== 'passage' && beside.stage !== 'room')) return [];
    return [{ kind: 'turn at the stair end', end, space }];
  });
}

/** Straight [mm] between a level turn and the one before it, where that is known and shorter than a long piece. */
function closeTurn(rows: readonly StageRow[], i: number): number | undefined {
  if (roleOf(rows[i]?.stage) !== 'turn') return undefined;
  let straight = 0;
  for (let k = i - 1; k >= 0; k--) {
    const { stage, measures } = entryAt(rows, k);
    if (roleOf(stage) === 'turn') {
      const next = rows[k + 1]?.stage;
      const run = next === 'passage' ? 0 : measures.run;
      return run !== undefined && straight + run < LONG_PIECE ? straight + run : undefined;
    }
    if (stage === 'passage' && measures.length !== undefined) straight += measures.length;
    else if (stage === 'door') straight += measures.wall ?? 0;
    else return undefined;
  }
  return undefined;
}
