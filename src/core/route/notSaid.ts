import type { PreparedRoute } from './preparedRoute';

/**
 * What a survey leaves to be understood in more than one way, in clauses: which way a stair is walked, where a side door
 * leads, which of two lengths holds (`the Way of step 3 is not said`).
 */
export function notSaid({ steps, readings }: PreparedRoute): string[] {
  return steps.flatMap(({ row, called: step }, i) => {
    const read = readings.flatMap(({ reading }) => reading.slice(i, i + 1));
    const clauses: string[] = [];
    if (row.way === undefined && new Set(read.map(({ way }) => way)).size > 1)
      clauses.push(`the Way of ${step} is not said`);
    if (new Set(read.map(({ into }) => into)).size > 1)
      clauses.push(`whether ${step} leads into its passage or out of it is not said`);
    if (new Set(read.map(({ straightAfter }) => straightAfter?.known)).size > 1)
      clauses.push(`the straight after ${step} and the space at the stair do not agree`);
    return clauses;
  });
}
