import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { joistOnSupports, stepsInto } from './joistOnSupports';
import type { Duration, JoistUses, JoistUsesInput } from './joistLoading';
import { LUMBER_BREADTHS, lumberValues, type LumberGrade } from './lumberGrades';
import { greatestDeflection, greatestMoment, reactions, type SpanLoads } from './simpleSpan';

/**
 * Load duration factor, NDS table 2.3.2 (read in a quotation): permanent .9, ten years 1.0, two months 1.15, seven days
 * 1.25. The words are those of EN 1995-1-1 2.3.1.2 (over ten years; to ten years; to six months; to a week), and each
 * takes the row that lasts at least as long: an occupied floor has 1.0.
 */
const DURATION_FACTOR: Readonly<Record<Duration, number>> = {
  permanent: 0.9,
  long: 1,
  medium: 1,
  short: 1.25,
};

/** NDS 4.3.9, from memory: three joists or more under one deck, at most 24 in apart. */
const REPETITIVE = { factor: 1.15, apart: 610 } as const;

/** IRC table R301.7 and the head of table R502.3.1(2): under the live load alone. */
const DEFLECTION_PART = 360;

const NDS = 'NDS';

/**
 * The use of a joist of North American lumber on two supports, dry, by allowable stress: 1.0 dead + 1.0 imposed + 1.0
 * points at the load duration factor, and what stays (dead + points) at .9; bending, shear, and the deflection under
 * imposed load and points at most span/360, without shear deflection, as in the code's span tables.
 *
 * The repetitive factor of 1.15 counts only where no point load stands on the joist, for a table's foot is carried by one:
 * our own careful reading, since the rule names no such case. No reduction of the shear near a support.
 *
 * @source NDS 3.3, 3.4, 4.3 and table 2.3.2; the spans of IRC table R502.3.1(2) follow from it to the inch.
 * @param input as `joistUses`
 * @returns the three uses
 * @problems `impossible` for a breadth outside 2 to 4 in nominal, where the design values do not hold.
 */
export function lumberUses(
  input: JoistUsesInput & { readonly grade: LumberGrade },
  working?: Working,
): Outcome<JoistUses> {
  const { span, spacing, breadth, depth, points, grade } = input;
  if (!(breadth >= LUMBER_BREADTHS.least && breadth <= LUMBER_BREADTHS.most)) {
    return refused({
      kind: 'impossible',
      argument: 'breadth',
      got: breadth,
      because: `the values of ${grade} hold for lumber of 2 to 4 in nominal, that is 38 to 89 mm`,
    });
  }
  const lumber = lumberValues(grade, depth);
  const shared = !points.some((p) => p.load > 0) && spacing <= REPETITIVE.apart;
  const repetitive = shared ? REPETITIVE.factor : 1;
  const step = stepsInto(working);
  const { dead, imposed, modulus, inertia, area } = joistOnSupports(input, step);
  const under = (line: number): SpanLoads => ({ span, line, points });

  step?.(
    'Repetitive factor',
    shared ? '1.15, even load on joists at most 24 in apart' : '1, a point load or joists far apart',
    repetitive,
    '',
    `${NDS} 4.3.9, from memory`,
  );

  const strengthUses = (
    name: string,
    formula: string,
    loads: SpanLoads,
    duration: number,
  ): { bending: number; shear: number } => {
    const { moment, at } = greatestMoment(loads);
    const stress = moment / modulus;
    const allowed = lumber.bending * duration * repetitive;
    const { left, right } = reactions(loads);
    const force = Math.max(left, right);
    const shearStress = (1.5 * force) / area;
    const shearAllowed = lumber.shear * duration;
    step?.(`Combination, ${name}`, formula, name, '', 'allowable stress');
    step?.(`Moment, ${name}`, 'greatest along the span', moment / 1e6, 'kNm', 'statics');
    step?.(`Where, ${name}`, 'where the shear changes sign', at, 'mm', 'statics');
    step?.(
      `Load duration factor, ${name}`,
      'of loads together the shortest decides: .9, 1, 1 or 1.25',
      duration,
      '',
      `${NDS} table 2.3.2`,
    );
    step?.(`Bending stress, ${name}`, 'moment / section modulus', stress, 'N/mm2', `${NDS} 3.3`);
    step?.(
      `Bending stress allowed, ${name}`,
      'Fb at this size x duration x repetitive',
      allowed,
      'N/mm2',
      `${NDS} Supplement tables 4A and 4B, at second hand`,
    );
    step?.(`Use in bending, ${name}`, 'stress / allowed', stress / allowed, '', `${NDS} 3.3`);
    step?.(`Shear force, ${name}`, 'greatest reaction', force / 1000, 'kN', 'statics');
    step?.(`Shear stress, ${name}`, '1.5 force / (breadth x depth)', shearStress, 'N/mm2', `${NDS} 3.4`);
    step?.(
      `Shear stress allowed, ${name}`,
      'Fv x duration',
      shearAllowed,
      'N/mm2',
      `${NDS} Supplement tables 4A and 4B, at second hand`,
    );
    step?.(`Use in shear, ${name}`, 'stress / allowed', shearStress / shearAllowed, '', `${NDS} 3.4`);
    return { bending: stress / allowed, shear: shearStress / shearAllowed };
  };

  const all = strengthUses(
    `all loads, ${input.duration}`,
    'dead + imposed + points',
    under(dead + imposed),
    DURATION_FACTOR[input.duration],
  );
  const stays = strengthUses(
    'what stays, permanent',
    'dead + points',
    under(dead),
    DURATION_FACTOR.permanent,
  );

  const stiffness = { bending: lumber.elasticity * inertia, shear: Infinity };
  const sag = greatestDeflection(under(imposed), stiffness).deflection;
  const allowed = span / DEFLECTION_PART;
  step?.('Deflection at once', 'imposed + points, bending with E', sag, 'mm', 'IRC table R301.7');
  step?.('Deflection allowed at once', 'span / 360', allowed, 'mm', 'IRC table R502.3.1(2)');
  step?.('Use in deflection', 'deflection / allowed', sag / allowed, '', 'IRC table R502.3.1(2)');
  return found({
    bending: Math.max(all.bending, stays.bending),
    shear: Math.max(all.shear, stays.shear),
    deflection: sag / allowed,
  });
}
