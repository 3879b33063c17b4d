import type { Cell, Workbook, Worksheet } from '@cj-tech-master/excelts';
import { calculateFormulas } from '@cj-tech-master/excelts/formula';
import { blockAddress, cellAddress, readAddress, type Block } from '../address';
import type { Bundle, BundleFunction } from '../bundle';
import { callAsExcel, type CallArgument, type CallResult } from '../callAsExcel';
import { engineFormula, engineName, LEFT_OUT, NO_SPILL } from '../engineFormula';
import { bundleCall, callArguments, formulaParts, shownFormula, storedFormula } from '../formulaText';
import { isCellError, WEB_MANNERS, type CellError, type CellValue, type HostManners } from '../hostValues';
import type { CellAddress, HostOptions, Recalculation, Refusal, SheetHost } from '../sheetHost';
import type { SheetDescription, WriterValue } from '../workbookWriter';
import { CalculationView, type Spill, type ViewedSheet } from './calculationView';
import { formulaReads, overlap, syntaxFault, type FormulaReads, type ReadTable } from './formulaReads';
import { Grid, type GridCell, type GridFormula } from './grid';
import { readParts } from './packageParts';
import { withStoppingRules, type StoppingRule } from './stopIfTrue';
import { writeSheet } from './writeWorkbook';

/** More passes than this and the spills chase one another. */
const MOST_PASSES = 12;

/** Days from the start of the calendar of 1900, as cells count them, to 1970, and what the one of 1904 is less. */
const DAYS_TO_1970 = 25569;
const DAYS_1900_TO_1904 = 1462;
const MS_A_DAY = 86_400_000;

// Codes that the format had from its beginning. Excel keeps the younger ones apart and writes #VALUE! here.
const STORABLE_ERRORS = new Set(['#N/A', '#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!']);

// The engine's kinds of values.
const BLANK = 0;
const NUMBER = 1;
const TEXT = 2;
const BOOLEAN = 3;
const ERROR = 4;
const ARRAY = 5;

type EngineValue =
  | { readonly kind: 0 }
  | { readonly kind: 1; readonly value: number }
  | { readonly kind: 2; readonly value: string }
  | { readonly kind: 3; readonly value: boolean }
  | { readonly kind: 4; readonly code: string }
  | {
      readonly kind: 5;
      readonly rows: readonly (readonly EngineValue[])[];
      readonly height: number;
      readonly width: number;
    };

const LEFT_OUT_VALUE: EngineValue = { kind: BLANK };

interface HostSheet {
  readonly worksheet: Worksheet;
  readonly name: string;
  readonly grid: Grid;
}

interface RememberedCall {
  readonly result: CallResult;
  used: boolean;
}

/** A workbook of excelts behind our own interface. All that knows excelts is in this folder. */
export class ExceltsHost implements SheetHost {
  private readonly hostSheets: HostSheet[] = [];
  private readonly manners: HostManners;
  private bundle: Bundle | undefined;
  private spills = new Map<number, Spill[]>();
  private count = 0;
  private readonly cellsByNumber = new Map<number, { sheet: HostSheet; cell: GridCell }>();
  /** By the number of a cell: results with an error in them, of the calls in its formula. */
  private readonly callErrors = new Map<number, CallResult[]>();
  private readonly remembered = new Map<string, RememberedCall>();
  private readonly reads = new Map<GridCell, FormulaReads>();
  /** Formulas as the engine computes them, of those that stay the same whatever spills. */
  private readonly engineTexts = new Map<GridCell, string>();
  private circular: readonly GridCell[] | undefined;
  private circularNumbers: ReadonlySet<number> = new Set();
  /** First cells of spills that must not happen, found during a recalculation. */
  private readonly noSpill = new Set<number>();

  /**
   * @param partNames the names of the parts of the file opened
   * @param stopping its rules with stopIfTrue
   */
  constructor(
    private readonly workbook: Workbook,
    private readonly partNames: readonly string[],
    private readonly stopping: readonly StoppingRule[],
    options: HostOptions,
  ) {
    this.manners = options.manners ?? WEB_MANNERS;
    for (const worksheet of workbook.worksheets) this.takeIn(worksheet);
  }

