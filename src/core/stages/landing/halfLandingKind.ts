import { WALLS } from '../siteRemedies';
import { never, NO_TRIP, stageKind } from '../stageKind';
import {
  LANDING_CEILING,
  OVER_RAIL,
  STAIR_CLEAR,
  STAIR_HEADROOM,
  STEP_GOING,
  STEP_RISE,
} from '../stairMeasures';
import { PRACTICE, range } from '../usualRanges';

/** A landing between two flights that run side by side, the upper one back over the lower. */
export const HALF_LANDING = stageKind({
  role: 'landing',
  stair: 'landing',
  needs: {
    width: { ...STAIR_CLEAR, of: 'stair' },
    well: { usual: range(0, 2000, PRACTICE), tape: 'more helps', remedy: null, none: 'bare 0' },
    depth: {
      of: 'landing',
      usual: range(600, 3000, 'as deep as the flight is wide: Approved Document K 1.20'),
      tape: 'more helps',
      remedy: WALLS,
    },
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
  landingSpaces: ({ depth }) => [depth ?? NaN],
  trip: { ...NO_TRIP, turns: 2 },
  place: 'on the landing',
  passedBy: 'round the half landing',
  seenBest: 'from above',
  customerWord: 'landing where the stairs turn back',
  otherWords: ['landing'],
});
