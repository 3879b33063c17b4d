import { Workbook } from '@cj-tech-master/excelts';
import { calculateFormulas, type WorkbookLike } from '@cj-tech-master/excelts/formula';
import { readAddress } from '../address';
import { formulaParts } from '../formulaText';
import { isCellError, type CellValue } from '../hostValues';
import { movedFormula } from '../movedFormula';

/** More answers than these are not kept. */
const MOST_KEPT = 20000;

/** A condition with the cells that stand for its A1, A2 and so on. */
interface Asked {
  readonly text: string;
  readonly cells: readonly { readonly row: number; readonly column: number }[];
}

/** A reference whose column is not held by a `$`. */
const MOVES_ACROSS = /(?:^|[^$A-Za-z])[A-Za-z]{1,3}\$?\d/;

/**
 * Whether conditions of conditional formats hold. Only conditions on single cells of their own sheet are looked at: any
 * other is taken not to hold, so that a colour is left out and never made up.
 */
export class ConditionHolds {
  private readonly kept = new Map<string, boolean>();
  private readonly moved = new Map<string, Asked | undefined>();

  /**
   * @param formula for the first cell of its range, without `=`
   * @param rows how far below that cell it is asked for
   * @param columns how far to the right of it
   * @param value of a cell of the sheet, counted from 0
   */
  holds(
    formula: string,
    rows: number,
    columns: number,
    value: (row: number, column: number) => CellValue,
  ): boolean {
    const asked = this.movedTo(formula, rows, columns);
    if (!asked) return false;
    const { text } = asked;
    const read = asked.cells.map((cell) => value(cell.row, cell.column));
    const key = JSON.stringify([text, read]);
    const known = this.kept.get(key);
    if (known !== undefined) return known;
    if (this.kept.size >= MOST_KEPT) this.kept.clear();
    const holds = evaluated(text, read);
    this.kept.set(key, holds);
    return holds;
  }

  /** A condition as it is for another cell; kept, since each drawing of the cells asks for it. */
  private movedTo(formula: string, rows: number, columns: number): Asked | undefined {
    const across = MOVES_ACROSS.test(withoutTexts(formula)) ? columns : 0;
    const key = `${rows} ${across} ${formula}`;
    if (!this.moved.has(key)) {
      if (this.moved.size >= MOST_KEPT) this.moved.clear();
      this.moved.set(key, askedOf(movedFormula(`=${formula}`, rows, across).slice(1)));
    }
    return this.moved.get(key);
  }
}

/** What a condition reads is put into a sheet of its own, one cell below the other, so that little is computed. */
function askedOf(formula: string): Asked | undefined {
  if (/[!:[\]#]/.test(withoutTexts(formula))) return undefined;
  const cells: { row: number; column: number }[] = [];
  const parts = formulaParts(formula).map(({ kind, text }) => {
    const at = kind === 'name' ? readAddress(text.replace(/\$/g, '')) : undefined;
    return at ? `A${cells.push({ row: at.row, column: at.column })}` : text;
  });
  return { text: parts.join(''), cells };
}

const withoutTexts = (formula: string): string => formula.replace(/"(?:[^"]|"")*"/g, '');

/** @param read the values of A1, A2 and so on */
function evaluated(formula: string, read: readonly CellValue[]): boolean {
  // A condition on an error is one, and does not hold.
  if (read.some(isCellError)) return false;
  const book = new Workbook();
  const sheet = book.addWorksheet('one');
  read.forEach((value, i) => (sheet.getCell(i + 1, 1).value = value as string | number | boolean | null));
  const asked = sheet.getCell(1, 2);
  asked.value = { formula };
  // The library's own workbook is what its engine takes; their types differ in what may be left out.
  calculateFormulas(book as unknown as WorkbookLike);
  const { result } = asked;
  return result === true || (typeof result === 'number' && result !== 0);
}
