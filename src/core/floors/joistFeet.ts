import { refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { joistUnderFeet } from './joistUnderFeet';
import type { JoistUsesInput } from './joistLoading';

/** A joist with a row of feet on it. */
export interface JoistFeetInput extends Omit<JoistUsesInput, 'points'> {
  /** Load at each foot [kN]. */
  readonly footLoad: number;
  /** The first foot, from the left support [mm]. */
  readonly firstAt: number;
  /** From foot to foot [mm]. */
  readonly footSpacing: number;
  /** Feet in the row that stands on this joist, a whole number from 1. */
  readonly feet: number;
}

/**
 * The use of a joist on which a row of a table's feet stands, 1 = full.
 *
 * @source EN 1995-1-1, service class 1, see `joistUses`.
 * @param input as `joistUses`; each foot's load [kN], the first foot and the spacing [mm], feet in the row
 * @returns use, 1 = full
 * @problems `impossible` when the row does not stand between the supports; those of `joistUses`.
 * @example
 * joistFeet({ span: 4500, spacing: 500, breadth: 75, depth: 200, grade: 'C24', dead: 0.5, imposed: 1.5, footLoad: 1,
 *   firstAt: 1500, footSpacing: 1250, feet: 2, duration: 'medium' }) // 1.090
 */
export function joistFeet(input: JoistFeetInput, working?: Working): Outcome<number> {
  const { footLoad, firstAt, footSpacing, feet, ...rest } = input;
  const last = firstAt + (feet - 1) * footSpacing;
  if (!(firstAt > 0 && last < input.span)) {
    return refused({
      kind: 'impossible',
      argument: 'first_at',
      got: firstAt,
      because: `the feet stand from ${firstAt} to ${last} mm, not between the supports of a ${input.span} mm span`,
    });
  }
  const points = Array.from({ length: feet }, (_, i) => ({
    load: footLoad * 1000,
    at: firstAt + i * footSpacing,
  }));
  working?.({
    what: 'Feet on the joist',
    formula: 'first_at, then every foot_spacing',
    value: points.map((p) => p.at).join(', '),
    unit: 'mm',
    source: 'as given',
  });
  return joistUnderFeet({ ...rest, points }, working);
}
