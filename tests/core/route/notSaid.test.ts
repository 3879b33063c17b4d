import { judge, piece, route, row } from './routeFixtures';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { notSaid } from '../../../src/core/route/notSaid';
import { stageBook } from '../../../src/core/route/stageBook';
import { CELLAR_STAIR } from '../../support/stairs';

// What a survey leaves to be understood in more than one way is said, where it is that which keeps a piece from going.

const slate = piece(1830, 930, 25);
const room = ['room', { length: 6000, width: 4500, height: 2300 }] as const;
const flight = ['flight', CELLAR_STAIR] as const;
const cellar = route(
  ['passage', { width: 900, height: 2300, length: 5000 }],
  ['door', { width: 762, height: 1981 }],
  flight,
  room,
);
const walked = (way: 'up' | 'down') => cellar.map((r) => (r.stage === 'flight' ? { ...r, way } : r));

test('the way of a stair that is not said is named, not the tape', () => {
  // Down from the door it goes; up, the head would be at the room, 900 long, which holds no slate of 1,830.
  expect(judge(walked('down'), slate).verdict).toBe('goes');
  expect(judge(walked('up'), slate).verdict).not.toBe('goes');
  const { verdict, tightness, reason } = judge(cellar, slate);
  expect(verdict).toBe('tight');
  expect(tightness).toBe('open');
  expect(reason).toContain('the Way of step 3 is not said');
  expect(reason).not.toContain('within the tape');
});

test('where every reading is short the tape is what is spoken of', () => {
  const narrow = cellar.map((r) =>
    r.stage === 'door' ? { ...r, measures: { width: 40, height: 1981 } } : r,
  );
  expect(judge(narrow, slate).reason).not.toContain('is not said');
});

test('which way a side door leads is named', () => {
  const rows = [
    row(1, 'room', { length: 4000, width: 4000, height: 2400 }),
    row(2, 'side door', { width: 762, height: 1981, wall: 110, widthOut: 900, ceiling: 2400 }),
    row(3, 'room', { length: 4000, width: 4000, height: 2400 }),
  ];
  expect(notSaid(prepareRoute(rows, stageBook(5)))).toEqual([
    'whether step 2 leads into its passage or out of it is not said',
  ]);
  expect(notSaid(prepareRoute(walked('up'), stageBook(5)))).toEqual([]);
});

test('a door anywhere in the side of the floor at a stair’s head: where it stands is not measured', () => {
  const head = { headSpace: 4000, headCeiling: 2400, footCeiling: 2400, footSpace: 4000 };
  const rows = route(
    ['passage', { width: 850, height: 2400, length: 4000 }],
    [flight[0], { ...flight[1], ...head }],
    ['side door', { width: 762, height: 1981, widthOut: 850, wall: 110, ceiling: 2400 }],
    room,
  ).map((r) => (r.stage === 'flight' ? { ...r, way: 'up' as const } : r));
  const { verdict, tightness, reason } = judge(rows, slate);
  expect(verdict).toBe('tight');
  expect(tightness).toBe('open');
  expect(reason).toContain('the straight after step 2 is not measured');
});

test('a side door that comes before a stair says with its Run where it stands', () => {
  const rows = (run?: number) =>
    route(
      [
        'side door',
        {
          width: 762,
          height: 1981,
          widthOut: 850,
          wall: 110,
          ceiling: 2400,
          ...(run === undefined ? {} : { run }),
        },
      ],
      [flight[0], { ...flight[1], footSpace: 4000, headSpace: 4000 }],
      room,
    ).map((r) => (r.stage === 'flight' ? { ...r, way: 'up' as const } : r));
  // 1,900 hold the slate of 1,830 with 35 a side, and the tape is 5.
  expect(judge(rows(1900), slate).verdict).toBe('goes');
  expect(judge(rows(), slate).verdict).toBe('tight');
});
