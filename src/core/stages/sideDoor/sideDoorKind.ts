import { SPACE } from '../measures';
import { FURNITURE, HEAD, LEAF, WALLS } from '../siteRemedies';
import { never, ONE_TURN, stageKind } from '../stageKind';
import { CLEAR_HEIGHT, DOOR_HEIGHT, DOOR_WIDTH, PASSAGE_WIDTH, PRACTICE, range, WALL } from '../usualRanges';

/** A door in the side of a passage. */
export const SIDE_DOOR = stageKind({
  role: 'turn',
  stair: null,
  ceiling: 'ceiling',
  arms: {
    in: { width: 'width', height: 'height', door: true },
    out: { width: 'widthOut', height: 'ceiling' },
    eitherWay: true,
  },
  needs: {
    width: { of: 'door opening', usual: DOOR_WIDTH, tape: 'more helps', remedy: LEAF },
    height: { of: 'door opening', usual: DOOR_HEIGHT, tape: 'more helps', remedy: HEAD },
    wall: { usual: WALL, tape: 'more hinders', remedy: LEAF, none: '0 mm' },
    widthOut: {
      of: 'passage beyond the door',
      usual: PASSAGE_WIDTH,
      tape: 'more helps',
      remedy: WALLS,
      called: 'passage',
      heading: 'Passage',
    },
    ceiling: { of: 'passage beyond the door', usual: CLEAR_HEIGHT, tape: 'more helps', remedy: null },
  },
  may: {
    depth: {
      of: 'dead end',
      usual: range(0, 20000, PRACTICE),
      possible: SPACE,
      tape: 'more helps',
      remedy: FURNITURE,
      called: 'dead end',
      heading: 'Dead end',
      // The jamb may stand at the closed end.
      none: '0 mm',
    },
  },
  worthAsking: [],
  doorLeaf: true,
  doorUnderCeiling: true,
  cap: never,
  straight: never,
  levelToLevel: never,
  landingSpaces: never,
  trip: ONE_TURN,
  place: 'on the way',
  passedBy: 'through the side door',
  seenBest: 'from above',
  customerWord: 'door to the side',
  otherWords: [],
});
