import { boxInBoxAtMost } from '../../src/core/geometry/proofs/boxInBoxAtMost';
import { sortedPiece } from '../../src/core/measures/piece';
import { callInCell, type Given } from '../support/callInCells';

// Published values, called as a cell calls. Where a source has no unit its lengths are taken times 100 or times
// 1000, as the ranges of the arguments allow; every clearance is then times that too.

const call = (id: string, ...given: Given[]): number => {
  const value = callInCell(id, ...given);
  if (typeof value !== 'number') throw new Error(`${id} gave ${JSON.stringify(value)}`);
  return value;
};

const FOOT = 304.8;

describe('a face turned in an opening: Carver 1957; Wetzel, Mathematics Magazine 73, 2000, 204-211', () => {
  test('Wetzel p. 204: 9 x 4 does not fit 8 x 6, though area, diameter, perimeter and thickness allow it', () => {
    expect(9 * 4).toBeLessThan(8 * 6);
    expect(Math.hypot(9, 4)).toBeLessThan(Math.hypot(8, 6));
    expect(9 + 4).toBeLessThan(8 + 6);
    expect(call('DIAGONAL', 800, 600, 900, 400)).toBeLessThan(0);
    expect(call('OPENING', 600, 800, 2000, 900, 400)).toBeLessThan(0);
  });

  test('longest face 1 wide in 8 x 6: 9.05566 (derived from the formula: 9.0556635)', () => {
    // (p cos t + sin t = 8, p sin t + cos t = 6) gives 4/(p-1)^2 + 196/(p+1)^2 = 2, solved by hand.
    expect(4 / (9.0556635 - 1) ** 2 + 196 / (9.0556635 + 1) ** 2).toBeCloseTo(2, 7);
    expect(call('DIAGONAL', 800, 600, 905.56636, 100)).toBeLessThan(0);
    expect(call('DIAGONAL', 800, 600, 905.56634, 100)).toBeGreaterThan(0);
  });

  test('longest face 30 thick in a door of 1981 x 762: 2102.75 (derived from the formula)', () => {
    expect(call('DIAGONAL', 762, 1981, 2102.745, 30)).toBeGreaterThan(0);
    expect(call('DIAGONAL', 762, 1981, 2102.755, 30)).toBeLessThan(0);
    expect(call('OPENING', 762, 1981, 2600, 2102.745, 30)).toBeGreaterThan(0);
    expect(call('OPENING', 762, 1981, 2600, 2102.755, 30)).toBeLessThan(0);
  });

  // The inequality itself, as printed, with the two conditions that are often left out (p > a, q <= b).
  const carver = (p: number, q: number, a: number, b: number): boolean =>
    (p <= a && q <= b) ||
    (p > a &&
      q <= b &&
      b >= (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q));

  test('DIAGONAL is not negative exactly where the printed inequality holds', () => {
    let fits = 0;
    for (let p = 300; p <= 1500; p += 37) {
      for (let q = 20; q <= p; q += 41) {
        for (const [a, b] of [
          [800, 600],
          [1981, 762],
          [1000, 1000],
          [1200, 150],
        ] as const) {
          expect([p, q, a, b, call('DIAGONAL', b, a, q, p) >= 0]).toEqual([p, q, a, b, carver(p, q, a, b)]);
          if (carver(p, q, a, b)) fits += 1;
        }
      }
    }
    expect(fits).toBeGreaterThan(100);
  });

  test('a square of 10 does not fit an 8 x 8 hole: the inequality is not to be used with p = q', () => {
    expect(call('DIAGONAL', 800, 800, 1000, 1000)).toBe(-100);
  });

  test('at the angle that DIAGONALANGLE gives, the face and its clearance fill both sides of the opening', () => {
    for (const [a, b, p, q] of [
      [800, 600, 905.56635, 100],
      [1981, 762, 2102.75, 30],
      [1981, 762, 2050, 60],
    ] as const) {
      const angle = (call('DIAGONALANGLE', b, a, p, q) * Math.PI) / 180;
      const c = call('DIAGONAL', b, a, p, q);
      const [P, Q] = [p + 2 * c, q + 2 * c];
      expect(P * Math.cos(angle) + Q * Math.sin(angle)).toBeCloseTo(a, 8);
      expect(P * Math.sin(angle) + Q * Math.cos(angle)).toBeCloseTo(b, 8);
    }
    expect(call('DIAGONALANGLE', 762, 1981, 1900, 500)).toBe(0);
  });
});

