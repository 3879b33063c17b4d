import type { Cell } from '../core/measures/readQuantity';
import { saysNothing } from '../core/survey/table/cells';
import { checkRow } from '../core/survey/checks/checkRow';
import { problemText } from '../core/survey/words/problemWords';
import { readHeaders } from '../core/survey/table/readHeaders';
import { readRow } from '../core/survey/table/readRow';
import type { MeasureName } from '../core/stages/measures';
import type { StageRow } from '../core/survey/table/stageRow';
import { firstOf } from '../core/lists/ends';

/** One row of a route as read and checked, with the cell that each measure stands in. */
export interface SelectedRow {
  readonly row: StageRow;
  /** What is wrong with the row, errors first, in the words of CHECKROW. */
  readonly problems: readonly string[];
  /** The cell of each measure that has a column; of several columns the first that says something. */
  readonly cells: ReadonlyMap<MeasureName, Cell>;
}

/** Reads and checks one row; undefined when it is empty. */
export function readSelectedRow(headers: readonly Cell[], cells: readonly Cell[]): SelectedRow | undefined {
  const { columns } = readHeaders(headers);
  const row = readRow(columns, cells, 0);
  if (!row) return undefined;
  const places = columns.measuresAt(row.stage).map(({ measure, columns: at }) => {
    const filled = at.find((i) => !saysNothing(cells[i])) ?? firstOf(at);
    return [measure, cells[filled]] as const;
  });
  return { row, problems: checkRow(headers, cells).map(problemText), cells: new Map(places) };
}

/** `Step 3`, or by its label, or what is missing of it. */
export const stepText = ({ step, label }: StageRow): string =>
  label !== undefined ? `Step ${label}` : Number.isNaN(step) ? 'No step number' : `Step ${step}`;
