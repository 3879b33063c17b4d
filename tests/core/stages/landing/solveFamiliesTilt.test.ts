import { sortedPiece, type PieceSize } from '../../../../src/core/measures/piece';
import { bestFamilyFit } from '../../../../src/core/stages/landing/solveFamilies';
import type { LandingPlan } from '../../../../src/core/stages/landing/landingPlan';
import type { Hold } from '../../../../src/core/motion/hold';

// The tilt in which a piece goes round is sought among all from the pitch to upright. What is spare has two tops
// there on half landings whose diagonal is as long as the piece: at the least tilt with which it just turns, its
// front low over the upper flight, and much steeper. A search that misses one loses up to 2.5 mm and is not monotone.

const stairs: readonly (readonly [LandingPlan, PieceSize])[] = [
  [
    {
      widthIn: 1034.515,
      widthOut: 1034.515,
      depthIn: 1044.219,
      depthOut: 1044.219,
      across: 2072.429,
      headroom: 2229.334,
      rise: 202.49,
      going: 254.438,
      ceiling: 2648.294,
    },
    sortedPiece(2250, 348.9, 51.687),
  ],
  [
    {
      widthIn: 720.734,
      widthOut: 720.734,
      depthIn: 937.874,
      depthOut: 937.874,
      across: 1441.468,
      headroom: 2289.483,
      rise: 157.593,
      going: 299.423,
      ceiling: 2625.567,
    },
    sortedPiece(2400, 559.812, 284.642),
  ],
];

const clearance = (plan: LandingPlan, piece: PieceSize, hold: Hold): number =>
  bestFamilyFit(plan, piece, hold)!.clearance;

test.each([0, 1])('stair %i: a shorter piece or a higher, wider, deeper stair never has less', (which) => {
  const [plan, { length, breadth, thickness }] = stairs[which]!;
  const dearest = (measure: (by: number) => number): void => {
    let last = -Infinity;
    for (let by = 0; by <= 12; by += 0.75) {
      const here = measure(by);
      expect(here).toBeGreaterThanOrEqual(last - 0.02);
      last = here;
    }
  };
  for (const hold of ['LT', 'LB'] as const) {
    dearest((by) => clearance(plan, sortedPiece(length - by, breadth, thickness), hold));
    const piece = sortedPiece(length - 2, breadth, thickness);
    dearest((by) => clearance({ ...plan, across: plan.across! + by }, piece, hold));
    dearest((by) => clearance({ ...plan, headroom: plan.headroom + by }, piece, hold));
    dearest((by) =>
      clearance({ ...plan, depthIn: plan.depthIn + by, depthOut: plan.depthOut + by }, piece, hold),
    );
  }
});
