import { paddedPiece, sortedPiece } from '../../../../src/core/measures/piece';
import { attitudeInPlan } from '../../../../src/core/motion/attitude';
import { sizesOfHold } from '../../../../src/core/motion/hold';
import { flightPassages } from '../../../../src/core/stages/flight/flightPassages';
import { bestPassage } from '../../../../src/core/stages/opening/opening';
import { flightScene } from '../../../support/flightEndsMotion';
import { seeded } from '../../../support/parkMiller';
import { replay } from '../../../support/replayMotion';

function shortFlight(next: () => number) {
  const headroom = 1950 + 400 * next();
  return {
    measures: { width: 700 + 350 * next(), headroom, rise: 160 + 60 * next(), going: 210 + 90 * next() },
    ends: {
      risers: 2 + Math.floor(3 * next()),
      footCeiling: headroom + 700 * next(),
      footSpace: 700 + 2000 * next(),
      headCeiling: 2000 + 600 * next(),
      headSpace: 700 + 2000 * next(),
    },
    piece: sortedPiece(1000 + 1500 * next(), 500 + 800 * next(), 15 + 250 * next() ** 2),
  };
}

test('two steps up, lifted level: the sides of the flight decide, not its pitch', () => {
  // By hand: (778 - 24) / 2; two risers of 217; 2483 - 434 leaves far more than 1288, both floors half of 2369 and more.
  const best = bestPassage(
    flightPassages({ width: 778, headroom: 2155, rise: 217, going: 235 }, sortedPiece(2369, 1288, 24), {
      risers: 2,
      footCeiling: 2483,
      footSpace: 2323,
      headCeiling: 2490,
      headSpace: 1594,
    }),
  );
  expect(best.clearance).toBeCloseTo(377, 9);
  expect(best.raise).toBe(434);
  expect(best.atMost).toBeGreaterThanOrEqual(377);
});

test('what is lifted level over seeded short flights is replayed among their steps and ceilings', () => {
  const next = seeded(2087);
  let lifted = 0;
  for (let i = 0; i < 250; i++) {
    const { measures, ends, piece } = shortFlight(next);
    for (const { from: hold, answer } of flightPassages(measures, piece, ends)) {
      const { clearance, atMost, raise } = answer;
      expect(clearance).toBeLessThanOrEqual(atMost + 1e-6);
      if (raise !== ends.risers * measures.rise || clearance < -20) continue;
      lifted++;
      const { upright } = sizesOfHold(piece, hold);
      const turn = attitudeInPlan({ hold }, 0);
      const up = ends.risers * measures.rise;
      const z = (lower: number): number => lower + upright / 2 + clearance;
      const run = ends.risers * measures.going;
      // Its middle over the first riser at the start and over the top nosing at the end, lifted there as well.
      const keys = [measures.going, run].map((x) => ({ at: [x, 0, z(up)] as const, turn }));
      const scene = flightScene(measures, ends, ends.risers, piece.length);
      const seen = replay({ motion: keys, scene }, paddedPiece(piece, clearance - 0.05), { step: 30 });
      expect({ i, hold, collides: seen.collides }).toMatchObject({ collides: false });
    }
  }
  expect(lifted).toBeGreaterThan(100);
});

test('more steps than few are not lifted over, nor where an end is not measured', () => {
  const measures = { width: 900, headroom: 2100, rise: 180, going: 250 };
  const piece = sortedPiece(900, 600, 25);
  const ends = { risers: 4, footCeiling: 2400, footSpace: 1500, headCeiling: 2400, headSpace: 1500 };
  const raised = (given: typeof ends | Omit<typeof ends, 'headCeiling'>): boolean =>
    flightPassages(measures, piece, given).some(({ answer }) => answer.raise === given.risers * 180);
  expect(raised(ends)).toBe(true);
  expect(raised({ ...ends, risers: 5 })).toBe(false);
  const { risers, footCeiling, footSpace, headSpace } = ends;
  expect(raised({ risers, footCeiling, footSpace, headSpace })).toBe(false);
});

test('a proof square to the pitch counts only where the flight has a ceiling of its own there', () => {
  const measures = { width: 778, headroom: 2155, rise: 217, going: 235 };
  const piece = sortedPiece(2369, 1288, 24);
  const ends = { footCeiling: 2483, footSpace: 2323, headCeiling: 2490, headSpace: 1594 };
  const atMost = (risers: number): number =>
    flightPassages(measures, piece, { ...ends, risers })[0]!.answer.atMost;
  // Square from a nosing to the ceiling line it is 1583 mm, no more than the piece's breadth and 295 to spare.
  expect(atMost(12)).toBeLessThan(250);
  expect(atMost(2)).toBeGreaterThan(370);
});
