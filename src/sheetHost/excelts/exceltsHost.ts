import type { Cell, Workbook } from '@cj-tech-master/excelts';
import { calculateFormulas } from '@cj-tech-master/excelts/formula';
import { blockAddress, readAddress, type Block } from '../address';
import type { Bundle } from '../bundle';
import type { SheetLook } from '../cellLook';
import { engineFormula, NO_SPILL } from '../engineFormula';
import { bundleCall, callArguments, formulaParts, shownFormula, storedFormula } from '../formulaText';
import { isCellError, WEB_MANNERS, type CellValue } from '../hostValues';
import { syntaxWords } from '../syntaxWords';
import type { HostOptions, Recalculation, Refusal, SheetHost } from '../sheetHost';
import type { SheetDescription, WriterValue } from '../workbookWriter';
import { BookContents, type HostSheet } from './bookContents';
import { BundleCalls } from './bundleCalls';
import { ConditionHolds } from './conditionHolds';
import { CalculationView, type Spill, type ViewedSheet } from './calculationView';
import { Dependence, plainFormula } from './dependence';
import { overlap, syntaxFault } from './formulaReads';
import type { FormulaCell, GridCell, GridFormula } from './grid';
import { readParts } from './packageParts';
import { withStoppingRules, type StoppingRule } from './stopIfTrue';
import { sheetLook } from './sheetLook';
import { unknownName } from './unknownName';
import { storable, storeResult } from './storedResults';
import { writeSheet } from './writeWorkbook';

/** More passes than this and the spills chase one another. */
const MOST_PASSES = 12;

