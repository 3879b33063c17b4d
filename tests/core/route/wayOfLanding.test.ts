import type { Cell } from '../../../src/core/measures/readQuantity';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { stageBook } from '../../../src/core/route/stageBook';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { surveyTable } from '../../support/surveyTable';

type Row = Readonly<Record<string, Cell>>;
const FLIGHT: Row = { Stage: 'flight', Width: 900, Height: 2050, Rise: 185, Going: 250, Risers: 8 };
const LANDING: Row = {
  Stage: 'quarter landing',
  Width: 850,
  'Width out': 950,
  Height: 2050,
  Rise: 185,
  Going: 250,
  Hand: 'left',
};

/** The ways in which the rows can be walked, each reading once. */
function waysOf(...rows: Row[]): string[] {
  const table = surveyTable(rows.map((row, i) => ({ Step: i + 1, ...row })));
  const { readings } = prepareRoute(readRoute(table).rows, stageBook(5));
  return [...new Set(readings.map(({ reading }) => reading.map(({ way }) => way).join(' ')))];
}
const going = (way: string): Row => ({ ...FLIGHT, Way: way });

test('a landing is walked as the stairs beside it say', () => {
  expect(waysOf(going('down'), LANDING, going('down'))).toEqual(['down down down']);
  expect(waysOf(going('up'), LANDING, going('up'))).toEqual(['up up up']);
  // At the end of what was surveyed one stair stands beside it.
  expect(waysOf(going('down'), LANDING)).toEqual(['down down']);
});

test('where they say nothing, or not one way, both ways are read', () => {
  expect(waysOf(FLIGHT, LANDING, FLIGHT)).toEqual(['up up up', 'down down down']);
  expect(waysOf(going('up'), LANDING, going('down'))).toEqual(['up up down', 'up down down']);
  expect(waysOf(FLIGHT, LANDING, going('down')).sort()).toEqual(['down down down', 'up up down']);
});
