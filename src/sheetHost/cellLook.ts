/** How a workbook has a cell look, conditional formats in front of the cell's own. Colours are `RRGGBB`. */
export interface CellLook {
  readonly fill?: string;
  readonly color?: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly align?: 'left' | 'center' | 'right';
}

/** What may be picked for a cell, and whether anything else is refused. */
export interface CellChoices {
  readonly words: readonly string[];
  readonly others: 'refused' | 'allowed';
}

/** How a workbook has a sheet look, as far as a grid can show it. Rows and columns count from 0. */
export interface SheetLook {
  /** Rows and columns that stay in sight. */
  readonly frozen: { readonly rows: number; readonly columns: number };
  /** Width of a column [characters]; undefined where the workbook does not say. */
  width(column: number): number | undefined;
  cell(row: number, column: number): CellLook;
  /** Whether a long text goes on in a line below, inside the cell. */
  wraps(row: number, column: number): boolean;
  choices(row: number, column: number): CellChoices | undefined;
}
