import type { StageMeasures } from '../../../src/core/stages/measures';
import type { StageName } from '../../../src/core/stages/kinds';
import type { PieceSize } from '../../../src/core/measures/piece';
import { CutClaims } from '../../support/cutClaims';
import { seeded } from '../../support/parkMiller';
import { walked } from '../../support/walkedRoute';
import { carryMoves } from '../../../src/core/crew/carryMoves';
import { moveOrder } from '../../../src/core/crew/moveWords';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { stageBook } from '../../../src/core/route/stageBook';
import { judge, piece, route } from './routeFixtures';

// A passage goes on past a door in its side: a piece that is longer than what lies between the door and the turn before
// it is pushed past the door and comes back.

type Steps = readonly (readonly [StageName, StageMeasures])[];
const slate = piece(1830, 930, 25);
const room = ['room', { length: 4000, width: 3500, height: 2400 }] as const;
const passage = ['passage', { width: 950, height: 2400, length: 5000 }] as const;
const sideDoor = (more: StageMeasures) =>
  ['side door', { width: 762, height: 1981, widthOut: 900, wall: 110, ceiling: 2400, ...more }] as const;
const corner = (run: number) => ['corner', { width: 950, widthOut: 900, height: 2400, run }] as const;
const judged = (...steps: Steps) => judge(route(...steps), slate);

/**
 * The longest ladder of no thickness [mm] that is carried level from a way w wide into a way p wide at a right angle:
 * (w^(2/3) + p^(2/3))^(3/2), the least of w / sin f + p / cos f (the ladder round a corner, a textbook problem of
 * calculus; derived here).
 */
const longestRoundCorner = (w: number, p: number): number => (w ** (2 / 3) + p ** (2 / 3)) ** 1.5;

describe('past the door and back', () => {
  test('two doors in one passage, 900 apart, let a slate pass where the passage goes on', () => {
    // On edge it is a ladder of 1830: it turns in at the first door, stands in the 3000 beyond the second and turns out.
    expect(longestRoundCorner(762, 900)).toBeGreaterThan(1830 + 2 * 110 + 100);
    const open = judged(sideDoor({ run: 900 }), sideDoor({ depth: 3000 }), room);
    expect(open.verdict).toBe('goes');
    // It need not be said that it goes on: no closed end was measured.
    expect(judged(sideDoor({ run: 900 }), sideDoor({}), room).verdict).toBe('goes');
  });

  test('where the passage ends at both doors it is not pushed past either', () => {
    const shut = judged(sideDoor({ run: 900, depth: 100 }), sideDoor({ depth: 100 }), room);
    expect(shut.verdict).not.toBe('goes');
    // Past the first is as good as past the second.
    expect(judged(sideDoor({ run: 900, depth: 3000 }), sideDoor({ depth: 100 }), room).verdict).toBe('goes');
  });

  test('a corner close before a door out of the passage', () => {
    expect(judged(passage, corner(300), sideDoor({ depth: 3000 }), room).verdict).toBe('goes');
    expect(judged(passage, corner(300), sideDoor({ depth: 200 }), room).verdict).toBe('no way found');
  });

  test('a narrow place between the two is not supposed away', () => {
    const narrow = ['passage', { width: 300, height: 2400, length: 500 }] as const;
    const wide = ['passage', { width: 900, height: 2400, length: 500 }] as const;
    const box: PieceSize = piece(1500, 500, 400);
    const steps = (between: Steps[number]): Steps => [
      passage,
      corner(0),
      between,
      sideDoor({ depth: 3000 }),
      room,
    ];
    expect(judge(route(...steps(wide)), box).verdict).toBe('goes');
    expect(judge(route(...steps(narrow)), box).verdict).not.toBe('goes');
  });
});

test('the crew is told to push it past the door and to come back', () => {
  const rows = route(passage, corner(300), sideDoor({ depth: 3000 }), room).map((row) => ({
    ...row,
    hand:
      row.stage === 'corner' ? ('right' as const) : row.stage === 'side door' ? ('left' as const) : undefined,
  }));
  const book = stageBook(5);
  const moves = carryMoves(prepareRoute(rows, book), book, { size: slate, allowance: 25 });
  const orders = moves.map((move) => `${move.stage}: ${moveOrder(move)}`);
  expect(orders.find((order) => order.startsWith('corner'))).toMatch(
    /to the right, .* then on past the next door/,
  );
  expect(orders.find((order) => order.startsWith('side door'))).toMatch(/coming back to it from beyond/);
});

test('what is claimed is walked, and stays in air that knows nothing of the project’s scene', () => {
  const random = seeded(20261126);
  const among = (least: number, most: number): number => Math.round(least + (most - least) * random());
  const claims = new CutClaims(15);
  for (let n = 0; n < 40; n++) {
    const widthOut = among(800, 1200);
    const hand = random() < 0.5 ? ('left' as const) : ('right' as const);
    // Twice to the same side would lead back into the house.
    const other = hand === 'left' ? ('right' as const) : ('left' as const);
    const door = (more: StageMeasures) => ({
      stage: 'side door' as const,
      measures: {
        width: among(680, 900),
        height: among(1950, 2100),
        widthOut,
        wall: among(60, 300),
        ceiling: 2400,
        ...more,
      },
    });
    const run = among(0, 1400);
    const first =
      random() < 0.5
        ? [
            { stage: 'passage' as const, measures: { width: 950, height: 2400, length: 5000 } },
            {
              stage: 'corner' as const,
              measures: { width: 950, widthOut, height: 2400, run },
              hand,
            },
          ]
        : [{ ...door({ run, depth: among(0, 3500) }), hand, into: true }];
    const rows = [
      ...first,
      { ...door({ depth: among(0, 3500) }), hand: other, into: false },
      { stage: 'room' as const, measures: { length: 4000, width: 3500, height: 2400 } },
    ];
    const size = piece(among(1500, 2600), among(300, 1000), among(20, 300));
    const walk = walked(rows, size);
    if (!walk || walk.route.crosses) continue;
    claims.cut(n, rows, size, walk);
  }
  expect(claims.straying).toEqual([]);
  expect(claims.claimed).toBeGreaterThan(12);
  expect(claims.drawn).toBeGreaterThan(0.8 * claims.claimed);
});
