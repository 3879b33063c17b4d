import type { SolvedStage } from '../stageSolver';
import type { MeasuresOf } from '../stageKind';
import { solvedAsFlight } from '../flight/solvedAsFlight';
import { STEPS } from './stepsKind';

/** How a few steps are passed, and what is proved of them. */
export const STEPS_SOLVER: SolvedStage<MeasuresOf<typeof STEPS>> = solvedAsFlight(STEPS);
