import type { Cell } from '../../measures/readQuantity';
import { errorsFirst } from './errorsFirst';
import { readHeaders } from '../table/readHeaders';
import { readRow } from '../table/readRow';
import { rowProblems } from './rowProblems';
import type { SurveyProblem } from './surveyProblem';

/**
 * Checks one row of a route by itself. A table without a step column is asked for no step.
 * @returns the problems of its header and of the row, errors first; none for an empty row
 * @example checkRow(['Stage', 'Width', 'Height'], ['door', 762, 1981])[0].kind // 'door leaf'
 */
export function checkRow(headers: readonly Cell[], row: readonly Cell[]): SurveyProblem[] {
  const { columns, problems } = readHeaders(headers);
  const read = readRow(columns, row, 0);
  if (!read) return [];
  const ofHeader = problems.filter((p) => p.kind !== 'column missing' || p.column !== 'Step');
  return errorsFirst([
    ...ofHeader,
    ...rowProblems(read, columns, row, columns.step.length > 0 ? 'asked' : 'not asked'),
  ]);
}
