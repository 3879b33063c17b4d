import { measureAt, type StageName } from '../stages/kinds';
import type { MeasuredOf } from '../stages/measuredOf';
import type { MeasureName } from '../stages/measures';

/** What is asked for one measure, and what a picture of it has to show. */
export interface MeasureAsked {
  readonly question: string;
  readonly photo: string;
}

interface At {
  /** As `placeWords` calls it. */
  readonly place: string;
  readonly stage: StageName;
}

/** Asked of a place as `placeWords` calls it. */
type Words = (place: string) => MeasureAsked;

const TAPE_ACROSS = 'the tape held across, its figures readable';
const TAPE_UP = 'the tape held upright, its figures readable';

const overhead: Words = (where) => ({
  question: `How high is the ceiling over ${where}, at the lowest?`,
  photo: `the ceiling over ${where}`,
});

/** How a measure is asked for that is of different things at different stages. A customer has a tape and a telephone, and no plan. */
const ASKED_OF: { readonly [Name in keyof MeasuredOf]: Readonly<Record<MeasuredOf[Name], Words>> } = {
  width: {
    'door opening': (place) => ({
      question: `How wide is ${place} inside the frame, from the strip the door closes against to the face of the open door?`,
      photo: `${place} wide open, ${TAPE_ACROSS}`,
    }),
    'lift doors': () => ({
      question: 'How wide is the opening of the lift when its doors are fully open?',
      photo: `the open lift doors, ${TAPE_ACROSS}`,
    }),
    room: (place) => ({ question: `How wide is ${place}?`, photo: `${place}, from a corner` }),
    stair: (place) => ({
      question: `How wide is the way on ${place} at the narrowest, between the wall and the handrail or post?`,
      photo: `${place} from below, ${TAPE_ACROSS}`,
    }),
    'way before the turn': (place) => ({
      question: `How wide is the way before ${place}, wall to wall, at the narrowest?`,
      photo: `${place} as you walk up to it, ${TAPE_ACROSS}`,
    }),
    'way between walls': (place) => ({
      question: `How wide is ${place} at the narrowest, wall to wall or to a radiator?`,
      photo: `${place} along its length, ${TAPE_ACROSS}`,
    }),
  },
  widthOut: {
    'lift car': () => ({
      question: 'How wide is the lift inside, from side to side?',
      photo: `inside the lift, ${TAPE_ACROSS}`,
    }),
    'passage beyond the door': (place) => ({
      question: `How wide is the passage that ${place} opens into, wall to wall?`,
      photo: `the passage from ${place}, ${TAPE_ACROSS}`,
    }),
    'way after the turn': (place) => ({
      question: `How wide is the way after ${place}, wall to wall or to the handrail, at the narrowest?`,
      photo: `the way on from ${place}, ${TAPE_ACROSS}`,
    }),
  },
  height: {
    'over the nosings': (place) => ({
      question: `How high is it above ${place}, straight up from the front edge of a step to whatever is lowest overhead?`,
      photo: `${place} from below with the ceiling over it, ${TAPE_UP} on the edge of a step`,
    }),
    'door opening': (place) => ({
      question: `How high is ${place} inside the frame, from the floor or sill to the underside of the frame?`,
      photo: `the whole of ${place}, ${TAPE_UP}`,
    }),
    'floor to ceiling': (place) => ({
      question: `How high is ${place}, floor to ceiling, beam or lamp, whichever is lowest?`,
      photo: `the lowest place overhead in ${place}`,
    }),
  },
  ceiling: {
    'lift car': () => ({
      question: 'How high is the lift inside, floor to ceiling?',
      photo: `inside the lift, ${TAPE_UP}`,
    }),
    'passage beyond the door': (place) => overhead(`the passage at ${place}`),
    'floor of the place': (place) => overhead(place),
  },
  depth: {
    'lift car': () => ({
      question: 'How deep is the lift inside, from its closed doors to the back wall or handrail?',
      photo: `inside the lift, the tape held from front to back`,
    }),
    'dead end': (place) => ({
      question: `Does the passage at ${place} end on one side? If so, how far is it from the door frame to that end?`,
      photo: `the passage to both sides of ${place}`,
    }),
    landing: (place) => ({
      question: `How deep is ${place}, from the edge of the first step to the wall in front of you?`,
      photo: `${place} from above, the tape held from the step to the wall`,
    }),
  },
  length: {
    room: (place) => ({ question: `How long is ${place}?`, photo: `${place} along its length` }),
    'end to end': (place) => ({
      question: `How long is ${place}, from one end to the other?`,
      photo: `${place} along its length`,
    }),
  },
  rise: {
    'one step': (place) => ({
      question: `How high is one step of ${place}, from the top of one to the top of the next?`,
      photo: `one step of ${place} from the side, ${TAPE_UP}`,
    }),
    'whole ramp': (place) => ({
      question: `How high does ${place} rise in all, from its lower end to its upper?`,
      photo: `${place} from the side, ${TAPE_UP} at its upper end`,
    }),
  },
};

