import { writeAnswer } from '../../core/motion/answerWorking';
import { facingDoorAnswer } from '../../core/stages/facingDoor/facingDoor';
import { CLEAR_HEIGHT, STAIR_WIDTH } from '../../core/stages/usualRanges';
import { DOOR_IN_WALL, GOING, HEADROOM, opening, PIECE_SIZES, RISE } from '../arguments';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';
import { numberFunction } from '../namedArguments';
import { withPieceUnder } from '../pieceArgument';

const FAMILIES =
  'between level ground beyond the door and lying along the pitch, in each pose: at the foot both lower corners slide on the floor and the line of nosings, at the head the lower side rests on the top nosing; or kept level; leaning by a fixed angle where it is too broad to lie flat';

export const facingDoor = numberFunction({
  id: 'FACINGDOOR',
  group: 'Clearance',
  summary: "Clearance of a piece through a door in the wall that faces a stair's end",
  arguments: [
    ...DOOR_IN_WALL,
    {
      name: 'space',
      help: 'level floor from that wall to the first riser, at the head to the top nosing',
      quantity: 'length',
      least: 0,
      most: 20000,
    },
    opening('flight_width', 'clear width of the flight', STAIR_WIDTH),
    HEADROOM,
    RISE,
    GOING,
    opening('ceiling', 'clear height over the floor between door and flight', CLEAR_HEIGHT),
    ...PIECE_SIZES,
    {
      name: 'end',
      help: "the stair's end that the door faces",
      quantity: 'choice',
      choices: ['foot', 'head'],
      optional: { default: 'foot' },
    },
  ],
  result: CLEARANCE_RESULT,
  source:
    'the vertical section as a rectangle in a bend (Moretti, College Math. J. 33(3), 2002, 196-200, turned upright) with the head of the door as one more edge, derived here and checked against a certified planner',
  motions: FAMILIES,
  validity:
    'the line of nosings meets the floor one going before the first riser; flight and door overlap by the full width of the narrower; beyond the door level ground under the same ceiling; the flight longer than the piece',
  caution: SPACE_CAUTION,
  example: {
    // Far from the stair only the plain door is left: nothing in the section is closer.
    arguments: [900, 2100, 110, '6 m', 900, 3000, 180, 260, 3500, 800, 800, 800],
    result: 50,
    within: 1e-6,
    source: 'the jambs leave (900 - 800)/2, and the stair far behind more',
  },
  compute: (
    {
      doorWidth,
      doorHeight,
      wallThickness,
      space,
      flightWidth,
      headroom,
      rise,
      going,
      ceiling,
      length,
      breadth,
      thickness,
      end,
    },
    working,
  ) =>
    withPieceUnder({ headroom, length, breadth, thickness }, (piece) => {
      working?.({
        what: 'Pitch',
        formula: 'atan(rise / going)',
        value: (Math.atan2(rise, going) * 180) / Math.PI,
        unit: 'degrees',
        source: 'trigonometry',
      });
      if (end === 'foot') {
        working?.({
          what: 'Floor from the wall to where the line of nosings meets it',
          formula: 'space - going',
          value: space - going,
          unit: 'mm',
          source: 'the line of nosings meets the floor one going before the first riser',
        });
      }
      const answer = facingDoorAnswer(
        { doorWidth, doorHeight, wallThickness, space, flightWidth, headroom, rise, going, ceiling, end },
        piece,
      );
      writeAnswer(answer, FAMILIES, working);
      return answer.clearance;
    }),
});
