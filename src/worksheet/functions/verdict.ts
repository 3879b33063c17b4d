import { CAUTIONS } from '../../core/measures/cautions';
import { found } from '../../core/measures/problem';
import { tableFunction } from '../namedArguments';
import { ALLOWANCE, PIECES, ROUTE, TAPE } from '../routeInputs';
import { buildVerdicts } from '../buildVerdicts';
import {
  ROUTE_MOTIONS,
  ROUTE_SOURCE,
  ROUTE_VALIDITY,
  VERDICT_COLUMNS,
  VERDICT_RESULT,
  verdictRow,
} from '../verdictTable';

export const verdict = tableFunction({
  id: 'VERDICT',
  group: 'Routes and surveys',
  summary: 'Verdict on each build for a route: a build is as good as its worst piece',
  arguments: [ROUTE, PIECES, ALLOWANCE, TAPE],
  result: VERDICT_RESULT,
  source: ROUTE_SOURCE,
  motions: ROUTE_MOTIONS,
  validity: ROUTE_VALIDITY,
  caution: CAUTIONS.route,
  example: {
    arguments: [
      [
        ['Step', 'Stage', 'Width', 'Height'],
        [1, 'door', 125, 1981],
      ],
      [
        ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
        ['one-piece', 'slate', 1830, 930, 25, 121, 1],
        ['panels', 'panel', 1200, 400, 25, 20, 4],
      ],
    ],
    result: [
      [...VERDICT_COLUMNS],
      [
        'one-piece',
        'goes',
        50,
        1,
        'door',
        'slate',
        'on edge',
        121,
        'mechanical aid and a written assessment',
      ],
      ['panels', 'goes', 50, 1, 'door', 'panel', 'on edge', 20, 'within the guideline for 2 on the level'],
    ],
    within: 1e-9,
    source: 'on edge, half of what the width leaves: (125 - 25)/2; team factors: HSE L23',
  },
  compute: (asked) => {
    const verdicts = buildVerdicts(asked);
    return verdicts.ok ? found([[...VERDICT_COLUMNS], ...verdicts.value.map(verdictRow)]) : verdicts;
  },
});
