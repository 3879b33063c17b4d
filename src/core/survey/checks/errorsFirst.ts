import type { SurveyProblem } from './surveyProblem';

const RANK = { error: 0, warning: 1, question: 2 } as const;

/** By row, the header first; within a row errors before warnings before questions, otherwise as they come. */
export function errorsFirst<P extends SurveyProblem>(problems: readonly P[]): P[] {
  const rank = (problem: P): number => RANK[problem.severity];
  return [...problems].sort((a, b) => a.rowIndex - b.rowIndex || rank(a) - rank(b));
}
