import { verdictRank } from '../../../src/core/route/verdict';
import { judge, openEnds, piece, route } from './routeFixtures';

// Facts of the trade: common practice, no source. Sizes: a one-piece slate of a 7 ft table is about 6 ft long, of
// a 6 ft table just over 5 ft; an 8 ft table's slate comes in one piece or in three.
const sevenFoot = piece(1830, 930, 25);
const sixFoot = piece(1560, 810, 20);
const eightFoot = piece(2360, 1180, 25);
const eightFootSection = piece(1180, 790, 25);

// A private stair within Approved Document K table 1.1, as wide as a hall usually leaves it.
const stair = { width: 850, height: 2000, rise: 200, going: 240, risers: 13, ...openEnds } as const;

describe('common practice, no source', () => {
  test('a one-piece slate goes up straight stairs on its long edge', () => {
    const rows = route(
      ['door', { width: 762, height: 1981 }],
      ['flight', stair],
      ['door', { width: 762, height: 1981 }],
      ['room', { length: 5000, width: 4000, height: 2300 }],
    );
    const judged = judge(rows, sevenFoot);
    expect(judged.verdict).toBe('goes');
    expect(judged.steps[1]!.pose).toBe('on edge');
  });

  test('round a turn the slate of a 6 ft table goes sooner than that of a 7 ft one', () => {
    const narrowest = (slate: ReturnType<typeof piece>): number => {
      for (let width = 300; width < 1500; width += 5) {
        // A ceiling under which neither stands on end: a cellar way.
        const rows = route(['corner', { width, widthOut: width, height: 1500 }]);
        if (judge(rows, slate).verdict === 'goes') return width;
      }
      return Infinity;
    };
    expect(narrowest(sixFoot)).toBeLessThan(narrowest(sevenFoot));
  });

  test('a slate is stood on end for a turn that it does not make on edge', () => {
    const turn = { width: 640, widthOut: 640, height: 2400 } as const;
    const rows = route(
      ['door', { width: 762, height: 1981 }],
      ['room', { length: 4000, width: 3000, height: 2400 }],
      ['corner', turn],
      ['room', { length: 4000, width: 3000, height: 2400 }],
      ['door', { width: 762, height: 1500 }],
    );
    const judged = judge(rows, piece(1900, 560, 25));
    expect(judged.verdict).toBe('goes');
    expect(judged.steps.map((s) => s.pose)[2]).toBe('on end');
    expect(judged.reason).toContain('stood on end in the room at step 2');
    expect(judged.reason).toContain('in the room at step 4');
  });

  test('the slate of an 8 ft table goes in three pieces where it does not go in one', () => {
    const rows = route(
      ['door', { width: 686, height: 1981 }],
      ['corner', { width: 800, widthOut: 800, height: 2300 }],
      ['flight', stair],
      ['room', { length: 5000, width: 4000, height: 2300 }],
    );
    const one = judge(rows, eightFoot).verdict;
    expect(verdictRank(one)).toBeGreaterThan(verdictRank('tight'));
    expect(judge(rows, eightFootSection).verdict).toBe('goes');
  });

  test('a U-shaped stair with room takes a one-piece slate on edge; one without room does not', () => {
    const half = (width: number, depth: number) =>
      route(['half landing', { width, well: 200, depth, height: 2400, rise: 180, going: 260 }]);
    const roomy = judge(half(1100, 1300), sixFoot, { tape: 0 });
    expect(roomy.verdict).toBe('goes');
    // Carried on edge up both flights; on the landing it is turned as it is, raised, or stood up, never laid flat.
    expect(['on edge', 'tilted', 'on end']).toContain(roomy.pose);
    expect(roomy.reason).not.toMatch(/laid flat|mechanical aid/);
    expect(judge(half(620, 620), eightFoot, { tape: 0 }).clearance ?? -1).toBeLessThan(0);
  });
});
