import { greatestPadding } from '../../geometry/rootFinding';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { asin, atan2, cos, max, min, sin, sqrt } = Math;

/** A piece whose face u x v is turned about its third side a [mm]. */
export interface TurnedFaceOfPiece {
  readonly u: number;
  readonly v: number;
  readonly a: number;
}

/** How a turned piece stands in plan. */
export interface TurnedPlan {
  /** The turned face in plan [mm]. */
  readonly plan: number;
  /** Its third side [mm], which stays level. */
  readonly side: number;
  /** How far it is turned out of level [rad]. */
  readonly tilt: number;
}

/** Kept short of the ends, where level and turned are the same [mm]. */
const SHORT = 1e-9;

/**
 * The greatest padding with which a piece, turned so that its height just meets the ceiling, still passes, where
 * that beats `floor`. It is of use only where v fits upright and u does not. A face turned by t has the height
 * D sin(t + d) and the plan D cos(t - d), d = atan(v/u), D its diagonal: both are arches in t, so under a given
 * ceiling the plan is least at an end: level, upright, or against the ceiling, which is this.
 *
 * @param ceiling [mm]
 * @param most padding [mm a side] that the arms allow in any case
 * @param spare what is left [mm a side] in plan, negative where it does not pass; it falls as the piece grows
 * @param floor clearance [mm a side] that has to be beaten
 * @source trigonometry of the turned rectangle
 * @returns undefined where it does not beat the floor
 */
export function turnedUnderCeiling(
  face: TurnedFaceOfPiece,
  ceiling: number,
  most: number,
  spare: (plan: TurnedPlan) => number,
  floor: number,
): (TurnedPlan & { readonly clearance: number }) | undefined {
  const { u, v } = face;
  const low = max(floor, (ceiling - u) / 2) + SHORT;
  const high = min((ceiling - v) / 2, most);
  if (!(high > low)) return undefined;
  // Turned no narrower in plan than level, it has nothing to gain.
  if (planAt(face, ceiling, low).plan >= max(0, u + 2 * low)) return undefined;
  const spareAt = (c: number): number => spare(planAt(face, ceiling, c));
  const atLow = spareAt(low);
  if (atLow < 0) return undefined;
  // Padding takes at least as much of the spare, so the root is nearly always this near.
  const near = low + atLow;
  const upTo = near < high && spareAt(near) < 0 ? near : high;
  const clearance = greatestPadding(low, upTo, spareAt, FINENESS);
  return clearance === undefined ? undefined : { clearance, ...planAt(face, ceiling, clearance) };
}

/** How near the greatest padding is found [mm]. */
const FINENESS = 1e-7;

function planAt({ u, v, a }: TurnedFaceOfPiece, ceiling: number, c: number): TurnedPlan {
  const u1 = max(0, u + 2 * c);
  const v1 = max(0, v + 2 * c);
  const tilt = asin(min(1, ceiling / sqrt(u1 * u1 + v1 * v1))) - atan2(v1, u1);
  return { plan: u1 * cos(tilt) + v1 * sin(tilt), side: max(0, a + 2 * c), tilt };
}
