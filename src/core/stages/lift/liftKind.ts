import { never, ONE_TURN, stageKind } from '../stageKind';
import { range } from '../usualRanges';

const CARS = 'ISO 4190-1, cars of 450 to 1000 kg and larger, partly from memory';

/** A lift car, its door in the middle of one wall. */
export const LIFT = stageKind({
  role: 'car',
  stair: null,
  needs: {
    width: {
      of: 'lift doors',
      usual: range(700, 1500, CARS),
      tape: 'more helps',
      remedy: null,
      called: 'door',
    },
    height: {
      of: 'door opening',
      usual: range(1900, 2500, CARS),
      tape: 'more helps',
      remedy: null,
      called: 'door',
    },
    widthOut: {
      of: 'lift car',
      usual: range(800, 2500, CARS),
      tape: 'more helps',
      remedy: null,
      called: 'car width',
      heading: 'Car width',
    },
    depth: {
      of: 'lift car',
      usual: range(900, 3000, CARS),
      tape: 'more helps',
      remedy: null,
      called: 'car depth',
      heading: 'Car depth',
    },
    ceiling: {
      of: 'lift car',
      usual: range(2000, 3000, CARS),
      tape: 'more helps',
      remedy: null,
      called: 'car height',
    },
  },
  may: { ratedLoad: { usual: range(200, 5000, CARS), tape: 'no space', remedy: null } },
  worthAsking: ['ratedLoad'],
  doorLeaf: false,
  doorUnderCeiling: true,
  cap: never,
  straight: never,
  levelToLevel: never,
  landingSpaces: never,
  trip: ONE_TURN,
  place: 'on the way',
  passedBy: 'into the lift, and out by the same door',
  seenBest: 'from above',
  customerWord: 'lift',
  otherWords: ['elevator'],
});
