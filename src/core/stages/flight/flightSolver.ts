import { besideLow, raisedBy, type SectionOfWay } from '../lowPart';
import { never, type MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import type { FLIGHT } from './flightKind';
import { flightPassages } from './flightPassages';

/**
 * A handrail's height is measured plumb, as the headroom. What leans past it lies along the pitch; how it comes on to a
 * flight with measured ends is not shown.
 */
const acrossPitch = (m: MeasuresOf<typeof FLIGHT>): SectionOfWay => {
  const ends = [m.footCeiling, m.footSpace, m.headCeiling, m.headSpace];
  return {
    square: m.going / Math.hypot(m.rise, m.going),
    leans: ends.every((end) => end === undefined) ? 'lengthwise' : 'none',
  };
};

/** How a flight is passed, and what is proved of it. */
export const FLIGHT_SOLVER: SolvedStage<MeasuresOf<typeof FLIGHT>> = {
  solvedBy: 'closed form',
  passages: (m, piece) =>
    besideLow(m, piece, acrossPitch(m), ({ width, height }, raise) => {
      const stairs = { width, headroom: height, rise: m.rise, going: m.going };
      return raisedBy(flightPassages(stairs, piece, m), raise);
    }),
  leaningApart: false,
  turningSpaces: never,
  deepProof: null,
};
