import type { SolvedStage } from '../stageSolver';
import type { MeasuresOf } from '../stageKind';
import { solvedAsFlight } from '../flight/solvedAsFlight';
import { STEPS } from './stepsKind';

export const STEPS_SOLVER: SolvedStage<MeasuresOf<typeof STEPS>> = solvedAsFlight(STEPS);
