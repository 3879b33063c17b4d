import type { SolvedStage } from '../stageSolver';
import type { MeasuresOf } from '../stageKind';
import { solvedAsFlight } from '../flight/solvedAsFlight';
import { RAMP } from './rampKind';

/** How a ramp is passed, and what is proved of it. */
export const RAMP_SOLVER: SolvedStage<MeasuresOf<typeof RAMP>> = solvedAsFlight(RAMP);
