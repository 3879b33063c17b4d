import { CONDITIONS } from '../../geometry/proofs/conditions';
import { ceilingOverLanding } from '../../geometry/landingModel';
import { quarterLandingCutBlocks } from '../../geometry/proofs/quarterLandingCutBlocks';
import type { PieceSize } from '../../measures/piece';
import type { MeasuresOf } from '../stageKind';
import type { PlacedEnds, SpaceStage, TapedSets } from '../stageSolver';
import { ceilingKnown, LANDING_GAP, stairsWithin } from './landingProofs';
import { quarterLandingStage } from './quarterLanding';
import type { QUARTER_LANDING } from './quarterLandingKind';

type Measures = MeasuresOf<typeof QUARTER_LANDING>;

/** How a quarter landing is passed, and what is proved of it. */
export const QUARTER_LANDING_SOLVER: SpaceStage<Measures> = {
  solvedBy: 'families and search',
  searched: ({ width, widthOut, height, rise, going, overRail = 0, ceiling, lowerOpen }) =>
    quarterLandingStage({
      widthIn: width,
      widthOut,
      headroom: height,
      rise,
      going,
      overRail,
      lowerOpen,
      ...(ceiling === undefined ? {} : { landingCeiling: ceiling }),
    }),
  turningSpaces: ({ width, widthOut, height: headroom, ceiling }) => {
    const height = ceilingOverLanding({ landingCeiling: ceiling, headroom });
    // Coming up, the landing is as deep as the upper flight is wide.
    return {
      before: { along: widthOut, across: width, height },
      after: { along: width, across: widthOut, height },
    };
  },
  deepProof: { upTo: -LANDING_GAP, proves },
};

function proves({ best }: TapedSets<Measures & PlacedEnds>, piece: PieceSize): string | undefined {
  const [measures] = best;
  const { width, widthOut, overRail = 0 } = measures;
  if (overRail > 0) return undefined;
  return stairsWithin(best).every((stairs) =>
    quarterLandingCutBlocks({ widthIn: width, widthOut, ...stairs }, piece),
  )
    ? CONDITIONS.middleOnLanding('the inner corner', ceilingKnown(measures))
    : undefined;
}
