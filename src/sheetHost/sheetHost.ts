import type { Block } from './address';
import type { Bundle } from './bundle';
import type { SheetLook } from './cellLook';
import type { CellValue, HostManners } from './hostValues';
import type { SheetDescription, WriterValue } from './workbookWriter';

/** Why something was not done, in words for the user. */
export interface Refusal {
  readonly ok: false;
  readonly reason: string;
}

/** What came of a recalculation that a user should hear about. */
export interface Recalculation {
  /** Times that all formulas were evaluated: more than once where formulas read what others spill. */
  readonly passes: number;
  readonly circular: readonly CellAddress[];
  /** Formulas that could not be read; they show #NAME?. */
  readonly unreadable: readonly CellAddress[];
}

export interface CellAddress {
  readonly sheet: string;
  /** From 0. */
  readonly row: number;
  /** From 0. */
  readonly column: number;
}

/**
 * A workbook that formulas are computed in, standing in for Excel. Rows and columns count from 0. Sheets are
 * named without regard to case; a sheet that does not exist is a RangeError.
 */
export interface SheetHost {
  sheets(): readonly string[];
  tables(): readonly { readonly name: string; readonly sheet: string; readonly block: Block }[];
  names(): readonly { readonly name: string; readonly refersTo: string }[];
  /** The block from the first to the last filled cell; undefined for an empty sheet. */
  used(sheet: string): Block | undefined;
  /** What the cells show, spilled ones too, error messages beside their codes; before a recalculation what was saved. */
  read(sheet: string, block: Block): CellValue[][];
  /** What one cell shows. */
  value(sheet: string, row: number, column: number): CellValue;
  /** The formula as the formula line shows it, with its `=`; undefined where there is none. */
  formula(sheet: string, row: number, column: number): string | undefined;
  /** The number format, `General` where none is set. */
  format(sheet: string, row: number, column: number): string;
  /** How the workbook has the sheet look. */
  look(sheet: string): SheetLook;
  /** The block that a spill fills, asked for any of its cells; its first cell holds the formula. */
  spill(sheet: string, row: number, column: number): Block | undefined;
  /** Where a cell with a HYPERLINK to a place in this workbook leads, once it has been computed. */
  link(
    sheet: string,
    row: number,
    column: number,
  ): { readonly sheet: string; readonly block: Block } | undefined;
  /**
   * Writes a cell; null empties it. A formula that cannot be read, or calls a function with too few or too many
   * arguments, is refused as Excel refuses it on entry.
   */
  write(sheet: string, row: number, column: number, value: WriterValue): { readonly ok: true } | Refusal;
  /** Adds a sheet after the last one; its name, tables and names must be free. */
  addSheet(description: SheetDescription): { readonly ok: true } | Refusal;
  /** Makes the functions of a bundle known, in place of an earlier one's. */
  register(bundle: Bundle): void;
  recalculate(): Recalculation;
  /**
   * What formulas that are one call of a function of the bundle showed when the file was saved; without errors. Asked
   * for before the first recalculation.
   * @returns by address, as the host gives it to a function
   */
  stored(): ReadonlyMap<string, CellValue[][]>;
  /**
   * Where the formulas stand that a sheet shows or needs for what it shows, other sheets' too; some that it does not
   * need may be among them.
   * @returns addresses as the host gives them to a function, `Sheet!B4`
   */
  neededBy(sheet: string): ReadonlySet<string>;
  /**
   * The workbook as bytes, with results.
   * @returns `lost`: the parts of the file opened that could not be kept, e.g. charts
   */
  save(): Promise<{ readonly bytes: Uint8Array; readonly lost: readonly string[] }>;
}

export interface HostOptions {
  /** Largest file that is opened [bytes]; 20 MB when left out. */
  readonly sizeLimit?: number;
  /** How empty cells and arguments left out are handed over; those of the web when left out. */
  readonly manners?: HostManners;
}
