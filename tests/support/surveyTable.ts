import type { Cell } from '../../src/core/measures/readQuantity';

/** A table out of rows by column name: a header row with all names in the order they first appear. */
export function surveyTable(rows: readonly Readonly<Record<string, Cell>>[]): Cell[][] {
  const headers = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return [headers, ...rows.map((row) => headers.map((header) => row[header]))];
}
