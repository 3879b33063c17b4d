import { HEAD, LEAF } from '../siteRemedies';
import { never, NO_TRIP, stageKind } from '../stageKind';
import { DOOR_HEIGHT, DOOR_WIDTH, WALL } from '../usualRanges';

/** A door that is walked through straight on. */
export const DOOR = stageKind({
  role: 'opening',
  stair: null,
  needs: {
    width: { of: 'door opening', usual: DOOR_WIDTH, tape: 'more helps', remedy: LEAF },
    height: { of: 'door opening', usual: DOOR_HEIGHT, tape: 'more helps', remedy: HEAD },
  },
  may: { wall: { usual: WALL, tape: 'more hinders', remedy: null, none: '0 mm' } },
  worthAsking: [],
  doorLeaf: true,
  doorUnderCeiling: false,
  cap: never,
  straight: never,
  levelToLevel: never,
  landingSpaces: never,
  trip: NO_TRIP,
  place: 'on the way',
  passedBy: 'straight through the door',
  seenBest: 'from in front',
  customerWord: 'door',
  otherWords: ['doorway', 'gate', 'gateway', 'entrance'],
});
