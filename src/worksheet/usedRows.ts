import type { Cell } from '../core/measures/readQuantity';
import { entryAt } from '../core/lists/entryAt';

/** The most rows that are computed in one call: far above any month's work, far below a whole column. */
export const MOST_ROWS = 100_000;

/** Rows of a whole column ("Excel specifications and limits"). */
const WHOLE_COLUMN = 1_048_576;

type Range = readonly (readonly Cell[])[];

/**
 * Cuts ranges of more than MOST_ROWS rows to the last row in use, so that whole columns can be given; shorter
 * ranges keep their shape.
 * @param ranges those that go together cell by cell are cut alike, to the last row in use in any of them
 * @returns the ranges, at least one row of each
 * @example cutToUsed([Array.from({ length: 1048576 }, (_, row) => [row < 12 ? 1 : null])])[0].length // 12
 */
export function cutToUsed(ranges: readonly Range[]): readonly Range[] {
  if (!ranges.some(isLong)) return ranges;
  const rows = Math.max(1, ...ranges.map((range) => (isLong(range) ? rowsInUse(range) : range.length)));
  return ranges.map((range) => (isLong(range) && rows < range.length ? range.slice(0, rows) : range));
}

const isLong = (range: Range): boolean => range.length > MOST_ROWS;

function rowsInUse(range: Range): number {
  // Older builds hand empty cells over as 0; only below a whole column's end are those surely no figures.
  const zeroIsEmpty = range.length === WHOLE_COLUMN;
  const empty = (cell: Cell): boolean =>
    cell === null || cell === undefined || cell === '' || (zeroIsEmpty && cell === 0);
  let rows = range.length;
  while (rows > 0 && entryAt(range, rows - 1).every(empty)) rows--;
  return rows;
}
