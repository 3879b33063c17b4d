import { writeAnswer } from '../../core/motion/answerWorking';
import { stairTurnAnswer } from '../../core/stages/stairTurn/stairTurn';
import { CLEAR_HEIGHT, STAIR_WIDTH } from '../../core/stages/usualRanges';
import { GOING, HEADROOM, opening, OVER_RAIL, PIECE_SIZES, RISE } from '../arguments';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';
import { numberFunction } from '../namedArguments';
import { withPieceUnder } from '../pieceArgument';

const FAMILIES =
  'pushed into the outer corner and resting on the floor and the nosings, turned in plan and tilted about the side across by any schedule of the two: level, along the pitch, stood up and laid down again; out lengthwise, moved off sideways, or stood on end; above over_rail past the inner corner';

export const stairTurn = numberFunction({
  id: 'STAIRTURN',
  group: 'Clearance',
  summary: "Clearance of a piece that turns at a stair's head or foot, the way going on to one side",
  arguments: [
    {
      name: 'end',
      help: 'which end of the stair the turn is at',
      quantity: 'choice',
      choices: ['head', 'foot'],
    },
    opening('flight_width', 'clear width of the flight', STAIR_WIDTH),
    HEADROOM,
    RISE,
    GOING,
    opening(
      'landing_depth',
      'depth of the level floor along the flight, from the first riser or the top nosing to the facing wall: the width of the way on to the side',
    ),
    opening('ceiling', 'clear height over the level floor', CLEAR_HEIGHT),
    ...PIECE_SIZES,
    OVER_RAIL,
  ],
  result: CLEARANCE_RESULT,
  source:
    'the rectangle round a corner (Moretti, College Math. J. 33(3), 2002, 196-200) and trigonometry of the pitch, own derivation; each step of a motion is held between its ends too',
  motions: FAMILIES,
  validity:
    'at the head the line of nosings meets the edge of the floor, at the foot the first riser is plumb; the ceiling over the flight parallel to it at the headroom; walls, or clear air above over_rail on the inner sides; flight and way on longer than the piece. The clearance is that of the best motion found: a larger one may exist up to the bound',
  caution: SPACE_CAUTION,
  example: {
    // A table's leg.
    arguments: ['head', 860, 2050, 195, 240, 1000, 2400, 760, 150, 150],
    result: 355,
    within: 0.51,
    source:
      'by hand: between the walls of the flight there is room for (860 - 150)/2 and no more, whatever the motion; half a millimetre is kept as air',
  },
  compute: (
    { end, flightWidth, headroom, rise, going, landingDepth, ceiling, length, breadth, thickness, overRail },
    working,
  ) =>
    withPieceUnder({ headroom, length, breadth, thickness }, (piece) => {
      const answer = stairTurnAnswer(
        {
          end,
          flightWidth,
          headroom,
          rise,
          going,
          straight: 0,
          passageWidth: landingDepth,
          ceiling,
          overRail,
        },
        piece,
      );
      writeAnswer(answer, FAMILIES, working);
      return answer.clearance;
    }),
});
