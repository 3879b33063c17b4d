import { refused } from '../../core/measures/problem';
import { faceThroughOpening } from '../../core/stages/opening/diagonal';
import { DOOR_HEIGHT, DOOR_WIDTH } from '../../core/stages/usualRanges';
import { FACE_SIZES, faceTooShort, opening, PIECE_LENGTH_RANGE } from '../arguments';
import { numberFunction } from '../namedArguments';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

export const diagonal = numberFunction({
  id: 'DIAGONAL',
  group: 'Clearance',
  summary: 'Clearance of one face turned in an opening',
  arguments: [
    opening('opening_width', 'clear width', DOOR_WIDTH),
    opening('opening_height', 'clear height', DOOR_HEIGHT),
    ...FACE_SIZES,
  ],
  result: CLEARANCE_RESULT,
  source: 'Carver 1957; Wetzel, Mathematics Magazine 73, 2000, 204-211, solved for the padding',
  motions: 'straight through, the face turned by any angle in the opening',
  caution: SPACE_CAUTION,
  example: {
    arguments: [762, 1981, 2102.75, 30],
    result: 0,
    within: 0.005,
    source: "Carver's formula: the longest face 30 thick in 1981 x 762 is 2102.75 mm",
  },
  compute: ({ openingWidth: width, openingHeight: height, faceLength, faceWidth }, working) =>
    Math.max(faceLength, faceWidth) < PIECE_LENGTH_RANGE.least
      ? refused(faceTooShort(Math.max(faceLength, faceWidth)))
      : faceThroughOpening({ width, height, faceLength, faceWidth }, working).clearance,
});
