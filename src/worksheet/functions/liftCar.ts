import { deeperBound } from '../../core/motion/deeperBound';
import { deepProof } from '../../core/route/deepProof';
import type { PieceSize } from '../../core/measures/piece';
import { writeAnswer } from '../../core/motion/answerWorking';
import { liftCarAnswer } from '../../core/stages/lift/liftCar';
import { CLEAR_HEIGHT, DOOR_HEIGHT, DOOR_WIDTH } from '../../core/stages/usualRanges';
import { opening, PIECE_SIZES } from '../arguments';
import { numberFunction } from '../namedArguments';
import { withPiece } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

const FAMILIES =
  'through the door level, tilted or leaning; inside standing, slanted or leaning, the door shut';

export const liftCar = numberFunction({
  id: 'LIFTCAR',
  group: 'Clearance',
  summary: 'Clearance of a piece into a lift car and inside it with the door shut',
  arguments: [
    opening('door_width', "clear width of the car's door", DOOR_WIDTH),
    opening('door_height', "clear height of the car's door", DOOR_HEIGHT),
    opening('car_width', "inside width, along the door's wall, the door in its middle"),
    opening('car_depth', 'inside depth, from the closed door to the back wall'),
    opening('car_height', 'inside height', CLEAR_HEIGHT),
    ...PIECE_SIZES,
  ],
  result: CLEARANCE_RESULT,
  source: 'Carver 1957 for the slanted section; the turn into the car derived here and checked by a planner',
  motions: FAMILIES,
  validity: 'an open landing before the door; rated load, trolley and people are questions of their own',
  caution: SPACE_CAUTION,
  example: {
    // A 630 kg car: a cube cannot do better than straight through the door.
    arguments: [800, 2100, 1100, 1400, 2200, 700, 700, 700],
    result: 50,
    within: 1e-6,
    source: 'ISO 4190-1 car of 630 kg, 1100 x 1400 (its door, 800, from memory): (800 - 700)/2',
  },
  compute: ({ doorWidth, doorHeight, carWidth, carDepth, carHeight, length, breadth, thickness }, working) =>
    withPiece({ length, breadth, thickness }, (piece) => {
      const answer = liftCarAnswer({ doorWidth, doorHeight, carWidth, carDepth, carHeight }, piece);
      if (working) {
        const row = {
          ...{ width: doorWidth, height: doorHeight, widthOut: carWidth, depth: carDepth },
          ceiling: carHeight,
        };
        const proves = (padded: PieceSize) => deepProof('lift', row, 0, padded);
        writeAnswer(deeperBound(answer, piece, proves), FAMILIES, working);
      }
      return answer.clearance;
    }),
});