  sheets(): readonly string[] {
    return this.hostSheets.map((s) => s.name);
  }

  tables() {
    return this.allTables().map(({ name, sheet, block }) => ({ name, sheet, block }));
  }

  private allTables(): (ReadTable & { readonly name: string })[] {
    return this.hostSheets.flatMap((sheet) =>
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

  used(sheet: string): Block | undefined {
    const host = this.sheet(sheet);
    let [top, left, bottom, right] = [Infinity, Infinity, 0, 0];
    const include = (row: number, column: number) => {
      top = Math.min(top, row);
      left = Math.min(left, column);
      bottom = Math.max(bottom, row);
      right = Math.max(right, column);
    };
    for (const { row, column } of host.grid.cells()) include(row, column);
    for (const spill of this.spillsOf(host)) {
      include(spill.row, spill.column);
      include(spill.row + spill.rows - 1, spill.column + spill.columns - 1);
    }
    if (bottom === 0) return undefined;
    return { row: top - 1, column: left - 1, rows: bottom - top + 1, columns: right - left + 1 };
  }

  read(sheet: string, block: Block): CellValue[][] {
    const host = this.sheet(sheet);
    return Array.from({ length: block.rows }, (_, r) =>
      Array.from({ length: block.columns }, (__, c) =>
        this.cellValue(host, block.row + r + 1, block.column + c + 1),
      ),
    );
  }

  value(sheet: string, row: number, column: number): CellValue {
    return this.cellValue(this.sheet(sheet), row + 1, column + 1);
  }

  formula(sheet: string, row: number, column: number): string | undefined {
    const formula = this.sheet(sheet).grid.at(row + 1, column + 1)?.formula;
    return formula && `=${shownFormula(formula.stored)}`;
  }

  format(sheet: string, row: number, column: number): string {
    const format = this.sheet(sheet).worksheet.findCell(row + 1, column + 1)?.numFmt as unknown;
    if (typeof format === 'string') return format;
    const code = (format as { formatCode?: unknown } | null | undefined)?.formatCode;
    return typeof code === 'string' ? code : 'General';
  }

  spill(sheet: string, row: number, column: number): Block | undefined {
    const spill = this.spillAt(this.sheet(sheet), row + 1, column + 1);
    return (
      spill && { row: spill.row - 1, column: spill.column - 1, rows: spill.rows, columns: spill.columns }
    );
  }

  write(sheet: string, row: number, column: number, value: WriterValue): { readonly ok: true } | Refusal {
    const host = this.sheet(sheet);
    const cell = host.worksheet.getCell(row + 1, column + 1);
    const old = host.grid.at(row + 1, column + 1);
    if (old?.ofArray || typeof old?.formula?.fills === 'object') {
      return refuse('the cell is part of an array formula, which can only be changed as a whole');
    }
    let formula: GridFormula | undefined;
    if (typeof value === 'object' && value !== null && !(value instanceof Date)) {
      const stored = storedFormula(value.formula, this.tableAt(host, row, column));
      const fault = this.formulaFault(stored);
      if (fault !== undefined) return refuse(fault);
      formula = { stored, fills: 'typed' };
      cell.value = { formula: stored };
    } else {
      cell.value = value;
    }
    this.forget(host, row + 1, column + 1);
    if (formula) this.put(host, row + 1, column + 1, null, formula);
    else if (value !== null) this.put(host, row + 1, column + 1, this.literal(value), undefined);
    return { ok: true };
  }

  addSheet(description: SheetDescription): { readonly ok: true } | Refusal {
    const taken = (names: readonly string[], name: string) =>
      names.some((n) => n.toLowerCase() === name.toLowerCase());
    if (taken(this.sheets(), description.name)) return refuse(`there is a sheet ${description.name} already`);
    const used = [...this.tables(), ...this.names()].map((t) => t.name);
    for (const { name } of description.tables) {
      if (taken(used, name)) return refuse(`there is a table or a name ${name} already`);
    }
    const worksheet = this.workbook.addWorksheet(description.name);
    writeSheet(worksheet, description);
    this.takeIn(worksheet);
    return { ok: true };
  }

  register(bundle: Bundle): void {
    this.bundle = bundle;
    this.remembered.clear();
    this.engineTexts.clear();
  }

  recalculate(): Recalculation {
    this.noSpill.clear();
    this.spills = new Map();
    const circular = this.circularCells();
    this.circularNumbers = new Set(circular.map((c) => c.number));
    const formulas = [...this.formulaCells()];
    for (const cell of formulas) cell.value = null;

    const view = this.view();
    let passes = 0;
    for (;;) {
      passes++;
      view.startPass();
      this.callErrors.clear();
      calculateFormulas(view.workbook);
      const barred = this.barTableSpills(view);
      const settled = !barred && passes > 1 && sameSpills(view.spills, this.spills);
      const first = passes === 1 && !barred && !this.readsSpills(view.spills);
      this.spills = view.spills;
      if (settled || first || passes >= MOST_PASSES) break;
    }
    this.forgetUnusedCalls();

    const unreadable = formulas.filter((cell) => !view.computed.has(cell));
    for (const cell of unreadable) cell.value = { code: '#NAME?' };
    return {
      passes,
      circular: circular.map((c) => this.addressOf(c)),
      unreadable: unreadable.map((c) => this.addressOf(c)),
    };
  }

  async save(): Promise<{ readonly bytes: Uint8Array; readonly lost: readonly string[] }> {
    const filled: Cell[] = [];
    for (const host of this.hostSheets) {
      for (const cell of host.grid.cells()) this.storeResult(host, cell);
      for (const spill of this.spillsOf(host)) {
        for (const [row, cells] of spill.values) {
          for (const [column, value] of cells) {
            const cell = host.worksheet.getCell(row, column);
            cell.value = storable(value);
            filled.push(cell);
          }
        }
      }
    }
    try {
      const written = new Uint8Array(await this.workbook.xlsx.writeBuffer());
      const bytes = await withStoppingRules(written, this.stopping);
      const kept = new Set((await readParts(bytes)).keys());
      return { bytes, lost: this.partNames.filter((name) => !kept.has(name) && !REBUILT_PART.test(name)) };
    } finally {
      for (const cell of filled) cell.value = null;
    }
  }

  // Contents

  private takeIn(worksheet: Worksheet): void {
    const host: HostSheet = { worksheet, name: worksheet.name, grid: new Grid() };
    this.hostSheets.push(host);
    this.circular = undefined;
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
          model.isDynamicArray === true ? 'spill' : block ? { block: model.ref! } : ('cell' as const);
        this.put(host, Number(cell.row), Number(cell.col), this.literal(cell.result), {
          stored: formula,
          fills,
        });
      }),
    );
    for (const block of filled) this.clearFilled(host, block);
  }

  /** Takes away what a formula had filled when the file was saved: it would stand in the way of its own result. */
  private clearFilled(host: HostSheet, block: Block): void {
    const master = host.grid.at(block.row + 1, block.column + 1);
    const old = typeof master?.formula?.fills === 'object';
    for (let r = 0; r < block.rows; r++) {
      for (let c = 0; c < block.columns; c++) {
        if (r === 0 && c === 0) continue;
        const [row, column] = [block.row + r + 1, block.column + c + 1];
        if (host.grid.at(row, column)?.formula) continue;
        this.forget(host, row, column);
        const cell = host.worksheet.findCell(row, column);
        if (cell && !(cell.isMerged && cell.master !== cell)) cell.value = null;
        if (old) host.grid.put({ row, column, number: this.count++, value: null, ofArray: true });
      }
    }
  }

  private literal(value: unknown): CellValue {
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

  private put(
    host: HostSheet,
    row: number,
    column: number,
    value: CellValue,
    formula: GridFormula | undefined,
  ): void {
    const cell: GridCell = { row, column, number: this.count++, value, ...(formula ? { formula } : {}) };
    host.grid.put(cell);
    if (!formula) return;
    this.cellsByNumber.set(cell.number, { sheet: host, cell });
    this.circular = undefined;
  }

  private forget(host: HostSheet, row: number, column: number): void {
    const old = host.grid.at(row, column);
    if (!old) return;
    if (old.formula) {
      this.cellsByNumber.delete(old.number);
      this.reads.delete(old);
      this.engineTexts.delete(old);
      this.circular = undefined;
    }
    host.grid.remove(row, column);
  }

  private sheet(name: string): HostSheet {
    const found = this.hostSheets.find((s) => s.name.toLowerCase() === name.toLowerCase());
    if (!found) throw new RangeError(`there is no sheet ${name}`);
    return found;
  }

  private *formulaCells(): IterableIterator<GridCell> {
    for (const { cell } of this.cellsByNumber.values()) yield cell;
  }

  private addressOf(cell: GridCell): CellAddress {
    return {
      sheet: this.cellsByNumber.get(cell.number)!.sheet.name,
      row: cell.row - 1,
      column: cell.column - 1,
    };
  }

  private tableAt(host: HostSheet, row: number, column: number): string | undefined {
    const here: Block = { row, column, rows: 1, columns: 1 };
    return this.tables().find((t) => t.sheet === host.name && overlap(t.block, here))?.name;
  }

  private spillsOf(host: HostSheet): readonly Spill[] {
    return this.spills.get(host.worksheet.id) ?? [];
  }

  private spillAt(host: HostSheet, row: number, column: number): Spill | undefined {
    return this.spillsOf(host).find(
      (s) => row >= s.row && row < s.row + s.rows && column >= s.column && column < s.column + s.columns,
    );
  }

  private cellValue(host: HostSheet, row: number, column: number): CellValue {
    const own = host.grid.at(row, column);
    const spill = own && !own.formula ? undefined : this.spillAt(host, row, column);
    const value = own ? own.value : (spill?.values.get(row)?.get(column) ?? null);
    if (!isCellError(value) || value.message !== undefined) return value;
    const master = spill ? host.grid.at(spill.row, spill.column) : own;
    return (master && this.withMessage(value, master, row - master.row, column - master.column)) ?? value;
  }

  /** The engine carries codes only: the message is that of the call in the cell's formula that gave this code here. */
  private withMessage(error: CellError, cell: GridCell, row: number, column: number): CellError | undefined {
    for (const result of this.callErrors.get(cell.number) ?? []) {
      const here =
        result[row]?.[column] ?? (result.length === 1 && result[0]!.length === 1 ? result[0]![0] : null);
      if (isCellError(here) && here.code === error.code && here.message !== undefined) return here;
    }
    return undefined;
  }

  // Computing

  private view(): CalculationView {
    const sheets: ViewedSheet[] = this.hostSheets.map(({ worksheet, name, grid }) => ({
      id: worksheet.id,
      name,
      grid,
      tables: worksheet.getTables() as unknown as ViewedSheet['tables'],
      merges: (worksheet as unknown as { mergedRegions?: ViewedSheet['merges'] }).mergedRegions ?? [],
      hidden: (row) => worksheet.findRow(row)?.hidden === true,
    }));
    return new CalculationView({
      sheets,
      names: this.workbook.definedNames,
      date1904: this.workbook.properties.date1904 === true,
      functions: this.engineFunctions(),
      engineFormula: (cell, sheet) => this.engineFormula(cell, sheet),
    });
  }

  private engineFormula(cell: GridCell, sheet: string): string {
    const { number } = cell;
    const { stored } = cell.formula!;
    if (this.noSpill.has(number)) return `${NO_SPILL}()`;
    // Excel shows 0 there, with a warning ("Remove or allow a circular reference").
    if (this.circularNumbers.has(number)) return '0';
    const kept = this.engineTexts.get(cell);
    if (kept !== undefined) return kept;
    let lasting = true;
    const text = engineFormula(stored, number, this.bundle?.functions ?? new Map(), (reference) => {
      lasting = false;
      const [address, prefix] = /^(?:(.*)!)?([^!]+)$/.exec(reference)?.slice(1).reverse() ?? [];
      const at = address === undefined ? undefined : readAddress(address);
      const name = prefix === undefined ? sheet : prefix.replace(/^'|'$/g, '').replace(/''/g, "'");
      const host = this.hostSheets.find((s) => s.name.toLowerCase() === name.toLowerCase());
      if (!at || !host) return undefined;
      const spill = this.spillsOf(host).find((s) => s.row === at.row + 1 && s.column === at.column + 1);
      const lone = host.grid.at(at.row + 1, at.column + 1)?.formula?.fills;
      if (!spill && lone !== 'spill' && lone !== 'typed') return undefined;
      const block = { ...at, rows: spill?.rows ?? 1, columns: spill?.columns ?? 1 };
      return prefix === undefined ? blockAddress(block) : `${prefix}!${blockAddress(block)}`;
    });
    if (lasting) this.engineTexts.set(cell, text);
    return text;
  }

  private engineFunctions() {
    const functions = new Map<
      string,
      { minArity: number; maxArity: number; invoke: (args: unknown[]) => unknown }
    >();
    functions.set(LEFT_OUT, { minArity: 0, maxArity: 0, invoke: () => LEFT_OUT_VALUE });
    functions.set(NO_SPILL, { minArity: 0, maxArity: 0, invoke: () => ({ kind: ERROR, code: '#SPILL!' }) });
    for (const [name, described] of this.bundle?.functions ?? []) {
      functions.set(engineName(name), {
        minArity: 1,
        // The number of the cell comes before the arguments.
        maxArity: Number.MAX_SAFE_INTEGER,
        invoke: ([cell, ...args]) =>
          this.call(described, (cell as { value: number }).value, args as EngineValue[]),
      });
    }
    return functions;
  }

  private call(described: BundleFunction, cell: number, args: readonly EngineValue[]): EngineValue {
    const key = described.id + args.map(keyOf).join('\u0001');
    let remembered = this.remembered.get(key);
    if (remembered) remembered.used = true;
    else {
      const result = callAsExcel(described, args.map(argumentOf), this.manners, this.bundle!.runtime);
      this.remembered.set(key, (remembered = { result, used: true }));
    }
    const { result } = remembered;
    if (result.some((row) => row.some((c) => isCellError(c) && c.message !== undefined))) {
      const errors = this.callErrors.get(cell);
      if (errors) errors.push(result);
      else this.callErrors.set(cell, [result]);
    }
    if (result.length === 1 && result[0]!.length === 1) return engineValue(result[0]![0]!);
    return {
      kind: ARRAY,
      rows: result.map((row) => row.map(engineValue)),
      height: result.length,
      width: result[0]!.length,
    };
  }

  /** A call with the same values gives the same result, as the host too supposes; what was not asked again goes. */
  private forgetUnusedCalls(): void {
    for (const [key, call] of this.remembered) {
      if (call.used) call.used = false;
      else this.remembered.delete(key);
    }
  }

  /** A spill that begins in a table or would run into one shows #SPILL! ("#SPILL! error - table formula"). */
  private barTableSpills(view: CalculationView): boolean {
    let barred = false;
    const tables = this.tables();
    for (const host of this.hostSheets) {
      const blocks = tables.filter((t) => t.sheet === host.name).map((t) => t.block);
      for (const spill of view.spills.get(host.worksheet.id) ?? []) {
        const block = {
          row: spill.row - 1,
          column: spill.column - 1,
          rows: spill.rows,
          columns: spill.columns,
        };
        const cell = host.grid.at(spill.row, spill.column);
        if (!cell || !blocks.some((b) => overlap(b, block))) continue;
        this.noSpill.add(cell.number);
        barred = true;
      }
    }
    return barred;
  }

  private readsOf(cell: GridCell): FormulaReads {
    let reads = this.reads.get(cell);
    if (reads) return reads;
    const { sheet } = this.cellsByNumber.get(cell.number)!;
    const tables = this.allTables();
    reads = formulaReads(plainFormula(cell.formula!.stored), {
      sheet: sheet.name,
      row: cell.row - 1,
      table: (name) =>
        name === ''
          ? tables.find(
              (t) =>
                t.sheet === sheet.name &&
                overlap(t.block, { row: cell.row - 1, column: cell.column - 1, rows: 1, columns: 1 }),
            )
          : tables.find((t) => t.name.toLowerCase() === name.toLowerCase()),
      name: (name) =>
        this.names()
          .filter((n) => n.name.toLowerCase() === name)
          .map((n) => n.refersTo),
    });
    this.reads.set(cell, reads);
    return reads;
  }

  private readsSpills(spills: ReadonlyMap<number, readonly Spill[]>): boolean {
    if (spills.size === 0) return false;
    const blocks = this.hostSheets.flatMap((host) =>
      (spills.get(host.worksheet.id) ?? []).map((s) => ({
        sheet: host.name.toLowerCase(),
        block: { row: s.row - 1, column: s.column - 1, rows: s.rows, columns: s.columns },
      })),
    );
    for (const cell of this.formulaCells()) {
      const { blocks: read, more } = this.readsOf(cell);
      if (more) return true;
      if (/ANCHORARRAY/i.test(cell.formula!.stored)) return true;
      if (read.some((r) => blocks.some((b) => b.sheet === r.sheet && overlap(b.block, r.block)))) return true;
    }
    return false;
  }

  /** Formula cells that depend on themselves. */
  private circularCells(): readonly GridCell[] {
    if (this.circular) return this.circular;
    const bySheet = new Map<string, GridCell[]>();
    for (const { sheet, cell } of this.cellsByNumber.values()) {
      const list = bySheet.get(sheet.name.toLowerCase());
      if (list) list.push(cell);
      else bySheet.set(sheet.name.toLowerCase(), [cell]);
    }
    const grids = new Map(this.hostSheets.map((s) => [s.name.toLowerCase(), s.grid]));
    const next = (cell: GridCell): GridCell[] =>
      this.readsOf(cell).blocks.flatMap(({ sheet, block }) => {
        const cells = bySheet.get(sheet) ?? [];
        if (block.rows * block.columns > cells.length) {
          return cells.filter((c) =>
            overlap(block, { row: c.row - 1, column: c.column - 1, rows: 1, columns: 1 }),
          );
        }
        const within: GridCell[] = [];
        for (let r = 0; r < block.rows; r++) {
          for (let c = 0; c < block.columns; c++) {
            const found = grids.get(sheet)?.at(block.row + r + 1, block.column + c + 1);
            if (found?.formula) within.push(found);
          }
        }
        return within;
      });
    return (this.circular = onCycles([...this.formulaCells()], next));
  }

  private formulaFault(stored: string): string | undefined {
    const fault = syntaxFault(plainFormula(stored));
    if (fault !== undefined) return `the formula cannot be read: ${fault}`;
    const parts = formulaParts(stored);
    for (let i = 0; i < parts.length; i++) {
      if (parts[i]!.kind !== 'call') continue;
      const described = this.bundle?.functions.get(bundleCall(parts[i]!.text) ?? '');
      if (!described) continue;
      const { starts, end } = callArguments(parts, i);
      const none = starts.length === 1 && parts.slice(starts[0], end).every((p) => p.kind === 'space');
      const given = none ? 0 : starts.length;
      if (given < described.least) return `too few arguments for ${described.name}`;
      if (given > described.most) return `too many arguments for ${described.name}`;
    }
    return undefined;
  }

  // Saving

  private storeResult(host: HostSheet, cell: GridCell): void {
    if (!cell.formula && !cell.ofArray) return;
    const target = host.worksheet.getCell(cell.row, cell.column);
    const result = storable(cell.value);
    if (cell.ofArray) {
      target.value = result;
      return;
    }
    const { stored, fills } = cell.formula!;
    if (fills === 'cell' || typeof fills === 'object') {
      if (result !== null) target.result = result;
      return;
    }
    const spill = this.spillsOf(host).find((s) => s.row === cell.row && s.column === cell.column);
    const blocked = isCellError(cell.value) && cell.value.code === '#SPILL!';
    const ref = spill
      ? blockAddress({ row: cell.row - 1, column: cell.column - 1, rows: spill.rows, columns: spill.columns })
      : cellAddress(cell.row - 1, cell.column - 1);
    const shown = result === null ? {} : { result };
    target.value =
      fills === 'typed' && !spill && !blocked
        ? { formula: stored, ...shown }
        : { formula: stored, ...shown, shareType: 'array', ref, isDynamicArray: true };
  }
}

