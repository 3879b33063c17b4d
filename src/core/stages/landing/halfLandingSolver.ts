import { CONDITIONS } from '../../geometry/proofs/conditions';
import { acrossHalfLanding, ceilingOverLanding } from '../../geometry/landingModel';
import { halfLandingCutBlocks } from '../../geometry/proofs/halfLandingCutBlocks';
import type { PieceSize } from '../../measures/piece';
import { oneSpace } from '../../motion/turningSpace';
import type { MeasuresOf } from '../stageKind';
import type { PlacedEnds, SpaceStage, TapedSets } from '../stageSolver';
import { ceilingKnown, LANDING_GAP, stairsWithin } from './landingProofs';
import { halfLandingStage } from './halfLanding';
import type { HALF_LANDING } from './halfLandingKind';

type Measures = MeasuresOf<typeof HALF_LANDING>;

/** How a half landing is passed, and what is proved of it. */
export const HALF_LANDING_SOLVER: SpaceStage<Measures> = {
  solvedBy: 'families and search',
  searched: ({ width, well, depth, height, rise, going, overRail = 0, ceiling }) =>
    halfLandingStage({
      flightWidth: width,
      well,
      landingDepth: depth,
      headroom: height,
      rise,
      going,
      overRail,
      ...(ceiling === undefined ? {} : { landingCeiling: ceiling }),
    }),
  turningSpaces: ({ width, well, depth, height: headroom, ceiling }) =>
    oneSpace({
      along: depth,
      across: acrossHalfLanding({ flightWidth: width, well }),
      height: ceilingOverLanding({ landingCeiling: ceiling, headroom }),
    }),
  deepProof: { upTo: -LANDING_GAP, proves },
};

function proves(
  { best, worst: [least] }: TapedSets<Measures & PlacedEnds>,
  piece: PieceSize,
): string | undefined {
  const [measures] = best;
  const { width, well, depth, overRail = 0 } = measures;
  if (overRail > 0) return undefined;
  const spine = [width, least.width + least.well] as const;
  return stairsWithin(best).every((stairs) =>
    halfLandingCutBlocks({ flightWidth: width, well, landingDepth: depth, spine, ...stairs }, piece),
  )
    ? CONDITIONS.middleOnLanding('the end of the spine', ceilingKnown(measures))
    : undefined;
}
