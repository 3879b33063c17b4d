import type { CellLike, RowLike, WorkbookLike, WorksheetLike } from '@cj-tech-master/excelts/formula';
import type { CellValue } from '../hostValues';
import { isCellError } from '../hostValues';
import { hasFormula, type FormulaCell, type Grid, type GridCell } from './grid';

/** The cells that a formula filled: its own first. Rows and columns count from 1. */
export interface Spill {
  readonly row: number;
  readonly column: number;
  rows: number;
  columns: number;
  /** Values by row and column, those of the cells beside the formula's own. */
  readonly values: Map<number, Map<number, CellValue>>;
}

export interface ViewedSheet {
  readonly id: number;
  readonly name: string;
  readonly grid: Grid;
  readonly tables: NonNullable<WorksheetLike['getTables']> extends () => infer T ? T : never;
  readonly merges: readonly { top: number; left: number; bottom: number; right: number }[];
  hidden(row: number): boolean;
}

export interface ViewedWorkbook {
  readonly sheets: readonly ViewedSheet[];
  readonly names: NonNullable<WorkbookLike['definedNames']>;
  readonly date1904: boolean;
  readonly functions: NonNullable<WorkbookLike['userFunctions']>;
  /** The formula as the engine is to compute it. */
  engineFormula(cell: FormulaCell, sheet: string): string;
}

const EMPTY = 0;
const FORMULA = 6;
const LITERAL = 2;

/**
 * What the engine sees of a workbook, and where it puts results: never into the workbook's own cells. Results of the
 * last recalculation are not shown to it, because it keeps them where a function is unknown; what spilled is shown to
 * the next pass of the same recalculation only.
 */
export class CalculationView {
  /** By sheet id: the spills of the last pass. */
  spills = new Map<number, Spill[]>();
  /** By sheet id: the same, while a pass puts new ones in place of them. */
  private shown = new Map<number, Spill[]>();
  readonly workbook: WorkbookLike;
  /** The cells that got a result in the last pass. */
  readonly computed = new Set<GridCell>();
  private last: { readonly sheet: number; readonly cell: GridCell } | undefined;

  constructor(viewed: ViewedWorkbook) {
    const sheets = viewed.sheets.map((sheet) => this.sheetLike(sheet, viewed));
    const byName = new Map(sheets.map((s) => [s.name.toLowerCase(), s]));
    this.workbook = {
      worksheets: sheets,
      getWorksheet: (id) =>
        typeof id === 'number' ? sheets.find((s) => s.id === id) : byName.get(String(id).toLowerCase()),
      definedNames: viewed.names,
      properties: { date1904: viewed.date1904 },
      userFunctions: viewed.functions,
    };
  }

  /** Call before each pass. */
  startPass(): void {
    this.shown = this.spills;
    this.spills = new Map();
    this.computed.clear();
    this.last = undefined;
  }

