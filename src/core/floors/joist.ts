import { refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { joistUnderFeet } from './joistUnderFeet';
import type { JoistUsesInput } from './joistLoading';

/** A joist with one load on it besides what is spread. */
export interface JoistInput extends Omit<JoistUsesInput, 'points'> {
  /** One load on this joist [kN]. */
  readonly pointLoad: number;
  /** Where it stands [mm], strictly inside the span; mid-span when not given. */
  readonly pointAt?: number | undefined;
}

/**
 * The use of a joist with an even load and at most one point load, 1 = full.
 *
 * @source EN 1995-1-1, service class 1, see `joistUses`.
 * @param input as `joistUses`, the point load in [kN] at [mm] strictly inside the span
 * @returns use, 1 = full: the greatest of bending, shear and deflection
 * @problems `out of range` for a point off the span; those of `joistUses`.
 * @example
 * joist({ span: 4500, spacing: 500, breadth: 75, depth: 200, grade: 'C24', dead: 0.5, imposed: 1.5, pointLoad: 0,
 *   duration: 'medium' }) // 0.667, deflection
 */
export function joist(input: JoistInput, working?: Working): Outcome<number> {
  const { pointLoad, pointAt, ...rest } = input;
  const at = pointAt ?? input.span / 2;
  if (!(at > 0 && at < input.span)) {
    return refused({
      kind: 'out of range',
      argument: 'point_at',
      got: at,
      allowed: `more than 0 and less than the span, ${input.span} mm`,
    });
  }
  const points = pointLoad > 0 ? [{ load: pointLoad * 1000, at }] : [];
  return joistUnderFeet({ ...rest, points }, working);
}
