import fc from 'fast-check';
import { shownDown, shownGiven, shownUp } from '../../../src/core/measures/shown';
import { evenly } from '../../support/evenly';

describe('figures in sentences', () => {
  it.each([
    [39.9, 0, 39],
    [-39.2, 0, -40],
    [-0.4, 0, -1],
    [0.4, 0, 0],
    [37.5, 1, 37.5],
    [33.333, 1, 33.3],
    [40 - 1e-11, 0, 40],
  ])('%f with %i places is shown as %f where it is left', (value, places, shown) => {
    expect(shownDown(value, places)).toBe(shown);
  });

  it.each([
    [39.1, 0, 40],
    [-39.8, 0, -39],
    [25.1, 0, 26],
    [0.891, 2, 0.9],
    [1.001, 2, 1.01],
    [-0.2, 0, 0],
    [40 + 1e-11, 0, 40],
  ])('%f with %i places is shown as %f where it is needed', (value, places, shown) => {
    expect(shownUp(value, places)).toBe(shown);
  });

  it.each([
    [838.2, 1, 838.2],
    [196.85, 1, 196.9],
    [715, 1, 715],
    [-0.04, 1, 0],
    [38.37, 0, 38],
  ])('%f with %i places is told as %f where it was given', (value, places, shown) => {
    expect(shownGiven(value, places)).toBe(shown);
  });

  it('is shown in whole figures where no places are asked for, and told to a tenth', () => {
    expect([shownDown(39.96), shownUp(39.04), shownGiven(38.37)]).toEqual([39, 40, 38.4]);
  });

  it('never shows more than is left, less than is needed, or a figure a whole place away', () => {
    fc.assert(
      fc.property(evenly(-1e5, 1e5), fc.integer({ min: 0, max: 3 }), (value, places) => {
        const place = 10 ** -places;
        expect(shownDown(value, places)).toBeLessThanOrEqual(value + 2e-9);
        expect(shownDown(value, places)).toBeGreaterThan(value - place - 2e-9);
        expect(shownUp(value, places)).toBeGreaterThanOrEqual(value - 2e-9);
        expect(shownUp(value, places)).toBeLessThan(value + place + 2e-9);
      }),
      { seed: 16, numRuns: 500 },
    );
  });
});
