import { deeperBound } from '../../core/motion/deeperBound';
import { deepProof } from '../../core/route/deepProof';
import type { PieceSize } from '../../core/measures/piece';
import { writeAnswer } from '../../core/motion/answerWorking';
import { sideDoorAnswer } from '../../core/stages/sideDoor/sideDoor';
import { CLEAR_HEIGHT } from '../../core/stages/usualRanges';
import { DOOR_IN_WALL, opening, PIECE_SIZES } from '../arguments';
import { numberFunction } from '../namedArguments';
import { withPiece } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

const FAMILIES =
  'level in each pose, turning out of the door or moved out sideways; tilted or leaning by a fixed angle';

export const sideDoor = numberFunction({
  id: 'SIDEDOOR',
  group: 'Clearance',
  summary: 'Clearance of a piece out of a door into a passage across it',
  arguments: [
    ...DOOR_IN_WALL,
    opening('passage_width', 'clear width of the passage across the door'),
    opening('ceiling', 'clear height of the passage and the approach', CLEAR_HEIGHT),
    ...PIECE_SIZES,
    {
      name: 'dead_end',
      help: "from the door's jamb nearer the closed end of the passage to that end",
      quantity: 'length',
      least: 0,
      most: 20000,
      optional: { default: null, meaning: 'the passage is open both ways' },
    },
    {
      ...opening('approach_width', 'clear width of the way to the door, centred on it'),
      optional: { default: null, meaning: 'as wide as the door' },
    },
  ],
  result: CLEARANCE_RESULT,
  source:
    'the passage width that a turning rectangle needs, derived here and checked against a certified planner',
  motions: FAMILIES,
  validity: 'an approach square to the door and longer than the piece; full-height walls',
  caution: SPACE_CAUTION,
  example: {
    // A cube cannot do better than straight through the door, and moves on sideways.
    arguments: [700, 2000, 100, 900, 2400, 600, 600, 600],
    result: 50,
    within: 1e-6,
    source: 'the narrower side of the door bounds the least thickness of anything: (700 - 600)/2',
  },
  compute: (
    {
      doorWidth,
      doorHeight,
      wallThickness,
      passageWidth,
      ceiling,
      length,
      breadth,
      thickness,
      deadEnd,
      approachWidth,
    },
    working,
  ) =>
    withPiece({ length, breadth, thickness }, (piece) => {
      const answer = sideDoorAnswer(
        { doorWidth, doorHeight, wallThickness, passageWidth, ceiling, deadEnd, approachWidth },
        piece,
      );
      if (working) {
        const row = {
          width: doorWidth,
          height: doorHeight,
          wall: wallThickness,
          widthOut: passageWidth,
          ceiling,
        };
        const proves = (padded: PieceSize) => deepProof('side door', { ...row, approachWidth }, 0, padded);
        writeAnswer(deeperBound(answer, piece, proves), FAMILIES, working);
      }
      return answer.clearance;
    }),
});
