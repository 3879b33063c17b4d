import fc from 'fast-check';

const PARTS = 2 ** 30;

/**
 * Numbers spread evenly over a range, its ends among them. fast-check's own `double` is even over the numbers that a
 * machine can write, and between 0 and 1 nearly all of these are as good as 0.
 */
export const evenly = (least: number, most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: PARTS }).map((part) => {
    const value = least + (most - least) * (part / PARTS);
    return Math.min(most, Math.max(least, value));
  });
