import type { CellArea, SheetAccess } from './sheetAccess';

/** Formulas one below the other that call functions of this add-in. */
export interface FormulaRun {
  readonly area: CellArea;
  /** As they stand. */
  readonly formulas: readonly string[];
  /** As they are to be entered: without what Excel or another add-in has put before a function's name. */
  readonly entered: readonly string[];
}

/** Formulas entered in one go. */
const MOST_IN_A_RUN = 500;

/**
 * What may stand before a name: `_xldudf_CARRY_PITCH` as a file holds it, `[2]!_xldudf_CARRY_PITCH` or
 * `Other.xla!_xldudf_CARRY_PITCH` as other add-ins leave it (issues 2568, 3872 and 4811 of office-js).
 */
const LEFT_BEFORE = /(?:(?:'(?:[^']|'')*'|\[\d+\]|[\p{L}\p{N}_.\-[\]]+)!)?_xldudf_CARRY_([A-Z0-9]+)(?=\()/giu;

/** A text in quotation marks, a sheet's name in apostrophes, or what stands between such. */
const PARTS = /"(?:[^"]|"")*"|[^"]+/g;

/**
 * A formula without prefixes that were left before functions of this add-in.
 * @param known ids of its functions; left out: whatever stands after CARRY
 * @returns undefined where the formula calls none of them
 */
export function ownFormula(formula: string, known?: ReadonlySet<string>): string | undefined {
  if (!formula.startsWith('=')) return undefined;
  const isKnown = (name: string): boolean => known?.has(name.toUpperCase()) ?? true;
  let own = false;
  const entered = formula.replace(PARTS, (part) => {
    if (part.startsWith('"')) return part;
    const plain = part.replace(LEFT_BEFORE, (left, name: string) =>
      isKnown(name) ? `CARRY.${name.toUpperCase()}` : left,
    );
    for (const [, name = ''] of plain.matchAll(/(?<![\p{L}\p{N}_.])CARRY\.([A-Z0-9]+)\(/giu))
      if (isKnown(name)) own = true;
    return plain;
  });
  return own ? entered : undefined;
}

/** All formulas of a workbook that call functions of this add-in; of a spilled table the one that spills it. */
export async function ownFormulas(access: SheetAccess, known?: ReadonlySet<string>): Promise<FormulaRun[]> {
  const runs: FormulaRun[] = [];
  for (const sheet of await access.sheets()) {
    const used = await access.used(sheet);
    if (!used) continue;
    const contents = await access.contents(used);
    for (let column = 0; column < used.columns; column++) {
      let run: { area: CellArea; formulas: string[]; entered: string[] } | undefined;
      for (let row = 0; row < used.rows; row++) {
        const formula = contents[row]?.[column] ?? '';
        const entered = ownFormula(formula, known);
        if (entered === undefined) {
          run = undefined;
          continue;
        }
        if (!run || run.formulas.length >= MOST_IN_A_RUN) {
          const area = { sheet, row: used.row + row, column: used.column + column, rows: 0, columns: 1 };
          runs.push((run = { area, formulas: [], entered: [] }));
        }
        run.formulas.push(formula);
        run.entered.push(entered);
        run.area = { ...run.area, rows: run.formulas.length };
      }
    }
  }
  return runs;
}

/** How it went to enter formulas again. */
export interface EnteredAgain {
  readonly entered: number;
  /** Left as they are, by the reason. */
  readonly changed: number;
  /** Sheets whose protection kept formulas from being entered. */
  readonly protectedSheets: readonly string[];
  /** What the host refused, with its reason. */
  readonly refused: readonly string[];
}

/** Enters formulas again, each where it stands and only while it stands there. */
export async function enterAgain(access: SheetAccess, runs: readonly FormulaRun[]): Promise<EnteredAgain> {
  let [entered, changed] = [0, 0];
  const protectedSheets = new Set<string>();
  const refused: string[] = [];
  for (const { area, formulas, entered: cells } of runs) {
    const holding = formulas.map((formula) => [formula]);
    try {
      const done = await access.write(
        area,
        cells.map((formula) => [{ formula }]),
        holding,
      );
      if (done === 'written') entered += formulas.length;
      else if (done === 'changed') changed += formulas.length;
      else protectedSheets.add(area.sheet);
    } catch (error) {
      refused.push(`${area.sheet}: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
  return { entered, changed, protectedSheets: [...protectedSheets], refused };
}
