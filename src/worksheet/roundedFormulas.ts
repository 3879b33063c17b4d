/**
 * The rule of `core/measures/shown`, in formulas of a sheet: a number format rounds to the nearest, and knows no careful side.
 */

/** A billionth of the last place: 40 that comes out as 39.999999999 is 40. */
const SLACK = '0.000000001';

/** What is needed or borne, in a formula of a sheet: the least figure of so many places that is not below it. */
export const upTo = (formula: string, places: number): string =>
  `-INT(${SLACK}-${10 ** places}*(${formula}))/${10 ** places}`;

/** The same of a cell that may hold words, an error, or nothing. */
const upToIfNumber = (cell: string, places: number): string =>
  `IF(ISNUMBER(${cell}),${upTo(cell, places)},${cell}&"")`;

/** What is left or allowed, in a formula of a sheet: the greatest figure of so many places that is not above it. */
export const downTo = (formula: string, places: number): string =>
  places === 0 ? `INT(${formula}+${SLACK})` : `INT(${10 ** places}*(${formula})+${SLACK})/${10 ** places}`;

/** The same of a cell that may hold words, an error, or nothing. */
const downToIfNumber = (cell: string, places: number): string =>
  `IF(ISNUMBER(${cell}),${downTo(cell, places)},${cell}&"")`;

/** The columns of what functions spill that hold what is left and what is needed or borne; all others are shown as given. */
const CAREFUL: Readonly<Record<string, 'left' | 'borne'>> = {
  Clearance: 'left',
  'Heaviest kg': 'borne',
  Raise: 'borne',
  'Lower share': 'borne',
  'Carry min': 'borne',
  'Set-up min': 'borne',
  'Crew hours': 'borne',
};

/** Whether figures stand in this column of what a function spills that have a careful side. */
export const isRounded = (heading: string): boolean => heading in CAREFUL;

/**
 * A cell of what a function spilled, as it is shown: the spill itself stays beside, not rounded, since a cell keeps its
 * figure and a number format rounds to the nearest.
 * @param heading the column's, as the function names it
 * @param places after the point
 */
export function shownCell(heading: string, cell: string, places: number): string {
  const side = CAREFUL[heading];
  if (side === undefined) return `IF(${cell}="","",${cell})`;
  return side === 'left' ? downToIfNumber(cell, places) : upToIfNumber(cell, places);
}

/** Rows beyond those shown that are looked at for what is not shown. */
const MORE = 200;

/**
 * For the cell below the last row shown: a formula that says when more has spilled than is shown.
 * @param column letters of the first column of the spill
 * @param first the sheet's row of its first row below the heading, from 1
 * @param rows how many are shown
 */
export function notAllShown(column: string, first: number, rows: number): string {
  const spilled = `COUNTA(${column}${first}:${column}${first - 1 + rows + MORE})`;
  return `IF(${spilled}>${rows},"Not all is shown: "&${spilled}&" rows stand in column ${column}, ${rows} here","")`;
}
