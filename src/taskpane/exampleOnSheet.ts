import { readLength } from '../core/measures/readLength';
import type { Cell } from '../core/measures/readQuantity';
import { WORKED_EXAMPLES, type WorkedExample } from '../worksheet/workedExamples';
import type { CellArea, SheetAccess } from './sheetAccess';

/** A worked example as it stands on a sheet. */
export interface ExampleOnSheet {
  readonly example: WorkedExample;
  /** What is given there now [mm]; undefined where a cell holds no length. */
  readonly given: readonly (number | undefined)[];
  /** Its working is asked for, so that the answer is no secret. */
  readonly isAsked: boolean;
}

/** An example takes up no more rows than this, and its givens stand in these columns or beside them. */
const ROWS = 40;
const COLUMNS = 3;

/** The worked example in which a selected cell stands; undefined where there is none. */
export async function exampleOnSheet(
  access: SheetAccess,
  selected: CellArea,
): Promise<ExampleOnSheet | undefined> {
  const used = await access.used(selected.sheet);
  if (!used) return undefined;
  const top = Math.max(0, selected.row - ROWS);
  const bottom = Math.min(used.row + used.rows, selected.row + ROWS);
  if (bottom <= top) return undefined;
  const cells = await access.read({
    sheet: selected.sheet,
    row: top,
    column: 0,
    rows: bottom - top,
    columns: COLUMNS + 1,
  });
  return exampleAmong(cells, selected.row - top);
}

/** The example whose givens begin last at or above a row, or on the two rows below it: its title and its heading. */
function exampleAmong(cells: readonly (readonly Cell[])[], row: number): ExampleOnSheet | undefined {
  let found: ExampleOnSheet | undefined;
  // The last lines of what one gives may be all that another gives.
  let until = 0;
  for (let at = 0; at <= Math.min(row + 3, cells.length - 1); at++) {
    if (at < until) continue;
    for (let column = 0; column < COLUMNS; column++) {
      const example = WORKED_EXAMPLES.find(({ given }) =>
        given.every(([label, , unit], i) => isLabel(cells[at + i]?.[column], label, unit)),
      );
      if (!example) continue;
      until = at + example.given.length;
      const given = example.given.map((_, i) => lengthIn(cells[at + i]?.[column + 1]));
      const after = cells.slice(at + example.given.length, at + example.given.length + ASKED_WITHIN);
      const asks = after.find((line) => startsWith(line[column], 'show the working'));
      found = { example, given, isAsked: startsWith(asks?.[column + 1], 'yes') };
    }
  }
  return found;
}
/** The cell in which the working is asked for stands so few rows below the givens. */
const ASKED_WITHIN = 6;

const isLabel = (cell: Cell | undefined, label: string, unit: string): boolean =>
  cell === label || cell === `${label}, ${unit}`;

const startsWith = (cell: Cell | undefined, words: string): boolean =>
  typeof cell === 'string' && cell.trim().toLowerCase().startsWith(words);

function lengthIn(cell: Cell | undefined): number | undefined {
  const read = cell === undefined ? undefined : readLength(cell);
  return read?.ok && read.value > 0 ? read.value : undefined;
}
