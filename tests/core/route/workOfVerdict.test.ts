import { carryMoves } from '../../../src/core/crew/carryMoves';
import * as planar from '../../../src/core/geometry/planar/decidePassage';
import { CentreOnCut } from '../../../src/core/geometry/proofs/centreOnCut';
import * as lowering from '../../../src/core/joint/loweredPath';
import * as placing from '../../../src/core/joint/place/placedRoute';
import * as walking from '../../../src/core/joint/walk/walkRoute';
import type { PieceSize } from '../../../src/core/measures/piece';
import { judgeRoute } from '../../../src/core/route/judgeRoute';
import { prepareRoute, type PreparedRoute } from '../../../src/core/route/preparedRoute';
import * as planning from '../../../src/core/route/routePlan';
import { stageBook, type StageBook } from '../../../src/core/route/stageBook';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { carriedRoute } from '../../../src/drawing/carriedRoute';
import { PIECES_TABLE, surveyTable } from '../../bench/surveyGenerator';

// How long a verdict takes is measured by the benchmark; here, how much is done for it.
const ROUTES = 12;
const ALLOWANCE = 25;
const TAPE = 5;
const [HEADER = [], ...ROWS] = surveyTable(ROUTES, 20260308);
const SLATES = PIECES_TABLE.filter(([, piece]) => piece === 'slate').map(
  ([, , length, breadth, thickness]): PieceSize => ({
    length: Number(length),
    breadth: Number(breadth),
    thickness: Number(thickness),
  }),
);

const cases = Array.from({ length: ROUTES }, (_, i) => {
  const own = ROWS.filter(([survey]) => survey === `S${i + 1}`);
  return { rows: readRoute([HEADER, ...own]).rows, slate: SLATES[i % SLATES.length]! };
});

const spies = {
  laidOut: jest.spyOn(planning, 'routePlan'),
  placed: jest.spyOn(placing, 'placeRoute'),
  decided: jest.spyOn(planar, 'decidePassage'),
  lowered: jest.spyOn(lowering, 'loweredPath'),
  walked: jest.spyOn(walking, 'walkRoute'),
};
let cells = 0;
const decide = CentreOnCut.prototype.decide;
jest.spyOn(CentreOnCut.prototype, 'decide').mockImplementation(function (this: CentreOnCut, ...given) {
  const outcome = decide.apply(this, given);
  cells += this.looked;
  return outcome;
});

type Work = Readonly<Record<keyof typeof spies | 'cells', number>>;

function workOf(done: () => void): Work {
  for (const spy of Object.values(spies)) spy.mockClear();
  cells = 0;
  done();
  const calls = Object.entries(spies).map(([name, spy]) => [name, spy.mock.calls.length]);
  return { ...(Object.fromEntries(calls) as Omit<Work, 'cells'>), cells };
}

interface Judged {
  readonly route: PreparedRoute;
  readonly book: StageBook;
  readonly slate: PieceSize;
}

function judged({ rows, slate }: (typeof cases)[number]): Judged {
  const book = stageBook(TAPE);
  const route = prepareRoute(rows, book);
  judgeRoute(route, slate, book, ALLOWANCE).judge();
  return { route, book, slate };
}

test('first verdicts take no more work than they did', () => {
  const work = workOf(() => cases.forEach(judged));
  console.log(JSON.stringify(work));
  expect(work.decided).toBeGreaterThan(0);
});

test('a route that has been judged is told and drawn by what is known of it, and its motion is made once', () => {
  const { route, book, slate } = judged(cases[1]!);
  const told = workOf(() => carryMoves(route, book, { size: slate, allowance: ALLOWANCE }));
  expect(told.laidOut).toBe(0);
  expect(told.walked).toBeGreaterThan(0);
  const drawn = workOf(() => carriedRoute(route, slate, 'slate', book, ALLOWANCE));
  console.log(JSON.stringify({ told, drawn }));
  expect(drawn).toEqual({ laidOut: 0, placed: 0, decided: 0, lowered: 0, walked: 0, cells: 0 });
});
