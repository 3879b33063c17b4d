import type { PieceSize } from '../../core/measures/piece';
import { deepProof } from '../../core/route/deepProof';
import { quarterLandingAnswer, quarterLandingStage } from '../../core/stages/landing/quarterLanding';
import { writeLanding } from '../../core/stages/landing/landingWorking';
import { STAIR_WIDTH } from '../../core/stages/usualRanges';
import { GOING, HEADROOM, opening, OVER_RAIL, PIECE_SIZES, RISE } from '../arguments';
import { numberFunction } from '../namedArguments';
import { refused } from '../../core/measures/problem';
import {
  LANDING_CEILING,
  LANDING_MOTIONS,
  NO_MOTION_FOUND,
  LANDING_SOURCE,
  LANDING_VALIDITY,
} from '../landingWords';
import { withPieceUnder } from '../pieceArgument';
import { CLEARANCE_RESULT, SPACE_CAUTION } from '../clearanceWords';

export const quarterLanding = numberFunction({
  id: 'QUARTERLANDING',
  group: 'Clearance',
  summary: 'Clearance of a piece round a quarter landing between two flights at a right angle',
  arguments: [
    opening('width_in', 'clear width of the lower flight', STAIR_WIDTH),
    opening('width_out', 'clear width of the upper flight', STAIR_WIDTH),
    HEADROOM,
    RISE,
    GOING,
    ...PIECE_SIZES,
    OVER_RAIL,
    LANDING_CEILING,
  ],
  result: CLEARANCE_RESULT,
  source: LANDING_SOURCE,
  motions: LANDING_MOTIONS,
  validity: LANDING_VALIDITY,
  caution: SPACE_CAUTION,
  example: {
    // A table's leg.
    arguments: [850, 1000, 2200, 180, 250, 760, 150, 150],
    result: 350,
    within: 0.51,
    source:
      'by hand: between the walls of the narrower flight there is room for (850 - 150)/2 and no more, whatever the motion; half a millimetre is kept as air',
  },
  compute: (
    { widthIn, widthOut, headroom, rise, going, length, breadth, thickness, overRail, landingCeiling },
    working,
  ) =>
    withPieceUnder({ headroom, length, breadth, thickness }, (piece) => {
      const ceiling = landingCeiling === undefined ? {} : { landingCeiling };
      const measures = { widthIn, widthOut, headroom, rise, going, overRail, ...ceiling };
      const answer = quarterLandingAnswer(measures, piece);
      if (working) {
        const over = landingCeiling === undefined ? {} : { ceiling: landingCeiling };
        const row = {
          width: widthIn,
          widthOut,
          height: headroom,
          rise,
          going,
          overRail,
          ...over,
        };
        const proves = (padded: PieceSize) => deepProof('quarter landing', row, 0, padded);
        writeLanding(quarterLandingStage(measures).plan, piece, answer, LANDING_MOTIONS, proves, working);
      }
      return answer.nothingFound ? refused(NO_MOTION_FOUND) : answer.clearance;
    }),
});
