/**
 * Describes a new workbook; `excelts/writeWorkbook.ts` turns it into bytes.
 *
 * ```ts
 * const book = createWorkbook();
 * const route = book.sheet('Route');
 * route.cell('A1', 'Routes', { bold: true, size: 14 });
 * route.table({ name: 'Route', at: 'A3', columns: [
 *     { name: 'Width', width: 9, format: '0' },
 *     { name: 'Twice', formula: '[@Width]*2' },      // a calculated column: same formula in every row
 *   ], rows: [[760], ['2 ft 6 in']] });               // cells left off at the end of a row are empty or calculated
 * route.spill('G3', 'CARRY.CHECKROUTE(Route[#All])');  // grows into the cells below and to the right
 * route.cell('G1', { formula: 'SUM(Route[Width])' });  // one value
 * route.list('A4:A20', ['door', 'corner']);            // data validation; also { from: 'Lists!$A$2:$A$9' }
 * route.condition('A4:C20', '$C4="goes"', { fill: 'E2F0D9', color: '1E4620', bold: true });
 * route.format('B4:B20', { format: '0" mm"' });
 * route.widths([12, 9]); route.freeze(3, 1);
 * book.name('allowance', "Quote!$B$2");
 * const bytes = await writeWorkbook(book);
 * ```
 *
 * Formulas are written as people write them, in English, with commas, with or without `=`: `CARRY.CORNER(…)`,
 * `TEXTJOIN(…)`, `A8#`, `[@Width]` inside its own table. Texts that begin with `=` stay texts. Addresses are of
 * the A1 kind. A formula that spills needs `spill`: in a plain cell a file means "one value". Row and column
 * counts are from 1 in addresses only. Colours are RRGGBB. Results are not computed here: open the bytes with the
 * sheet host and recalculate.
 */

import { cellAddress, readAddress } from './address';

export type WriterValue = string | number | boolean | Date | null | { readonly formula: string };

/** How a cell looks. All optional. */
export interface CellStyle {
  /** Number format, e.g. `0.0`, `#,##0 "mm"`, `yyyy-mm-dd`. */
  readonly format?: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  /** Font size [pt]. */
  readonly size?: number;
  /** Font colour, RRGGBB. */
  readonly color?: string;
  /** Background colour, RRGGBB. */
  readonly fill?: string;
  readonly align?: 'left' | 'center' | 'right';
  readonly wrap?: boolean;
}

export interface WriterTable {
  /** Unique in the workbook; a letter first, no spaces. */
  readonly name: string;
  /** The header's first cell, e.g. `A3`. */
  readonly at: string;
  readonly columns: readonly {
    readonly name: string;
    /** Width of the sheet's column in characters. */
    readonly width?: number;
    /** Number format of the column's cells. */
    readonly format?: string;
    /** A calculated column: this formula in every row that gives no value of its own. */
    readonly formula?: string;
  }[];
  /** At least one row. */
  readonly rows: readonly (readonly WriterValue[])[];
}

export interface SheetDescription {
  readonly name: string;
  readonly cells: { address: string; value: WriterValue; spills: boolean; style?: CellStyle }[];
  readonly tables: WriterTable[];
  readonly lists: {
    range: string;
    words: readonly string[] | { readonly from: string };
    others: 'allowed' | 'refused';
  }[];
  readonly conditions: { range: string; formula: string; style: ConditionStyle }[];
  readonly formats: { range: string; style: CellStyle }[];
  readonly merges: string[];
  widths: readonly number[];
  freeze?: { readonly rows: number; readonly columns: number };
  print?: PrintSetUp;
}

/** How a sheet is printed: across one page wide, as many pages as it takes. */
export interface PrintSetUp {
  /** What is printed, `A1:K40`. */
  readonly area: string;
  /** The rows that every page begins with, from 1. */
  readonly repeat?: { readonly from: number; readonly to: number };
  /** The longer side of the paper lies across. */
  readonly across: 'landscape' | 'portrait';
  /** A4 unless said otherwise; the larger one where a sheet is too wide to be read on A4. */
  readonly paper?: 'A3' | 'A4';
}

/** What a conditional format can change. */
export type ConditionStyle = Pick<CellStyle, 'bold' | 'italic' | 'color' | 'fill'>;

export class SheetWriter {
  constructor(readonly description: SheetDescription) {}

  /** Writes one cell. */
  cell(address: string, value: WriterValue, style?: CellStyle): this {
    this.description.cells.push({ address, value, spills: false, ...(style ? { style } : {}) });
    return this;
  }

  /** Writes rows of cells from `address` rightwards and down. */
  rows(address: string, rows: readonly (readonly WriterValue[])[], style?: CellStyle): this {
    const from = readAddress(address);
    if (!from) throw new RangeError(`${address} is no address`);
    rows.forEach((row, r) =>
      row.forEach((value, c) => {
        if (value !== null || style) this.cell(cellAddress(from.row + r, from.column + c), value, style);
      }),
    );
    return this;
  }

  /** Writes a formula that spills from `address`; the cells it will need have to be left empty. */
  spill(address: string, formula: string, style?: CellStyle): this {
    this.description.cells.push({ address, value: { formula }, spills: true, ...(style ? { style } : {}) });
    return this;
  }

  /** Adds a table with its header row. */
  table(table: WriterTable): this {
    this.description.tables.push(table);
    return this;
  }

  /**
   * A drop-down list for a range; an empty cell is always allowed.
   * @param others whether entries that are not in the list are refused, or allowed without a word
   */
  list(
    range: string,
    words: readonly string[] | { readonly from: string },
    others: 'allowed' | 'refused' = 'allowed',
  ): this {
    this.description.lists.push({ range, words, others });
    return this;
  }

  /** A conditional format: `formula` is written for the first cell of `range`. Earlier ones win. */
  condition(range: string, formula: string, style: ConditionStyle): this {
    this.description.conditions.push({ range, formula, style });
    return this;
  }

  /** Styles a range, also of empty cells; what a cell was given by itself stays. */
  format(range: string, style: CellStyle): this {
    this.description.formats.push({ range, style });
    return this;
  }

  /** Joins the cells of a range; the first one keeps its value. */
  merge(range: string): this {
    this.description.merges.push(range);
    return this;
  }

  /** Widths of the columns in characters, from column A; wins over the widths of tables. */
  widths(widths: readonly number[]): this {
    this.description.widths = widths;
    return this;
  }

  /** Keeps the first rows and columns in sight. */
  freeze(rows: number, columns = 0): this {
    this.description.freeze = { rows, columns };
    return this;
  }

  /** Prints a part of the sheet, one page wide. */
  print(setUp: PrintSetUp): this {
    this.description.print = setUp;
    return this;
  }
}

export class WorkbookWriter {
  readonly sheets: SheetWriter[] = [];
  readonly names: { readonly name: string; readonly refersTo: string }[] = [];

  /** Adds a sheet after the last one. */
  sheet(name: string): SheetWriter {
    const sheet = new SheetWriter({
      name,
      cells: [],
      tables: [],
      lists: [],
      conditions: [],
      formats: [],
      merges: [],
      widths: [],
    });
    this.sheets.push(sheet);
    return sheet;
  }

  /** Defines a name for a cell or range: `Quote!$B$2`. */
  name(name: string, refersTo: string): this {
    this.names.push({ name, refersTo });
    return this;
  }
}

/** An empty workbook to describe. */
export const createWorkbook = (): WorkbookWriter => new WorkbookWriter();
