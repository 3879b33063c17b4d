import fc from 'fast-check';
import { rectangleRoundCornerInHold } from '../../../src/core/geometry/rectangleRoundCorner';
import { turnsRightAngle } from '../../../src/core/geometry/turnsRightAngle';

const mm = (min: number, max: number) => fc.integer({ min, max });

describe('a rectangle turned through the right angle of a corner', () => {
  test.each([
    // Codeforces Round 78, problem 98C: for 2, 2 and a length of 3 the greatest width is 1.3284271.
    [3, 1.3284271, 2, 2],
    // Moretti 2002: corridors 8 and 3, a couch 1 wide: the longest is 12.85632 by the least over the angle (derived).
    [12.85632, 1, 8, 3],
  ])('%d x %d in %d and %d leaves nothing', (p, q, b1, b2) => {
    expect(turnsRightAngle(p, q, b1, b2)).toBeCloseTo(0, 5);
  });

  test('a segment is the ladder of the calculus books: 3 and 4 ft, 9.8657 ft (Briggs & Cochran)', () => {
    expect(turnsRightAngle(9.8657, 0, 3, 4)).toBeCloseTo(0, 4);
  });

  test('agrees with the search over the circle of angles, lengthwise and crosswise', () => {
    fc.assert(
      fc.property(mm(100, 3000), mm(1, 1500), mm(400, 2500), mm(400, 2500), (a, b, b1, b2) => {
        const [p, q] = [Math.max(a, b), Math.min(a, b)];
        for (const [along, across] of [
          [p, q],
          [q, p],
        ] as const) {
          const arms = (Math.min(b1, b2) - across) / 2;
          if (arms < -q / 2) continue;
          const held = rectangleRoundCornerInHold(along, across, b1, b2, Math.PI / 2, 'lengthwise').clearance;
          expect(Math.min(arms, turnsRightAngle(p, q, b1, b2))).toBeCloseTo(held, 4);
        }
      }),
      { seed: 21, numRuns: 400 },
    );
  });
});
