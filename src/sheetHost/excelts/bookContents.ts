import type { Workbook, Worksheet } from '@cj-tech-master/excelts';
import { cellAddress, readAddress, type Block } from '../address';
import type { CellValue } from '../hostValues';
import type { CellAddress } from '../sheetHost';
import type { Spill } from './calculationView';
import type { ReadTable } from './formulaReads';
import { Grid, type FormulaCell, type GridCell, type GridFormula } from './grid';

/** Days from the start of the calendar of 1900, as cells count them, to 1970, and what the one of 1904 is less. */
const DAYS_TO_1970 = 25569;
const DAYS_1900_TO_1904 = 1462;
const MS_A_DAY = 86_400_000;

export interface HostSheet {
  readonly worksheet: Worksheet;
  readonly name: string;
  readonly grid: Grid;
}

export type NamedTable = ReadTable & { readonly name: string };

interface TableModel {
  readonly name: string;
  readonly displayName?: string;
  readonly ref?: string;
  readonly tableRef?: string;
  readonly headerRow?: boolean;
  readonly totalsRow?: boolean;
  readonly columns: readonly { readonly name: string }[];
}

const tablesOf = (worksheet: Worksheet): TableModel[] =>
  worksheet.getTables().map((t) => (t as unknown as { table: TableModel }).table);

/** What the cells of a workbook hold, apart from their looks. Rows and columns count from 1, as in the engine. */
export class BookContents {
  readonly sheets: HostSheet[] = [];
  /** By worksheet: what formulas had filled when the file was saved. */
  readonly storedSpills = new Map<number, Spill[]>();
  private count = 0;
  private readonly cellsByNumber = new Map<number, { sheet: HostSheet; cell: FormulaCell }>();

  constructor(private readonly workbook: Workbook) {
    for (const worksheet of workbook.worksheets) this.takeIn(worksheet);
  }

  tables(): NamedTable[] {
    return this.sheets.flatMap((sheet) =>
      tablesOf(sheet.worksheet).flatMap((table) => {
        const block = readAddress(table.tableRef ?? table.ref ?? '');
        if (!block) return [];
        return [
          {
            name: table.displayName ?? table.name,
            sheet: sheet.name,
            block,
            columns: table.columns.map((c) => c.name),
            header: table.headerRow !== false,
            totals: table.totalsRow === true,
          },
        ];
      }),
    );
  }

  names() {
    return this.workbook.definedNames.getAllEntries().map(({ name, ranges, formulaExpression }) => ({
      name,
      refersTo: formulaExpression ?? ranges.join(','),
    }));
  }

  /** Takes in a sheet as the file holds it. */
  takeIn(worksheet: Worksheet): void {
    const host: HostSheet = { worksheet, name: worksheet.name, grid: new Grid() };
    this.sheets.push(host);
    const filled: Block[] = [];
    worksheet.eachRow((row) =>
      row.eachCell((cell) => {
        const model = cell.model as { shareType?: string; ref?: string; isDynamicArray?: boolean };
        const formula = cell.formula;
        if (formula === undefined || formula === null || formula === '') {
          const value = this.literal(cell.value);
          // A cell joined to another shows that one's value but holds none.
          if (value !== null && !(cell.isMerged && cell.master !== cell)) {
            this.put(host, Number(cell.row), Number(cell.col), value, undefined);
          }
          return;
        }
        const block = model.shareType === 'array' ? readAddress(model.ref ?? '') : undefined;
        if (block && block.rows * block.columns > 1) filled.push(block);
        const fills =
          model.isDynamicArray === true
            ? 'spill'
            : block && model.ref !== undefined
              ? { block: model.ref }
              : ('cell' as const);
        this.put(host, Number(cell.row), Number(cell.col), this.literal(cell.result), {
          stored: formula,
          fills,
        });
      }),
    );
    for (const block of filled) this.clearFilled(host, block);
  }

