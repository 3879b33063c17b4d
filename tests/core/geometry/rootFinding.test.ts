import { leastBetween } from '../../../src/core/geometry/goldenSection';
import { bracket, greatestPadding } from '../../../src/core/geometry/rootFinding';

describe('the greatest padding', () => {
  test.each([
    // Roots known in closed form.
    ['the square root of 2', (x: number) => 2 - x * x, 0, 3, Math.SQRT2],
    ['a steep one', (x: number) => 1 - 1e6 * (x - 0.25), 0, 1, 0.25 + 1e-6],
    ['a jump', (x: number) => (x < 0.7 ? 1 : -1), 0, 1, 0.7],
  ])('%s, from the side where something is left', (_, spare, low, high, root) => {
    const found = greatestPadding(low, high, spare, 1e-9)!;
    expect(found).toBeLessThanOrEqual(root + 1e-12);
    expect(found).toBeCloseTo(root, 6);
    expect(spare(found)).toBeGreaterThanOrEqual(0);
  });

  test('is the upper end where something is left there too, and none where nothing is left at the lower', () => {
    expect(greatestPadding(0, 1, () => 0)).toBe(1);
    expect(greatestPadding(0, 1, () => -1)).toBeUndefined();
    expect(greatestPadding(1, 0, () => 1)).toBeUndefined();
  });
});

test('a bracket has the last place where it holds and the first where it does not, either way round', () => {
  const up = bracket(0, 2, (x) => x * x <= 2, 1e-9);
  expect(up.holds ** 2).toBeLessThanOrEqual(2);
  expect(up.fails ** 2).toBeGreaterThan(2);
  expect(up.fails - up.holds).toBeLessThanOrEqual(1e-9);
  const down = bracket(2, 0, (x) => x * x > 2, 1e-9);
  expect(down.holds).toBeGreaterThan(Math.SQRT2 - 1e-9);
  expect(down.fails).toBeLessThanOrEqual(Math.SQRT2 + 1e-9);
  // It ends even where no number lies between.
  expect(bracket(1, 2, (x) => x <= 1, 0).holds).toBe(1);
});

test('the golden section finds a dip: cos between 2 and 5 at pi', () => {
  const { at, value } = leastBetween(Math.cos, 2, 5, 40);
  expect(at).toBeCloseTo(Math.PI, 6);
  expect(value).toBeCloseTo(-1, 12);
});
