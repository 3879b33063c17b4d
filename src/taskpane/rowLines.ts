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
  /** `Step 3, corner`; of another survey than the first row's with its name and what is carried. */
  readonly what: string;
  readonly verdict: Verdict | undefined;
  readonly problems: readonly string[];
}

/**
 * A line for each selected row that is not empty.
 * @param form what is chosen for the survey of the first row, and the limits
 * @param chosenFor what is carried in another survey; undefined: the same
 */
export function rowLines(
  headers: readonly Cell[],
  rows: readonly SheetRow[],
  form: { readonly chosen: Chosen | undefined; readonly options: PaneOptions },
  chosenFor: (survey: string) => Chosen | undefined,
): RowLine[] {
  const { allowance, tape } = form.options;
  let first: string | undefined;
  return rows.flatMap(({ row: at, cells }) => {
    const selected = readSelectedRow(headers, cells);
    if (!selected) return [];
    const { row, problems } = selected;
    const survey = row.survey.trim();
    first ??= survey;
    const own = survey === first ? undefined : chosenFor(survey);
    const chosen = form.chosen && (own ?? form.chosen);
    const stage = row.stage ?? (row.stageText.trim() || 'no stage');
    const verdict =
      row.stage && chosen ? judgeChosen(row, chosen.pieces, allowance, tape).judged.verdict : undefined;
    const other =
      survey === first ? '' : `survey ${survey || 'without a name'}${chosen ? ` with ${chosen.name}` : ''}, `;
    return [{ row: at + 1, what: `${other}${stepText(row)}, ${stage}`, verdict, problems }];
  });
}
