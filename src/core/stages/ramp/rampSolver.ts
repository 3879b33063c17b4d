import type { SolvedStage } from '../stageSolver';
import type { MeasuresOf } from '../stageKind';
import { solvedAsFlight } from '../flight/solvedAsFlight';
import { RAMP } from './rampKind';

export const RAMP_SOLVER: SolvedStage<MeasuresOf<typeof RAMP>> = solvedAsFlight(RAMP);
