import { radians } from '../../core/measures/angle';
import type { Working } from '../../core/measures/working';
import { cornerClearance } from '../../core/stages/corner/corner';
import { opening, PIECE_SIZES, TURN } from '../arguments';
import type { NumberFunction } from '../description';
import { withPiece } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

export const corner: NumberFunction = {
  kind: 'number',
  id: 'CORNER',
  group: 'Clearance',
  summary: 'Clearance of a piece round a corner, in its best pose, tilted ones too',
  arguments: [
    opening('width_in', 'clear width of the way to the corner'),
    opening('width_out', 'clear width of the way after it'),
    opening('ceiling', 'clear height over the corner'),
    ...PIECE_SIZES,
    TURN,
  ],
  result: CLEARANCE_RESULT,
  source:
    'rectangle round a corner: Codeforces problem 98C; Moretti, College Math. J. 33(3), 2002, 196-200; solved for the padding',
  motions:
    'level in each pose, lengthwise or crabwise; tilted or leaning by a fixed angle that just clears the ceiling',
  validity: 'two straight ways longer than the piece, full-height walls, an upright inner corner',
  caution: SPACE_CAUTION,
  example: {
    // Codeforces 98C: corridors 2 and 2, length 3 -> width 1.3284271, here in metres and 200 mm thin upright.
    arguments: [2000, 2000, 200, 3000, 1328.4271, 200],
    result: 0,
    within: 0.0001,
    source: 'Codeforces Round 78, problem 98C, third sample',
  },
  compute: (
    widthIn: number,
    widthOut: number,
    ceiling: number,
    length: number,
    breadth: number,
    thickness: number,
    turn: number,
    working?: Working,
  ) =>
    withPiece(length, breadth, thickness, (piece) =>
      cornerClearance({ widthIn, widthOut, ceiling, turn: radians(turn) }, piece, working),
    ),
};
