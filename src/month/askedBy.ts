import type { Build } from '../core/route/buildVerdict';
import type { RouteRead } from '../core/survey/table/readRoute';
import type { StageRow } from '../core/survey/table/stageRow';
import type { MonthSurvey } from './month';

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The rows of a survey of the month and the build that it asks for; undefined what the tables do not have. */
export function askedBy(
  { survey, build }: MonthSurvey,
  routes: RouteRead,
  builds: readonly Build[],
): { readonly rows: readonly StageRow[] | undefined; readonly build: Build | undefined } {
  return {
    rows: routes.surveys.find(({ name }) => same(name, survey))?.rows,
    build: builds.find(({ name }) => same(name, build)),
  };
}
