import { hasRun, kindOf, roleOf, type StageName } from '../stages/kinds';
import type { MeasureName } from '../stages/measures';
import type { PlacedMeasures } from '../stages/solvers';
import { routeFaults } from '../survey/checks/routeFaults';
import { isRepeatedHeader } from '../survey/table/stageNamed';
import { doubtWords, faultWords } from '../survey/words/problemWords';
import { inStepOrder } from '../survey/table/groupSurveys';
import { stepCalled, stepName, type StageRow } from '../survey/table/stageRow';
import type { Cap } from './cap';
import { armOf, levelArm, ownLength } from './arms';
import { asFlightRow, endBeside, readingsOf, type Reading } from './reading';
import { routePlan } from './routePlan';
import type { CloseRows } from './planning';
import type { PartPlan } from './partPlan';
import { stageKey, type BookStage, type LooseMeasures, type StageBook } from './stageBook';
import { stageShortfall } from './stageShortfall';
import { entryAt } from '../lists/entryAt';
import { once } from '../lists/once';

/** One step of a route, ready to be judged. */
export interface PreparedStep {
  readonly row: StageRow;
  /** What the step is called in every answer: its number, its label, or its place. */
  readonly name: number | string;
  /** The same in a sentence: `step 3`. */
  readonly called: string;
  /** The row by itself; undefined when the step cannot be judged; `problem` says why. */
  readonly stage: BookStage | undefined;
  readonly problem: string | undefined;
  /** Why the step is at best tight, whatever the piece; none: it is not. */
  readonly caps: readonly Cap[];
  /** Measures that were not taken and on which the route may depend: they are taken at their worst. */
  readonly open: readonly MeasureName[];
}

/** One way to read a route, laid out in parts; the worst case once it is asked for: what does not pass as measured needs none. */
export interface PreparedReading {
  readonly reading: Reading;
  /** The parts with the tape, and what is not measured, against the piece; and as measured. */
  readonly worst: readonly PartPlan[];
  readonly measured: readonly PartPlan[];
}

/** The rows of one survey in order, ready to be judged for any piece. */
export interface PreparedRoute {
  readonly survey: string;
  readonly steps: readonly PreparedStep[];
  /** Every way in which the survey can be read: what goes has to go in each. */
  readonly readings: readonly PreparedReading[];
  /** All that has been looked up in the book so far, each once. */
  readonly stages: readonly BookStage[];
}

/**
 * Puts the rows of one survey in order, looks each stage up in the book, and lays the route out in parts.
 * @param close how rows that stand close are taken
 */
export function prepareRoute(
  rows: readonly StageRow[],
  book: StageBook,
  close: CloseRows = 'as one space',
): PreparedRoute {
  const ordered = inStepOrder(rows);
  const known = new Map<string, BookStage>();
  const lookUp = (stage: StageName, loose: LooseMeasures): BookStage => {
    const key = stageKey(stage, loose);
    let found = known.get(key);
    if (!found) known.set(key, (found = book.stageOf(stage, thoseThere(loose))));
    return found;
  };
  const faults = new Map(routeFaults(ordered, book.tape).map(({ at, fault }) => [at, faultWords(fault)]));
  const readings = readingsOf(ordered, book.tape);
  const [first = []] = readings;
  const steps = ordered.map((row, i): PreparedStep => {
    const problem = problemOf(row) ?? faults.get(i);
    const solved = asFlightRow(row);
    const cap = row.stage && kindOf(row.stage).cap(row.measures);
    return {
      row,
      name: stepName(row, i),
      called: stepCalled(row, i),
      stage: problem === undefined && solved.stage ? lookUp(solved.stage, solved.measures) : undefined,
      problem,
      caps: cap && cap.kind === 'winding treads' ? [cap] : [],
      open: openMeasures(first, i),
    };
  });
  const planned = readings.map((reading): PreparedReading => {
    const planIn = (tapeCase: 'worst' | 'measured'): PartPlan[] =>
      routePlan({
        reading,
        tapeCase,
        tape: book.tape,
        stageAt: (i) => entryAt(steps, i).stage,
        lookUp,
        close,
      });
    const worst = once(() => planIn('worst'));
    return {
      reading,
      measured: planIn('measured'),
      get worst() {
        return worst();
      },
    };
  });
  return {
    survey: rows[0]?.survey ?? '',
    steps,
    readings: planned,
    get stages() {
      return [...known.values()];
    },
  };
}

/** The measures that are there. */
function thoseThere(loose: LooseMeasures): PlacedMeasures {
  const there = Object.entries(loose).filter(([, value]) => value !== undefined);
  return Object.fromEntries(there);
}

/** Optional measures of a row that were not taken and that the route is judged by. */
function openMeasures(reading: Reading, i: number): MeasureName[] {
  const { stage, measures, way, straightAfter } = entryAt(reading, i);
  if (stage === 'flight') {
    const open: MeasureName[] = [];
    for (const side of ['before', 'after'] as const) {
      const neighbour = reading[side === 'before' ? i - 1 : i + 1];
      if (roleOf(neighbour?.stage) === 'landing') continue;
      const end = endBeside(way, side);
      const [ceiling, space] =
        end === 'foot' ? (['footCeiling', 'footSpace'] as const) : (['headCeiling', 'headSpace'] as const);
      if (measures[ceiling] === undefined) open.push(ceiling);
      // On open ground there is floor enough, and a passage or a room says how long it is.
      const told =
        neighbour === undefined ||
        neighbour.stage === 'room' ||
        (neighbour.stage === 'passage' && neighbour.measures.length !== undefined);
      if (measures[space] === undefined && !told) open.push(space);
    }
    if (measures.risers === undefined) open.push('risers');
    // A door anywhere in the side of the floor at the stair's end.
    if (straightAfter?.open) open.push('run');
    return open;
  }
  if (hasRun(stage)) {
    const { end, sections } = levelArm(reading, i, 'after', 0);
    const [next] = sections;
    const asked = next ? next.at.open : end.at.open && (end.kind === 'turn' || end.kind === 'stair');
    if (asked && measures.run === undefined) return ['run'];
  }
  if (stage === 'passage' && measures.length === undefined && ownLength(reading, i).open) {
    const bends = (['before', 'after'] as const).every((side) => {
      const { kind } = armOf(reading, i, side).end;
      return kind === 'turn' || kind === 'stair';
    });
    if (bends) return ['length'];
  }
  return [];
}

function problemOf(row: StageRow): string | undefined {
  // Before any of its cells is found wanting, since all of them are headings.
  if (row.stage === undefined && isRepeatedHeader(row.stageText)) return 'the header row is repeated here';
  const [doubt] = row.doubts ?? [];
  if (doubt) return doubtWords(doubt);
  if (row.stage === undefined) {
    return row.stageText.trim() === '' ? 'the stage is not named' : `"${row.stageText}" is no stage we know`;
  }
  return stageShortfall(row);
}
