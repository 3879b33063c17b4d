import type { RouteStep, Survey, Written } from './survey';

/** The columns of a route, by the measure that each holds: the worksheet's header row. */
export const ROUTE_COLUMNS: readonly (readonly [header: string, key: keyof RouteStep | 'survey'])[] = [
  ['Survey', 'survey'],
  ['Step', 'step'],
  ['Stage', 'stage'],
  ['Width', 'width'],
  ['Width out', 'widthOut'],
  ['Height', 'height'],
  ['Ceiling', 'ceiling'],
  ['Depth', 'depth'],
  ['Length', 'length'],
  ['Turn', 'turn'],
  ['Rise', 'rise'],
  ['Going', 'going'],
  ['Risers', 'risers'],
  ['Well', 'well'],
  ['Wall', 'wall'],
  ['Over rail', 'overRail'],
  ['Foot ceiling', 'footCeiling'],
  ['Foot space', 'footSpace'],
  ['Head ceiling', 'headCeiling'],
  ['Head space', 'headSpace'],
  ['Run', 'run'],
  ['Rated load', 'ratedLoad'],
  ['Note', 'note'],
];

/** The header row of a route. */
export const ROUTE_HEADERS: readonly string[] = ROUTE_COLUMNS.map(([header]) => header);

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
