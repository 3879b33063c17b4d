import type { StageRow } from './stageRow';

/** The rows of one survey in the order of their steps. */
export interface Survey {
  /** As first written; '' for a single route without a name. */
  readonly name: string;
  readonly rows: readonly StageRow[];
}

/**
 * Puts the rows of each survey together, wherever they stand, surveys in the order in which they first appear.
 * Names that differ only in case are one survey. Steps are put in order, rows with the same step as they stand;
 * where a step has no number the rows stay as they are.
 */
export function groupSurveys(rows: readonly StageRow[]): Survey[] {
  const groups = new Map<string, { name: string; rows: StageRow[] }>();
  for (const row of rows) {
    const key = row.survey.toLowerCase();
    const group = groups.get(key);
    if (group) group.rows.push(row);
    else groups.set(key, { name: row.survey, rows: [row] });
  }
  return [...groups.values()].map(({ name, rows: of }) => ({
    name,
    rows: inStepOrder(of),
  }));
}

/**
 * Rows in the order of their steps, those with the same step as they stand in the table; where a step has no
 * number, as they are given.
 */
export const inStepOrder = (rows: readonly StageRow[]): readonly StageRow[] =>
  rows.some((row) => Number.isNaN(row.step))
    ? rows
    : [...rows].sort((a, b) => a.step - b.step || a.rowIndex - b.rowIndex);
