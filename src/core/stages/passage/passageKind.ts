import { FURNITURE, LAMP, WALLS } from '../siteRemedies';
import { never, NO_TRIP, stageKind } from '../stageKind';
import { CLEAR_HEIGHT, PASSAGE_WIDTH, PRACTICE, range } from '../usualRanges';

/** A straight way between two walls. */
export const PASSAGE = stageKind({
  role: 'straight',
  stair: null,
  ceiling: 'height',
  needs: {
    width: { of: 'way between walls', usual: PASSAGE_WIDTH, tape: 'more helps', remedy: WALLS },
    height: { of: 'floor to ceiling', usual: CLEAR_HEIGHT, tape: 'more helps', remedy: LAMP, sky: true },
  },
  may: {
    length: { of: 'end to end', usual: range(300, 30000, PRACTICE), tape: 'more helps', remedy: FURNITURE },
    lowWidth: { usual: PASSAGE_WIDTH, tape: 'more helps', remedy: WALLS },
    lowHeight: { usual: range(100, 1200, PRACTICE), tape: 'more hinders', remedy: null },
  },
  worthAsking: ['length'],
  doorLeaf: false,
  doorUnderCeiling: false,
  cap: never,
  straight: ({ length }) => length,
  levelToLevel: never,
  landingSpaces: never,
  trip: { ...NO_TRIP, distance: ({ length }) => length ?? 0 },
  place: 'in the passage',
  passedBy: 'along the passage',
  seenBest: 'from in front',
  customerWord: 'passage',
  otherWords: ['hall', 'hallway', 'corridor', 'lobby', 'vestibule', 'porch', 'path', 'alley'],
});