describe('round a corner', () => {
  // Codeforces Round 78, problem 98C: corridors a and b, length l -> greatest width w (times 1000 here). The third
  // size stands upright and fills the ceiling, so that nothing can be gained by another pose.
  test.each([
    [2, 2, 1, 1],
    [2, 2, 2, 2],
    [2, 2, 3, 1.3284271],
  ])('98C: %d, %d, %d -> %d', (a, b, l, w) => {
    const level = (width: number) => call('CORNER', a * 1000, b * 1000, 3000, l * 1000, width * 1000, 3000);
    expect(level(w - 1e-6)).toBeGreaterThanOrEqual(0);
    if (w < l) expect(level(w + 1e-6)).toBeLessThan(0);
  });
  test('98C: 2, 2, 6 is impossible, however thin', () => {
    expect(call('CORNER', 2000, 2000, 3000, 6000, 1e-6, 3000)).toBeLessThan(0);
  });

  // Briggs & Cochran, Calculus: 3 and 4 ft, 9.8657 ft. Stewart, Calculus, 4.7: 9 and 6 ft, 21.0704 ft (question seen,
  // answer derived). Calculus textbooks: equal widths a, 2 sqrt 2 a, and (a^(2/3) + b^(2/3))^(3/2) for any.
  test.each([
    [3, 4, 9.8657],
    [9, 6, 21.0704],
  ])('a ladder round %d and %d ft is %d ft long', (a, b, feet) => {
    const length = call('CORNERLENGTH', `${a} ft`, `${b} ft`, 1e-7);
    expect(Math.abs(length / FOOT - feet)).toBeLessThan(0.00005);
  });
  test.each([
    [1000, 1000],
    [900, 1200],
    [700, 2000],
  ])('a ladder round %d and %d mm follows the textbook formula', (a, b) => {
    const length = call('CORNERLENGTH', a, b, 1e-9);
    expect(length).toBeCloseTo(Math.pow(Math.pow(a, 2 / 3) + Math.pow(b, 2 / 3), 1.5), 4);
    if (a === b) expect(length).toBeCloseTo(2 * Math.SQRT2 * a, 4);
  });

  test('the ladder under an 8 ft ceiling may tilt: sqrt(9.8657^2 + 8^2) = 12.70 ft (Briggs & Cochran, derived)', () => {
    const pole = (feet: string) => call('CORNER', '3 ft', '4 ft', '8 ft', feet, 1e-6, 1e-6);
    expect(pole('12.70 ft')).toBeGreaterThan(-1e-5);
    expect(pole('12.71 ft')).toBeLessThan(0);
  });

  // Moretti, College Math. J. 33(3), 2002, 196-200: corridors 8 and 3, couch 1 wide. Printed 12.8927 at 31 degrees;
  // the least over the angle, derived, is 12.85632. A minimum must not exceed the value at any one angle.
  test('a couch 1 wide round 8 and 3 is at most 12.85632 long', () => {
    const length = call('CORNERLENGTH', 800, 300, 100);
    expect(length).toBeCloseTo(1285.632, 3);
    expect(length).toBeLessThan(1289.27);
  });
});

