import { besideLow, raisedBy, type SectionOfWay } from '../lowPart';
import { never, type MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import type { FLIGHT } from './flightKind';
import type { FlightEndMeasures } from './flightEnds';
import { flightPassages } from './flightPassages';

/**
 * A handrail's height is measured plumb, as the headroom. What leans past it lies along the pitch. How that comes on to a
 * flight with measured ends is not shown, so that there less is promised than the section by itself would leave.
 */
const acrossPitch = (m: MeasuresOf<typeof FLIGHT>): SectionOfWay => {
  const ends = [m.footCeiling, m.footSpace, m.headCeiling, m.headSpace];
  return {
    square: m.going / Math.hypot(m.rise, m.going),
    leans: ends.every((end) => end === undefined) ? 'lengthwise' : 'none',
  };
};

/**
 * The ends of a flight for what is carried so far above its floors and nosings from the one level floor to the other: the
 * same bends, under ceilings that are nearer by as much. It may be raised and set down in the bends themselves, which can
 * take less; that is not shown.
 */
const endsRaised = (ends: FlightEndMeasures, raise: number): FlightEndMeasures => ({
  ...ends,
  footCeiling: ends.footCeiling === undefined ? undefined : ends.footCeiling - raise,
  headCeiling: ends.headCeiling === undefined ? undefined : ends.headCeiling - raise,
});

/** How a flight is passed, and what is proved of it. */
export const FLIGHT_SOLVER: SolvedStage<MeasuresOf<typeof FLIGHT>> = {
  solvedBy: 'closed form',
  passages: (m, piece) =>
    besideLow(m, piece, acrossPitch(m), ({ width, height }, raise) => {
      const stairs = { width, headroom: height, rise: m.rise, going: m.going };
      return raisedBy(flightPassages(stairs, piece, endsRaised(m, raise)), raise);
    }),
  leaningApart: false,
  turningSpaces: never,
  deepProof: null,
};