  /**
   * Takes away what a formula had filled when the file was saved: it would stand in the way of its own result. What a
   * spill had filled is kept apart, to be seen until it is computed anew.
   */
  private clearFilled(host: HostSheet, block: Block): void {
    const master = host.grid.at(block.row + 1, block.column + 1);
    const old = typeof master?.formula?.fills === 'object';
    const values = new Map<number, Map<number, CellValue>>();
    for (let r = 0; r < block.rows; r++) {
      for (let c = 0; c < block.columns; c++) {
        if (r === 0 && c === 0) continue;
        const [row, column] = [block.row + r + 1, block.column + c + 1];
        if (host.grid.at(row, column)?.formula) continue;
        const held = this.forget(host, row, column)?.value ?? null;
        if (held !== null)
          values.set(row, (values.get(row) ?? new Map<number, CellValue>()).set(column, held));
        const cell = host.worksheet.findCell(row, column);
        if (cell && !(cell.isMerged && cell.master !== cell)) cell.value = null;
        if (old) host.grid.put({ row, column, number: this.count++, value: null, ofArray: true });
      }
    }
    if (old || !master) return;
    const spill = { row: block.row + 1, column: block.column + 1, rows: block.rows, columns: block.columns };
    const { id } = host.worksheet;
    this.storedSpills.set(id, [...(this.storedSpills.get(id) ?? []), { ...spill, values }]);
  }

  /** A value as cells hold it; null where it is none. */
  literal(value: unknown): CellValue {
    if (typeof value === 'number' || typeof value === 'boolean' || typeof value === 'string') return value;
    if (value instanceof Date) {
      const days = value.getTime() / MS_A_DAY + DAYS_TO_1970;
      return this.workbook.properties.date1904 ? days - DAYS_1900_TO_1904 : days;
    }
    if (typeof value !== 'object' || value === null) return null;
    const held = value as { error?: unknown; richText?: readonly { text: string }[]; text?: unknown };
    if (typeof held.error === 'string') return { code: held.error };
    if (Array.isArray(held.richText)) return held.richText.map((r: { text: string }) => r.text).join('');
    return typeof held.text === 'string' ? held.text : null;
  }

  put(
    host: HostSheet,
    row: number,
    column: number,
    value: CellValue,
    formula: GridFormula | undefined,
  ): void {
    const cell = { row, column, number: this.count++, value };
    if (!formula) return host.grid.put(cell);
    const computed = { ...cell, formula };
    host.grid.put(computed);
    this.cellsByNumber.set(cell.number, { sheet: host, cell: computed });
  }

  /** Empties a cell; answers what it held. */
  forget(host: HostSheet, row: number, column: number): GridCell | undefined {
    const old = host.grid.at(row, column);
    if (!old) return undefined;
    this.cellsByNumber.delete(old.number);
    host.grid.remove(row, column);
    return old;
  }

  sheet(name: string): HostSheet {
    const found = this.sheets.find((s) => s.name.toLowerCase() === name.toLowerCase());
    if (!found) throw new RangeError(`there is no sheet ${name}`);
    return found;
  }

  *formulaCells(): IterableIterator<FormulaCell> {
    for (const { cell } of this.cellsByNumber.values()) yield cell;
  }

  /** The name of the sheet that a formula stands in. */
  sheetOf(cell: GridCell): string {
    const sheet = this.cellsByNumber.get(cell.number)?.sheet;
    if (!sheet) throw new RangeError(`no formula has the number ${cell.number}`);
    return sheet.name;
  }

  /** Where a formula stands, as the host names a cell to a function: `Sheet!B4`, `'Sheet 2'!B4`. */
  formulaAddress(number: number): string | undefined {
    const found = this.cellsByNumber.get(number);
    if (!found) return undefined;
    const { name } = found.sheet;
    const shown = /^[A-Za-z_]\w*$/.test(name) ? name : `'${name.replace(/'/g, "''")}'`;
    return `${shown}!${cellAddress(found.cell.row - 1, found.cell.column - 1)}`;
  }

  addressOf(cell: GridCell): CellAddress {
    return {
      sheet: this.sheetOf(cell),
      row: cell.row - 1,
      column: cell.column - 1,
    };
  }
}
