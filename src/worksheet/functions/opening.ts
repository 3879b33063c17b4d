import { openingClearance } from '../../core/stages/opening/opening';
import { DOOR_HEIGHT } from '../../core/stages/usualRanges';
import { opening as openingMeasure, PIECE_SIZES } from '../arguments';
import { numberFunction } from '../namedArguments';
import { withPiece } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

export const opening = numberFunction({
  id: 'OPENING',
  group: 'Clearance',
  summary: 'Clearance of a piece straight through an opening, in its best pose, slanted ones too',
  arguments: [
    openingMeasure('opening_width', 'clear width between the stops or linings'),
    openingMeasure('opening_height', 'clear height', DOOR_HEIGHT),
    ...PIECE_SIZES,
  ],
  result: CLEARANCE_RESULT,
  source: 'Carver 1957; Wetzel, Mathematics Magazine 73, 2000, 204-211, solved for the padding',
  motions: 'straight through along the length, the section breadth x thickness turned by any angle',
  validity: 'a wall of any thickness with free floor on both sides; skirting and furniture are not looked at',
  caution: SPACE_CAUTION,
  example: {
    // The face 30 mm thick that lies diagonally in a door of 1981 x 762, here as the section of a long piece.
    arguments: [762, 1981, 2500, 2102.75, 30],
    result: 0,
    within: 0.005,
    source: "Carver's formula: the longest face 30 thick in 1981 x 762 is 2102.75 mm",
  },
  compute: ({ openingWidth: width, openingHeight: height, length, breadth, thickness }, working) =>
    withPiece({ length, breadth, thickness }, (piece) => openingClearance({ width, height }, piece, working)),
});
