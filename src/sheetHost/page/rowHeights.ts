import { shownText } from '../excelts/shownText';
import type { SheetHost } from '../sheetHost';
import type { ColumnWidths } from './columnWidths';

/** Heights in px: of a row, of one more line of text, round the lines; the style sheet has the same. */
const ROW_HEIGHT = 24;
const LINE_HEIGHT = 18;
const ROUND = 6;
/** Left and right of a text, with the line beside it. */
const BESIDE = 14;

/** Lines of a cell that are shown, in the style sheet too; what is longer is told in full above the cells. */
const MOST_LINES = 4;

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
        lines = Math.max(lines, linesOf(text, widths.of(column) - BESIDE, textWidth));
      });
      if (lines === 1) return;
      sum += Math.min(lines, MOST_LINES) * LINE_HEIGHT + ROUND - ROW_HEIGHT;
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
