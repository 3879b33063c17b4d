import type { Working } from '../../core/measures/working';
import { flightClearance } from '../../core/stages/flight';
import { GOING, opening, PIECE_SIZES, RISE } from '../arguments';
import type { NumberFunction } from '../description';
import { withPiece } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../shared';

export const flight: NumberFunction = {
  kind: 'number',
  id: 'FLIGHT',
  group: 'Clearance',
  summary: 'Clearance of a piece on a straight flight of stairs',
  arguments: [
    opening('width', 'clear width between walls, strings or handrails'),
    opening('headroom', 'clear height, measured plumb above the line of nosings'),
    RISE,
    GOING,
    ...PIECE_SIZES,
  ],
  result: CLEARANCE_RESULT,
  source: 'clear height square to the pitch: headroom x cos(pitch); then Carver 1957 across the pitch',
  motions: 'along the pitch line, lengthwise, the section breadth x thickness turned by any angle',
  validity: 'the straight part of a flight longer than the piece; not on to it or off it',
  caution: SPACE_CAUTION,
  example: {
    // A 45 degree stair: 2000 mm of headroom leave 1414.21 square to the pitch.
    arguments: [700, 2000, 220, 220, 1830, 1000, 25],
    result: 207.10678118654752,
    within: 1e-9,
    source: 'cos 45 degrees: (2000/sqrt 2 - 1000)/2',
  },
  compute: (
    width: number,
    headroom: number,
    rise: number,
    going: number,
    length: number,
    breadth: number,
    thickness: number,
    working?: Working,
  ) =>
    withPiece(length, breadth, thickness, (piece) =>
      flightClearance({ width, headroom, rise, going }, piece, working),
    ),
};
