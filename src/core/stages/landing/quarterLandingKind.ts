import { RAIL } from '../siteRemedies';
import { never, ONE_TURN, stageKind } from '../stageKind';
import {
  LANDING_CEILING,
  OVER_RAIL,
  STAIR_CLEAR,
  STAIR_HEADROOM,
  STEP_GOING,
  STEP_RISE,
} from '../stairMeasures';
import { STAIR_WIDTH } from '../usualRanges';

/** A landing between two flights at a right angle. */
export const QUARTER_LANDING = stageKind({
  role: 'landing',
  stair: 'landing',
  needs: {
    width: { ...STAIR_CLEAR, of: 'stair' },
    widthOut: { of: 'way after the turn', usual: STAIR_WIDTH, tape: 'more helps', remedy: RAIL },
    height: STAIR_HEADROOM,
    rise: STEP_RISE,
    going: STEP_GOING,
  },
  may: { overRail: OVER_RAIL, ceiling: LANDING_CEILING },
  worthAsking: ['ceiling', 'overRail'],
  doorLeaf: false,
  doorUnderCeiling: false,
  cap: never,
  straight: never,
  levelToLevel: never,
  landingSpaces: ({ width, widthOut }) => [width ?? NaN, widthOut ?? NaN],
  trip: ONE_TURN,
  place: 'on the landing',
  passedBy: 'round the quarter landing',
  seenBest: 'from above',
  customerWord: 'landing where the stairs turn the corner',
  otherWords: ['landing'],
});
