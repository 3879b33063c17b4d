import { readLength } from '../../../src/core/measures/readLength';
import { readMass } from '../../../src/core/measures/readMass';

// International yard and pound agreement, 1959: 12 in a foot, 16 oz a pound, 14 lb a stone; SI: 1000 g a kilogram.
const value = (read: { readonly ok: boolean }): number | undefined =>
  'value' in read ? (read.value as number) : undefined;

test.each([
  ['2 ft 11 in', 35 * 25.4],
  ['2\' 11.9"', 35.9 * 25.4],
])('%s is a length', (text, mm) => {
  expect(value(readLength(text))).toBeCloseTo(mm, 9);
});
test.each(['2 ft 12 in', '2\' 12"', '2 ft 12.5 in'])('%s is none: twelve inches are a foot', (text) => {
  expect(readLength(text).ok).toBe(false);
});

test.each([
  ['500 g', 0.5],
  ['2 lb 15 oz', (2 + 15 / 16) * 0.45359237],
  ['3 st 13 lb', 55 * 0.45359237],
])('%s is a mass', (text, kg) => {
  expect(value(readMass(text))).toBeCloseTo(kg, 12);
});
test.each(['2 lb 16 oz', '3 st 14 lb', '3 st 14.5 lb'])(
  '%s is none: it is one more of the greater',
  (text) => {
    expect(readMass(text).ok).toBe(false);
  },
);
