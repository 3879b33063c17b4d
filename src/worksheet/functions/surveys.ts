import { CAUTIONS } from '../../core/measures/cautions';
import { found } from '../../core/measures/problem';
import { judgeSurveysInParts } from '../../core/route/judgeSurveys';
import { checkFirst } from '../checkFirst';
import { tableFunctionInParts } from '../namedArguments';
import { ALLOWANCE, buildsOf, ordersOf, PIECES, ROUTES, surveysOf, TAPE } from '../routeInputs';
import { surveyBySurvey } from '../surveyBySurvey';
import {
  ROUTE_MOTIONS,
  ROUTE_SOURCE,
  ROUTE_VALIDITY,
  VERDICT_COLUMNS,
  VERDICT_RESULT,
  verdictRow,
} from '../verdictTable';

const COLUMNS = ['Survey', ...VERDICT_COLUMNS] as const;

export const surveys = tableFunctionInParts({
  id: 'SURVEYS',
  group: 'Routes and surveys',
  summary: 'Verdicts on many surveys at once: every build for every survey, or those that were ordered',
  arguments: [
    ROUTES,
    PIECES,
    {
      name: 'orders',
      help: 'two columns, Survey and Build: which build is wanted where; without it every build for every survey',
      quantity: 'range',
      optional: { default: null, meaning: 'every build for every survey' },
    },
    ALLOWANCE,
    TAPE,
  ],
  result: { ...VERDICT_RESULT, meaning: `Survey, then as VERDICT; ${VERDICT_RESULT.meaning}` },
  source: ROUTE_SOURCE,
  motions: ROUTE_MOTIONS,
  validity: ROUTE_VALIDITY,
  caution: CAUTIONS.route,
  example: {
    arguments: [
      [
        ['Survey', 'Step', 'Stage', 'Width', 'Height'],
        ['Mill House', 1, 'door', 125, 1981],
        ['Quay 4', 1, 'door', 225, 1981],
      ],
      [
        ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
        ['one-piece', 'slate', 1830, 930, 25, 121, 1],
      ],
    ],
    result: [[...COLUMNS], ['Mill House', 'one-piece', 'goes', 50], ['Quay 4', 'one-piece', 'goes', 100]],
    within: 1e-9,
    source: 'on edge, half of what the width leaves: (125 - 25)/2 and (225 - 25)/2',
  },
  inSmallerCalls: surveyBySurvey,
  compute: function* ({ routes, pieces, orders, allowance, tape }) {
    const read = surveysOf('routes', routes);
    if (!read.ok) return read;
    const builds = buildsOf(pieces);
    if (!builds.ok) return builds;
    const wanted = ordersOf(orders);
    if (!wanted.ok) return wanted;
    const judged = yield* judgeSurveysInParts(
      read.value.surveys,
      builds.value,
      wanted.value,
      allowance,
      tape,
    );
    const first = checkFirst(read.value);
    return found([
      [...COLUMNS],
      ...judged.map(({ survey, verdict }) => [survey, ...verdictRow(first(survey, verdict))]),
    ]);
  },
});
