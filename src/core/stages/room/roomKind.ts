import { CLEAR } from '../measures';
import { FURNITURE } from '../siteRemedies';
import { never, NO_MEASURES, NO_TRIP, stageKind } from '../stageKind';
import { CLEAR_HEIGHT, PRACTICE, range } from '../usualRanges';

const SIDE = range(1500, 15000, PRACTICE);

/** A room: where the route ends, or one on the way. */
export const ROOM = stageKind({
  role: 'room',
  stair: null,
  ceiling: 'height',
  needs: {
    length: { of: 'room', usual: SIDE, possible: CLEAR, tape: 'more helps', remedy: FURNITURE },
    width: { of: 'room', usual: SIDE, tape: 'more helps', remedy: FURNITURE },
    height: { of: 'floor to ceiling', usual: CLEAR_HEIGHT, tape: 'more helps', remedy: null },
  },
  may: NO_MEASURES,
  worthAsking: [],
  doorLeaf: false,
  doorUnderCeiling: false,
  cap: never,
  straight: never,
  levelToLevel: never,
  landingSpaces: never,
  trip: NO_TRIP,
  place: 'in the room',
  passedBy: 'into the room',
  seenBest: 'from above',
  customerWord: 'room',
  otherWords: ['lobby', 'porch', 'entrance'],
});
