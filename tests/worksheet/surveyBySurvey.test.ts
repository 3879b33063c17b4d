import type { Cell } from '../../src/core/measures/readQuantity';
import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import { SAMPLE_PIECES } from '../../src/sample/pieces';
import { routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import type { PlainCells } from '../../src/worksheet/calls/messages';
import { surveyBySurvey } from '../../src/worksheet/surveyBySurvey';
import { callInCells } from '../support/callInCells';

/*
 * A call of SURVEYS made as one for each survey has to answer as the call itself. The surveys of the sample month whose
 * stages are quick to judge stand for all: how a survey is read from a table does not hang on its stages.
 */
const QUICK = [
  'door',
  'passage',
  'corner',
  'opening',
  'steps',
  'ramp',
  'flight',
  'room',
  'side door',
  'lift',
];
const isQuick = ({ steps }: (typeof SAMPLE_SURVEYS)[number]): boolean =>
  steps.length < 5 && steps.every(({ stage }) => QUICK.includes(String(stage)));
const QUICK_SURVEYS = SAMPLE_SURVEYS.filter(isQuick);

const routes: Cell[][] = [[...ROUTE_HEADINGS], ...routeRows(QUICK_SURVEYS)];
const pieces: Cell[][] = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ...SAMPLE_PIECES.map((p) => [p.build, p.piece, p.length, p.breadth, p.thickness, p.mass, p.count]),
];
const ordered: Cell[][] = [['Survey', 'Build'], ...QUICK_SURVEYS.map(({ id, build }) => [id, build])];

const called = (values: readonly unknown[]): PlainCells =>
  callInCells('SURVEYS', ...(values as Parameters<typeof callInCells>[1][]));

/** The answer made of smaller calls, and how many they are. */
function inParts(values: readonly unknown[]): { readonly cells: PlainCells; readonly calls: number } {
  const smaller = surveyBySurvey(values);
  if (!smaller) throw new Error('the call is made as a whole');
  return { cells: smaller.join(smaller.calls.map(called)), calls: smaller.calls.length };
}

test('what was ordered is answered as by one call, in the order of the orders, unknown names among them', () => {
  expect(QUICK_SURVEYS.length).toBeGreaterThan(10);
  const orders = [...ordered.slice(0, 4), ['Nowhere', ordered[1]?.[1]], ...ordered.slice(4).reverse()];
  orders.push([String(ordered[2]?.[0]).toUpperCase(), 'no such build'], ['', ''], ['  ', 'nor this']);
  const values = [routes, pieces, orders, 25, 5];
  const { cells, calls } = inParts(values);
  expect(cells).toEqual(called(values));
  expect(calls).toBe(QUICK_SURVEYS.length);
});

test('without orders every build is answered for every survey, in the order of the table', () => {
  const few = QUICK_SURVEYS.slice(0, 3);
  const values = [[[...ROUTE_HEADINGS], ...routeRows(few)], pieces, null, null, null];
  const { cells, calls } = inParts(values);
  expect(cells).toEqual(called(values));
  expect(calls).toBe(3);
});

test('empty rows between, steps in any order and columns in another leave it the same', () => {
  const turned = routes.map((row) => [...row].reverse());
  const width = turned[0]?.length ?? 0;
  const table = turned.flatMap((row, i) => (i % 5 === 0 ? [row, new Array<Cell>(width).fill(0)] : [row]));
  const values = [table, pieces, ordered.map((row) => [...row].reverse()), 20, 3];
  expect(inParts(values).cells).toEqual(called(values));
});

test('a refusal is the same', () => {
  const values = [
    routes,
    [
      ['Build', 'Piece'],
      ['a', 'b'],
    ],
    ordered,
    25,
    5,
  ];
  expect(inParts(values).cells).toEqual(called(values));
  const noStage = routes.map((row) => row.map((cell) => (cell === 'Stage' ? 'Stag' : cell)));
  expect(inParts([noStage, pieces, ordered, 25, 5]).cells).toEqual(called([noStage, pieces, ordered, 25, 5]));
});

test('many surveys make a hundred calls at most', () => {
  const doors = Array.from({ length: 1234 }, (_, i): Cell[] => [`house ${i}`, 1, 'door', 700 + i, 2000]);
  const table = [['Survey', 'Step', 'Stage', 'Width', 'Height'], ...doors];
  const orders = doors.map(([survey]) => [survey, SAMPLE_PIECES[0]?.build]);
  const values = [table, pieces, orders, 25, 5];
  const { cells, calls } = inParts(values);
  expect(cells).toEqual(called(values));
  expect(calls).toBeLessThanOrEqual(100);
  expect(calls).toBeGreaterThan(50);
});

describe('a table is read as a whole', () => {
  const [header, ...rows] = routes as [Cell[], ...Cell[][]];
  const surveyAt = header.indexOf('Survey');
  const named = (name: Cell): Cell[] =>
    rows.slice(0, 1).flatMap((row) => row.map((c, i) => (i === surveyAt ? name : c)));

  test.each<[string, readonly unknown[]]>([
    ['where the rows of a survey stand apart', [[header, ...rows.slice(1), rows[0]], pieces, ordered]],
    ['where a row has no name', [[...routes, named('')], pieces, ordered]],
    [
      'where there are two columns of names',
      [routes.map((r, i) => [...r, i ? 'x' : 'Survey']), pieces, ordered],
    ],
    ['where there is none', [routes.map((r) => r.filter((_, i) => i !== surveyAt)), pieces, ordered]],
    ['where one survey is wanted', [routes, pieces, ordered.slice(0, 2)]],
    ['where the orders are refused', [routes, pieces, [['Survey'], ['a']]]],
    ['where the orders are no range', [routes, pieces, 'Mill House']],
    ['where there are no rows', [[header], pieces, ordered]],
    ['where it is no table', [7, pieces, ordered]],
  ])('%s', (_, values) => {
    expect(surveyBySurvey([...values, 25, 5])).toBeUndefined();
  });
});