/** Parts that are made anew on saving, under other names or not at all, without any loss. */
const REBUILT_PART =
  /^(?:xl\/calcChain\.xml|xl\/sharedStrings\.xml|xl\/metadata\.xml|docProps\/|_rels\/|xl\/_rels\/|.*\/_rels\/|xl\/theme\/|xl\/worksheets\/sheet\d+\.xml|xl\/tables\/table\d+\.xml|\[Content_Types\]\.xml)/;

const refuse = (reason: string): Refusal => ({ ok: false, reason });

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

/** Without what the engine's reader does not know. */
const plainFormula = (stored: string): string =>
  engineFormula(stored, 0, new Set(), (reference) => reference);

function keyOf(value: EngineValue): string {
  if (value === LEFT_OUT_VALUE) return 'o';
  switch (value.kind) {
    case BLANK:
      return 'b';
    case NUMBER:
      return `n${value.value}`;
    case TEXT:
      return `s${value.value}`;
    case BOOLEAN:
      return value.value ? 't' : 'f';
    case ERROR:
      return `e${value.code}`;
    default:
      return `a${value.height}x${value.width}${value.rows.map((row) => row.map(keyOf).join('\u0002')).join('\u0002')}`;
  }
}

function argumentOf(value: EngineValue): CallArgument {
  if (value === LEFT_OUT_VALUE) return 'left out';
  if (value.kind !== ARRAY) return { range: false, rows: [[cellValueOf(value)]] };
  return { range: true, rows: value.rows.map((row) => row.map(cellValueOf)) };
}

