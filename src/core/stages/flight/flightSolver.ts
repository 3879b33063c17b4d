import { besideLow, raisedBy } from '../lowPart';
import { never, type MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import type { FLIGHT } from './flightKind';
import { flightPassages } from './flightPassages';

export const FLIGHT_SOLVER: SolvedStage<MeasuresOf<typeof FLIGHT>> = {
  solvedBy: 'closed form',
  passages: (m, piece) =>
    besideLow(m, ({ width, height }, raise) => {
      const stairs = { width, headroom: height, rise: m.rise, going: m.going };
      return raisedBy(flightPassages(stairs, piece, m), raise);
    }),
  leaningApart: false,
  turningSpaces: never,
  deepProof: null,
};
