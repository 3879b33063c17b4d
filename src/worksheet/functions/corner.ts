import { radians } from '../../core/measures/angle';
import { cornerClearance } from '../../core/stages/corner/corner';
import { CLEAR_HEIGHT } from '../../core/stages/usualRanges';
import { opening, PIECE_SIZES, TURN } from '../arguments';
import { numberFunction } from '../namedArguments';
import { withPiece } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

export const corner = numberFunction({
  id: 'CORNER',
  group: 'Clearance',
  summary: 'Clearance of a piece round a corner, in its best pose, tilted ones too',
  arguments: [
    opening('width_in', 'clear width of the way to the corner'),
    opening('width_out', 'clear width of the way after it'),
    opening('ceiling', 'clear height over the corner', CLEAR_HEIGHT),
    ...PIECE_SIZES,
    TURN,
  ],
  result: CLEARANCE_RESULT,
  source:
    'own derivation: at every angle a line parts the piece from the inner corner, solved for the padding; its closed case is the formula of Moretti, College Math. J. 33(3), 2002, 196-200, and its values are those of Codeforces problem 98C',
  motions:
    'level in each pose, lengthwise or crabwise; tilted or leaning by a fixed angle that just clears the ceiling',
  validity: 'two straight ways longer than the piece, full-height walls, an upright inner corner',
  caution: SPACE_CAUTION,
  example: {
    // By hand: between arms of 2 m a piece 3 m long is closest at 45 degrees, 2 x 2 sin 45 - 3/2 = 1.3284271 m wide.
    arguments: [2000, 2000, 200, 3000, 1328.4271, 200],
    result: 0,
    within: 0.0001,
    source:
      "Moretti's formula by hand at 45 degrees: 4 sin 45 - 3/2 = 1.3284271 m; third sample of Codeforces 98C",
  },
  compute: ({ widthIn, widthOut, ceiling, length, breadth, thickness, turn }, working) =>
    withPiece({ length, breadth, thickness }, (piece) =>
      cornerClearance({ widthIn, widthOut, ceiling, turn: radians(turn) }, piece, working),
    ),
});