/** How a measure is asked for that is of one thing wherever it is taken. */
const ASKED: Readonly<Record<Exclude<MeasureName, keyof MeasuredOf>, Words>> = {
  turn: (place) => ({
    question: `How far does ${place} turn: a quarter, half way round, or some other angle?`,
    photo: `${place} from above, so that the angle can be seen`,
  }),
  going: (place) => ({
    question: `How deep is one step of ${place}, from its front edge to the front edge of the next, measured level?`,
    photo: `one step of ${place} from the side, the tape held level`,
  }),
  risers: (place) => ({
    question: `How many steps up are there on ${place}? Count the last one, on to the floor above, too.`,
    photo: `${place} from below, all its steps to be seen`,
  }),
  treads: (place) => ({
    question: `How many of the steps of ${place} are wedge-shaped?`,
    photo: `${place} from above, every step to be seen`,
  }),
  well: (place) => ({
    question: `At ${place}, how wide is the gap between the stairs that come up and the stairs that go on? If they touch, say none.`,
    photo: `the gap between the two runs of stairs, ${TAPE_ACROSS}`,
  }),
  wall: (place) => ({
    question: `How thick is the wall that ${place} goes through, with its frame?`,
    photo: `the side of the frame of ${place}, ${TAPE_ACROSS}`,
  }),
  overRail: (place) => ({
    question: `Is the inner side of ${place} a wall or a railing? If a railing, how high does it stand above the step edges?`,
    photo: `the railing of ${place}, ${TAPE_UP}`,
  }),
  footCeiling: (place) => ({
    question: `How high is the ceiling over the floor at the bottom of ${place}, just before the first step?`,
    photo: `${place} from in front, with the ceiling over the first step`,
  }),
  footSpace: (place) => ({
    question: `At the bottom of ${place}, how far is it from the first step to the wall or door facing it?`,
    photo: `the floor at the bottom of ${place}, taken from the steps`,
  }),
  headCeiling: (place) => ({
    question: `How high is the ceiling over the floor at the top of ${place}?`,
    photo: `the top of ${place} with the ceiling over it`,
  }),
  headSpace: (place) => ({
    question: `Which way do you turn at the top of ${place}? How far is it from the top step to the wall in front of you?`,
    photo: `the floor at the top of ${place}, taken from a few steps down`,
  }),
  run: (place) => ({
    question: `After ${place}, how far is it straight on to the next door, turn or step?`,
    photo: `the way on from ${place} up to the next turn`,
  }),
  lowWidth: (place) => ({
    question: `Does anything stand into ${place} low down, such as a radiator or a post? How wide is the way beside it?`,
    photo: `what stands into ${place}, ${TAPE_ACROSS} beside it`,
  }),
  lowHeight: (place) => ({
    question: `How high does the radiator or post in ${place} stand above the floor or the steps?`,
    photo: `what stands into ${place}, ${TAPE_UP} beside it`,
  }),
  ratedLoad: () => ({
    question: 'What load in kg does the plate in the lift give? A number of persons alone is not enough.',
    photo: 'the plate in the lift',
  }),
};

/**
 * What is asked of a customer for one measure of a place, in words without a column's name.
 * @param place as `placeWords` calls it
 * @example measureQuestion('headSpace', { place: 'the stairs', stage: 'flight' }).photo // 'the floor at the top of the stairs, taken from a few steps down'
 */
export function measureQuestion(measure: MeasureName, { place, stage }: At): MeasureAsked {
  if (!isOfSeveral(measure)) return ASKED[measure](place);
  const ways: Readonly<Partial<Record<string, Words>>> = ASKED_OF[measure];
  const words = ways[measureAt(stage, measure)?.of ?? OTHERWISE[measure]];
  if (!words) throw new Error(`no question for ${measure} of ${stage}`);
  return words(place);
}

const isOfSeveral = (measure: MeasureName): measure is keyof MeasuredOf => measure in ASKED_OF;

/** Of what a measure is that was noted at a stage that has none. */
const OTHERWISE: MeasuredOf = {
  width: 'way between walls',
  widthOut: 'way after the turn',
  height: 'floor to ceiling',
  ceiling: 'floor of the place',
  depth: 'landing',
  length: 'end to end',
  rise: 'one step',
};