  private sheetLike(sheet: ViewedSheet, viewed: ViewedWorkbook): WorksheetLike {
    const spilled = (): Map<number, Map<number, CellValue>> => {
      const merged = new Map<number, Map<number, CellValue>>();
      for (const { values } of this.shown.get(sheet.id) ?? []) {
        for (const [r, row] of values) {
          const into = merged.get(r);
          if (into) for (const [c, value] of row) into.set(c, value);
          else merged.set(r, new Map(row));
        }
      }
      return merged;
    };
    const cellLike = (cell: GridCell): CellLike => this.cellLike(cell, sheet, viewed);
    return {
      id: sheet.id,
      name: sheet.name,
      get dimensions() {
        let [bottom, right] = [0, 0];
        for (const rows of [sheet.grid.rows, spilled()]) {
          for (const [r, row] of rows) {
            bottom = Math.max(bottom, r);
            for (const c of row.keys()) right = Math.max(right, c);
          }
        }
        return bottom === 0 ? null : { top: 1, left: 1, bottom, right };
      },
      mergedRegions: sheet.merges,
      getTables: () => sheet.tables,
      eachRow: (...args: unknown[]) => {
        const visit = args[args.length - 1] as (row: RowLike, number: number) => void;
        const extra = spilled();
        const numbers = [...new Set([...sheet.grid.rows.keys(), ...extra.keys()])].sort((a, b) => a - b);
        for (const r of numbers) {
          const eachCell = (...cellArgs: unknown[]) => {
            const visitCell = cellArgs[cellArgs.length - 1] as (cell: CellLike, column: number) => void;
            const own = sheet.grid.rows.get(r);
            for (const cell of own?.values() ?? []) visitCell(cellLike(cell), cell.column);
            for (const [c, value] of extra.get(r) ?? []) {
              if (!own?.has(c)) visitCell(literalLike(r, c, value), c);
            }
          };
          visit({ hidden: sheet.hidden(r), eachCell: eachCell }, r);
        }
      },
      findCell: (row, column) => {
        const cell = sheet.grid.at(row, column);
        return cell && cellLike(cell);
      },
      getCell: (row, column) => this.spillTarget(row, column),
    };
  }

  private cellLike(cell: GridCell, sheet: ViewedSheet, viewed: ViewedWorkbook): CellLike {
    const { formula, row, column } = cell;
    if (!formula && !cell.ofArray) return literalLike(row, column, cell.value);
    // eslint-disable-next-line @typescript-eslint/no-this-alias
    const view = this;
    const text = hasFormula(cell) ? viewed.engineFormula(cell, sheet.name) : undefined;
    const fills = formula?.fills;
    return {
      row,
      col: column,
      type: FORMULA,
      ...(text === undefined ? {} : { formula: text }),
      model:
        text === undefined || fills === undefined || fills === 'cell'
          ? {}
          : typeof fills === 'object'
            ? { formula: text, shareType: 'array', ref: fills.block }
            : { formula: text, isDynamicArray: true },
      value: null,
      get result() {
        return undefined;
      },
      set result(result) {
        cell.value = valueOf(result);
        view.computed.add(cell);
        view.last = { sheet: sheet.id, cell };
      },
    };
  }

  /** Where the engine puts a spilled value: always right after the result of the formula that it belongs to. */
  private spillTarget(row: number, column: number): CellLike {
    const last = this.last;
    const put = (value: unknown): void => {
      if (!last) return;
      const { cell, sheet } = last;
      let spills = this.spills.get(sheet);
      if (!spills) this.spills.set(sheet, (spills = []));
      let spill = spills[spills.length - 1];
      if (!spill || spill.row !== cell.row || spill.column !== cell.column) {
        spill = { row: cell.row, column: cell.column, rows: 1, columns: 1, values: new Map() };
        spills.push(spill);
      }
      spill.rows = Math.max(spill.rows, row - cell.row + 1);
      spill.columns = Math.max(spill.columns, column - cell.column + 1);
      let cells = spill.values.get(row);
      if (!cells) spill.values.set(row, (cells = new Map<number, CellValue>()));
      cells.set(column, valueOf(value));
    };
    return {
      row,
      col: column,
      type: EMPTY,
      model: {},
      result: undefined,
      get value() {
        return null;
      },
      set value(value) {
        put(value);
      },
    };
  }
}

const literalLike = (row: number, column: number, value: CellValue): CellLike => ({
  row,
  col: column,
  type: value === null ? EMPTY : LITERAL,
  model: {},
  value: isCellError(value) ? { error: value.code } : value,
  result: undefined,
});

/** The engine's results: a formula that gives nothing shows 0. */
function valueOf(result: unknown): CellValue {
  if (result === undefined || result === null) return 0;
  if (typeof result === 'object' && 'error' in result) return { code: String(result.error) };
  return typeof result === 'number' || typeof result === 'string' || typeof result === 'boolean' ? result : 0;
}
