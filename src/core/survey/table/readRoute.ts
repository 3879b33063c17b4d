import type { Cell } from '../../measures/readQuantity';
import { groupSurveys, type Survey } from './groupSurveys';
import { readHeaders, type RouteColumns } from './readHeaders';
import { readRow } from './readRow';
import type { MeasureName } from '../../stages/measures';
import { type StageName, stageNeeds } from '../../stages/kinds';
import type { StageRow } from './stageRow';
import { HEADER_ROW, type HeaderProblem } from '../checks/surveyProblem';

/** A table of routes as it was read. */
export interface RouteRead {
  /** As it came, the header row first. */
  readonly table: readonly (readonly Cell[])[];
  /** In the order of the table; empty rows left out. */
  readonly rows: readonly StageRow[];
  /** The same rows by survey and step. */
  readonly surveys: readonly Survey[];
  /** What is wrong with the header row; for the rows see `checkRoute`. */
  readonly problems: readonly HeaderProblem[];
  readonly columns: RouteColumns;
}

/**
 * Reads a route, or the routes of many surveys, from a table.
 * @param table rows of cells, the header row first
 * @returns every row as it stands, nothing guessed at; a column that a stage in the table needs and that is not
 * there is named once in `problems`
 * @example readRoute([['Step', 'Stage', 'Width', 'Height'], [1, 'door', '76 cm', 1981]]).rows[0].measures // { width: 760, height: 1981 }
 */
export function readRoute(table: readonly (readonly Cell[])[]): RouteRead {
  const { columns, problems } = readHeaders(table[0] ?? []);
  const rows: StageRow[] = [];
  for (let i = 1; i < table.length; i++) {
    const row = readRow(columns, table[i] ?? [], i - 1);
    if (row) rows.push(row);
  }
  const all = [...problems, ...missingMeasures(rows, columns)];
  if (rows.length === 0) all.push({ kind: 'no rows', severity: 'error', rowIndex: HEADER_ROW });
  return { table, rows, surveys: groupSurveys(rows), problems: all, columns };
}

/** The columns that some stage of the table needs and that are not there. */
function missingMeasures(rows: readonly StageRow[], columns: RouteColumns): HeaderProblem[] {
  const stages = new Set<StageName>();
  for (const { stage } of rows) if (stage) stages.add(stage);
  const missing = new Set<MeasureName>();
  for (const stage of stages) {
    const there = new Set(columns.measuresAt(stage).map((m) => m.measure));
    for (const need of stageNeeds(stage).needs) if (!there.has(need)) missing.add(need);
  }
  return [...missing].map(columns.missing);
}
