import { CAUTIONS } from '../../core/measures/cautions';
import { found } from '../../core/measures/problem';
import { remeasure as compute } from '../../core/route/remeasure';
import { stageBook } from '../../core/route/stageBook';
import { tapeOf } from '../../core/survey/table/stageRow';
import type { TableCell } from '../description';
import { tableFunction } from '../namedArguments';
import { ALLOWANCE, buildsOf, oneRoute, PIECES, ROUTE, TAPE } from '../routeInputs';
import { ROUTE_MOTIONS } from '../verdictTable';

const COLUMNS = ['Step', 'Measure', 'As measured', 'Needed', 'Why'] as const;

export const remeasure = tableFunction({
  id: 'REMEASURE',
  group: 'Routes and surveys',
  summary: 'What to measure again or to change: the measures that decide, the smallest change first',
  arguments: [ROUTE, PIECES, ALLOWANCE, TAPE],
  result: {
    meaning:
      'a header row and one row a measure; Needed: the whole millimetre at which that measure alone makes its step ' +
      '"goes"; measures not taken come first, a step that no single measure mends comes last, without a Needed',
    unit: 'mm',
  },
  source:
    'each measure is tried on the whole route, by halving; what a plain step brings: common practice, no source',
  motions: ROUTE_MOTIONS,
  validity: 'changes up to 1000 mm; rise, going and turn are not tried, since they can err either way',
  caution: CAUTIONS.route,
  example: {
    arguments: [
      [
        ['Step', 'Stage', 'Width', 'Height'],
        [1, 'door', 630, 1981],
      ],
      [
        ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
        ['cabinet', 'cabinet', 1830, 700, 600, 60, 1],
      ],
    ],
    result: [[...COLUMNS], [1, 'Width', 630, 660]],
    source: 'on edge, 600 + 2 x 25 of allowance + 2 x 5 of tape: 660 mm',
  },
  compute: ({ route: table, pieces, allowance, tape }) => {
    const rows = oneRoute(table);
    if (!rows.ok) return rows;
    const builds = buildsOf(pieces);
    if (!builds.ok) return builds;
    const decisive = compute(rows.value, builds.value, stageBook(tapeOf(rows.value, tape)), allowance);
    return found<TableCell[][]>([
      [...COLUMNS],
      ...decisive.map((r): TableCell[] => [r.step, r.measure, r.asMeasured ?? '', r.needed ?? '', r.why]),
    ]);
  },
});
