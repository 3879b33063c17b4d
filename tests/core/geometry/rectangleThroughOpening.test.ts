import fc from 'fast-check';
import { rectangleThroughOpening } from '../../../src/core/geometry/rectangleThroughOpening';
import { evenly } from '../../support/evenly';

const { PI, cos, max, min, sin } = Math;

describe('a rectangle in an opening', () => {
  test('thinner than nothing is nothing: what is left is a segment, as long as the diagonal', () => {
    // 3-4-5: the diagonal of 300 x 400 is 500.
    const fit = rectangleThroughOpening(300, 400, 600, 2);
    expect(fit.clearance).toBe(-50);
    expect(fit.angle).toBeCloseTo(Math.atan(3 / 4), 12);
    // The segment of 500 lies along the diagonal once the thickness has gone, and not before.
    expect(rectangleThroughOpening(400, 300, 502, 2).clearance).toBeCloseTo(-1, 9);
  });

  test('it agrees with trying 20,000 angles', () => {
    const size = (least: number, most: number) => evenly(least, most);
    const cases = fc.sample(
      fc.record({ a: size(100, 2500), b: size(100, 2500), p: size(1, 3000), q: size(0, 1500) }),
      { numRuns: 150, seed: 401 },
    );
    const steps = 20000;
    const turns = Array.from({ length: steps + 1 }, (_, i) => (i * PI) / 2 / steps);
    const table = turns.map((t) => [cos(t), sin(t)] as const);
    for (const { a, b, p, q } of cases) {
      const { clearance } = rectangleThroughOpening(a, b, p, q);
      const spare = (c: number): number => {
        const [p1, q1] = [max(0, p + 2 * c), max(0, q + 2 * c)];
        let best = -Infinity;
        for (const [co, si] of table) best = max(best, min(a - p1 * co - q1 * si, b - p1 * si - q1 * co));
        return best;
      };
      expect([a, b, p, q, clearance, spare(clearance - 0.25) >= 0]).toEqual([a, b, p, q, clearance, true]);
      expect([a, b, p, q, clearance, spare(clearance + 0.25) < 0]).toEqual([a, b, p, q, clearance, true]);
    }
  });
});
