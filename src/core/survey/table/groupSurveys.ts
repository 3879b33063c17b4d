import type { RouteFault, StageRow } from './stageRow';
import { firstOf } from '../../lists/ends';

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
    rows: withFault(inStepOrder(of), tableFault(name, of, rows)),
  }));
}

/** Tells a fault at the first row of a survey. */
const withFault = (rows: readonly StageRow[], fault: RouteFault | undefined): readonly StageRow[] =>
  fault === undefined ? rows : rows.map((row, i) => (i === 0 ? { ...row, fault } : row));

/**
 * What keeps a survey from being read as one route: its rows stand apart from each other in the table and their steps
 * do not tell the order, or they give two tapes.
 */
function tableFault(
  survey: string,
  of: readonly StageRow[],
  all: readonly StageRow[],
): RouteFault | undefined {
  const tapes = new Set(of.flatMap(({ tape }) => (tape === undefined ? [] : [tape])));
  const [one, other] = tapes;
  if (one !== undefined && other !== undefined) return { kind: 'two tapes', one, other };
  const steps = new Set(of.map(({ step }) => step));
  const ordered = !steps.has(NaN) && steps.size === of.length;
  if (ordered) return undefined;
  const from = all.indexOf(firstOf(of));
  const together = of.every((row, i) => all[from + i] === row);
  return together ? undefined : { kind: 'rows apart', survey };
}

/**
 * Rows in the order of their steps, those with the same step as they stand in the table; where a step has no
 * number, as they are given.
 */
export const inStepOrder = (rows: readonly StageRow[]): readonly StageRow[] =>
  rows.some((row) => Number.isNaN(row.step))
    ? rows
    : [...rows].sort((a, b) => a.step - b.step || a.rowIndex - b.rowIndex);
