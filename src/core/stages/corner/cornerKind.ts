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
    width: { usual: PASSAGE_WIDTH, tape: 'more helps', remedy: WALLS },
    widthOut: { usual: PASSAGE_WIDTH, tape: 'more helps', remedy: WALLS },
    height: { usual: CLEAR_HEIGHT, tape: 'more helps', remedy: LAMP },
  },
  may: { turn: { usual: range(30, 120, PRACTICE), tape: 'not taped', remedy: null, named: true } },
  doorLeaf: false,
  doorUnderCeiling: false,
  cap: never,
  straight: never,
  levelToLevel: never,
  landingSpaces: never,
  trip: ONE_TURN,
  place: 'on the way',
  passedBy: 'round the corner',
  customerWord: 'corner',
  otherWords: ['turn', 'bend'],
});
