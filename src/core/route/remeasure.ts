import { thisStage } from '../survey/words/stageWords';
import { measureHeading } from '../survey/words/measureHeading';
import type { MeasureName } from '../stages/measures';
import { kindOf, measureAt, stageNeeds, type StageName } from '../stages/kinds';
import { solverOf } from '../stages/solvers';
import type { StageRow } from '../survey/table/stageRow';
import { outermost, type Build, type SizedPiece } from './buildVerdict';
import { judgeRoute, type RouteJudgement } from './judgeRoute';
import { prepareRoute, type PreparedRoute, type PreparedStep } from './preparedRoute';
import { mm, mmNeeded } from './reason';
import { capWords } from './cap';
import { stageBook, type StageBook } from './stageBook';
import { effectOfMeasure } from './tapeCase';
import { shownDown } from '../measures/shown';
import { entryAt } from '../lists/entryAt';

/** One measure to take again, or to change. */
export interface Remeasure {
  readonly step: number | string;
  /** The step in a sentence: `step 3`. */
  readonly called: string;
  /** Heading of the measure; empty where no single one helps. */
  readonly measure: string;
  /** The measure itself, where one alone makes its step go. */
  readonly name?: MeasureName | undefined;
  /** [mm]; undefined where it was not taken. */
  readonly asMeasured: number | undefined;
  /** The whole millimetre [mm] at which that measure alone makes its step `goes`; undefined where none is known. */
  readonly needed: number | undefined;
  readonly why: string;
}

/** A change beyond this [mm] is another house: nobody mismeasures by a metre, or gains one with a screwdriver. */
const GREATEST_CHANGE = 1000;
/** The same where each value tried is widened in space, a tenth of a second or more [mm]. */
const GREATEST_SEARCHED = 400;
/** How near the least change is then looked for [mm]. */
const SEARCHED_TO = 10;

interface Finding {
  readonly at: PreparedStep;
  readonly measure: MeasureName;
  readonly asMeasured: number;
  readonly needed: number;
  readonly worth: number;
  /** From here on it passes at all [mm]; undefined: it does as measured. */
  readonly passesFrom: number | undefined;
  readonly builds: string[];
  readonly row: StageRow;
  readonly stage: StageName;
}

/** A step that no measure of its own is named for, and the builds that it stops. */
interface StopsBuilds {
  readonly at: PreparedStep;
  readonly builds: string[];
}

const stepOf = ({ name, called }: PreparedStep): Pick<Remeasure, 'step' | 'called'> => ({
  step: name,
  called,
});

/**
 * The measures that decide: for every build that does not simply go, and every step that keeps it from going,
 * each measure that alone would make that step `goes` for all the build's pieces, with the value it would
 * need: on a landing that with which a motion in closed form goes, on winding treads that with which a widened guide
 * goes (never better than tight for other reasons). Missing measures come first, then the smallest change first; a step that no single measure mends comes
 * last. Rise, going and turn are not looked at: they can err either way, and nobody can change them.
 *
 * A step that is at best tight for want of a measure is looked at as if that measure were there and ample.
 *
 * A step goes or not on the best chain of the whole route, so each value is tried on the whole route; more of
 * a measure that helps never hurts, so halving finds the least whole millimetre.
 * @param allowance [mm a side]
 */
