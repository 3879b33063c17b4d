import { columnLetters } from '../taskpane/sheetAccess';

export { columnLetters };

/** A cell or a block of cells on one sheet; rows and columns count from 0. */
export interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Whether a cell is one of a block's. */
export const within = (block: Block, row: number, column: number): boolean =>
  row >= block.row &&
  row < block.row + block.rows &&
  column >= block.column &&
  column < block.column + block.columns;

/** The last row and column that a worksheet has. */
export const SHEET_ROWS = 1048576;
export const SHEET_COLUMNS = 16384;

const LETTERS = 26;
const CELL = /^\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})$/;

/** The column that letters name, from 0: A -> 0. */
export function columnOf(letters: string): number {
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * LETTERS + letter.charCodeAt(0) - 64;
  return column - 1;
}

/** `A4`, from a row and a column that count from 0. */
export const cellAddress = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** `A4` or `A4:C9`. */
export function blockAddress({ row, column, rows, columns }: Block): string {
  const first = cellAddress(row, column);
  return rows === 1 && columns === 1
    ? first
    : `${first}:${cellAddress(row + rows - 1, column + columns - 1)}`;
}

/**
 * Reads `B4`, `$B$4` or `B4:D9`, without a sheet.
 * @returns undefined for anything else, or beyond the edge of a sheet
 */
export function readAddress(text: string): Block | undefined {
  const [first = '', last = first, ...more] = text.split(':');
  const [, fromColumn, fromRow] = CELL.exec(first) ?? [];
  const [, toColumn, toRow] = CELL.exec(last) ?? [];
  if (fromColumn === undefined || toColumn === undefined || more.length > 0) return undefined;
  const rows = [Number(fromRow), Number(toRow)];
  const columns = [columnOf(fromColumn), columnOf(toColumn)];
  const [top, bottom] = [Math.min(...rows), Math.max(...rows)];
  const [left, right] = [Math.min(...columns), Math.max(...columns)];
  if (bottom > SHEET_ROWS || right >= SHEET_COLUMNS) return undefined;
  return { row: top - 1, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}
