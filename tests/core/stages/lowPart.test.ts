import { FLIGHT_SOLVER } from '../../../src/core/stages/flight/flightSolver';
import { PASSAGE_SOLVER } from '../../../src/core/stages/passage/passageSolver';
import { sizesOfHold } from '../../../src/core/motion/hold';
import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { seededStream } from '../../../src/core/space/seededStream';
import { passesSection, roundedUp } from '../../support/sectionSearch';
import { sectionOf, type StairInSection } from '../../support/stairSection';
import { judge, openEnds, piece, route } from '../route/routeFixtures';

/**
 * A flight with a handrail on one side: what is too wide to go beside it is carried above it. `LOW=400 npx jest
 * tests/core/stages/lowPart` holds more flights against the search.
 */
const FLIGHTS = Number(process.env['LOW'] ?? 40);

const passagesOf = (measures: Parameters<typeof FLIGHT_SOLVER.passages>[0], box: PieceSize) =>
  FLIGHT_SOLVER.passages(measures, box, 'with leaning');

const flightOf = ({ headroom, ...rest }: Omit<StairInSection, 'width'>) => ({
  width: 1000,
  height: headroom,
  ...rest,
});

test('what is carried above a handrail passes under the ceilings at both ends, by a search in the upright section', () => {
  let shown = 0;
  for (let seed = 1; seed <= FLIGHTS; seed++) {
    const next = seededStream(seed);
    const b = (lo: number, hi: number): number => Math.round(lo + (hi - lo) * next());
    const lowHeight = b(100, 900);
    const upright = b(300, 1200);
    const headroom = upright + lowHeight + b(250, 700);
    const stair: Omit<StairInSection, 'width'> = {
      headroom,
      rise: b(150, 215),
      going: b(215, 290),
      risers: b(8, 14),
      // Low enough to decide in many: a ceiling over the foot or the head that the rail makes too low.
      footCeiling: upright + b(0, 2 * lowHeight) + b(0, 500),
      headCeiling: upright + b(0, 2 * lowHeight) + b(0, 500),
      footSpace: 5000,
      headSpace: 5000,
    };
    const wide = 700;
    const along = b(900, 2000);
    const box = sortedPiece(along, upright, wide);
    for (const { from, answer } of passagesOf({ ...flightOf(stair), lowWidth: 600, lowHeight }, box)) {
      const { along: u, across, upright: v } = sizesOfHold(box, from);
      if (across < 600 || answer.clearance < 0) continue;
      shown++;
      // What the grid rounds away is taken off: shown for a rectangle so much larger, it passes by itself.
      const off = 2 * Math.min(0, answer.clearance - roundedUp(u));
      const [p, q] = [u + off, v + off];
      const half = Math.hypot(p, q) / 2;
      const run = (stair.risers - 1) * stair.going;
      const passes = passesSection(sectionOf(stair, lowHeight), p, q, -half, run + half);
      if (!passes)
        throw new Error(`seed ${seed}: ${JSON.stringify({ stair, lowHeight, box, from, answer })}`);
    }
  }
  expect(shown).toBeGreaterThan(FLIGHTS / 4);
}, 300_000);

test('a handrail that leaves room beside it costs nothing but its width, and one over no floor is nowhere', () => {
  const stair = { ...openEnds, headroom: 2100, rise: 190, going: 240, risers: 12 };
  const box = sortedPiece(1500, 900, 300);
  const best = (lowWidth?: number): number =>
    Math.max(
      ...passagesOf(
        { ...flightOf(stair), ...(lowWidth === undefined ? {} : { lowWidth, lowHeight: 1000 }) },
        box,
      ).map(({ answer }) => answer.clearance),
    );
  // On edge beside it: (700 - 300) / 2; without it (1000 - 300) / 2 is more than the headroom leaves.
  expect(best(700)).toBeCloseTo((700 - 300) / 2, 9);
  expect(best()).toBeGreaterThan(best(700));
});

describe('a passage that is narrower near its floor', () => {
  const low = { width: 900, height: 2300, length: 700, lowWidth: 300, lowHeight: 900 } as const;
  const long = { width: 900, height: 2300, length: 4000 } as const;
  const corner = { width: 900, widthOut: 900, height: 2300 } as const;
  const between = (narrow: typeof low) =>
    route(['passage', long], ['corner', corner], ['passage', narrow], ['corner', corner], ['passage', long]);

  test('does not let more through between two turns than it does by itself', () => {
    // At least 350 thick: beside a radiator that leaves 300 there are 25 a side too little, above it 1400 are too low for
    // what stands on end, and turned level above it the 1700 are longer than the 900 between two turns.
    const through = judge(between(low), piece(1700, 450, 350), { tape: 0 });
    const alone = judge(route(['passage', low]), piece(1700, 450, 350), { tape: 0 });
    expect(through.clearance ?? -Infinity).toBeLessThanOrEqual(alone.clearance! + 1e-9);
    expect(through.verdict).toBe('no way found');
  });

  test('offers no more room to turn a piece over than is left beside its narrow part', () => {
    const spaces = PASSAGE_SOLVER.turningSpaces({ ...low, length: 3000 });
    expect(spaces?.before).toEqual({ along: 3000, across: 300, height: 2300 });
  });
});
