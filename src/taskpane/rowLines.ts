import type { Cell } from '../core/measures/readQuantity';
import type { SheetRow } from './findRow';
import type { Verdict } from '../core/route/verdict';
import { judgeChosen } from './judgeChosen';
import type { Chosen, PaneOptions } from './paneModel';
import { readSelectedRow, stepText } from './readSelectedRow';

/** One of several selected rows, in a line. */
export interface RowLine {
  /** Of the sheet, counted from 1. */
  readonly row: number;
  /** `Step 3, corner` */
  readonly what: string;
  readonly verdict: Verdict | undefined;
  readonly problems: readonly string[];
}

/** A line for each selected row that is not empty. */
export function rowLines(
  headers: readonly Cell[],
  rows: readonly SheetRow[],
  chosen: Chosen | undefined,
  { allowance, tape }: PaneOptions,
): RowLine[] {
  return rows.flatMap(({ row: at, cells }) => {
    const selected = readSelectedRow(headers, cells);
    if (!selected) return [];
    const { row, problems } = selected;
    const stage = row.stage ?? (row.stageText.trim() || 'no stage');
    const verdict =
      row.stage && chosen ? judgeChosen(row, chosen.pieces, allowance, tape).judged.verdict : undefined;
    return [{ row: at + 1, what: `${stepText(row)}, ${stage}`, verdict, problems }];
  });
}