function cellValueOf(value: EngineValue): CellValue {
  if (value.kind === NUMBER || value.kind === TEXT || value.kind === BOOLEAN) return value.value;
  return value.kind === ERROR ? { code: value.code } : null;
}

function engineValue(value: number | string | boolean | CellError): EngineValue {
  if (typeof value === 'number') return { kind: NUMBER, value };
  if (typeof value === 'string') return { kind: TEXT, value };
  if (typeof value === 'boolean') return { kind: BOOLEAN, value };
  return { kind: ERROR, code: value.code };
}

type Storable = number | string | boolean | { error: '#VALUE!' } | null;

function storable(value: CellValue): Storable {
  if (!isCellError(value)) return value;
  // The writer's type lists the codes of the format.
  return { error: (STORABLE_ERRORS.has(value.code) ? value.code : '#VALUE!') as '#VALUE!' };
}

function sameSpills(
  a: ReadonlyMap<number, readonly Spill[]>,
  b: ReadonlyMap<number, readonly Spill[]>,
): boolean {
  const text = (spills: ReadonlyMap<number, readonly Spill[]>) =>
    JSON.stringify(
      [...spills].map(([sheet, list]) => [
        sheet,
        list.map((s) => [s.row, s.column, [...s.values].map(([r, row]) => [r, [...row]])]),
      ]),
    );
  return text(a) === text(b);
}

