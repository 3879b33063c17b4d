/**
 * How a figure is rounded for a sentence: always to the careful side, and never twice. Clearances, spares and limits that
 * are allowed are shown no greater than they are; measures that are needed, loads, shares and uses no smaller. What was
 * given and is only told again has no careful side: it is told to a tenth. Cells keep the figure itself.
 */

/** A billionth of the last place shown: 40 that comes out as 39.999999999 is 40. */
const SLACK = 1e-9;

/**
 * What is left or allowed, rounded down.
 * @param value clearance, spare, allowed limit [any unit]
 * @param places after the point, from 0
 * @returns the greatest figure of so many places that is not above `value`
 * @example shownDown(-39.2) // -40
 */
export function shownDown(value: number, places = 0): number {
  const scale = 10 ** places;
  return withoutMinusZero(Math.floor(value * scale + SLACK) / scale);
}

/**
 * What is needed or borne, rounded up.
 * @param value needed measure, load, share, use [any unit]
 * @param places after the point, from 0
 * @returns the least figure of so many places that is not below `value`
 * @example shownUp(37.01, 1) // 37.1
 */
export function shownUp(value: number, places = 0): number {
  const scale = 10 ** places;
  return withoutMinusZero(Math.ceil(value * scale - SLACK) / scale);
}

/**
 * What was given, or an angle or a place that is only described: to the nearest tenth, so that a tape's own marks stay as
 * they are.
 * @param value a measure as taken [any unit]
 * @param places after the point, from 0
 * @returns the nearest figure of so many places
 * @example shownGiven(838.2) // 838.2
 */
export function shownGiven(value: number, places = 1): number {
  const scale = 10 ** places;
  return withoutMinusZero(Math.round(value * scale) / scale);
}

const withoutMinusZero = (value: number): number => value + 0;
