/**
 * The rule of `core/measures/shown`, in formulas of a sheet: a number format rounds to the nearest, and knows no careful side.
 */

/** A billionth of the last place: 40 that comes out as 39.999999999 is 40. */
const SLACK = '0.000000001';

/** What is needed or borne, in a formula of a sheet: the least figure of so many places that is not below it. */
export const upTo = (formula: string, places: number): string =>
  `-INT(${SLACK}-${10 ** places}*(${formula}))/${10 ** places}`;

/** The same of a cell that may hold words, an error, or nothing. */
export const upToIfNumber = (cell: string, places: number): string =>
  `IF(ISNUMBER(${cell}),${upTo(cell, places)},${cell}&"")`;

/** What is left or allowed, in a formula of a sheet: the greatest figure of so many places that is not above it. */
export const downTo = (formula: string, places: number): string =>
  places === 0 ? `INT(${formula}+${SLACK})` : `INT(${10 ** places}*(${formula})+${SLACK})/${10 ** places}`;

/** The same of a cell that may hold words, an error, or nothing. */
export const downToIfNumber = (cell: string, places: number): string =>
  `IF(ISNUMBER(${cell}),${downTo(cell, places)},${cell}&"")`;
