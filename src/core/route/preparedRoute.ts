import type { MeasureName, StageName, StageRow } from '../survey/table/stageMeasures';
import type { PlacedMeasures } from './placedMeasures';
import type { BookStage, StageBook } from './stageBook';
import { stageShortfall } from './stageShortfall';

/** One step of a route, ready to be judged. */
export interface PreparedStep {
  readonly row: StageRow;
  /** Undefined when the step cannot be judged; `problem` says why. */
  readonly stage: BookStage | undefined;
  readonly problem: string | undefined;
  /** Why the step is at best tight, whatever the piece. */
  readonly cap: string | undefined;
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

/** Stages that turn the way, and suppose straight arms longer than the piece. */
const TURNING: readonly StageName[] = [
  'corner',
  'side door',
  'quarter landing',
  'half landing',
  'winder',
  'lift',
];

/** Length [mm] a step adds to the straight, with how many measures it is made of; undefined: not known. */
function straightOf(row: StageRow): { length: number; tapes: number } | undefined {
  const { measures, stage } = row;
  if (stage === 'passage') return measures.length === undefined ? undefined : one(measures.length);
  if (stage === 'flight') {
    if (measures.length !== undefined) return one(measures.length);
    const { risers, rise, going } = measures;
    if (risers === undefined || rise === undefined || going === undefined) return undefined;
    // From the first nosing to the last, along the pitch.
    return one((risers - 1) * Math.hypot(rise, going));
  }
  return undefined;
}

const one = (length: number) => ({ length, tapes: 1 });

/**
 * Puts the rows of one survey in the order of their steps, looks each stage up in the book, and works out what
 * lies between turning stages: a straight is a passage or a flight with its length, or `Run`. A room between
 * two of them holds the piece, so no straight is asked for.
 */
export function prepareRoute(rows: readonly StageRow[], book: StageBook): PreparedRoute {
  const ordered = rows.some((row) => Number.isNaN(row.step))
    ? [...rows]
    : [...rows].sort((a, b) => a.step - b.step || a.rowIndex - b.rowIndex);
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
      cap: capOf(row, after !== undefined && after.straight === undefined),
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
    if (row.stage === 'room') return start(-1);
    if (row.stage !== undefined && TURNING.includes(row.stage)) {
      if (first >= 0) {
        const alone = between === 1 ? reach : undefined;
        found.push({ first, next: i, straight: tapes > 0 ? { length, tapes, reach: alone } : undefined });
      }
      return start(i);
    }
    if (first < 0) return;
    between++;
    if (row.stage === 'flight' && LEVEL_TO_LEVEL.every((name) => row.measures[name] !== undefined)) {
      reach = (row.measures.risers! - 1) * row.measures.going!;
    }
    const own = straightOf(row);
    if (own) {
      length += own.length;
      tapes += own.tapes;
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
  if (stage !== 'flight') return measures;
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
function landingAt(row: StageRow | undefined): number[] | undefined {
  if (row?.stage === 'half landing') return [row.measures.depth ?? NaN];
  if (row?.stage === 'quarter landing') return [row.measures.width ?? NaN, row.measures.widthOut ?? NaN];
  return undefined;
}

/** With these a flight is solved on to it and off it, longer than the piece or not. */
const LEVEL_TO_LEVEL: readonly MeasureName[] = [
  'going',
  'risers',
  'footCeiling',
  'footSpace',
  'headCeiling',
  'headSpace',
];

function problemOf(row: StageRow): string | undefined {
  if (row.stage === undefined) {
    return row.stageText.trim() === '' ? 'the stage is not named' : `"${row.stageText}" is no stage we know`;
  }
  if (Number.isNaN(row.step)) return 'the step has no number';
  return stageShortfall(row);
}

/** Why a step is at best tight, whatever the piece; the words continue a sentence. */
function capOf(row: StageRow, straightUnknown: boolean): string | undefined {
  const caps: string[] = [];
  if (row.stage === 'flight') {
    const has = (...names: MeasureName[]): boolean => names.every((n) => row.measures[n] !== undefined);
    if (!has('footCeiling', 'footSpace') || !has('headCeiling', 'headSpace')) {
      caps.push('foot or head not measured');
    }
  }
  if (row.stage === 'winder') caps.push('on winding treads a template goes first');
  if (straightUnknown) caps.push(`the straight after step ${row.step} is not measured`);
  return caps.length > 0 ? caps.join('; ') : undefined;
}
