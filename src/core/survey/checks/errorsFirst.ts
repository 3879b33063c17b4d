import type { SurveyProblem } from './surveyProblem';

/** By row, the header first; within a row errors before warnings, otherwise as they come. */
export function errorsFirst<P extends SurveyProblem>(problems: readonly P[]): P[] {
  const rank = (problem: P): number => (problem.severity === 'error' ? 0 : 1);
  return [...problems].sort((a, b) => a.rowIndex - b.rowIndex || rank(a) - rank(b));
}
