import type { Cell } from '../core/measures/readQuantity';

/** A rectangle of cells on a sheet; rows and columns count from 0. */
export interface CellArea {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** A table of the workbook; its area begins with the header row. */
export interface SheetTable {
  readonly name: string;
  readonly area: CellArea;
}

/** What may be written into a cell. A plain string stays text even where it begins with `=`. */
export type WriteCell = string | number | boolean | null | { readonly formula: string };

/** What came of writing: `changed`, the area no longer held what was asked for; `protected`, it may not be written. */
export type WriteOutcome = 'written' | 'changed' | 'protected';

/** A table to be made on a new sheet, header row first; every row as long as the header. */
export interface NewTable {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly cells: readonly (readonly WriteCell[])[];
}

/** A sheet to be added. Cells are written first, then tables, then lists. */
export interface NewSheet {
  readonly name: string;
  readonly cells: readonly {
    readonly row: number;
    readonly column: number;
    readonly value: WriteCell;
    /** The formula spills: it is entered as a dynamic array. */
    readonly spills?: boolean;
    readonly bold?: boolean;
  }[];
  readonly tables: readonly NewTable[];
  /** Data validation lists: only these words, an empty cell allowed; other entries are warned about, not refused. */
  readonly lists: readonly {
    readonly row: number;
    readonly column: number;
    readonly rows: number;
    readonly columns: number;
    readonly words: readonly string[];
  }[];
  /** Number formats of blocks of cells; none: as the host shows a number. */
  readonly formats?: readonly {
    readonly row: number;
    readonly column: number;
    readonly rows: number;
    readonly columns: number;
    readonly format: string;
  }[];
  /** Widths of the columns in characters, from column 0. */
  readonly widths: readonly number[];
}

/**
 * All that the pane asks of the workbook it stands beside. One implementation speaks Office.js, another the
 * sheet host of the try-out page.
 */
export interface SheetAccess {
  /** The selected area; undefined when nothing that is a range is selected. */
  selection(): Promise<CellArea | 'several areas' | undefined>;
  /** Whether the pane can be seen: what nobody sees is not worked out. */
  inSight(): boolean;
  /** Calls back when the pane comes into sight. */
  onSight(listener: () => void): void;
  /** Calls back after the selection has moved, or cells, sheets or tables have changed. */
  onChange(listener: (what: 'selection' | 'cells') => void): Promise<void>;
  /** The sheets' names in their order. */
  sheets(): Promise<readonly string[]>;
  /** All tables of the workbook. */
  tables(): Promise<readonly SheetTable[]>;
  /** The contiguous filled cells round the first cell of `area`, as far as empty rows and columns. */
  block(area: CellArea): Promise<CellArea>;
  /** The part of a sheet that holds something; undefined for an empty sheet. */
  used(sheet: string): Promise<CellArea | undefined>;
  /** Values, row by row: null for an empty cell, `{code}` for an error value. */
  read(area: CellArea): Promise<readonly (readonly Cell[])[]>;
  /** Of each row of an area whether it is hidden, by hand or by a filter. */
  hiddenRows(area: CellArea): Promise<readonly boolean[]>;
  /** What the formula line shows, row by row: '' only for a cell that holds nothing at all. */
  contents(area: CellArea): Promise<readonly (readonly string[])[]>;
  /**
   * Writes as one step, only when the area still holds exactly what `holding` says (as `contents` gives it), and
   * nothing of it is locked on a protected sheet.
   */
  write(
    area: CellArea,
    cells: readonly (readonly WriteCell[])[],
    holding: readonly (readonly string[])[],
  ): Promise<WriteOutcome>;
  /** Selects an area and brings its sheet to the front. */
  select(area: CellArea): Promise<void>;
  /** Adds sheets after the last one; the caller has made sure that no name is taken. */
  addSheets(sheets: readonly NewSheet[]): Promise<void>;
}

const LETTERS = 26;

/** An address as people write it: `Route!B4`, `'Route 2'!B4:D4`. */
export function addressOf({ sheet, row, column, rows, columns }: CellArea): string {
  const name = /^[A-Za-z_][A-Za-z0-9_]*$/.test(sheet) ? sheet : `'${sheet.replace(/'/g, "''")}'`;
  const first = `${columnLetters(column)}${row + 1}`;
  const last = `${columnLetters(column + columns - 1)}${row + rows}`;
  return `${name}!${first === last ? first : `${first}:${last}`}`;
}

/** The letters of a column that counts from 0: 0 -> A, 26 -> AA. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / LETTERS)) {
    letters = String.fromCharCode(65 + ((rest - 1) % LETTERS)) + letters;
  }
  return letters;
}
