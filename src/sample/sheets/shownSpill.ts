import { firstOf } from '../../core/lists/ends';
import { cellAddress, columnLetters, readAddress } from '../../sheetHost/address';
import type { SheetWriter } from '../../sheetHost/workbookWriter';
import { isRounded, notAllShown, shownCell } from '../../worksheet/roundedFormulas';
import { HEADING, TENTHS } from './look';

/** A table that a function spills, and where it is shown. */
interface ShownSpill {
  readonly formula: string;
  /** Its columns, as the function names them. */
  readonly columns: readonly string[];
  /** Where its heading is shown, e.g. `A6`. */
  readonly at: string;
  /** Rows below the heading that are shown. */
  readonly rows: number;
  /** The column, from 0, in which it spills, in the same row: nothing may stand right of it or below. */
  readonly beside: number;
  /** Places after the point that are shown; 1 when left out. */
  readonly places?: 0 | 1;
}

/**
 * Shows what a function spills, its clearances rounded down and its loads and times up; the spill itself stands beside,
 * not rounded. Where it has more rows than are shown, the row below the last says so.
 */
export function shownSpill(sheet: SheetWriter, spill: ShownSpill): void {
  const { formula, columns, rows, beside, places = 1 } = spill;
  const at = readAddress(spill.at);
  if (!at) throw new RangeError(`${spill.at} is no address`);
  const spilled = (r: number, c: number): string => cellAddress(at.row + r, beside + c);
  const first = `IF(ISERROR(${spilled(0, 0)}),${spilled(0, 0)},"${firstOf(columns)}")`;
  sheet.rows(spill.at, [[{ formula: first }, ...columns.slice(1)]], HEADING);
  for (let r = 1; r <= rows; r++) {
    const shown = columns.map((heading, c) => ({ formula: shownCell(heading, spilled(r, c), places) }));
    sheet.rows(cellAddress(at.row + r, at.column), [shown]);
  }
  columns.forEach((heading, c) => {
    const letters = columnLetters(at.column + c);
    if (isRounded(heading))
      sheet.format(`${letters}${at.row + 2}:${letters}${at.row + 1 + rows}`, {
        format: places === 0 ? '0' : TENTHS,
      });
  });
  const name = /CARRY\.([A-Z]+)/.exec(formula)?.[1] ?? '';
  sheet.cell(cellAddress(at.row - 1, beside), `As ${name} gives it, not rounded`, { italic: true });
  sheet.cell(cellAddress(at.row + rows + 1, at.column), {
    formula: notAllShown(columnLetters(beside), at.row + 2, rows),
  });
  sheet.spill(cellAddress(at.row, beside), formula);
}
