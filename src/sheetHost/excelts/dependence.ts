import { engineFormula } from '../engineFormula';
import type { BookContents } from './bookContents';
import type { Spill } from './calculationView';
import { onCycles } from './cycles';
import { formulaReads, overlap, type FormulaReads } from './formulaReads';
import { hasFormula, type FormulaCell, type GridCell } from './grid';

/** Without what the engine's reader does not know. */
export const plainFormula = (stored: string): string =>
  engineFormula(stored, 0, new Set(), (reference) => reference);

/** Which cells the formulas of a workbook read. */
export class Dependence {
  private readonly reads = new Map<GridCell, FormulaReads>();
  private circular: readonly FormulaCell[] | undefined;

  constructor(private readonly contents: BookContents) {}

  /** To be told of every change of a formula; `cell` is no longer what it was. */
  changed(cell?: GridCell): void {
    if (cell) this.reads.delete(cell);
    this.circular = undefined;
  }

  private readsOf(cell: FormulaCell): FormulaReads {
    let reads = this.reads.get(cell);
    if (reads) return reads;
    const sheet = this.contents.sheetOf(cell);
    const tables = this.contents.tables();
    reads = formulaReads(plainFormula(cell.formula.stored), {
      sheet,
      row: cell.row - 1,
      table: (name) =>
        name === ''
          ? tables.find(
              (t) =>
                t.sheet === sheet &&
                overlap(t.block, { row: cell.row - 1, column: cell.column - 1, rows: 1, columns: 1 }),
            )
          : tables.find((t) => t.name.toLowerCase() === name.toLowerCase()),
      name: (name) =>
        this.contents
          .names()
          .filter((n) => n.name.toLowerCase() === name)
          .map((n) => n.refersTo),
    });
    this.reads.set(cell, reads);
    return reads;
  }

  /** The first sheet or table that a formula names and that is not there. */
  nowhere(stored: string, sheet: string): string | undefined {
    let missing: string | undefined;
    const tables = this.contents.tables();
    const { blocks } = formulaReads(plainFormula(stored), {
      sheet,
      row: 0,
      table: (name) => {
        const table = tables.find((t) => t.name.toLowerCase() === name.toLowerCase());
        if (!table && name !== '') missing ??= `no table ${name}`;
        return table;
      },
      name: () => [],
    });
    const known = new Set(this.contents.sheets.map(({ name }) => name.toLowerCase()));
    const unknown = blocks.find((block) => !known.has(block.sheet));
    return unknown ? `no sheet "${unknown.sheet}"` : missing;
  }

  /** Whether some formula reads what a spill fills. */
  readsSpills(spills: ReadonlyMap<number, readonly Spill[]>): boolean {
    if (spills.size === 0) return false;
    const blocks = this.contents.sheets.flatMap((host) =>
      (spills.get(host.worksheet.id) ?? []).map((s) => ({
        sheet: host.name.toLowerCase(),
        block: { row: s.row - 1, column: s.column - 1, rows: s.rows, columns: s.columns },
      })),
    );
    for (const cell of this.contents.formulaCells()) {
      const { blocks: read, more } = this.readsOf(cell);
      if (more) return true;
      if (/ANCHORARRAY/i.test(cell.formula.stored)) return true;
      if (read.some((r) => blocks.some((b) => b.sheet === r.sheet && overlap(b.block, r.block)))) return true;
    }
    return false;
  }

  /** Formula cells that depend on themselves. */
  circularCells(): readonly FormulaCell[] {
    return (this.circular ??= onCycles([...this.contents.formulaCells()], this.readBy('as read')));
  }

  /** The formula cells of a sheet and all that they read, through other formulas too. */
  neededBy(sheet: string): readonly FormulaCell[] {
    const read = this.readBy('and spilled into');
    const needed = new Set<FormulaCell>();
    const open = [...this.contents.formulaCells()].filter((cell) => this.contents.sheetOf(cell) === sheet);
    for (let cell = open.pop(); cell; cell = open.pop()) {
      if (needed.has(cell)) continue;
      needed.add(cell);
      open.push(...read(cell));
    }
    return [...needed];
  }

  /**
   * Tells the formula cells that a formula reads.
   * @param which `and spilled into`: also those whose result may come to fill what it reads, all above and left of it
   */
  private readBy(which: 'as read' | 'and spilled into'): (cell: FormulaCell) => FormulaCell[] {
    const bySheet = new Map<string, FormulaCell[]>();
    for (const cell of this.contents.formulaCells()) {
      const sheet = this.contents.sheetOf(cell).toLowerCase();
      const list = bySheet.get(sheet);
      if (list) list.push(cell);
      else bySheet.set(sheet, [cell]);
    }
    const spilling = new Map(
      [...bySheet].map(([sheet, cells]) => [sheet, cells.filter(({ formula }) => formula.fills !== 'cell')]),
    );
    const grids = new Map(this.contents.sheets.map((s) => [s.name.toLowerCase(), s.grid]));
    return (cell) =>
      this.readsOf(cell).blocks.flatMap(({ sheet, block }) => {
        const cells = bySheet.get(sheet) ?? [];
        const before = ({ row, column }: FormulaCell): boolean =>
          row <= block.row + block.rows && column <= block.column + block.columns;
        const within: FormulaCell[] =
          which === 'and spilled into' ? (spilling.get(sheet) ?? []).filter(before) : [];
        if (block.rows * block.columns > cells.length) {
          const inside = (c: FormulaCell) =>
            overlap(block, { row: c.row - 1, column: c.column - 1, rows: 1, columns: 1 });
          return [...within, ...cells.filter(inside)];
        }
        for (let r = 0; r < block.rows; r++) {
          for (let c = 0; c < block.columns; c++) {
            const found = grids.get(sheet)?.at(block.row + r + 1, block.column + c + 1);
            if (found && hasFormula(found)) within.push(found);
          }
        }
        return within;
      });
  }
}