/** A workbook of excelts behind our own interface. All that knows excelts is in this folder. */
export class ExceltsHost implements SheetHost {
  private readonly contents: BookContents;
  private readonly dependence: Dependence;
  private readonly calls: BundleCalls;
  private spills = new Map<number, Spill[]>();
  /** Formulas as the engine computes them, of those that stay the same whatever spills. */
  private readonly engineTexts = new Map<GridCell, string>();
  private readonly conditions = new ConditionHolds();
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
    this.contents = new BookContents(workbook);
    this.spills = this.contents.storedSpills;
    this.dependence = new Dependence(this.contents);
    this.calls = new BundleCalls(options.manners ?? WEB_MANNERS, (number) =>
      this.contents.formulaAddress(number),
    );
  }

  sheets(): readonly string[] {
    return this.contents.sheets.map((s) => s.name);
  }

  tables() {
    return this.contents.tables().map(({ name, sheet, block }) => ({ name, sheet, block }));
  }

  names() {
    return this.contents.names();
  }

  used(sheet: string): Block | undefined {
    const host = this.contents.sheet(sheet);
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
    const host = this.contents.sheet(sheet);
    return Array.from({ length: block.rows }, (_, r) =>
      Array.from({ length: block.columns }, (__, c) =>
        this.cellValue(host, block.row + r + 1, block.column + c + 1),
      ),
    );
  }

  value(sheet: string, row: number, column: number): CellValue {
    return this.cellValue(this.contents.sheet(sheet), row + 1, column + 1);
  }

  formula(sheet: string, row: number, column: number): string | undefined {
    const formula = this.contents.sheet(sheet).grid.at(row + 1, column + 1)?.formula;
    return formula && `=${shownFormula(formula.stored)}`;
  }

  format(sheet: string, row: number, column: number): string {
    const format = this.contents.sheet(sheet).worksheet.findCell(row + 1, column + 1)?.numFmt as unknown;
    if (typeof format === 'string') return format;
    const code = (format as { formatCode?: unknown } | null | undefined)?.formatCode;
    return typeof code === 'string' ? code : 'General';
  }

  look(sheet: string): SheetLook {
    const host = this.contents.sheet(sheet);
    return sheetLook(host.worksheet, {
      value: (row, column) => this.cellValue(host, row + 1, column + 1),
      range: (reference) => {
        const [address, name] = /^(?:(.*)!)?([^!]+)$/.exec(reference)?.slice(1).reverse() ?? [];
        const block = readAddress(address?.replace(/\$/g, '') ?? '');
        const of = name === undefined ? sheet : unquoted(name);
        const known = this.sheets().some((one) => one.toLowerCase() === of.toLowerCase());
        return block && known ? this.read(of, block).flat() : undefined;
      },
      conditions: this.conditions,
    });
  }

  spill(sheet: string, row: number, column: number): Block | undefined {
    const spill = this.spillAt(this.contents.sheet(sheet), row + 1, column + 1);
    return (
      spill && { row: spill.row - 1, column: spill.column - 1, rows: spill.rows, columns: spill.columns }
    );
  }

  link(sheet: string, row: number, column: number) {
    const number = this.contents.sheet(sheet).grid.at(row + 1, column + 1)?.number;
    const target = number === undefined ? undefined : this.calls.link(number);
    const [, name = '', address = ''] = /^#(?:(.+)!)?([^!]+)$/.exec(target ?? '') ?? [];
    const block = readAddress(address);
    const wanted = (name === '' ? sheet : unquoted(name)).toLowerCase();
    const to = this.sheets().find((one) => one.toLowerCase() === wanted);
    return block && to !== undefined ? { sheet: to, block } : undefined;
  }

  write(sheet: string, row: number, column: number, value: WriterValue): { readonly ok: true } | Refusal {
    const host = this.contents.sheet(sheet);
    const cell = host.worksheet.getCell(row + 1, column + 1);
    const old = host.grid.at(row + 1, column + 1);
    if (old?.ofArray || typeof old?.formula?.fills === 'object') {
      return refuse('the cell is part of an array formula, which can only be changed as a whole');
    }
    let formula: GridFormula | undefined;
    if (typeof value === 'object' && value !== null && !(value instanceof Date)) {
      const stored = storedFormula(value.formula, this.tableAt(host, row, column));
      const fault = this.formulaFault(stored, host.name);
      if (fault !== undefined) return refuse(fault);
      formula = { stored, fills: 'typed' };
      cell.value = { formula: stored };
    } else {
      cell.value = value;
    }
    this.contents.forget(host, row + 1, column + 1);
    if (old?.formula) this.engineTexts.delete(old);
    if (formula) this.contents.put(host, row + 1, column + 1, null, formula);
    else if (value !== null) {
      this.contents.put(host, row + 1, column + 1, this.contents.literal(value), undefined);
    }
    if (formula || old?.formula) this.dependence.changed(old);
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
    this.contents.takeIn(worksheet);
    this.dependence.changed();
    return { ok: true };
  }

  /** How many cells hold a formula. */
  formulaCount(): number {
    return [...this.contents.formulaCells()].length;
  }

  register(bundle: Bundle): void {
    this.calls.register(bundle);
    this.engineTexts.clear();
  }

  recalculate(): Recalculation {
    this.noSpill.clear();
    this.spills = new Map();
    const circular = this.dependence.circularCells();
    this.circularNumbers = new Set(circular.map((c) => c.number));
    const formulas = [...this.contents.formulaCells()];
    for (const cell of formulas) cell.value = null;

    const view = this.view();
    let passes = 0;
    for (;;) {
      passes++;
      view.startPass();
      this.calls.startPass();
      calculateFormulas(view.workbook);
      const barred = this.barTableSpills(view);
      const settled = !barred && passes > 1 && sameSpills(view.spills, this.spills);
      const first = passes === 1 && !barred && !this.dependence.readsSpills(view.spills);
      this.spills = view.spills;
      if (settled || first || passes >= MOST_PASSES) break;
    }
    this.calls.forgetUnused();

    const unreadable = formulas.filter((cell) => !view.computed.has(cell));
    for (const cell of unreadable) cell.value = { code: '#NAME?' };
    return {
      passes,
      circular: circular.map((c) => this.contents.addressOf(c)),
      unreadable: unreadable.map((c) => this.contents.addressOf(c)),
    };
  }

  stored(): ReadonlyMap<string, CellValue[][]> {
    const stored = new Map<string, CellValue[][]>();
    for (const cell of this.contents.formulaCells()) {
      const address = this.contents.formulaAddress(cell.number);
      if (address === undefined || cell.value === null || isCellError(cell.value)) continue;
      if (!isOneCall(cell.formula.stored)) continue;
      const host = this.contents.sheet(this.contents.sheetOf(cell));
      const { rows = 1, columns = 1 } = this.spillAt(host, cell.row, cell.column) ?? {};
      const block = { row: cell.row - 1, column: cell.column - 1, rows, columns };
      // Functions leave a cell blank with an empty text, which a file does not tell from an empty cell.
      stored.set(
        address,
        this.read(host.name, block).map((row) => row.map((value) => value ?? '')),
      );
    }
    return stored;
  }

  neededBy(sheet: string): ReadonlySet<string> {
    const needed = this.dependence.neededBy(this.contents.sheet(sheet).name);
    return new Set(needed.flatMap((cell) => this.contents.formulaAddress(cell.number) ?? []));
  }

  async save(): Promise<{ readonly bytes: Uint8Array; readonly lost: readonly string[] }> {
    const filled: Cell[] = [];
    for (const host of this.contents.sheets) {
      for (const cell of host.grid.cells()) storeResult(host.worksheet, cell, this.spillsOf(host));
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
    if (!master) return value;
    const told = this.calls.withMessage(value, master.number, row - master.row, column - master.column);
    if (told || value.code !== '#NAME?' || !master.formula) return told ?? value;
    const message = unknownName(master.formula.stored, {
      functions: [...this.calls.functions.keys()],
      defined: [...this.tables(), ...this.names()].map(({ name }) => name),
    });
    return message === undefined ? value : { ...value, message };
  }

  // Computing

  private view(): CalculationView {
    const sheets: ViewedSheet[] = this.contents.sheets.map(({ worksheet, name, grid }) => ({
      id: worksheet.id,
      name,
      grid,
      tables: worksheet.getTables(),
      merges: (worksheet as unknown as { mergedRegions?: ViewedSheet['merges'] }).mergedRegions ?? [],
      hidden: (row) => worksheet.findRow(row)?.hidden === true,
    }));
    return new CalculationView({
      sheets,
      names: this.workbook.definedNames,
      date1904: this.workbook.properties.date1904 === true,
      functions: this.calls.engineFunctions(),
      engineFormula: (cell, sheet) => this.engineFormula(cell, sheet),
    });
  }

  private engineFormula(cell: FormulaCell, sheet: string): string {
    const { number } = cell;
    const { stored } = cell.formula;
    if (this.noSpill.has(number)) return `${NO_SPILL}()`;
    // Excel shows 0 there, with a warning ("Remove or allow a circular reference").
    if (this.circularNumbers.has(number)) return '0';
    const kept = this.engineTexts.get(cell);
    if (kept !== undefined) return kept;
    let lasting = true;
    const text = engineFormula(stored, number, this.calls.functions, (reference) => {
      lasting = false;
      const [address, prefix] = /^(?:(.*)!)?([^!]+)$/.exec(reference)?.slice(1).reverse() ?? [];
      const at = address === undefined ? undefined : readAddress(address);
      const name = prefix === undefined ? sheet : unquoted(prefix);
      const host = this.contents.sheets.find((s) => s.name.toLowerCase() === name.toLowerCase());
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

  /** A spill that begins in a table or would run into one shows #SPILL! ("#SPILL! error - table formula"). */
  private barTableSpills(view: CalculationView): boolean {
    let barred = false;
    const tables = this.tables();
    for (const host of this.contents.sheets) {
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

  private formulaFault(stored: string, sheet: string): string | undefined {
    const fault = syntaxFault(plainFormula(stored));
    if (fault !== undefined) return `the formula cannot be read: ${syntaxWords(shownFormula(stored))}`;
    const nowhere = this.dependence.nowhere(stored, sheet);
    if (nowhere !== undefined) return `there is ${nowhere} in this workbook`;
    const parts = formulaParts(stored);
    for (const [i, { kind, text }] of parts.entries()) {
      if (kind !== 'call') continue;
      const described = this.calls.functions.get(bundleCall(text) ?? '');
      if (!described) continue;
      const { starts, end } = callArguments(parts, i);
      const none = starts.length === 1 && parts.slice(starts[0], end).every((p) => p.kind === 'space');
      const given = none ? 0 : starts.length;
      if (given < described.least) return `too few arguments for ${described.name}`;
      if (given > described.most) return `too many arguments for ${described.name}`;
    }
    return undefined;
  }
}

/** Parts that are made anew on saving, under other names or not at all, without any loss. */
const REBUILT_PART =
  /^(?:xl\/calcChain\.xml|xl\/sharedStrings\.xml|xl\/metadata\.xml|docProps\/|_rels\/|xl\/_rels\/|.*\/_rels\/|xl\/theme\/|xl\/worksheets\/sheet\d+\.xml|xl\/tables\/table\d+\.xml|\[Content_Types\]\.xml)/;

/** The name of a sheet without the quotes that a reference may need. */
const unquoted = (name: string): string => name.replace(/^'|'$/g, '').replace(/''/g, "'");

/** Whether a formula is a call of the bundle's and nothing else, so that what it shows is what the call gave. */
function isOneCall(stored: string): boolean {
  const parts = formulaParts(stored).filter(({ kind }) => kind !== 'space');
  const [first] = parts;
  if (first?.kind !== 'call' || bundleCall(first.text) === undefined) return false;
  return callArguments(parts, 0).end === parts.length - 1;
}

const refuse = (reason: string): Refusal => ({ ok: false, reason });

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
