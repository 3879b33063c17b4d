import type { Cell, CellError } from '../../measures/readQuantity';

/** Whether a cell holds a host's error. */
export const isErrorCell = (cell: Cell): cell is CellError => typeof cell === 'object' && cell !== null;

/** Whether there is nothing in a cell, or nothing but spaces. */
export const isBlankCell = (cell: Cell): boolean =>
  cell === null || cell === undefined || cell === '' || (typeof cell === 'string' && cell.trim() === '');

/** Whether a cell says nothing: an empty cell can arrive as 0, so a bare 0 says as little. */
export const saysNothing = (cell: Cell): boolean => cell === 0 || isBlankCell(cell);

/** The cell of a name: spaces drawn together, a number as written, '' where it says nothing. */
export function cellText(cell: Cell): string {
  if (typeof cell === 'string') return cell.trim().replace(/\s+/g, ' ');
  if (saysNothing(cell)) return '';
  return isErrorCell(cell) ? cell.code : String(cell);
}
