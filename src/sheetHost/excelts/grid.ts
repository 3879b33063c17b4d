import type { CellValue } from '../hostValues';

/** A formula of a cell. */
export interface GridFormula {
  /** As the file stores it. */
  readonly stored: string;
  /**
   * What the cell's result may fill: `cell`: itself only, `spill`: as much as it needs, `typed`: as much as it
   * needs, and stored as a plain formula while it needs one cell; otherwise the fixed block of an array formula of
   * the old kind, as an address.
   */
  readonly fills: 'cell' | 'spill' | 'typed' | { readonly block: string };
}

/** What a cell holds, apart from its looks. Rows and columns count from 1, as in the engine. */
export interface GridCell {
  readonly row: number;
  readonly column: number;
  /** Number in the workbook, for the calls of its formula. */
  readonly number: number;
  readonly formula?: GridFormula;
  /** Result of the formula, or the value itself. */
  value: CellValue;
  /** Shows a cell of the array formula of the old kind that stands in another cell. */
  readonly ofArray?: true;
}

/** A cell with a formula. */
export type FormulaCell = GridCell & { readonly formula: GridFormula };

/**
 * Whether a cell computes what it shows.
 */
export const hasFormula = (cell: GridCell): cell is FormulaCell => cell.formula !== undefined;

/** The contents of one sheet by row and column. */
export class Grid {
  readonly rows = new Map<number, Map<number, GridCell>>();

  at(row: number, column: number): GridCell | undefined {
    return this.rows.get(row)?.get(column);
  }

  put(cell: GridCell): void {
    let row = this.rows.get(cell.row);
    if (!row) this.rows.set(cell.row, (row = new Map<number, GridCell>()));
    row.set(cell.column, cell);
  }

  remove(row: number, column: number): void {
    const cells = this.rows.get(row);
    cells?.delete(column);
    if (cells?.size === 0) this.rows.delete(row);
  }

  *cells(): IterableIterator<GridCell> {
    for (const row of this.rows.values()) yield* row.values();
  }
}
