import { isStair, type StageName } from '../stages/kinds';
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

const TAPE_ACROSS = 'the tape held across, its figures readable';
const TAPE_UP = 'the tape held upright, its figures readable';

/** How each measure is asked for. A customer has a tape and a telephone, and no plan. */
const ASKED: Readonly<Record<MeasureName, (at: At) => MeasureAsked>> = {
  width: ({ place, stage }) => {
    if (stage === 'door' || stage === 'side door') {
      return {
        question: `How wide is ${place} inside the frame, from the strip the door closes against to the face of the open door?`,
        photo: `${place} wide open, ${TAPE_ACROSS}`,
      };
    }
    if (stage === 'lift') {
      return {
        question: 'How wide is the opening of the lift when its doors are fully open?',
        photo: `the open lift doors, ${TAPE_ACROSS}`,
      };
    }
    if (stage === 'room') return { question: `How wide is ${place}?`, photo: `${place}, from a corner` };
    if (isStair(stage)) {
      return {
        question: `How wide is the way on ${place} at the narrowest, between the wall and the handrail or post?`,
        photo: `${place} from below, ${TAPE_ACROSS}`,
      };
    }
    if (stage === 'corner') {
      return {
        question: `How wide is the way before ${place}, wall to wall, at the narrowest?`,
        photo: `${place} as you walk up to it, ${TAPE_ACROSS}`,
      };
    }
    return {
      question: `How wide is ${place} at the narrowest, wall to wall or to a radiator?`,
      photo: `${place} along its length, ${TAPE_ACROSS}`,
    };
  },
  widthOut: ({ place, stage }) => {
    if (stage === 'lift') {
      return {
        question: 'How wide is the lift inside, from side to side?',
        photo: `inside the lift, ${TAPE_ACROSS}`,
      };
    }
    if (stage === 'side door') {
      return {
        question: `How wide is the passage that ${place} opens into, wall to wall?`,
        photo: `the passage from ${place}, ${TAPE_ACROSS}`,
      };
    }
    return {
      question: `How wide is the way after ${place}, wall to wall or to the handrail, at the narrowest?`,
      photo: `the way on from ${place}, ${TAPE_ACROSS}`,
    };
  },
  height: ({ place, stage }) => {
    if (isStair(stage) && stage !== 'ramp') {
      return {
        question: `How high is it above ${place}, straight up from the front edge of a step to whatever is lowest overhead?`,
        photo: `${place} from below with the ceiling over it, ${TAPE_UP} on the edge of a step`,
      };
    }
    if (stage === 'door' || stage === 'side door' || stage === 'lift') {
      return {
        question: `How high is ${place} inside the frame, from the floor or sill to the underside of the frame?`,
        photo: `the whole of ${place}, ${TAPE_UP}`,
      };
    }
    return {
      question: `How high is ${place}, floor to ceiling, beam or lamp, whichever is lowest?`,
      photo: `the lowest place overhead in ${place}`,
    };
  },
  ceiling: ({ place, stage }) => {
    if (stage === 'lift') {
      return {
        question: 'How high is the lift inside, floor to ceiling?',
        photo: `inside the lift, ${TAPE_UP}`,
      };
    }
    const where = stage === 'side door' ? `the passage at ${place}` : place;
    return {
      question: `How high is the ceiling over ${where}, at the lowest?`,
      photo: `the ceiling over ${where}`,
    };
  },
  depth: ({ place, stage }) => {
    if (stage === 'lift') {
      return {
        question: 'How deep is the lift inside, from its closed doors to the back wall or handrail?',
        photo: `inside the lift, the tape held from front to back`,
      };
    }
    if (stage === 'side door') {
      return {
        question: `Does the passage at ${place} end on one side? If so, how far is it from the door frame to that end?`,
        photo: `the passage to both sides of ${place}`,
      };
    }
    return {
      question: `How deep is ${place}, from the edge of the first step to the wall in front of you?`,
      photo: `${place} from above, the tape held from the step to the wall`,
    };
  },
  length: ({ place, stage }) => ({
    question: stage === 'room' ? `How long is ${place}?` : `How long is ${place}, from one end to the other?`,
    photo: `${place} along its length`,
  }),
  turn: ({ place }) => ({
    question: `How far does ${place} turn: a quarter, half way round, or some other angle?`,
    photo: `${place} from above, so that the angle can be seen`,
  }),
  rise: ({ place, stage }) => ({
    question:
      stage === 'ramp'
        ? `How high does ${place} rise in all, from its lower end to its upper?`
        : `How high is one step of ${place}, from the top of one to the top of the next?`,
    photo: `one step of ${place} from the side, ${TAPE_UP}`,
  }),
  going: ({ place }) => ({
    question: `How deep is one step of ${place}, from its front edge to the front edge of the next, measured level?`,
    photo: `one step of ${place} from the side, the tape held level`,
  }),
  risers: ({ place }) => ({
    question: `How many steps up are there on ${place}? Count the last one, on to the floor above, too.`,
    photo: `${place} from below, all its steps to be seen`,
  }),
  treads: ({ place }) => ({
    question: `How many of the steps of ${place} are wedge-shaped?`,
    photo: `${place} from above, every step to be seen`,
  }),
  well: ({ place }) => ({
    question: `At ${place}, how wide is the gap between the stairs that come up and the stairs that go on? If they touch, say none.`,
    photo: `the gap between the two runs of stairs, ${TAPE_ACROSS}`,
  }),
  wall: ({ place }) => ({
    question: `How thick is the wall that ${place} goes through, with its frame?`,
    photo: `the side of the frame of ${place}, ${TAPE_ACROSS}`,
  }),
  overRail: ({ place }) => ({
    question: `Is the inner side of ${place} a wall or a railing? If a railing, how high does it stand above the step edges?`,
    photo: `the railing of ${place}, ${TAPE_UP}`,
  }),
  footCeiling: ({ place }) => ({
    question: `How high is the ceiling over the floor at the bottom of ${place}, just before the first step?`,
    photo: `${place} from in front, with the ceiling over the first step`,
  }),
  footSpace: ({ place }) => ({
    question: `At the bottom of ${place}, how far is it from the first step to the wall or door facing it?`,
    photo: `the floor at the bottom of ${place}, taken from the steps`,
  }),
  headCeiling: ({ place }) => ({
    question: `How high is the ceiling over the floor at the top of ${place}?`,
    photo: `the top of ${place} with the ceiling over it`,
  }),
  headSpace: ({ place }) => ({
    question: `Which way do you turn at the top of ${place}? How far is it from the top step to the wall in front of you?`,
    photo: `the floor at the top of ${place}, taken from a few steps down`,
  }),
  run: ({ place }) => ({
    question: `After ${place}, how far is it straight on to the next door, turn or step?`,
    photo: `the way on from ${place} up to the next turn`,
  }),
  lowWidth: ({ place }) => ({
    question: `Does anything stand into ${place} low down, such as a radiator or a post? How wide is the way beside it?`,
    photo: `what stands into ${place}, ${TAPE_ACROSS} beside it`,
  }),
  lowHeight: ({ place }) => ({
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
export const measureQuestion = (measure: MeasureName, at: At): MeasureAsked => ASKED[measure](at);
