import type { HostCell } from '../callFunction';
import { isCellError } from '../readArgument';

/** An error that a function gave, and where: the formula's cell, and how far from it in a spilled table. */
export interface Refusal {
  readonly address: string;
  readonly code: string;
  readonly message: string;
}

interface Noted {
  readonly row: number;
  readonly column: number;
  readonly code: string;
  readonly message: string;
}

/** Formulas whose last errors are remembered, and errors of one spilled table. */
const MOST_FORMULAS = 500;
const MOST_CELLS = 200;

/**
 * The last errors of each formula with their messages, since not every build of the host shows one. The host names a
 * formula's cell as `Sheet!B4`, or `'Sheet 2'!B4`, or with the workbook before it.
 */
export class Refusals {
  private readonly byAddress = new Map<string, readonly Noted[]>();
  private readonly listeners: (() => void)[] = [];

  onChange(listener: () => void): void {
    this.listeners.push(listener);
  }

  /** Remembers what a formula gave. */
  note(address: string, cells: readonly (readonly HostCell[])[]): void {
    const noted: Noted[] = [];
    for (const [row, line] of cells.entries()) {
      if (noted.length >= MOST_CELLS) break;
      for (const [column, cell] of line.entries()) {
        if (!isCellError(cell)) continue;
        noted.push({ row, column, code: cell.code, message: cell.message ?? '' });
      }
    }
    const key = keyOf(address);
    const had = this.byAddress.delete(key);
    if (noted.length > 0) this.byAddress.set(key, noted);
    if (had || noted.length > 0) for (const listener of this.listeners) listener();
    if (noted.length === 0) return;
    const [oldest] = this.byAddress.keys();
    if (this.byAddress.size > MOST_FORMULAS && oldest !== undefined) this.byAddress.delete(oldest);
  }

  /**
   * The last error of a cell, by itself or in a table that a formula spilled.
   * @param sheet the sheet's name
   * @param row from 0
   * @param column from 0
   */
  at(sheet: string, row: number, column: number): Refusal | undefined {
    let found: Refusal | undefined;
    for (const [key, noted] of this.byAddress) {
      const place = placeOf(key);
      if (!place || place.sheet !== sheet.toLowerCase()) continue;
      const error = noted.find((n) => place.row + n.row === row && place.column + n.column === column);
      // Of several that have stood there the last.
      if (error) found = { address: key, code: error.code, message: error.message };
    }
    return found;
  }
}

const keyOf = (address: string): string => address.replace(/\$/g, '');

/** `'[Book]Sheet 2'!B4` in its parts, the sheet in small letters; undefined when it is no address of a cell. */
function placeOf(address: string): { sheet: string; row: number; column: number } | undefined {
  const parts = /^(?:'((?:[^']|'')*)'|([^'!]*))!([A-Z]{1,3})(\d+)$/i.exec(address);
  if (!parts) return undefined;
  const [, quoted, plain = '', letters = '', row] = parts;
  const sheet = (quoted?.replace(/''/g, "'") ?? plain).replace(/^\[[^\]]*\]/, '').toLowerCase();
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return { sheet, row: Number(row) - 1, column: column - 1 };
}
