import { advisedInstead } from '../core/route/advisedInstead';
import { VERDICT_CLASSES, type VerdictClass } from '../core/route/verdictClass';
import { adviceWords, byUrgency, clearanceWords, lookedAtAgain, type Month, type MonthSurvey } from './month';
import { firstToMeasure } from './remeasureWords';
import { entryAt } from '../core/lists/entryAt';

/** How many surveys the list of what to measure again first names; the page has them all. */
const MEASURED_FIRST = 12;

/** The month in lines of text: counts, one line a survey, what to measure again first, what to advise instead. */
export function monthSummary(month: Month | undefined): readonly string[] {
  if (!month) return ['The workbook has no rows with Survey, Verdict, Clearance and Stage.'];
  const { surveys } = month;
  const counts = VERDICT_CLASSES.map((one) => `${ofClass(surveys, one).length} ${one.name}`);
  return [
    ...columns([
      ['Survey', 'Verdict', 'Deciding step', 'Clearance', 'Build'],
      ...surveys.map((s) => [
        s.survey,
        s.verdict,
        `${s.step} ${s.stage}`.trim(),
        clearanceWords(s.clearance),
        s.build,
      ]),
    ]),
    '',
    `${surveys.length} surveys: ${counts.join(', ')}`,
    ...goesAsTyped(surveys),
    ...measuredAgain(lookedAtAgain(month)),
    ...advised(byUrgency(month)),
  ];
}

const ofClass = (surveys: readonly MonthSurvey[], one: VerdictClass): MonthSurvey[] =>
  surveys.filter(({ verdictClass }) => verdictClass === one);

/** Surveys that go only if what looks wrong in them is right. */
function goesAsTyped(surveys: readonly MonthSurvey[]): string[] {
  const lines = surveys.flatMap(({ survey, verdict, toCheck = [] }) => {
    if (verdict !== 'goes' || toCheck.length === 0) return [];
    const more = toCheck.length > 1 ? ` (and ${toCheck.length - 1} more)` : '';
    return [[`  ${survey}`, `${toCheck[0]}${more}`]];
  });
  return lines.length === 0 ? [] : ['', 'Goes as typed, but look at the survey first:', ...columns(lines)];
}

function measuredAgain(surveys: readonly MonthSurvey[]): string[] {
  const lines = surveys.flatMap((s) => {
    const what = s.explanation && firstToMeasure(s.explanation.remeasure);
    return what === undefined ? [] : [[`  ${s.survey}`, s.verdict, what]];
  });
  if (lines.length === 0) return [];
  const more = lines.length - MEASURED_FIRST;
  return [
    '',
    'Measure again first:',
    ...columns(lines.slice(0, MEASURED_FIRST)),
    ...(more > 0 ? [`  and ${more} more on the page`] : []),
  ];
}

function advised(surveys: readonly MonthSurvey[]): string[] {
  const lines = surveys
    .filter(({ verdict, advise }) => {
      const { kind } = advisedInstead(advise);
      return verdict !== 'goes' && verdict !== 'not measured' && kind !== 'nothing' && kind !== 'as asked';
    })
    .map((s) => [`  ${s.survey}`, s.verdict, `with ${s.build}`, `advise ${adviceWords(s.advise)}`]);
  return lines.length === 0 ? [] : ['', 'Advise instead:', ...columns(lines)];
}

/** Rows in columns as wide as their widest cell. */
function columns(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => entryAt(row, c).length)));
  return rows.map((row) =>
    row
      .map((cell, c) => cell.padEnd(entryAt(widths, c)))
      .join('  ')
      .trimEnd(),
  );
}