/** The nodes that lie on a cycle: Tarjan's strongly connected components, without recursion. */
function onCycles(nodes: readonly GridCell[], next: (node: GridCell) => readonly GridCell[]): GridCell[] {
  const index = new Map<GridCell, number>();
  const low = new Map<GridCell, number>();
  const stack: GridCell[] = [];
  const onStack = new Set<GridCell>();
  const found: GridCell[] = [];
  for (const root of nodes) {
    if (index.has(root)) continue;
    const work: { node: GridCell; to: readonly GridCell[]; at: number }[] = [];
    const open = (node: GridCell) => {
      index.set(node, index.size);
      low.set(node, index.get(node)!);
      stack.push(node);
      onStack.add(node);
      work.push({ node, to: next(node), at: 0 });
    };
    open(root);
    while (work.length > 0) {
      const step = work[work.length - 1]!;
      if (step.at < step.to.length) {
        const to = step.to[step.at++]!;
        if (!index.has(to)) open(to);
        else if (onStack.has(to)) low.set(step.node, Math.min(low.get(step.node)!, index.get(to)!));
        continue;
      }
      work.pop();
      const parent = work[work.length - 1];
      if (parent) low.set(parent.node, Math.min(low.get(parent.node)!, low.get(step.node)!));
      if (low.get(step.node) !== index.get(step.node)) continue;
      const component: GridCell[] = [];
      for (;;) {
        const node = stack.pop()!;
        onStack.delete(node);
        component.push(node);
        if (node === step.node) break;
      }
      if (component.length > 1 || step.to.includes(step.node)) found.push(...component);
    }
  }
  return found;
}