describe('a box inside a box', () => {
  // Textbook exercise: 650 x 220 x 55 does not fit in 590 x 290 x 160, whose diagonal is shorter.
  test('650 x 220 x 55 does not fit in 590 x 290 x 160', () => {
    expect(Math.hypot(650, 220, 55)).toBeGreaterThan(Math.hypot(590, 290, 160));
    expect(boxInBoxAtMost([590, 290, 160], sortedPiece(650, 220, 55))).toBeLessThan(0);
    expect(call('LIFTCAR', 590, 160, 590, 290, 160, 650, 220, 55)).toBeLessThan(0);
  });

  // Winkler, Mathematical Mind-Benders: a box never fits inside one whose edges sum to less.
  test('no clearance inside a lift car takes the sum of the edges beyond the car', () => {
    for (const [l, b, t] of [
      [2100, 900, 30],
      [1830, 930, 25],
      [2600, 500, 500],
    ] as const) {
      const c = call('LIFTCAR', 900, 2100, 1100, 1400, 2200, l, b, t);
      expect(l + b + t + 6 * c).toBeLessThanOrEqual(1100 + 1400 + 2200);
    }
  });

  // Prince Rupert / Nieuwland, from memory: the largest square in a unit cube has a side of 3 sqrt 2 / 4.
  test('a square plate in a cube: 3 sqrt 2 / 4 of its edge is never proved impossible, and never exceeded', () => {
    const side = (1000 * 3 * Math.SQRT2) / 4;
    expect(boxInBoxAtMost([1000, 1000, 1000], sortedPiece(side, side, 0))).toBeGreaterThan(-1e-6);
    expect(call('LIFTCAR', 1000, 1000, 1000, 1000, 1000, side + 0.001, side + 0.001, 1e-6)).toBeLessThan(0);
  });
});

describe('stairs', () => {
  // Approved Document K, table 1.1: private stair, rise 150-220, going 220-300 mm, pitch at most 42 degrees.
  test('Document K: 220 with 220 is 45 degrees and too steep; its steepest going of 245 is not', () => {
    expect(call('PITCH', 220, 220)).toBeCloseTo(45, 12);
    expect(call('PITCH', 220, 244)).toBeGreaterThan(42);
    expect(call('PITCH', 220, 245)).toBeLessThan(42);
    expect(call('PITCH', 150, 300)).toBeCloseTo(26.565051, 6); // atan 1/2, tables of functions
  });

  // Approved Document K 1.11: headroom 2.0 m, measured plumb. Square to a pitch of atan(3/4) that is 4/5 of it.
  test('a 3-4-5 stair leaves four fifths of its headroom square to the pitch', () => {
    expect(call('FLIGHT', 125, 2000, 180, 240, 1830, 1500, 25)).toBeCloseTo((1600 - 1500) / 2, 9);
    expect(call('FLIGHT', 100, 2000, 180, 240, 1830, 1600, 100)).toBeCloseTo(0, 9);
  });

  // IRC R311.7: 36 in wide, headroom 6 ft 8 in, riser 7 3/4 in, tread 10 in; 31 1/2 in beside one handrail.
  test('a stair to the US code passes a slab on edge as the trigonometry of its pitch says', () => {
    const clearHeight = 80 * 25.4 * Math.cos(Math.atan(7.75 / 10));
    const slab = clearHeight - 100;
    const c = call('FLIGHT', '31 1/2 in', '6 ft 8 in', '7 3/4 in', '10 in', 2000, slab, 25);
    // Leaning can only add to what it has upright.
    expect(c).toBeGreaterThanOrEqual(50 - 1e-9);
    expect(call('FLIGHT', '100 mm', '6 ft 8 in', '7 3/4 in', '10 in', 2000, slab, 99.9)).toBeCloseTo(0.05, 9);
  });

  // Pythagoras: 3-4-5 and 5-12-13.
  test.each([
    [2500, 2000, 1500],
    [2600, 2400, 1000],
  ])('under %d a face of %d x %d just turns on end', (ceiling, length, breadth) => {
    const floor = 100;
    expect(call('UPEND', ceiling, length, breadth, 40, floor)).toBeCloseTo(0, 9);
    expect(call('UPEND', ceiling, length, breadth, 40)).toBeCloseTo(
      (Math.sqrt(2 * ceiling ** 2 - (length - 40) ** 2) - (length + 40)) / 4,
      9,
    );
    expect(call('UPEND', ceiling, breadth, 40, length)).toBeGreaterThan(0);
  });
});
