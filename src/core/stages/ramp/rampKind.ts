import { LAMP } from '../siteRemedies';
import { never, stageKind } from '../stageKind';
import { SKY, type LooseStageMeasures, type StageMeasures } from '../measures';
import { STAIR_CLEAR } from '../stairMeasures';
import { CLEAR_HEIGHT, PRACTICE, range } from '../usualRanges';

/** So fine that the line of nosings lies above the ramp by no more than a hundredth of its rise. */
const FINE_STEPS = 100;

/**
 * A ramp as a flight of very many very low steps. Their line of nosings begins one of those rises above the ramp's foot
 * and comes down to the ramp at its head, so that what passes above the steps passes above the ramp; and the ceiling over
 * them is as much lower, so that it is nowhere higher above the ramp than was measured.
 */
function asFlight({ width, height = SKY, length, rise }: LooseStageMeasures): StageMeasures {
  const level = length === undefined || rise === undefined ? undefined : Math.sqrt(length ** 2 - rise ** 2);
  const headroom = height === SKY ? SKY : height - (rise ?? 0) / FINE_STEPS;
  return {
    ...(width === undefined ? {} : { width }),
    ...(rise === undefined ? {} : { rise: rise / FINE_STEPS }),
    ...(level === undefined || !(level > 0) ? {} : { going: level / (FINE_STEPS - 1) }),
    risers: FINE_STEPS,
    height: headroom,
    footCeiling: height,
    headCeiling: height,
  };
}

/** A sloping way without steps; a door that follows stands where it ends. */
export const RAMP = stageKind({
  role: 'flight',
  stair: 'flight',
  needs: {
    width: { ...STAIR_CLEAR, of: 'stair' },
    // A ramp for a wheelchair has at most 1 in 12 over 5 m; one for a lawn mower or a cellar is as steep as a stair.
    length: { of: 'end to end', usual: range(300, 20000, PRACTICE), tape: 'either way', remedy: null },
    rise: {
      of: 'whole ramp',
      usual: range(20, 2000, PRACTICE),
      possible: { least: 1, most: 5000, source: 'ours: the rise of a whole ramp' },
      tape: 'either way',
      remedy: null,
      called: 'in all',
    },
  },
  may: {
    height: {
      of: 'floor to ceiling',
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
  straight: ({ length }) => length,
  levelToLevel: never,
  landingSpaces: never,
  solvedAsFlight: asFlight,
  doorAtItsEnd: true,
  trip: { turns: 0, needs: [], distance: ({ length }) => length ?? 0, rises: () => 0 },
  place: 'on the way',
  passedBy: 'the ramp',
  seenBest: 'from the side',
  customerWord: 'ramp',
  otherWords: ['slope', 'incline'],
});
