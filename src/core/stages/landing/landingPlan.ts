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
