import { CAUTIONS } from '../../core/measures/cautions';
import { found } from '../../core/measures/problem';
import type { BuildVerdict } from '../../core/route/buildVerdict';
import { verdictRank } from '../../core/route/verdict';
import { buildVerdicts } from '../buildVerdicts';
import { tableFunction } from '../namedArguments';
import { ALLOWANCE, PIECES, ROUTE, TAPE } from '../routeInputs';
import {
  ROUTE_MOTIONS,
  ROUTE_SOURCE,
  ROUTE_VALIDITY,
  VERDICT_COLUMNS,
  VERDICT_RESULT,
  verdictRow,
} from '../verdictTable';

export const advise = tableFunction({
  id: 'ADVISE',
  group: 'Routes and surveys',
  summary: "The builds in the order to advise them: best verdict first, then the firm's own order",
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
        [1, 'door', '125 mm', 1981],
      ],
      [
        ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
        ['cabinet built up', 'cabinet', 1830, 930, 150, 60, 1],
        ['knocked down', 'panel', 1830, 400, 25, 20, 4],
      ],
    ],
    result: [[...VERDICT_COLUMNS], ['knocked down', 'goes', 50], ['cabinet built up', 'cannot go', -12.5]],
    within: 1e-9,
    source: 'half of what the width leaves: (125 - 25)/2 and (125 - 150)/2; 150 mm pass no way of 125 mm',
  },
  compute: (asked) => {
    const verdicts = buildVerdicts(asked);
    if (!verdicts.ok) return verdicts;
    // A stable sort keeps the firm's order among equals. Last among its like is what has to be carried where no aid is
    // known. What the check of the route doubts it doubts for every build alike.
    const doubts = ({ noAid }: BuildVerdict): number => Number(noAid === true);
    const sorted = [...verdicts.value].sort(
      (a, b) => verdictRank(a.verdict) - verdictRank(b.verdict) || doubts(a) - doubts(b),
    );
    return found([[...VERDICT_COLUMNS], ...sorted.map(verdictRow)]);
  },
});
