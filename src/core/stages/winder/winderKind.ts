import { never, ONE_TURN, stageKind } from '../stageKind';
import { STAIR_CLEAR, STAIR_HEADROOM, STEP_GOING, STEP_RISE } from '../stairMeasures';
import { PRACTICE, range } from '../usualRanges';

/** Treads that turn the stair as they climb. */
export const WINDER = stageKind({
  role: 'landing',
  stair: 'winding',
  needs: {
    width: { ...STAIR_CLEAR, of: 'stair' },
    height: STAIR_HEADROOM,
    turn: {
      usual: range(30, 180, PRACTICE),
      possible: { least: 1, most: 180, source: 'winding treads may turn a stair back' },
      tape: 'not taped',
      remedy: null,
    },
    rise: STEP_RISE,
    // Measured on the walking line, where Approved Document K asks for what it asks of a straight flight.
    going: STEP_GOING,
  },
  may: {
    widthOut: { ...STAIR_CLEAR, of: 'way after the turn' },
    treads: { usual: range(2, 6, PRACTICE), tape: 'not taped', remedy: null },
  },
  worthAsking: ['treads'],
  doorLeaf: false,
  doorUnderCeiling: false,
  cap: () => ({ kind: 'winding treads' }),
  straight: never,
  levelToLevel: never,
  landingSpaces: never,
  trip: ONE_TURN,
  place: 'on the way',
  passedBy: 'round the winding treads',
  seenBest: 'from above',
  customerWord: 'turning steps',
  otherWords: ['winders'],
});
