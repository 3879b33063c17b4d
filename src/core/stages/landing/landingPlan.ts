import { acrossHalfLanding, ceilingOverLanding } from '../../geometry/landingModel';

/** A landing between two flights, as its families of motions see it: what lies along each flight's way. */
export interface LandingPlan {
  /** Clear widths [mm] of the lower and the upper flight. */
  readonly widthIn: number;
  /** [mm] */
  readonly widthOut: number;
  /** From the lower flight's edge of the landing to the wall that faces it, and the same for the upper [mm]. */
  readonly depthIn: number;
  /** [mm] */
  readonly depthOut: number;
  /** Half landing: from wall to wall across both flights [mm]. Quarter landing: undefined. */
  readonly across: number | undefined;
  /** [mm] */
  readonly headroom: number;
  /** [mm] */
  readonly rise: number;
  /** [mm] */
  readonly going: number;
  /** Flat ceiling over the landing [mm]. */
  readonly ceiling: number;
}

/** A half landing, whose flights lie side by side. */
export interface HalfLandingPlan extends LandingPlan {
  /** [mm] */
  readonly across: number;
}

/** Whether a landing is a half landing. */
export const isHalfLanding = (plan: LandingPlan): plan is HalfLandingPlan => plan.across !== undefined;

interface StairOfLanding {
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  /** Flat ceiling over the landing [mm]; the headroom when absent. */
  readonly landingCeiling?: number | undefined;
}

const ofStair = (m: StairOfLanding): Pick<LandingPlan, 'headroom' | 'rise' | 'going' | 'ceiling'> => ({
  headroom: m.headroom,
  rise: m.rise,
  going: m.going,
  ceiling: ceilingOverLanding(m),
});

/** A quarter landing: each flight looks across the other's width [mm]. */
export const quarterLandingPlan = (
  m: StairOfLanding & Pick<LandingPlan, 'widthIn' | 'widthOut'>,
): LandingPlan => ({
  widthIn: m.widthIn,
  widthOut: m.widthOut,
  depthIn: m.widthOut,
  depthOut: m.widthIn,
  across: undefined,
  ...ofStair(m),
});

/** A half landing: both flights look across its depth [mm]. */
export const halfLandingPlan = (
  m: StairOfLanding & { readonly flightWidth: number; readonly well: number; readonly landingDepth: number },
): HalfLandingPlan => ({
  widthIn: m.flightWidth,
  widthOut: m.flightWidth,
  depthIn: m.landingDepth,
  depthOut: m.landingDepth,
  across: acrossHalfLanding(m),
  ...ofStair(m),
});
