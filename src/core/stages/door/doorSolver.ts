import type { MeasuresOf } from '../stageKind';
import { never } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import { openingPassages } from '../opening/opening';
import type { DOOR } from './doorKind';

/** How a door is passed, and what is proved of it. */
export const DOOR_SOLVER: SolvedStage<MeasuresOf<typeof DOOR>> = {
  solvedBy: 'closed form',
  passages: (measures, piece) => openingPassages(measures, piece),
  leaningApart: false,
  turningSpaces: never,
  deepProof: null,
};
