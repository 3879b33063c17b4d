import { upend as standOnEnd } from '../../core/stages/upend/upend';
import { CLEAR_HEIGHT } from '../../core/stages/usualRanges';
import { opening, PIECE_SIZES } from '../arguments';
import { numberFunction } from '../namedArguments';
import { withPiece } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

export const upend = numberFunction({
  id: 'UPEND',
  group: 'Clearance',
  summary: 'Clearance while a piece is stood on end, by the better way',
  arguments: [
    opening('ceiling', 'clear height where it is stood up', CLEAR_HEIGHT),
    ...PIECE_SIZES,
    {
      ...opening('width', 'free floor across the piece, when it may be less than its breadth'),
      optional: { default: null, meaning: 'plenty of floor' },
    },
  ],
  result: CLEARANCE_RESULT,
  source: 'diagonal of the face that turns (Pythagoras), solved for the padding',
  motions: 'raised about an end edge, from flat or from on edge',
  validity: 'floor as long as the piece; the piece does not slip',
  caution: SPACE_CAUTION,
  example: {
    // 3-4-5: a face 2000 x 1500 turns under 2500; raised from on edge, since 1500 of free floor is all there is.
    arguments: [2500, 2000, 1500, 30, 1000],
    result: 0,
    within: 1e-9,
    source: 'the 3-4-5 triangle: sqrt(2000^2 + 1500^2) = 2500',
  },
  compute: ({ ceiling, length, breadth, thickness, width }, working) =>
    withPiece(
      { length, breadth, thickness },
      (piece) => standOnEnd({ ceiling, width }, piece, working).clearance,
    ),
});
