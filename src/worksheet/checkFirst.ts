import type { BuildVerdict } from '../core/route/buildVerdict';
import { CHECK_ASKS, LOOK_FIRST } from '../core/route/verdictClass';
import { problemsOfRoute } from '../core/survey/checks/checkRoute';
import { stepsCalled } from '../core/survey/table/stageRow';
import type { RouteRead } from '../core/survey/table/readRoute';

/**
 * A verdict holds for the measures as typed, so where the check of the route asks to look at a row, the reason ends
 * with its step: a step left out, a rise and a going exchanged, a route that ends before the room. Where a measure is
 * missing the reason says that already.
 * @param read one route or many
 * @returns the verdict on a survey with `; the check asks to look at step 3 first` after its reason where it does
 */
export function checkFirst(read: RouteRead): (survey: string, verdict: BuildVerdict) => BuildVerdict {
  const marked = new Set<number>();
  for (const { severity, rowIndex } of problemsOfRoute(read))
    if (severity === 'warning') marked.add(rowIndex);
  const clauses = new Map<string, string>();
  for (const { name, rows } of read.surveys) {
    const steps = rows.flatMap((row, i) => (marked.has(row.rowIndex) ? [[row, i] as const] : []));
    if (steps.length > 0) clauses.set(keyOf(name), `; ${CHECK_ASKS} to look at ${stepsCalled(steps)} first`);
  }
  return (survey, verdict) => {
    const clause = clauses.get(keyOf(survey));
    if (clause === undefined || verdict.verdict === 'not measured') return verdict;
    const reason = verdict.reason + clause;
    if (verdict.verdict !== 'goes') return { ...verdict, reason };
    return { ...verdict, reason: `${LOOK_FIRST}: ${reason}` };
  };
}

const keyOf = (name: string): string => name.trim().toLowerCase();
