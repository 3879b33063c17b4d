import { LAMP } from '../siteRemedies';
import { never, stageKind } from '../stageKind';
import { SKY, type LooseStageMeasures, type StageMeasures } from '../measures';
import { STAIR_CLEAR } from '../stairMeasures';
import { CLEAR_HEIGHT, PRACTICE, range } from '../usualRanges';

/**
 * A few steps as the flight they are: nothing above where no height is given. A single riser is taken for two of half
 * the height, the lower of them a going before it: what passes over both passes over the one.
 */
function asFlight({ width, height = SKY, rise, going, risers }: LooseStageMeasures): StageMeasures {
  const single = risers === 1;
  return {
    ...(width === undefined ? {} : { width }),
    ...(rise === undefined ? {} : { rise: single ? rise / 2 : rise }),
    ...(going === undefined ? {} : { going }),
    ...(risers === undefined ? {} : { risers: single ? 2 : risers }),
    height,
    footCeiling: height,
    headCeiling: height,
  };
}

/** A few steps, mostly outdoors and without walls; a door that follows stands at the last riser. */
export const STEPS = stageKind({
  role: 'flight',
  stair: 'flight',
  needs: {
    width: { ...STAIR_CLEAR, of: 'stair' },
    risers: { usual: range(1, 10, PRACTICE), tape: 'not taped', remedy: null },
    rise: { of: 'one step', usual: range(50, 220, PRACTICE), tape: 'shared by the risers', remedy: null },
    going: { usual: range(220, 700, PRACTICE), tape: 'shared by the risers', remedy: null },
  },
  may: {
    height: {
      of: 'over the nosings',
      usual: CLEAR_HEIGHT,
      tape: 'more helps',
      remedy: LAMP,
      called: 'headroom',
      sky: true,
    },
  },
  worthAsking: [],
  doorLeaf: false,
  doorUnderCeiling: false,
  cap: never,
  straight: ({ risers, rise, going }) =>
    risers === undefined || rise === undefined || going === undefined
      ? undefined
      : (risers - 1) * Math.hypot(rise, going),
  levelToLevel: never,
  landingSpaces: never,
  solvedAsFlight: asFlight,
  doorAtItsEnd: true,
  trip: {
    turns: 0,
    needs: ['risers'],
    distance: ({ risers = 0, going = 0 }) => risers * going,
    rises: ({ risers = 0 }) => risers,
  },
  place: 'on the way',
  passedBy: 'the steps',
  plural: true,
  seenBest: 'from the side',
  customerWord: 'steps',
  names: ['step', 'kerb', 'sill'],
  otherWords: ['threshold', 'curb', 'stoop'],
});
