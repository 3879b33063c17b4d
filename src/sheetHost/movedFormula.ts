import { cellAddress, columnLetters, readAddress, SHEET_COLUMNS, SHEET_ROWS } from './address';
import { formulaParts } from './formulaText';

/** A cell's address with its `$` signs. */
const REFERENCE = /^(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7})$/;

/**
 * A formula as it is where it is copied to: references move with it, but for what `$` holds.
 * @param formula as the formula line shows it, with its `=`
 * @example movedFormula('=A1+$A$1+A$1', 2, 1) // '=B3+$A$1+B$1'
 */
export function movedFormula(formula: string, rows: number, columns: number): string {
  const moved = formulaParts(formula.slice(1)).map((part) => {
    const match = part.kind === 'name' ? REFERENCE.exec(part.text) : null;
    const at = match ? readAddress(part.text.replace(/\$/g, '')) : undefined;
    if (!match || !at) return part.text;
    const [, heldColumn, , heldRow] = match;
    const row = heldRow === '$' ? at.row : at.row + rows;
    const column = heldColumn === '$' ? at.column : at.column + columns;
    if (row < 0 || column < 0 || row >= SHEET_ROWS || column >= SHEET_COLUMNS) return '#REF!';
    const plain = cellAddress(row, column);
    const letters = columnLetters(column);
    return `${heldColumn}${letters}${heldRow}${plain.slice(letters.length)}`;
  });
  return `=${moved.join('')}`;
}
