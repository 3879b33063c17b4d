import fc from 'fast-check';
import {
  rectangleRoundCorner,
  rectangleRoundCornerHeld,
} from '../../../src/core/geometry/rectangleRoundCorner';
import { cornerByBruteForce } from '../../support/cornerOracle';

const RIGHT = Math.PI / 2;
const clearance = (p: number, q: number, a: number, b: number, turn = RIGHT) =>
  rectangleRoundCorner(p, q, a, b, turn).clearance;

describe('published corners', () => {
  // Codeforces Round 78, problem 98C, samples: corridors a and b, length l -> greatest width.
  test.each([
    [2, 2, 1, 1],
    [2, 2, 2, 2],
    [2, 2, 3, 1.3284271],
  ])('corridors %d and %d, length %d: width %d', (a, b, l, w) => {
    expect(clearance(l, w, a, b)).toBeGreaterThan(-1e-7);
    expect(clearance(l, w + 1e-6, a, b)).toBeLessThan(0);
  });

  test('98C, fourth sample: length 6 between corridors of 2 is impossible', () => {
    expect(clearance(6, 0, 2, 2)).toBeLessThan(0);
  });

  // Moretti, College Math. J. 33(3), 2002: corridors 8 and 3, couch 1 wide, printed 12.8927 at 31 degrees; the
  // least over the angle, derived, is 12.85632.
  test('a couch 1 wide between corridors of 8 and 3 is at most 12.85632 long', () => {
    expect(clearance(12.85632, 1, 8, 3)).toBeCloseTo(0, 5);
    const printed = 1 - 12.8927 * Math.sin((31 * Math.PI) / 180) * Math.cos((31 * Math.PI) / 180);
    expect(printed).toBeLessThan(0);
  });

  // Briggs & Cochran, Calculus: a ladder round widths 3 and 4 ft is 9.8657 ft; Stewart 4.7 (derived): widths 9
  // and 6 ft, 21.0704 ft; textbook: equal widths a, 2 sqrt 2 a.
  test.each([
    [3, 4, 9.8657, 4],
    [9, 6, 21.0704, 4],
    [1, 1, 2 * Math.SQRT2, 12],
  ])('a ladder round %d and %d is %d long', (a, b, length, digits) => {
    expect(clearance(length, 0, a, b)).toBeCloseTo(0, digits - 1);
  });

  // Gerver 1992: no shape of more area than 2.2195 goes round a unit corner.
  test('no rectangle that passes a unit corner beats the greatest area known', () => {
    for (let p = 0.1; p < 3; p += 0.01) {
      for (const q of [0.2, 0.4, 0.6, 0.8, 1]) {
        if (clearance(p, q, 1, 1) >= 0) expect(p * q).toBeLessThanOrEqual(2.2195);
      }
    }
  });
});

describe('against brute force over places and angles', () => {
  const cases = fc.sample(
    fc.record({
      p: fc.double({ min: 300, max: 3000, noNaN: true }),
      slim: fc.double({ min: 0.005, max: 1, noNaN: true }),
      b1: fc.double({ min: 350, max: 2200, noNaN: true }),
      b2: fc.double({ min: 350, max: 2200, noNaN: true }),
      turn: fc.oneof(fc.constant(90), fc.double({ min: 1, max: 120, noNaN: true })),
    }),
    { numRuns: 40, seed: 20260 },
  );
  test.each(cases)('$p x $slim, $b1 to $b2, $turn degrees', ({ p, slim, b1, b2, turn }) => {
    const q = p * slim;
    const angle = turn === 90 ? RIGHT : (turn * Math.PI) / 180;
    const ours = clearance(p, q, b1, b2, angle);
    const brute = cornerByBruteForce({ p, q }, b1, b2, angle, 720);
    // A finite grid of angles can only miss a dip, so it may be a little too wide; its places a little narrow.
    expect(Math.abs(ours - brute)).toBeLessThan(0.5);
  });
});

describe('properties', () => {
  const size = fc.double({ min: 1, max: 4000, noNaN: true });
  const width = fc.double({ min: 100, max: 4000, noNaN: true });
  const turn = fc.oneof(fc.constant(RIGHT), fc.double({ min: 0.02, max: 2.09, noNaN: true }));
  const run = (seed: number) => ({ seed, numRuns: 400 });

  test('a wider arm never takes clearance away, a larger piece never adds any', () => {
    fc.assert(
      fc.property(
        size,
        size,
        width,
        width,
        turn,
        fc.double({ min: 0, max: 500, noNaN: true }),
        (p, q, a, b, t, d) => {
          const base = clearance(p, q, a, b, t);
          const slack = 1e-6;
          expect(clearance(p, q, a + d, b, t)).toBeGreaterThanOrEqual(base - slack);
          expect(clearance(p, q, a, b + d, t)).toBeGreaterThanOrEqual(base - slack);
          expect(clearance(p + d, q, a, b, t)).toBeLessThanOrEqual(base + slack);
          expect(clearance(p, q + d, a, b, t)).toBeLessThanOrEqual(base + slack);
        },
      ),
      run(1),
    );
  });

  test('lengths times k give clearance times k, and the way back is as wide as the way there', () => {
    fc.assert(
      fc.property(
        size,
        size,
        width,
        width,
        turn,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (p, q, a, b, t, k) => {
          const base = clearance(p, q, a, b, t);
          expect(clearance(k * p, k * q, k * a, k * b, t)).toBeCloseTo(k * base, 4);
          expect(clearance(p, q, b, a, t)).toBeCloseTo(base, 4);
          expect(clearance(q, p, a, b, t)).toBe(base);
        },
      ),
      run(2),
    );
  });

  test('padded by its clearance a piece has none left', () => {
    fc.assert(
      fc.property(size, size, width, width, turn, (p, q, a, b, t) => {
        const c = clearance(p, q, a, b, t);
        expect(c).toBeGreaterThanOrEqual(-Math.max(p, q) / 2 - 1e-9);
        const padded = clearance(Math.max(0, p + 2 * c), Math.max(0, q + 2 * c), a, b, t);
        expect(Math.abs(padded)).toBeLessThan(1e-4);
      }),
      run(3),
    );
  });

  test('held one way in and one way out never beats the freest way', () => {
    fc.assert(
      fc.property(size, size, width, width, turn, fc.boolean(), (p, q, a, b, t, crosswise) => {
        const held = rectangleRoundCornerHeld(p, q, a, b, t, crosswise).clearance;
        expect(held).toBeLessThanOrEqual(clearance(p, q, a, b, t) + 1e-6);
        expect(Number.isFinite(held)).toBe(true);
      }),
      run(4),
    );
  });
});
