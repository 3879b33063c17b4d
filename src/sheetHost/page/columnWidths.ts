import type { Block } from '../address';
import { shownText } from '../excelts/shownText';
import type { SheetHost } from '../sheetHost';
import { entryAt } from '../../core/lists/entryAt';

/** Widths in px: of a character about, round the text, of an empty column, at least, at most. */
const CHARACTER = 7.4;
const ROUND = 18;
const EMPTY = 84;
const LEAST = 44;
const MOST = 300;
/** At most for a column that the workbook gives a width. */
const MOST_GIVEN = 560;
/** A column between two tables. */
const LEAST_GIVEN = 16;

/** At most for a text that can run over an empty cell. */
const RUNNING = 120;

/** Rows looked at for a width: those that are seen first. */
const ROWS = 300;

/** Widths of columns as the workbook has them, else by what their cells show; a text with nothing to its right may run over and asks for none. */
export class ColumnWidths {
  private widths: number[] = [];
  /** Columns that the workbook gives a width. */
  private given: boolean[] = [];

  of(column: number): number {
    return this.widths[column] ?? EMPTY;
  }

  /** The left edge of a column. */
  left(column: number): number {
    let left = 0;
    for (let c = 0; c < column; c++) left += this.of(c);
    return left;
  }

  /** The column at a distance from the left edge. */
  at(x: number): number {
    let column = 0;
    for (let left = this.of(0); left <= x; left += this.of(++column));
    return column;
  }

  /** Takes the widths anew from the cells of a block. */
  measure(host: SheetHost, sheet: string): void {
    this.widths = [];
    this.given = [];
    const used = host.used(sheet);
    const look = host.look(sheet);
    for (let c = 0; used && c < used.column + used.columns; c++) {
      const width = look.width(c);
      if (width === undefined) continue;
      this.given[c] = true;
      this.widths[c] = Math.round(Math.min(MOST_GIVEN, Math.max(LEAST_GIVEN, width * CHARACTER)));
    }
    if (used) this.widen(host, sheet, used);
  }

  /** Widens columns for the cells of a block; none becomes narrower. */
  widen(host: SheetHost, sheet: string, block: Block): void {
    const rows = Math.min(block.rows, ROWS);
    const values = host.read(sheet, { ...block, rows, columns: block.columns + 1 });
    for (let c = 0; c < block.columns; c++) {
      const column = block.column + c;
      if (this.given[column]) continue;
      let needed = 0;
      values.forEach((line, r) => {
        const value = entryAt(line, c);
        if (value === null || (typeof value === 'string' && line[c + 1] === null && runsOver(values, r, c)))
          return;
        const text = shownText(value, host.format(sheet, block.row + r, column));
        const most = typeof value === 'string' && line[c + 1] === null ? RUNNING : MOST;
        needed = Math.max(needed, Math.min(most, text.length * CHARACTER + ROUND));
      });
      if (needed === 0) continue;
      const width = Math.round(Math.min(MOST, Math.max(LEAST, needed)));
      this.widths[column] = Math.max(width, this.widths[column] ?? 0);
    }
  }
}

/** A title stands by itself in its row; a text at the right end of a table has others above or below it. */
const runsOver = (values: readonly (readonly unknown[])[], row: number, column: number): boolean =>
  entryAt(values, row).filter((v) => v !== null).length === 1 && column === 0;
