import { acrossHalfLanding, ceilingOverLanding } from '../../geometry/landingModel';
import type { StageName } from '../kinds';
import type { LooseStageMeasures } from '../measures';
import type { LandingPlan } from './landingPlan';

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
  const ceiling = ceilingOverLanding({ landingCeiling: measures.ceiling, headroom });
  const common = { widthIn: width, headroom, rise, going, ceiling };
  if (stage === 'quarter landing')
    return { ...common, widthOut, depthIn: widthOut, depthOut: width, across: undefined };
  if (stage !== 'half landing') return undefined;
  const across = acrossHalfLanding({ flightWidth: width, well });
  return { ...common, widthOut: width, depthIn: depth, depthOut: depth, across };
}
