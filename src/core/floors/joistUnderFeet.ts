import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { ADVICE } from '../carrying/advice';
import { isLumberGrade } from './lumberGrades';
import { joistUses } from './joistUses';
import type { JoistUsesInput } from './joistLoading';

/**
 * The use of a joist on which several feet stand, 1 = full: the greatest of bending, shear and deflection at once.
 *
 * @source EN 1995-1-1 or allowable stress, see `joistUses`.
 * @param input as `joistUses`
 * @returns use, 1 = full
 * @problems those of `joistUses`; `impossible` when a foot stands on a support or beyond.
 * @example
 * joistUnderFeet({ span: 4500, spacing: 500, breadth: 75, depth: 200, grade: 'C24', dead: 0.5, imposed: 1.5,
 *   points: [{ load: 1000, at: 1500 }, { load: 1000, at: 3000 }], duration: 'medium' }) // 1.070
 */
export function joistUnderFeet(input: JoistUsesInput, working?: Working): Outcome<number> {
  const outside = input.points.find((p) => !(p.at > 0 && p.at < input.span));
  if (outside) {
    return refused({
      kind: 'impossible',
      argument: 'span',
      got: input.span,
      because: `a foot stands ${outside.at} mm from the support, which is not between the supports`,
    });
  }
  const uses = joistUses(input, working);
  if (!uses.ok) return uses;
  return found(greatestUse(uses.value, isLumberGrade(input.grade) ? 'NDS' : 'EN 1995-1-1', working));
}

/** The greatest of the three uses, with what decides it and what to do when it is over 1. */
function greatestUse(
  uses: { readonly bending: number; readonly shear: number; readonly deflection: number },
  source: string,
  working?: Working,
): number {
  const use = Math.max(uses.bending, uses.shear, uses.deflection);
  if (working) {
    const decides = (['bending', 'shear', 'deflection'] as const).find((name) => uses[name] === use);
    working({ what: 'Decided by', formula: 'the greatest use', value: decides ?? '', unit: '', source: '' });
    if (use > 1) {
      working({ what: 'Next', formula: 'a use over 1', value: ADVICE.floor, unit: '', source: '' });
    }
    working({
      what: 'Use of the joist',
      formula: 'max(bending, shear, deflection)',
      value: use,
      unit: '1 = full',
      source,
    });
  }
  return use;
}