export function remeasure(
  rows: readonly StageRow[],
  builds: readonly Build[],
  book: StageBook,
  allowance: number,
): Remeasure[] {
  const asGiven = prepareRoute(rows, book);
  const ample = withAmple(asGiven);
  const route = withoutCaps(prepareRoute(ample, book));
  const findings: Finding[] = [];
  const hopeless = new Map<number, StopsBuilds>();
  const going: string[] = [];
  let solved: StageBook | undefined;

  for (const build of builds) {
    const judged = outermost(build.pieces).map((piece) => ({
      piece,
      result: judgeRoute(route, piece.size, book, allowance).judge('every step'),
    }));
    if (judged.length === 0) continue;
    if (judged.every(({ result }) => result.verdict === 'goes')) {
      const asItIs = outermost(build.pieces).every(
        ({ size }) => judgeRoute(asGiven, size, book, allowance).finding.verdict === 'goes',
      );
      if (asItIs) going.push(build.name);
      continue;
    }
    route.steps.forEach((step, i) => {
      if (!step.stage || !step.row.stage) return;
      const stopped = judged.filter(({ result }) => entryAt(result.steps, i).verdict !== 'goes');
      if (stopped.length === 0) return;
      const { solvedBy } = solverOf(step.row.stage);
      let any = false;
      // What decides here may stand at the row beside it, which narrows this one's arm.
      for (const at of [i, i - 1, i + 1]) {
        const row = route.steps[at]?.row;
        if (!row?.stage || (at !== i && any)) continue;
        for (const measure of measuresTried(row.stage)) {
          // A value counts where families or widened guides show it; a search by chance might do with less.
          const asked = solvedBy !== 'closed form' ? (solved ??= stageBook(book.tape, 0)) : book;
          const change = neededChange(route, i, at, measure, stopped, asked, allowance);
          if (!change) continue;
          any = true;
          addFinding(findings, {
            ...change,
            at: entryAt(route.steps, at),
            measure,
            builds: [build.name],
            row,
            stage: row.stage,
          });
        }
      }
      if (!any) {
        const known = hopeless.get(i) ?? { at: step, builds: [] };
        known.builds.push(build.name);
        hopeless.set(i, known);
      }
    });
  }

  findings.sort((a, b) => changeOf(a) - changeOf(b) || rowAt(a) - rowAt(b));
  // What goes in spite of it needs no measure more.
  const allGo = going.length === builds.length && asGiven.steps.every(({ problem }) => problem === undefined);
  const missing = allGo ? [] : missingMeasures(asGiven);
  return [
    ...missing,
    ...findings.map((finding) => ({
      ...stepOf(finding.at),
      measure: measureHeading(finding.measure),
      name: finding.measure,
      asMeasured: finding.asMeasured,
      needed: finding.needed,
      why: whyFinding(finding, book.tape, going),
    })),
    ...[...hopeless.values()].map(({ at, builds: names }) => ({
      ...stepOf(at),
      measure: '',
      asMeasured: undefined,
      needed: undefined,
      why: `no single measure makes ${at.row.stage ? thisStage(at.row.stage) : 'this step'} go for ${names.join(', ')}: choose another build${goingWords(going)}`,
    })),
  ];
}

/** The rows with what was not measured there and ample: what is at best tight for want of it is asked what else it takes. */
const withAmple = ({ steps }: PreparedRoute): StageRow[] =>
  steps.map(({ row, open }) =>
    open.length === 0
      ? row
      : {
          ...row,
          measures: {
            ...Object.fromEntries(open.map((name) => [name, name === 'risers' ? AMPLE_RISERS : AMPLE])),
            ...row.measures,
          },
        },
  );

/** What is not measured is supposed as long or as high as this [mm]: more than any piece asks. */
const AMPLE = 9000;
/** Risers supposed where they were not counted [count]. */
const AMPLE_RISERS = 30;

/** A cap, as on a winder, is no measure's business. */
const withoutCaps = (route: PreparedRoute): PreparedRoute => ({
  ...route,
  steps: route.steps.map((step) => ({ ...step, caps: [] })),
});

const measuresTried = (stage: StageName): MeasureName[] => {
  const { needs, may } = stageNeeds(stage);
  return [...needs, ...may, 'run'];
};

const rowAt = ({ row }: Finding): number => row.rowIndex;
const changeOf = (finding: Finding): number => Math.abs(finding.needed - finding.asMeasured);

function addFinding(findings: Finding[], next: Finding): void {
  const same = findings.find(
    (f) => f.row === next.row && f.measure === next.measure && f.needed === next.needed,
  );
  if (same) same.builds.push(...next.builds);
  else findings.push(next);
}

function missingMeasures(route: PreparedRoute): Remeasure[] {
  const missing: Remeasure[] = [];
  route.steps.forEach((step) => {
    const { row, problem, open } = step;
    const add = (measure: string, why: string): void => {
      missing.push({ ...stepOf(step), measure, asMeasured: undefined, needed: undefined, why });
    };
    if (problem !== undefined) {
      if (row.stage === undefined) return add('Stage', problem);
      for (const { measure, why } of row.refused) add(measureHeading(measure), `cannot be taken: ${why}`);
      for (const name of stageNeeds(row.stage).needs) {
        const refused = row.refused.some((r) => r.measure === name);
        if (row.measures[name] === undefined && !refused) {
          add(measureHeading(name), `the ${row.stage} cannot be judged without it`);
        }
      }
      return;
    }
    for (const name of open) {
      const whole = row.stage === 'flight' ? 'both ends' : 'the straight';
      add(
        measureHeading(name),
        name === 'run' || name === 'length'
          ? 'the straight clear length to the next turn decides whether the two can be taken one by one'
          : `without it ${whole} are taken at their worst`,
      );
    }
  });
  return missing;
}

