import { never, type MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import type { FLIGHT } from './flightKind';
import { flightPassages } from './flightPassages';

export const FLIGHT_SOLVER: SolvedStage<MeasuresOf<typeof FLIGHT>> = {
  solvedBy: 'closed form',
  passages: (m, piece) =>
    flightPassages({ width: m.width, headroom: m.height, rise: m.rise, going: m.going }, piece, m),
  leaningApart: false,
  turningSpaces: never,
  deepProof: null,
};
