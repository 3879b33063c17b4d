import { ROUTE_HEADINGS } from '../core/survey/table/readHeaders';
import type { RouteStep, Survey, Written } from './survey';

/** The columns of a route, each with what the sample's steps call it. */
export const ROUTE_COLUMNS: readonly (readonly [header: string, key: keyof RouteStep | 'survey'])[] =
  ROUTE_HEADINGS.map((heading) => [heading, keyOf(heading)]);

/** `Width out` is `widthOut`. */
function keyOf(heading: string): keyof RouteStep | 'survey' {
  const words = heading.toLowerCase().replace(/ ([a-z])/g, (_, letter: string) => letter.toUpperCase());
  return words as keyof RouteStep;
}

/** The rows of surveys as a sheet holds them, without the header; null is an empty cell. */
export function routeRows(surveys: readonly Survey[]): (Written | null)[][] {
  return surveys.flatMap((survey) =>
    survey.steps.map((step, i) =>
      ROUTE_COLUMNS.map(([, key]) => {
        if (key === 'survey') return survey.id;
        if (key === 'step') return step.step ?? i + 1;
        return step[key] ?? null;
      }),
    ),
  );
}
