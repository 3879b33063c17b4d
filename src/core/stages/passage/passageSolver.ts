import { oneSpace } from '../../motion/turningSpace';
import { openingPassages, type OpeningWords } from '../opening/opening';
import { besideLow, PLUMB, raisedBy } from '../lowPart';
import type { MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import type { PASSAGE } from './passageKind';

/** A passage is an opening with long walls. */
const WORDS: OpeningWords = {
  whole: 'the passage',
  sides: 'the walls of the passage',
  head: 'the ceiling of the passage',
};

/** How a passage is passed, and what is proved of it. */
export const PASSAGE_SOLVER: SolvedStage<MeasuresOf<typeof PASSAGE>> = {
  solvedBy: 'closed form',
  passages: (measures, piece) =>
    besideLow(measures, piece, PLUMB, (way, raise) =>
      raisedBy(openingPassages({ ...measures, ...way }, piece, WORDS), raise),
    ),
  leaningApart: false,
  // Without its length there may be none; what is turned over there goes down to the floor.
  turningSpaces: ({ length, width, height, lowWidth = width }) =>
    length === undefined ? undefined : oneSpace({ along: length, across: Math.min(width, lowWidth), height }),
  deepProof: null,
};
