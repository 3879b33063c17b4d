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
    if (this.circular) return this.circular;
    const bySheet = new Map<string, FormulaCell[]>();
    for (const cell of this.contents.formulaCells()) {
      const sheet = this.contents.sheetOf(cell).toLowerCase();
      const list = bySheet.get(sheet);
      if (list) list.push(cell);
      else bySheet.set(sheet, [cell]);
    }
    const grids = new Map(this.contents.sheets.map((s) => [s.name.toLowerCase(), s.grid]));
    const next = (cell: FormulaCell): FormulaCell[] =>
      this.readsOf(cell).blocks.flatMap(({ sheet, block }) => {
        const cells = bySheet.get(sheet) ?? [];
        if (block.rows * block.columns > cells.length) {
          return cells.filter((c) =>
            overlap(block, { row: c.row - 1, column: c.column - 1, rows: 1, columns: 1 }),
          );
        }
        const within: FormulaCell[] = [];
        for (let r = 0; r < block.rows; r++) {
          for (let c = 0; c < block.columns; c++) {
            const found = grids.get(sheet)?.at(block.row + r + 1, block.column + c + 1);
            if (found && hasFormula(found)) within.push(found);
          }
        }
        return within;
      });
    return (this.circular = onCycles([...this.contents.formulaCells()], next));
  }
}
