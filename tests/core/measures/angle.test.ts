import { asWritten, degrees, radians, RIGHT_ANGLE } from '../../../src/core/measures/angle';

// A degree is the 180th part of pi radians.
test.each([0, 1, 45, 60, 89, 91, 120, 180])('%d degrees, in radians and back', (written) => {
  expect(radians(written)).toBeCloseTo((Math.PI / 180) * written, 12);
  expect(degrees(radians(written))).toBeCloseTo(written, 12);
  expect(asWritten(radians(written))).toBe(written);
});

test('90 degrees are a right angle exactly', () => {
  expect(radians(90)).toBe(RIGHT_ANGLE);
  expect(RIGHT_ANGLE).toBe(Math.PI / 2);
});
