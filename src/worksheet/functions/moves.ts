import { carryMoves, type CarryMove } from '../../core/crew/carryMoves';
import { aidWords, handWords, moveCaution, moveOrder, shareWords } from '../../core/crew/moveWords';
import { degrees } from '../../core/measures/angle';
import { CAUTIONS } from '../../core/measures/cautions';
import { sortedPiece } from '../../core/measures/piece';
import { found, refused } from '../../core/measures/problem';
import { prepareRoute } from '../../core/route/preparedRoute';
import { stageBook } from '../../core/route/stageBook';
import { tapeOf } from '../../core/survey/table/stageRow';
import { PIECE_LENGTH_RANGE, PIECE_SIZES, pieceTooShort } from '../arguments';
import { massOf } from '../carryArguments';
import type { TableCell } from '../description';
import { tableFunction } from '../namedArguments';
import { ALLOWANCE, oneRoute, ROUTE, TAPE } from '../routeInputs';
import { ROUTE_MOTIONS, ROUTE_VALIDITY } from '../verdictTable';

export const MOVES_COLUMNS = [
  'Step',
  'No.',
  'Move',
  'Pose',
  'Tilt',
  'Raise',
  'Clearance',
  'Closest',
  'Hands',
  'Lower share',
  'Aid',
  'Caution',
] as const;

export const moves = tableFunction({
  id: 'MOVES',
  group: 'Routes and surveys',
  summary:
    'The carry in order, a line a move: what is done to the piece, where it is closest, what is held up',
  arguments: [
    ROUTE,
    ...PIECE_SIZES,
    ALLOWANCE,
    TAPE,
    { ...massOf('mass of the piece'), optional: { default: null, meaning: 'Lower share and Aid say so' } },
  ],
  result: {
    meaning:
      `a header row and one row a move: ${MOVES_COLUMNS.join(', ')}. Tilt: degrees by which the side that is upright in the pose is out of plumb, on a stair the slope of the piece; ` +
      'Raise: mm above the floor or the line of nosings; Clearance: mm a side, of the step in these moves, less than STAGES gives where that is raised farther; ' +
      'Closest: on the move of a step that decides; Lower share: kg on the lower end, taken hold of at both ends ' +
      'of its lower edge, the mass at half its height; it is no word on how many may carry it',
    unit: 'degrees, mm, mm a side, kg',
  },
  source:
    'the best chain of poses and its one motion through the space of all rows; the lower share by statics, as LOWERSHARE; what an aid needs under it: common practice, no source',
  motions: ROUTE_MOTIONS,
  validity: ROUTE_VALIDITY,
  caution: `${CAUTIONS.route} ${CAUTIONS.stairs}`,
  example: {
    arguments: [
      [
        ['Step', 'Stage', 'Width', 'Height'],
        [1, 'door', 838, 1981],
      ],
      1830,
      930,
      25,
    ],
    result: [
      [...MOVES_COLUMNS],
      [1, 1, 'Straight through the door, on edge, long side along the way', 'on edge', 0, 0, 406.5],
    ],
    within: 1e-9,
    source:
      'on edge, half of what the width leaves: (838 - 25)/2; on level floor nothing is tilted or raised',
  },
  compute: ({ route: table, length, breadth, thickness, allowance, tape, mass }) => {
    const size = sortedPiece(length, breadth, thickness);
    if (size.length < PIECE_LENGTH_RANGE.least) return refused(pieceTooShort(size.length));
    const rows = oneRoute(table);
    if (!rows.ok) return rows;
    const book = stageBook(tapeOf(rows.value, tape));
    const carried = carryMoves(prepareRoute(rows.value, book), book, { size, allowance, mass });
    return found<TableCell[][]>([[...MOVES_COLUMNS], ...carried.map((move) => moveRow(move, mass))]);
  },
});

const moveRow = (move: CarryMove, mass: number | undefined): TableCell[] => [
  move.step,
  move.number,
  moveOrder(move),
  move.pose ?? '',
  move.tilt === undefined ? '' : degrees(move.tilt),
  move.raise ?? '',
  move.clearance ?? '',
  move.closest,
  handWords(move),
  shareWords(move, mass),
  aidWords(move),
  moveCaution(move),
];
