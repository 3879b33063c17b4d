import fc from 'fast-check';
import {
  clearanceRoundCorner,
  rectangleRoundCorner,
  rectangleRoundCornerInHold,
  surelyBlocked,
} from '../../../src/core/geometry/rectangleRoundCorner';
import { padded, searchCorner } from '../../support/cornerOracle';
import { evenly } from '../../support/evenly';

const RIGHT = Math.PI / 2;
const clearance = (p: number, q: number, a: number, b: number, turn = RIGHT) =>
  rectangleRoundCorner(p, q, a, b, turn).clearance;

describe('published corners', () => {
  // Codeforces Round 78, problem 98C, samples: corridors a and b, length l -> greatest width w, which is not more
  // than l (its sides change names beyond that).
  test.each([
    [2, 2, 1, 1],
    [2, 2, 2, 2],
    [2, 2, 3, 1.3284271],
  ])('corridors %d and %d, length %d: width %d', (a, b, l, printed) => {
    let low = 0;
    let high = l;
    expect(clearance(l, low, a, b)).toBeGreaterThanOrEqual(0);
    if (clearance(l, high, a, b) >= 0) low = high;
    while (high - low > 1e-10) {
      const middle = (low + high) / 2;
      if (clearance(l, middle, a, b) >= 0) low = middle;
      else high = middle;
    }
    expect(Math.abs(low - printed)).toBeLessThan(6e-8);
  });

  // The rule of 98C for a short piece: if l <= b then min(a, l), if l <= a then min(b, l).
  test.each([
    [3, 2, 2, 2],
    [3, 2, 3, 2],
    [5, 2, 4, 2],
    [2, 5, 4, 2],
    [1.5, 4, 3, 1.5],
  ])('corridors %d and %d, length %d: crabwise up to width %d', (a, b, l, w) => {
    expect(clearance(l, w, a, b)).toBeCloseTo(0, 12);
    if (w < l) expect(clearance(l, w + 1e-6, a, b)).toBeLessThan(0);
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

describe('against a search over places and angles', () => {
  /** At half a millimetre less padding the search lays a path, at half a millimetre more it rules every one out. */
  const agrees = (p: number, q: number, widthIn: number, widthOut: number, turn: number): void => {
    const ours = clearance(p, q, widthIn, widthOut, turn);
    const scene = { widthIn, widthOut, turn };
    const less = searchCorner(scene, padded(p, ours - 0.5), padded(q, ours - 0.5));
    const more = searchCorner(scene, padded(p, ours + 0.5), padded(q, ours + 0.5));
    expect({ p, q, widthIn, widthOut, turn, ours, less, more }).toMatchObject({
      less: { path: true, none: false },
      more: { path: false, none: true },
    });
  };
  const piece = {
    p: evenly(100, 3000),
    slim: evenly(0.005, 1),
    b1: evenly(350, 2200),
    b2: evenly(350, 2200),
  };
  const degrees = (least: number, most: number) => evenly(least, most).map((d) => (d * Math.PI) / 180);

  test.each([
    ['right angles', fc.constant(RIGHT), 100, 20260],
    ['turns of 1 to 120 degrees', degrees(1, 120), 100, 20261],
    ['turns of 1 to 15 degrees', degrees(1, 15), 100, 20262],
  ])('%s', (_, turns, numRuns, seed) => {
    const cases = fc.sample(fc.record({ ...piece, turn: turns }), { numRuns, seed });
    for (const { p, slim, b1, b2, turn } of cases) agrees(p, p * slim, b1, b2, turn);
  });

  test('short pieces in wide ways, which may move crabwise', () => {
    const cases = fc.sample(
      fc.record({
        p: evenly(300, 1200),
        slim: evenly(0.6, 1),
        b1: evenly(300, 1400),
        b2: evenly(300, 1400),
        turn: fc.oneof(fc.constant(RIGHT), degrees(1, 120), degrees(80, 100)),
      }),
      { numRuns: 100, seed: 20263 },
    );
    for (const { p, slim, b1, b2, turn } of cases) agrees(p, p * slim, b1, b2, turn);
  });

  test('held one way in and one way out', () => {
    const cases = fc.sample(
      fc.record({
        along: evenly(20, 2500),
        across: evenly(20, 2500),
        b1: evenly(350, 2200),
        b2: evenly(350, 2200),
        turn: fc.oneof(fc.constant(RIGHT), degrees(1, 120)),
        crosswise: fc.boolean(),
      }),
      { numRuns: 100, seed: 20264 },
    );
    for (const { along, across, b1, b2, turn, crosswise } of cases) {
      const ours = rectangleRoundCornerInHold(
        along,
        across,
        b1,
        b2,
        turn,
        crosswise ? 'crosswise' : 'lengthwise',
      ).clearance;
      // The search measures its angle to the side it is given first.
      const search = (c: number) =>
        searchCorner({ widthIn: b1, widthOut: b2, turn }, padded(along, c), padded(across, c), {
          comes: 0,
          goes: crosswise ? turn + RIGHT : turn,
        });
      expect({
        along,
        across,
        b1,
        b2,
        turn,
        crosswise,
        ours,
        less: search(ours - 0.5),
        more: search(ours + 0.5),
      }).toMatchObject({ less: { path: true }, more: { none: true } });
    }
  });

  // A dip within two degrees of a sharp peak was once overlooked, and too much clearance promised.
  test.each([
    [1, 1, 100, 105.00654893089298, 6.926],
    [413.497, 6.549, 2033.784, 2035.438, 1.52],
    [3000, 41.215, 1144.197, 660.381, 8.607],
    [2522.3, 49.589, 350, 1043.71, 15.3075],
    [947.874, 947.874, 1434.414, 1574.69, 7.774],
    [404.004, 199.518, 350, 350, 1],
  ])('a dip beside a peak: %d x %d, %d to %d, %d degrees', (p, q, b1, b2, turn) => {
    agrees(p, q, b1, b2, (turn * Math.PI) / 180);
    agrees(p, q, b2, b1, (turn * Math.PI) / 180);
  });

  test('the search itself finds the printed ladder, and no more', () => {
    // Briggs & Cochran: 9.8657 ft round 3 and 4 ft; here in mm, 100 mm a foot so that 0.1 mm is 0.001 ft.
    const scene = { widthIn: 300, widthOut: 400, turn: RIGHT };
    expect(searchCorner(scene, 986.57 - 0.3, 0)).toEqual({ path: true, none: false });
    expect(searchCorner(scene, 986.57 + 0.3, 0)).toEqual({ path: false, none: true });
  });
});

describe('properties', () => {
  const size = evenly(1, 4000);
  const width = evenly(100, 4000);
  const turn = fc.oneof(fc.constant(RIGHT), evenly(0.02, 2.09));
  const run = (seed: number) => ({ seed, numRuns: 400 });

  test('a wider arm never takes clearance away, a larger piece never adds any', () => {
    fc.assert(
      fc.property(size, size, width, width, turn, evenly(0, 500), (p, q, a, b, t, d) => {
        const base = clearance(p, q, a, b, t);
        const slack = 1e-6;
        expect(clearance(p, q, a + d, b, t)).toBeGreaterThanOrEqual(base - slack);
        expect(clearance(p, q, a, b + d, t)).toBeGreaterThanOrEqual(base - slack);
        expect(clearance(p + d, q, a, b, t)).toBeLessThanOrEqual(base + slack);
        expect(clearance(p, q + d, a, b, t)).toBeLessThanOrEqual(base + slack);
      }),
      run(1),
    );
  });

  test('lengths times k give clearance times k, and the way back is as wide as the way there', () => {
    fc.assert(
      fc.property(size, size, width, width, turn, evenly(0.1, 10), (p, q, a, b, t, k) => {
        const base = clearance(p, q, a, b, t);
        // Rounding alone: a millionth of the lengths that went in.
        const rounding = 1e-6 * (p + q + a + b);
        expect(Math.abs(clearance(k * p, k * q, k * a, k * b, t) - k * base)).toBeLessThan(k * rounding);
        expect(Math.abs(clearance(p, q, b, a, t) - base)).toBeLessThan(rounding);
        expect(clearance(q, p, a, b, t)).toBe(base);
      }),
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
        const held = rectangleRoundCornerInHold(
          p,
          q,
          a,
          b,
          t,
          crosswise ? 'crosswise' : 'lengthwise',
        ).clearance;
        expect(held).toBeLessThanOrEqual(clearance(p, q, a, b, t) + 1e-6);
        expect(Number.isFinite(held)).toBe(true);
      }),
      run(4),
    );
  });

  test('the clearance alone is the clearance', () => {
    fc.assert(
      fc.property(size, size, width, width, turn, (p, q, a, b, t) => {
        expect(Math.abs(clearanceRoundCorner(p, q, a, b, t) - clearance(p, q, a, b, t))).toBeLessThan(1e-6);
      }),
      run(5),
    );
  });

  test('what is surely blocked does not pass, near the edge of passing too', () => {
    const scale = fc.oneof(fc.constant(1), evenly(0.9, 1.2));
    let blocked = 0;
    fc.assert(
      fc.property(size, size, width, width, scale, (p, q, a, b, k) => {
        // Sizes brought to the edge of passing, then a little larger or smaller.
        const c = clearance(p, q, a, b);
        const [p1, q1] = [Math.max(0, p + 2 * c) * k, Math.max(0, q + 2 * c) * k];
        const sure = surelyBlocked(p1, q1, a, b);
        const ours = clearance(p1, q1, a, b);
        if (sure) expect(ours).toBeLessThan(1e-6);
        if (sure) blocked += 1;
      }),
      { seed: 6, numRuns: 3000 },
    );
    // One look is worth having only where it often decides.
    expect(blocked).toBeGreaterThan(300);
  });
});
