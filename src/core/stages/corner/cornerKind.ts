import { LAMP, WALLS } from '../siteRemedies';
import { never, ONE_TURN, stageKind } from '../stageKind';
import { CLEAR_HEIGHT, PASSAGE_WIDTH, PRACTICE, range } from '../usualRanges';

/** Where two passages meet at an angle. */
export const CORNER = stageKind({
  role: 'turn',
  stair: null,
  ceiling: 'height',
  arms: { in: { width: 'width', height: 'height' }, out: { width: 'widthOut', height: 'height' } },
  needs: {
    width: { of: 'way before the turn', usual: PASSAGE_WIDTH, tape: 'more helps', remedy: WALLS },
    widthOut: { of: 'way after the turn', usual: PASSAGE_WIDTH, tape: 'more helps', remedy: WALLS },
    height: { of: 'floor to ceiling', usual: CLEAR_HEIGHT, tape: 'more helps', remedy: LAMP },
  },
  may: { turn: { usual: range(30, 120, PRACTICE), tape: 'not taped', remedy: null, named: true } },
  worthAsking: [],
  doorLeaf: false,
  doorUnderCeiling: false,
  cap: never,
  straight: never,
  levelToLevel: never,
  landingSpaces: never,
  trip: ONE_TURN,
  place: 'on the way',
  passedBy: 'round the corner',
  seenBest: 'from above',
  customerWord: 'corner',
  otherWords: ['turn', 'bend'],
});
