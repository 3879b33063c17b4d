import { shownText } from '../excelts/shownText';
import type { SheetHost } from '../sheetHost';
import type { ColumnWidths } from './columnWidths';

/** Heights in px: of a row, of one more line of text, round the lines; the style sheet has the same. */
const ROW_HEIGHT = 24;
const LINE_HEIGHT = 18;
const ROUND = 6;
/** Left and right of a text, with the line beside it. */
const BESIDE = 14;

/** Lines of a heading that are shown, and of another text, which is told in full above the cells: rows stay together. */
const HEADING_LINES = 4;
const MOST_LINES = 2;

/** Rows looked at for texts that go on below. */
const ROWS = 2000;

/** The width of a text [px], as it is drawn in a cell. */
export type TextWidth = (text: string) => number;

/** Heights of rows by the texts of cells that go on in lines below; all others have the usual one. */
export class RowHeights {
  /** Rows that are taller, upwards; with how much all up to and with them add to the usual height. */
  private rows: number[] = [];
  private added: number[] = [];

  constructor(host: SheetHost, sheet: string, widths: ColumnWidths, textWidth: TextWidth) {
    const used = host.used(sheet);
    if (!used) return;
    const look = host.look(sheet);
    const block = { ...used, rows: Math.min(used.rows, ROWS) };
    let sum = 0;
    host.read(sheet, block).forEach((values, r) => {
      const row = block.row + r;
      let lines = 1;
      values.forEach((value, c) => {
        const column = block.column + c;
        if (typeof value !== 'string' || value.length < 2 || !look.wraps(row, column)) return;
        const text = shownText(value, host.format(sheet, row, column));
        const needed = linesOf(text, widths.of(column) - BESIDE, textWidth);
        if (needed > lines)
          lines = Math.max(lines, Math.min(needed, look.cell(row, column).bold ? HEADING_LINES : MOST_LINES));
      });
      if (lines === 1) return;
      sum += lines * LINE_HEIGHT + ROUND - ROW_HEIGHT;
      this.rows.push(row);
      this.added.push(sum);
    });
  }

  /** The upper edge of a row. */
  top(row: number): number {
    const before = this.before(row);
    return row * ROW_HEIGHT + (before === 0 ? 0 : (this.added[before - 1] ?? 0));
  }

  of(row: number): number {
    return this.top(row + 1) - this.top(row);
  }

  /** Lines of text that a row has room for. */
  lines(row: number): number {
    return (this.of(row) - ROUND) / LINE_HEIGHT;
  }

  /** The row at a distance from the upper edge of the first. */
  at(y: number): number {
    let [low, high] = [0, Math.max(0, Math.floor(y / ROW_HEIGHT))];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (this.top(middle) <= y) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** How many of the taller rows stand before a row. */
  private before(row: number): number {
    let [low, high] = [0, this.rows.length];
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if ((this.rows[middle] ?? Infinity) < row) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/** Lines that a text takes in a width, broken between words, a word that is too long for a line within itself. */
function linesOf(text: string, width: number, textWidth: TextWidth): number {
  const space = textWidth(' ');
  let lines = 0;
  for (const part of text.split('\n')) {
    lines++;
    let used = 0;
    for (const word of part.split(' ')) {
      const needed = textWidth(word);
      if (used > 0 && used + space + needed > width) {
        lines++;
        used = 0;
      }
      used += (used > 0 ? space : 0) + needed;
      while (used > width) {
        lines++;
        used -= width;
      }
    }
  }
  return lines;
}
