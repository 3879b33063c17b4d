import type { StageName } from '../kinds';
import type { LooseStageMeasures } from '../measures';
import { halfLandingPlan, quarterLandingPlan, type LandingPlan } from './landingPlan';

/**
 * A landing as its families see it, from what its row measures; undefined where the stage is none. A measure that is not
 * there is taken for 0: the caller sees to that.
 */
export function landingPlanOf(stage: StageName, measures: LooseStageMeasures): LandingPlan | undefined {
  const {
    width = 0,
    widthOut = 0,
    well = 0,
    depth = 0,
    height: headroom = 0,
    rise = 1,
    going = 1,
  } = measures;
  const stair = { headroom, rise, going, landingCeiling: measures.ceiling };
  if (stage === 'quarter landing') return quarterLandingPlan({ ...stair, widthIn: width, widthOut });
  if (stage !== 'half landing') return undefined;
  return halfLandingPlan({ ...stair, flightWidth: width, well, landingDepth: depth });
}
