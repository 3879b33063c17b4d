import { checkRoute } from '../../src/core/survey/checks/checkRoute';
import { STAGE_NAMES } from '../../src/core/stages/kinds';
import type { SurveyProblem } from '../../src/core/survey/checks/surveyProblem';
import { FIRM } from '../../src/sample/firm';
import { BUILD_NAMES } from '../../src/sample/pieces';
import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import { ROUTE_COLUMNS, routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { readLength } from '../../src/core/measures/readLength';
import {
  SLIP_KINDS,
  SURVEY_KINDS,
  type RouteStep,
  type SlipKind,
  type Survey,
} from '../../src/sample/survey';

const steps = SAMPLE_SURVEYS.flatMap((survey) => survey.steps);
const cells = routeRows(SAMPLE_SURVEYS).flat();
const texts = (value: unknown): string[] => (typeof value === 'string' ? [value] : []);
const problemsOf = (survey: Survey): SurveyProblem[] =>
  checkRoute([[...ROUTE_HEADINGS], ...routeRows([survey])]);

/** What the survey check calls each slip. */
const FOUND_AS: Readonly<Record<SlipKind, readonly SurveyProblem['kind'][]>> = {
  'centimetres typed as mm': ['refused', 'unusual'],
  'inches typed as mm': ['refused', 'unusual'],
  'metres typed as mm': ['refused'],
  'width and height exchanged': ['width and height exchanged'],
  'rise and going exchanged': ['rise and going exchanged'],
  'leaf width for clear opening': ['door leaf'],
  'measure missing': ['not measured'],
  'unit missing': ['refused'],
  'comma in a number': ['refused'],
  'headroom taken square': ['headroom square'],
  'stair out of the usual': ['unusual', 'steep', 'rises and going'],
  'step doubled': ['step doubled'],
  'step left out': ['step missing'],
  'stage misspelt': ['unknown stage'],
  'ends before the room': ['ends before the room'],
};

test('it is a month of at least 48 surveys, each with its own name', () => {
  expect(SAMPLE_SURVEYS.length).toBeGreaterThanOrEqual(48);
  expect(new Set(SAMPLE_SURVEYS.map((s) => s.id)).size).toBe(SAMPLE_SURVEYS.length);
  expect(new Set(SAMPLE_SURVEYS.map((s) => s.customer)).size).toBe(SAMPLE_SURVEYS.length);
  expect(new Set(SAMPLE_SURVEYS.map((s) => s.place)).size).toBe(SAMPLE_SURVEYS.length);
  const days = SAMPLE_SURVEYS.map((s) => s.day);
  expect([...days].sort((a, b) => a - b)).toEqual(days);
  expect([days[0], days[days.length - 1]]).toEqual([1, 30]);
});

test('every kind of survey, every stage and every build is in it', () => {
  expect(new Set(SAMPLE_SURVEYS.map((s) => s.kind))).toEqual(new Set(SURVEY_KINDS));
  for (const stage of STAGE_NAMES) {
    expect(steps.filter((s) => s.stage === stage).length).toBeGreaterThanOrEqual(3);
  }
  expect(new Set(SAMPLE_SURVEYS.map((s) => s.build))).toEqual(new Set(BUILD_NAMES));
});

test('every column of a route holds something', () => {
  for (const [header, key] of ROUTE_COLUMNS) {
    if (key === 'survey' || key === 'step') continue;
    expect([header, steps.some((s) => s[key] !== undefined)]).toEqual([header, true]);
  }
});

test('measures stand as numbers, in feet and inches, in centimetres and in metres', () => {
  const written = cells.flatMap(texts);
  expect(cells.filter((c) => typeof c === 'number').length).toBeGreaterThan(500);
  for (const form of [/^\d+' \d+"$/, /^\d+' \d+ 1\/2"$/, /^\d+" *$/, /^\d+ cm$/, /^\d+(?:\.\d+)? m$/]) {
    expect([form, written.filter((text) => form.test(text)).length > 2]).toEqual([form, true]);
  }
});

test('each slip is there, and the survey check finds it in its row', () => {
  const slips = SAMPLE_SURVEYS.flatMap((s) => s.slips ?? []);
  expect(new Set(slips.map((slip) => slip.kind))).toEqual(new Set(SLIP_KINDS));
  for (const survey of SAMPLE_SURVEYS.filter((s) => s.slips)) {
    const problems = problemsOf(survey);
    for (const slip of survey.slips!) {
      const there = problems.filter((p) => p.rowIndex === slip.row - 1).map((p) => p.kind);
      expect([survey.id, slip.kind, there.some((kind) => FOUND_AS[slip.kind].includes(kind))]).toEqual([
        survey.id,
        slip.kind,
        true,
      ]);
    }
  }
});

test('a survey without a slip has no error, and few that ask to be looked at', () => {
  const sound = SAMPLE_SURVEYS.filter((s) => !s.slips);
  expect(sound.length).toBeGreaterThanOrEqual(40);
  const errors = sound.flatMap((s) => problemsOf(s).filter((p) => p.severity === 'error'));
  expect(errors).toEqual([]);
  const odd = sound.filter((s) => problemsOf(s).some((p) => p.severity === 'warning'));
  expect(odd.length).toBeLessThan(sound.length / 4);
});

test('some flights have foot and head measured, some have not; some turns are joined by a measured run', () => {
  const flights = steps.filter((s) => s.stage === 'flight');
  const ends = flights.filter((s) => s.footCeiling !== undefined && s.headSpace !== undefined);
  expect(ends.length).toBeGreaterThan(15);
  expect(flights.length - ends.length).toBeGreaterThan(5);
  expect(steps.filter((s) => s.run !== undefined).length).toBeGreaterThan(3);
});

// Widths of halls and landings of dwellings: at least that of the stair (Approved Document K 1.20), mostly 0.85 to 1.2 m
// (common practice, no source).
describe('the month is one that a firm could have', () => {
  const lengths = (keys: readonly (keyof RouteStep)[], of = steps): number[] =>
    of.flatMap((step) =>
      keys.flatMap((key) => {
        const read = readLength(step[key] ?? null);
        return read.ok ? [read.value] : [];
      }),
    );
  const among = (values: readonly number[], least: number, most: number): number =>
    values.filter((value) => value >= least && value <= most).length / values.length;

  test('before most stairs there are 0.85 to 1.2 m, at the foot and at the head, and hardly ever more than 2 m', () => {
    for (const key of ['footSpace', 'headSpace'] as const) {
      const spaces = lengths([key]);
      expect(spaces.length).toBeGreaterThan(15);
      expect(Math.min(...spaces)).toBeGreaterThanOrEqual(800);
      expect([key, among(spaces, 800, 1300) > 0.6]).toEqual([key, true]);
      expect([key, among(spaces, 2000, 20_000) < 0.15]).toEqual([key, true]);
    }
  });

  test('halls and landings are narrow: most passages and corners 0.85 to 1.2 m', () => {
    const narrow = steps.filter(({ stage }) => stage === 'passage' || stage === 'corner');
    expect(among(lengths(['width', 'widthOut'], narrow), 800, 1250)).toBeGreaterThan(0.6);
  });

  test('it has doors that face a stair, turns at its head and foot, steps outside, and flats with a lift', () => {
    const beside = (one: string, other: string): number =>
      SAMPLE_SURVEYS.filter((survey) =>
        survey.steps.some(({ stage }, i) => stage === one && survey.steps[i + 1]?.stage === other),
      ).length;
    expect(beside('door', 'flight') + beside('flight', 'door')).toBeGreaterThanOrEqual(5);
    expect(beside('flight', 'corner')).toBeGreaterThanOrEqual(5);
    expect(beside('corner', 'flight')).toBeGreaterThanOrEqual(3);
    const first = SAMPLE_SURVEYS.map((survey) => survey.steps.slice(0, 2).map(({ stage }) => stage));
    expect(first.filter((stages) => stages.includes('steps')).length).toBeGreaterThanOrEqual(4);
    const lifts = SAMPLE_SURVEYS.filter((survey) => survey.steps.some(({ stage }) => stage === 'lift'));
    expect(lifts.length).toBeGreaterThanOrEqual(3);
    expect(lifts.length).toBeLessThan(SAMPLE_SURVEYS.length / 5);
  });

  test("customers' tapes, which read to 10 mm, stand apart from the surveyor's", () => {
    const tapes = SAMPLE_SURVEYS.map((survey) => lengths(['tape'], [...survey.steps]));
    const customers = tapes.filter((read) => read.length > 0);
    expect(customers.every((read) => read.every((tape) => tape === 10))).toBe(true);
    expect(customers.length).toBeGreaterThanOrEqual(8);
    expect(customers.length).toBeLessThan(SAMPLE_SURVEYS.length / 2);
  });
});

test('texts are short enough for a cell in sight', () => {
  for (const survey of SAMPLE_SURVEYS) {
    for (const text of [survey.customer, survey.place]) expect(text.length).toBeLessThanOrEqual(48);
    for (const step of survey.steps) expect((step.note ?? '').length).toBeLessThanOrEqual(60);
  }
});

// A name that slipped in would stand with a capital where our own texts have none.
test('notes carry no names: no capital letter, no mark of a brand', () => {
  const notes = steps.flatMap((s) => texts(s.note));
  expect(notes.length).toBeGreaterThan(20);
  const capitals = notes.filter((note) => /[A-Z]/.test(note.replace(/\bU-shaped\b/, '')));
  expect(capitals).toEqual([]);
  const all = [...notes, ...SAMPLE_SURVEYS.flatMap((s) => [s.customer, s.place]), ...BUILD_NAMES, FIRM.name];
  expect(all.filter((text) => /[®™©]|\b(?:Ltd|Inc|GmbH|PLC)\b/i.test(text))).toEqual([]);
});
