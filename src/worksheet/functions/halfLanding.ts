import type { PieceSize } from '../../core/measures/piece';
import { deepProof } from '../../core/route/deepProof';
import { halfLandingAnswer, halfLandingStage } from '../../core/stages/landing/halfLanding';
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

export const halfLanding = numberFunction({
  id: 'HALFLANDING',
  group: 'Clearance',
  summary: 'Clearance of a piece round a half landing between two flights side by side',
  arguments: [
    opening('flight_width', 'clear width of each flight', STAIR_WIDTH),
    {
      name: 'well',
      help: 'width of the spine or open well between the flights',
      quantity: 'length',
      least: 0,
      most: 20000,
      plainZero: true,
    },
    opening('landing_depth', 'depth of the landing, to the face of the first riser'),
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
    arguments: [850, 100, 900, 2100, 180, 250, 760, 150, 150],
    result: 350,
    within: 0.51,
    source:
      'by hand: between the walls of a flight there is room for (850 - 150)/2 and no more, whatever the motion; half a millimetre is kept as air',
  },
  compute: (
    {
      flightWidth,
      well,
      landingDepth,
      headroom,
      rise,
      going,
      length,
      breadth,
      thickness,
      overRail,
      landingCeiling,
    },
    working,
  ) =>
    withPieceUnder({ headroom, length, breadth, thickness }, (piece) => {
      const ceiling = landingCeiling === undefined ? {} : { landingCeiling };
      const measures = { flightWidth, well, landingDepth, headroom, rise, going, overRail, ...ceiling };
      const answer = halfLandingAnswer(measures, piece);
      if (working) {
        const row = {
          ...{ width: flightWidth, well, depth: landingDepth, height: headroom, rise, going, overRail },
          ...(landingCeiling === undefined ? {} : { ceiling: landingCeiling }),
        };
        const proves = (padded: PieceSize) => deepProof('half landing', row, 0, padded);
        writeLanding(halfLandingStage(measures).plan, piece, answer, LANDING_MOTIONS, proves, working);
      }
      return answer.nothingFound ? refused(NO_MOTION_FOUND) : answer.clearance;
    }),
});
