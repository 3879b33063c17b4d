import { deeperBound } from '../../core/motion/deeperBound';
import { deepProof } from '../../core/route/deepProof';
import type { PieceSize } from '../../core/measures/piece';
import { writeAnswer } from '../../core/motion/answerWorking';
import { flightClearance } from '../../core/stages/flight/flight';
import type { StageMeasures } from '../../core/stages/measures';
import { flightPassages } from '../../core/stages/flight/flightPassages';
import { bestPassage } from '../../core/stages/opening/opening';
import { CLEAR_HEIGHT, FLOOR_SPACE, STAIR_WIDTH } from '../../core/stages/usualRanges';
import { GOING, HEADROOM, opening, PIECE_SIZES, RISE } from '../arguments';
import type { ArgumentDescription } from '../description';
import { numberFunction } from '../namedArguments';
import { withPieceUnder } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

const FAMILIES =
  'along the pitch line, lengthwise, the section breadth x thickness turned by any angle; at the ends bent from level to the pitch in elevation, or kept level; over up to four risers with both ends measured, lifted level over the steps';

const atEnd = <const Name extends string>(name: Name, help: string, usual: typeof CLEAR_HEIGHT) =>
  ({
    ...opening(name, help, usual),
    optional: { default: null, meaning: 'not looked at' },
  }) as const satisfies ArgumentDescription;

export const flight = numberFunction({
  id: 'FLIGHT',
  group: 'Clearance',
  summary:
    'Clearance of a piece on a straight flight of stairs, and on to it and off it where that is measured',
  arguments: [
    opening('width', 'clear width between walls, strings or handrails', STAIR_WIDTH),
    HEADROOM,
    RISE,
    GOING,
    ...PIECE_SIZES,
    {
      name: 'risers',
      help: 'number of risers of the flight',
      quantity: 'count',
      least: 1,
      most: 60,
      whole: true,
      optional: { default: null, meaning: 'a flight longer than the piece' },
    },
    atEnd('foot_ceiling', 'clear height over the floor at the foot', CLEAR_HEIGHT),
    atEnd('foot_space', 'level floor from the first riser to the facing wall', FLOOR_SPACE),
    atEnd('head_ceiling', 'clear height over the floor at the head', CLEAR_HEIGHT),
    atEnd('head_space', 'level floor from the top nosing to the facing wall', FLOOR_SPACE),
  ],
  result: CLEARANCE_RESULT,
  source:
    'clear height square to the pitch: headroom x cos(pitch), then Carver 1957; the ends as a rectangle round a bend, turned upright',
  motions: FAMILIES,
  validity:
    'a straight flight; without the last four measures the straight part alone, not on to it or off it; the trimmer is where the line of the headroom meets the foot ceiling',
  caution: SPACE_CAUTION,
  example: {
    // A 45 degree stair: 2000 mm of headroom leave 1414.21 square to the pitch.
    arguments: [700, 2000, 220, 220, 1830, 1000, 25],
    result: 207.10678118654752,
    within: 1e-9,
    source: 'cos 45 degrees: (2000/sqrt 2 - 1000)/2',
  },
  compute: (
    {
      width,
      headroom,
      rise,
      going,
      length,
      breadth,
      thickness,
      risers,
      footCeiling,
      footSpace,
      headCeiling,
      headSpace,
    },
    working,
  ) =>
    withPieceUnder({ headroom, length, breadth, thickness }, (piece) => {
      const measures = { width, headroom, rise, going };
      const straight = flightClearance(measures, piece, working);
      const ends = { risers, footCeiling, footSpace, headCeiling, headSpace };
      if ([footCeiling, footSpace, headCeiling, headSpace].every((m) => m === undefined)) return straight;
      const answer = bestPassage(flightPassages(measures, piece, ends));
      if (working) {
        const measured = Object.entries(ends).filter((end): end is [string, number] => end[1] !== undefined);
        const row: StageMeasures = { width, height: headroom, rise, going, ...Object.fromEntries(measured) };
        const proves = (padded: PieceSize) => deepProof('flight', row, 0, padded);
        writeAnswer(deeperBound(answer, piece, proves), FAMILIES, working);
      }
      return answer.clearance;
    }),
});
