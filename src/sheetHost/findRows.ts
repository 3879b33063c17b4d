import type { CellValue } from './hostValues';
import type { SheetHost } from './sheetHost';
import { firstOf } from '../core/lists/ends';
import { entryAt } from '../core/lists/entryAt';

/** A row below a header row, by the names of its columns in lower case. */
export type NamedRow = ReadonlyMap<string, CellValue>;

/**
 * The rows below the first header row of the workbook that has all the columns named, on whichever sheet, down to the
 * first row whose cell in the first of these columns is empty. Case does not matter.
 * @returns undefined when no sheet has such a header
 */
export function findRows(host: SheetHost, columns: readonly string[]): readonly NamedRow[] | undefined {
  const wanted = columns.map((c) => c.toLowerCase());
  for (const sheet of host.sheets()) {
    const block = host.used(sheet);
    if (!block) continue;
    const cells = host.read(sheet, block);
    for (const [r, row] of cells.entries()) {
      const names = row.map((cell) => (typeof cell === 'string' ? cell.trim().toLowerCase() : ''));
      if (!wanted.every((name) => names.includes(name))) continue;
      const first = names.indexOf(firstOf(wanted));
      const rows: NamedRow[] = [];
      for (const below of cells.slice(r + 1)) {
        if (below[first] === null || below[first] === '') break;
        // The first of two columns of one name counts.
        rows.push(new Map([...names.entries()].reverse().map(([i, name]) => [name, entryAt(below, i)])));
      }
      return rows;
    }
  }
  return undefined;
}
