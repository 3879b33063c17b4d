import type { Build } from '../../../src/core/route/buildVerdict';
import { judgeSurveys, type Order } from '../../../src/core/route/judgeSurveys';
import * as books from '../../../src/core/route/stageBook';
import { piece, route } from './routeFixtures';

const lookedUp: books.BookStage[] = [];

// The book as it is, seen from outside.
const { stageBook } = books;
jest.spyOn(books, 'stageBook').mockImplementation((tape) => {
  const book = stageBook(tape);
  return {
    ...book,
    stageOf: (...args) => {
      const stage = book.stageOf(...args);
      lookedUp.push(stage);
      return stage;
    },
  };
});

const build = (name: string, ...sizes: [number, number, number][]): Build => ({
  name,
  pieces: sizes.map(([l, b, t]) => ({
    name: 'slate',
    size: piece(l, b, t),
    problem: undefined,
    mass: 70,
    count: 1,
  })),
});

const BUILDS = [build('whole', [2360, 1180, 25]), build('in three', [1180, 790, 25], [2440, 330, 45])];

const SURVEYS = [
  {
    name: 'Mill House',
    rows: route(
      ['door', { width: 720, height: 1980 }],
      ['corner', { width: 900, widthOut: 1000, height: 2300 }],
    ),
  },
  {
    name: 'Quay 4',
    rows: route(
      ['door', { width: 720, height: 1980 }],
      ['corner', { width: 700, widthOut: 760, height: 2000 }],
    ),
  },
];

const withOrders = (orders: readonly Order[] | undefined) => {
  lookedUp.length = 0;
  return judgeSurveys(SURVEYS, BUILDS, orders, 25, 5);
};

const order = (survey: string, name: string): Order => ({ survey, build: name });

describe('judgeSurveys', () => {
  test('answers orders in their own order, each as it would be answered without orders', () => {
    const all = withOrders(undefined);
    const found = (survey: string, name: string) =>
      all.find((v) => v.survey === survey && v.verdict.build === name)!;
    const orders = [
      order('quay 4', 'in three'),
      order('Nowhere', 'whole'),
      order('Mill House', 'whole'),
      order('Quay 4', 'whole'),
      order('Quay 4', 'in three'),
    ];
    const verdicts = withOrders(orders);
    expect(verdicts[0]).toEqual(found('Quay 4', 'in three'));
    expect(verdicts[1]!.verdict.reason).toBe('there is no survey "Nowhere"');
    expect(verdicts[2]).toEqual(found('Mill House', 'whole'));
    expect(verdicts[3]).toEqual(found('Quay 4', 'whole'));
    expect(verdicts[4]).toEqual(verdicts[0]);
    expect(new Set(all.map((v) => v.verdict.verdict)).size).toBeGreaterThan(1);
  });

  test.each([
    ['without orders', undefined],
    ['with orders', [order('Quay 4', 'whole'), order('Mill House', 'in three'), order('Quay 4', 'in three')]],
  ])('keeps no answers of a stage that it is done with, %s', (_, orders) => {
    withOrders(orders);
    expect(lookedUp.length).toBeGreaterThanOrEqual(4);
    for (const { uses, cases, steady, turning, blocked } of lookedUp) {
      expect(uses).toBe(0);
      for (const tapeCase of ['worst', 'measured', 'best'] as const) {
        expect(cases[tapeCase]).toEqual([]);
        expect(steady[tapeCase]).toEqual([]);
        expect(turning[tapeCase]).toEqual([]);
      }
      expect(blocked).toEqual([]);
    }
  });
});
