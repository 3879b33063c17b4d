import { kindOf } from '../stages/kinds';
import { inStepOrder } from '../survey/table/groupSurveys';
import type { StageRow } from '../survey/table/stageRow';
import type { PlacedMeasures } from '../stages/solvers';
import type { Cap } from './cap';
import type { BookStage, StageBook } from './stageBook';
import { stageShortfall } from './stageShortfall';

/** One step of a route, ready to be judged. */
export interface PreparedStep {
  readonly row: StageRow;
  /** Undefined when the step cannot be judged; `problem` says why. */
  readonly stage: BookStage | undefined;
  readonly problem: string | undefined;
  /** Why the step is at best tight, whatever the piece; none: it is not. */
  readonly caps: readonly Cap[];
  /** Straight between this turning step and the next one, where there is one and it is known. */
  readonly straight: Straight | undefined;
  /** This turning step follows another after a known straight. */
  readonly straightBefore: Straight | undefined;
}

/** What lies straight between two turning steps. */
export interface Straight {
  /** [mm] */
  readonly length: number;
  /** Measures it is made of. */
  readonly tapes: number;
  /**
   * Plan length [mm] from the first nosing to the last where it is one flight alone whose foot and head are
   * measured, so that the flight is solved from level to level: over so much of it a piece on a landing may reach.
   */
  readonly reach: number | undefined;
}

export interface PreparedRoute {
  readonly survey: string;
  readonly steps: readonly PreparedStep[];
}

/**
 * Puts the rows of one survey in the order of their steps, looks each stage up in the book, and works out what
 * lies between turning stages: a straight is a passage or a flight with its length, or `Run`. A room between
 * two of them holds the piece, so no straight is asked for.
 */
export function prepareRoute(rows: readonly StageRow[], book: StageBook): PreparedRoute {
  const ordered = inStepOrder(rows);
  const straights = straightsBetween(ordered);
  const steps = ordered.map((row, i): PreparedStep => {
    const problem = problemOf(row);
    const stage = problem === undefined ? book.stageOf(row.stage!, placed(ordered, i, book.tape)) : undefined;
    const after = straights.find((s) => s.first === i);
    const before = straights.find((s) => s.next === i);
    return {
      row,
      stage,
      problem,
      caps: capsOf(row, after !== undefined && after.straight === undefined),
      straight: after?.straight,
      straightBefore: before?.straight,
    };
  });
  return { survey: rows[0]?.survey ?? '', steps };
}

function straightsBetween(
  rows: readonly StageRow[],
): { first: number; next: number; straight: Straight | undefined }[] {
  const found: { first: number; next: number; straight: Straight | undefined }[] = [];
  let first = -1;
  let length = 0;
  let tapes = 0;
  let between = 0;
  let reach: number | undefined;
  const start = (i: number): void => {
    first = i;
    const run = i >= 0 ? rows[i]!.measures.run : undefined;
    length = run ?? 0;
    tapes = run === undefined ? 0 : 1;
    between = 0;
    reach = undefined;
  };
  rows.forEach((row, i) => {
    const kind = row.stage && kindOf(row.stage);
    if (kind?.role === 'room') return start(-1);
    if (kind?.role === 'turn') {
      if (first >= 0) {
        const alone = between === 1 ? reach : undefined;
        found.push({ first, next: i, straight: tapes > 0 ? { length, tapes, reach: alone } : undefined });
      }
      return start(i);
    }
    if (first < 0) return;
    between++;
    reach = kind?.levelToLevel(row.measures) ?? reach;
    const own = kind?.straight(row.measures);
    if (own !== undefined) {
      length += own;
      tapes += 1;
    }
    if (row.measures.run !== undefined) {
      length += row.measures.run;
      tapes += 1;
    }
  });
  return found;
}

/**
 * A flight's measures with its ends that are on a landing of the route. Between two landings both are. Beside
 * one it is the end whose space is that landing's, so that a route may be listed downward too; where that does
 * not tell, the foot after a landing and the head before one, as in a route that is listed upward.
 */
function placed(rows: readonly StageRow[], i: number, tape: number): PlacedMeasures {
  const { stage, measures } = rows[i]!;
  if (!stage || kindOf(stage).stair !== 'flight') return measures;
  const before = landingAt(rows[i - 1]);
  const after = landingAt(rows[i + 1]);
  if (!before && !after) return measures;
  if (before && after) return { ...measures, footOnLanding: true, headOnLanding: true };
  const depths = (before ?? after)!;
  const isIts = (space: number | undefined): boolean =>
    space !== undefined && depths.some((depth) => Math.abs(depth - space) <= tape);
  const foot = isIts(measures.footSpace);
  const footOnLanding = foot === isIts(measures.headSpace) ? before !== undefined : foot;
  return { ...measures, footOnLanding, headOnLanding: !footOnLanding };
}

/** What a flight may find before its wall on a landing [mm]; undefined where the row is no landing. */
const landingAt = (row: StageRow | undefined): readonly number[] | undefined =>
  row?.stage && kindOf(row.stage).landingSpaces(row.measures);

function problemOf(row: StageRow): string | undefined {
  if (row.stage === undefined) {
    return row.stageText.trim() === '' ? 'the stage is not named' : `"${row.stageText}" is no stage we know`;
  }
  if (Number.isNaN(row.step)) return 'the step has no number';
  return stageShortfall(row);
}

/** Why a step is at best tight, whatever the piece. */
function capsOf({ stage, measures, step }: StageRow, straightUnknown: boolean): Cap[] {
  const cap = stage && kindOf(stage).cap(measures);
  return [
    ...(cap ? [cap] : []),
    ...(straightUnknown ? [{ kind: 'straight not measured', afterStep: step } as const] : []),
  ];
}
