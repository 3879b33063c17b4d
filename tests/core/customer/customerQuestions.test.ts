import { customerQuestions } from '../../../src/core/customer/customerQuestions';
import { measureQuestion } from '../../../src/core/customer/measureQuestion';
import { placeWords } from '../../../src/core/customer/placeWords';
import { checkRoute } from '../../../src/core/survey/checks/checkRoute';
import { ROUTE_HEADINGS } from '../../../src/core/survey/table/readHeaders';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { kindOf, STAGE_NAMES, stageNeeds, type StageName } from '../../../src/core/stages/kinds';
import { MEASURE_NAMES, type MeasureName } from '../../../src/core/stages/measures';
import { ROUTE_COLUMNS, routeRows } from '../../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../../src/sample/sampleSurveys';

const MONTH = [ROUTE_COLUMNS.map(([header]) => header), ...routeRows(SAMPLE_SURVEYS)];
const asked = customerQuestions(readRoute(MONTH));

/** Columns whose headings are no plain word of every day. */
const OFFICE_WORDS = ROUTE_HEADINGS.filter((heading) => heading.includes(' '));

test('QUESTIONS asks in words without a column, a row or a stage of the sheet', () => {
  expect(OFFICE_WORDS).toContain('Foot ceiling');
  const all = [
    ...asked.flatMap(({ question, why, photo }) => [question, why, photo]),
    ...STAGE_NAMES.flatMap((stage) =>
      MEASURE_NAMES.flatMap((measure) =>
        Object.values(measureQuestion(measure, { place: placeWords([], 0), stage })),
      ),
    ),
  ];
  for (const words of all) {
    for (const office of [
      ...OFFICE_WORDS,
      'Run ',
      'Going',
      'Risers',
      'headroom',
      'survey',
      'clearance',
      'column',
      'row ',
    ]) {
      expect(words).not.toContain(office);
    }
    expect(words.trim()).not.toBe('');
    expect(words).not.toMatch(/undefined|NaN/);
  }
});

test('every measure that a stage needs is asked for where it is missing, before all else', () => {
  for (const stage of STAGE_NAMES) {
    const { needs } = stageNeeds(stage);
    const read = readRoute([
      ['Step', 'Stage', ...needs.map((need) => kindOf(stage).needs[need]?.heading ?? heading(need))],
      [1, stage, ...needs.map(() => null)],
    ]);
    const first = customerQuestions(read).slice(0, needs.length);
    const wanted = needs.map(
      (need) => measureQuestion(need, { place: placeWords(read.rows, 0), stage }).question,
    );
    expect(first.map(({ question }) => question).sort()).toEqual(wanted.sort());
  }
});

/** A measure as its column is headed. */
const heading = (measure: string): string =>
  measure.charAt(0).toUpperCase() +
  measure.slice(1).replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

test('every error of the month that a customer can answer is asked, and nothing twice', () => {
  const rows = readRoute(MONTH).rows;
  const office = ['no step number', 'header repeated', 'word not taken', 'not a whole step', 'step doubled'];
  for (const problem of checkRoute(MONTH).filter(({ severity }) => severity === 'error')) {
    const row = rows.find(({ rowIndex }) => rowIndex === problem.rowIndex);
    if (!row || office.includes(problem.kind)) continue;
    expect(asked.some(({ survey, step }) => survey === row.survey && step === row.step)).toBe(true);
  }
  const keys = asked.map(({ survey, question }) => `${survey}: ${question}`);
  expect(new Set(keys).size).toBe(keys.length);
});

test('asks of a leaf and of the turn at the top of the stairs', () => {
  const read = readRoute([
    ['Step', 'Stage', 'Width', 'Height', 'Rise', 'Going', 'Way'],
    [1, 'door', 762, 1981],
    [2, 'flight', 900, 2050, 190, 240, 'up'],
  ]);
  const questions = customerQuestions(read).map(({ question }) => question);
  expect(questions.some((q) => /^Is 762 mm .*between the strip .* and the open door/.test(q))).toBe(true);
  expect(questions).toContain(
    'Which way do you turn at the top of the run of stairs? How far is it from the top step to the wall in front of you?',
  );
});

test('a route without a gap asks nothing', () => {
  const read = readRoute([
    ['Step', 'Stage', 'Width', 'Height', 'Length'],
    [1, 'door', 820, 2020, null],
    [2, 'room', 4300, 2400, 5600],
  ]);
  expect(customerQuestions(read)).toEqual([]);
});

test('a place is called by its label, else counted among its like', () => {
  const { rows } = readRoute([
    ['Step', 'Stage', 'Width', 'Height'],
    ['Front door', 'door', 820, 2020],
    ['b', 'passage', 900, 2400],
    ['', 'door', 800, 2000],
  ]);
  expect(rows.map((_, i) => placeWords(rows, i))).toEqual(['“Front door”', '“b”', 'the second door']);
});

test('what a measure is of settles what is asked: a ramp has no step, a lift has doors and a car', () => {
  const at = (measure: MeasureName, stage: StageName) => measureQuestion(measure, { place: 'it', stage });
  expect(at('rise', 'flight').question).toContain('one step of it');
  expect(`${at('rise', 'ramp').question} ${at('rise', 'ramp').photo}`).not.toContain('step');
  expect(at('width', 'lift').question).toContain('doors');
  expect(at('depth', 'lift').question).toContain('from its closed doors');
  expect(at('depth', 'side door').question).toContain('end on one side');
  expect(at('depth', 'half landing').question).toContain('from the edge of the first step');
});
