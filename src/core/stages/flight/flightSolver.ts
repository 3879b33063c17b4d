import { besideLow, raisedBy, type SectionOfWay } from '../lowPart';
import { never, type MeasuresOf } from '../stageKind';
import type { PlacedEnds, SolvedStage, TapedSets } from '../stageSolver';
import { CONDITIONS } from '../../geometry/proofs/conditions';
import { flightCutBlocks } from '../../geometry/proofs/flightCutBlocks';
import type { PieceSize } from '../../measures/piece';
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
  deepProof: { upTo: Infinity, proves },
};

function proves(
  { best }: TapedSets<MeasuresOf<typeof FLIGHT> & PlacedEnds>,
  piece: PieceSize,
): string | undefined {
  const blocked = best.every((m) => {
    const { risers, footCeiling = Infinity, headCeiling = Infinity } = m;
    // Not counted, they are those of a flight longer than the piece, and nothing is known of its ends.
    if (risers === undefined || m.noTreads) return false;
    return flightCutBlocks(
      {
        width: m.width,
        headroom: m.height,
        rise: m.rise,
        going: m.going,
        risers,
        footCeiling,
        headCeiling,
        footSpace: m.footSpace ?? Infinity,
        headSpace: m.headSpace ?? Infinity,
        endsOpen: m.endsOpen === true || m.footOnLanding === true || m.headOnLanding === true,
      },
      piece,
    );
  });
  return blocked ? CONDITIONS.middleUpFlight : undefined;
}
