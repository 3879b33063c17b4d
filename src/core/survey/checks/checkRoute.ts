import type { Cell } from '../../measures/readQuantity';
import { betweenRows } from './betweenRows';
import { errorsFirst } from './errorsFirst';
import { readRoute, type RouteRead } from '../table/readRoute';
import { rowProblems } from './rowProblems';
import type { SurveyProblem } from './surveyProblem';

/**
 * Checks a route, or the routes of many surveys: each row by itself, then each survey as a whole.
 * @param table rows of cells, the header row first
 * @returns the problems by row, those of the header row first (rowIndex -1), errors before warnings
 */
export const checkRoute = (table: readonly (readonly Cell[])[]): SurveyProblem[] =>
  problemsOfRoute(readRoute(table));

/** The same of a table that has been read. */
export function problemsOfRoute({ table, rows, surveys, problems, columns }: RouteRead): SurveyProblem[] {
  const steps = columns.step.length > 0 ? 'asked' : 'not asked';
  const all: SurveyProblem[] = [...problems];
  for (const row of rows) {
    // One by one: a table has more rows than a call takes arguments.
    for (const problem of rowProblems(row, columns, table[row.rowIndex + 1] ?? [], steps)) all.push(problem);
  }
  for (const problem of betweenRows(surveys)) all.push(problem);
  return errorsFirst(all);
}
