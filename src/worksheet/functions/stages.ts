import { CAUTIONS } from '../../core/measures/cautions';
import { sortedPiece } from '../../core/measures/piece';
import { found, refused } from '../../core/measures/problem';
import { judgeRoute } from '../../core/route/judgeRoute';
import { prepareRoute } from '../../core/route/preparedRoute';
import { stageBook } from '../../core/route/stageBook';
import { tapeOf } from '../../core/survey/table/stageRow';
import { PIECE_LENGTH_RANGE, PIECE_SIZES, pieceTooShort } from '../arguments';
import type { TableCell } from '../description';
import { tableFunction } from '../namedArguments';
import { ALLOWANCE, oneRoute, ROUTE, TAPE } from '../routeInputs';
import { ROUTE_MOTIONS, ROUTE_SOURCE, ROUTE_VALIDITY } from '../verdictTable';
import { entryAt } from '../../core/lists/entryAt';

export const STAGES_COLUMNS = ['Step', 'Stage', 'Verdict', 'Clearance', 'Pose', 'Reason'] as const;

export const stages = tableFunction({
  id: 'STAGES',
  group: 'Routes and surveys',
  summary:
    'Verdict on each step of a route for one piece, on the best chain of poses, and on the route in the last row',
  arguments: [ROUTE, ...PIECE_SIZES, ALLOWANCE, TAPE],
  result: {
    meaning: `a header row, one row a step and a last row Route: ${STAGES_COLUMNS.join(', ')}`,
    unit: 'mm a side',
  },
  source: ROUTE_SOURCE,
  motions: ROUTE_MOTIONS,
  validity: ROUTE_VALIDITY,
  caution: CAUTIONS.route,
  example: {
    arguments: [
      [
        ['Step', 'Stage', 'Width', 'Height'],
        [1, 'door', 838, 1981],
        [2, 'door', 125, 1981],
      ],
      1830,
      930,
      25,
    ],
    result: [
      [...STAGES_COLUMNS],
      [1, 'door', 'goes', 406.5, 'on edge'],
      [2, 'door', 'goes', 50, 'on edge'],
      ['Route', '', 'goes', 50, 'on edge'],
    ],
    within: 1e-9,
    source: 'on edge, half of what the width leaves: (838 - 25)/2 and (125 - 25)/2',
  },
  compute: ({ route: table, length, breadth, thickness, allowance, tape }) => {
    const piece = sortedPiece(length, breadth, thickness);
    if (piece.length < PIECE_LENGTH_RANGE.least) return refused(pieceTooShort(piece.length));
    const rows = oneRoute(table);
    if (!rows.ok) return rows;
    const book = stageBook(tapeOf(rows.value, tape));
    const route = prepareRoute(rows.value, book);
    const judged = judgeRoute(route, piece, book, allowance).judge('every step');
    const body = judged.steps.map((step, i): TableCell[] => {
      const { row, name } = entryAt(route.steps, i);
      return [
        name,
        row.stage ?? row.stageText,
        step.verdict,
        told(step),
        step.pose ?? '',
        step.because + step.changes,
      ];
    });
    return found<TableCell[][]>([
      [...STAGES_COLUMNS],
      ...body,
      ['Route', '', judged.verdict, told(judged), judged.pose ?? '', judged.reason],
    ]);
  },
});

/** The clearance as the cell shows it: none where it would tell nothing. */
const told = ({
  clearance,
  tellsNothing,
}: {
  readonly clearance: number | undefined;
  readonly tellsNothing?: boolean;
}): TableCell => (tellsNothing === true ? '' : (clearance ?? ''));