/** The least whole change of one measure that makes a step `goes` for all the given pieces. */
function neededChange(
  route: PreparedRoute,
  i: number,
  at: number,
  measure: MeasureName,
  stopped: readonly { piece: SizedPiece; result: RouteJudgement }[],
  book: StageBook,
  allowance: number,
): { asMeasured: number; needed: number; worth: number; passesFrom: number | undefined } | undefined {
  const { row } = entryAt(route.steps, at);
  const asMeasured = row.measures[measure];
  const effect = row.stage ? effectOfMeasure(row.stage, measure) : 'either';
  if (asMeasured === undefined || effect === 'either') return undefined;
  const sign = effect === 'helps' ? 1 : -1;
  const searched =
    route.steps[i]?.row.stage !== undefined && solverOf(route.steps[i].row.stage).solvedBy === 'search alone';
  const greatest = searched ? GREATEST_SEARCHED : GREATEST_CHANGE;
  const most = effect === 'helps' ? greatest : Math.min(greatest, Math.ceil(asMeasured) - 1);
  if (most < 1) return undefined;
  const rows = route.steps.map((step) => step.row);
  const known = new Map<number, { readonly goes: boolean; readonly clearance: number }>();
  const judgedAt = (change: number): { readonly goes: boolean; readonly clearance: number } => {
    const before = known.get(change);
    if (before) return before;
    const changed = rows.map((other, j) =>
      j === at ? { ...row, measures: { ...row.measures, [measure]: asMeasured + sign * change } } : other,
    );
    // Each value anew as one space would take minutes: what goes row by row goes all the more.
    const prepared = withoutCaps(prepareRoute(changed, book, 'by themselves'));
    let goes = true;
    let clearance = Infinity;
    for (const { piece } of stopped) {
      const step = entryAt(judgeRoute(prepared, piece.size, book, allowance).judge('every step').steps, i);
      if (step.verdict !== 'goes') goes = false;
      clearance = Math.min(clearance, step.clearance ?? -Infinity);
    }
    const judged = { goes, clearance };
    known.set(change, judged);
    return judged;
  };
  if (!judgedAt(most).goes) return undefined;
  let low = 0;
  let high = most;
  while (high - low > (searched ? SEARCHED_TO : 1)) {
    const middle = (low + high) >> 1;
    if (judgedAt(middle).goes) high = middle;
    else low = middle;
  }
  const now = judgedAt(0).clearance;
  const gained = judgedAt(high).clearance - now;
  let passesFrom: number | undefined;
  const passes = stopped.every(({ result }) => (entryAt(result.steps, i).clearance ?? -Infinity) >= 0);
  if (now < 0 && !passes && !searched) {
    // The least change with which it passes at all.
    let short = 0;
    let passing = high;
    while (passing - short > 1) {
      const middle = (short + passing) >> 1;
      if (judgedAt(middle).clearance >= 0) passing = middle;
      else short = middle;
    }
    passesFrom = asMeasured + sign * passing;
  }
  return { asMeasured, needed: asMeasured + sign * high, worth: gained / high, passesFrom };
}

function whyFinding(finding: Finding, tape: number, going: readonly string[]): string {
  const change = changeOf(finding);
  const worth = worthWords(shownDown(finding.worth, 2));
  const parts = [`for ${finding.builds.join(', ')}: ${worth}`];
  const cap = kindOf(finding.stage).cap(finding.row.measures);
  if (cap?.kind === 'winding treads') parts.push(`at best tight all the same: ${capWords([cap])}`);
  if (finding.passesFrom !== undefined) {
    parts.push(`it passes at all, though tight, from ${mmNeeded(finding.passesFrom)} on`);
  }
  if (change <= 2 * tape) parts.push('measure it again first, the tape alone may decide');
  const remedy = measureAt(finding.stage, finding.measure)?.remedy;
  if (remedy && change <= remedy.brings) parts.push(remedy.what);
  else if (remedy) {
    parts.push(
      `${remedy.what} brings about ${mm(remedy.brings)}, not enough: another build${goingWords(going)}`,
    );
  } else parts.push(`another build${goingWords(going)}`);
  return parts.join('; ');
}

/** What a millimetre more brings: nothing where only the way of carrying it changes, say with a smaller raise. */
function worthWords(worth: number): string {
  if (!Number.isFinite(worth)) return 'it opens a way that is shut now';
  return worth > 0 ? `${worth} mm of clearance for each mm` : 'it makes room for another way of carrying';
}

const goingWords = (going: readonly string[]): string =>
  going.length > 0 ? ` (${going.join(', ')} goes as it is)` : '';
