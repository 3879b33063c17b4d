import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { joistOnSupports, stepsInto } from './joistOnSupports';
import { greatestDeflection, greatestMoment, reactions, type SpanLoads } from './simpleSpan';
import { isLumberGrade } from './lumberGrades';
import { lumberUses } from './lumberUses';
import { STRENGTH_CLASSES, type Grade } from './strengthClasses';
import { shownGiven } from '../measures/shown';
import type { Duration, JoistUsesInput, JoistUses } from './joistLoading';

/** EN 1995-1-1 table 3.1, solid timber, service classes 1 and 2. */
const KMOD: Readonly<Record<Duration, number>> = {
  permanent: 0.6,
  long: 0.7,
  medium: 0.8,
  short: 0.9,
};

/** Every load-duration class, the longest first. */
export const DURATIONS = Object.keys(KMOD) as readonly Duration[];

/** EN 1995-1-1 table 2.3, solid timber. */
const GAMMA_M = 1.3;
/** EN 1995-1-1 6.6, several joists under one deck. */
const KSYS = 1.1;
/** EN 1995-1-1 6.1.7(2), amendment A1: the part of the breadth that is not cracked. */
const KCR = 0.67;
/** Factor on permanent loads: EN 1990 table A1.2(B), expression 6.10. */
const GAMMA_PERMANENT = 1.35;
/** Factor on imposed loads, ibid. */
const GAMMA_IMPOSED = 1.5;
/** EN 1995-1-1 table 7.2: l/300 to l/500 for a beam on two supports, at once; the mildest of the range. */
const DEFLECTION_PART = 300;
/** EN 1995-1-1 table 3.2, solid timber, service class 1. */
const KDEF = 0.6;
/** EN 1990 table A1.1, category A: the part of the imposed load that always stands there. */
const PSI2 = 0.3;
/** Shear factor of a rectangle. */
const SHEAR_FACTOR = 6 / 5;

/**
 * Floor joists have spans of some 10 to 25 depths. Below 5 a beam is too deep for the theory of beams; at 35 even
 * span/300 cannot be kept at any load worth the name. Beyond either a number was mistyped.
 */
const SPAN_TO_DEPTH = { least: 5, most: 35 } as const;

const EC5 = 'EN 1995-1-1';

/**
 * The use of a timber joist on two supports, by bending, shear and deflection at once: to EN 1995-1-1 for a strength
 * class, by allowable stress for a grade of lumber.
 *
 * @source see `strengthClassUses` and `lumberUses`
 * @param input sizes [mm], span/depth 5 to 35; dead and imposed load [kN/m2]; points [N] at [mm] strictly inside the span
 * @returns the three uses
 * @problems `impossible` for a span-to-depth that no joist has; those of `lumberUses`.
 */
export function joistUses(input: JoistUsesInput, working?: Working): Outcome<JoistUses> {
  const { span, depth, grade } = input;
  const ratio = span / depth;
  if (!(ratio >= SPAN_TO_DEPTH.least && ratio <= SPAN_TO_DEPTH.most)) {
    return refused({
      kind: 'impossible',
      argument: 'depth',
      got: depth,
      because:
        `the span is ${shownGiven(ratio)} depths, which no joist has; ` +
        `allowed is ${SPAN_TO_DEPTH.least} to ${SPAN_TO_DEPTH.most} depths`,
    });
  }
  return isLumberGrade(grade)
    ? lumberUses({ ...input, grade }, working)
    : found(strengthClassUses({ ...input, grade }, working));
}

/**
 * The use of a joist of an EN 338 strength class on two supports, service class 1.
 *
 * Combinations: 1.35 dead + 1.5 imposed + 1.5 points at kmod of the duration, and 1.35 dead + 1.35 points at kmod
 * permanent, since a table stays. ksys 1.1 only where no point load stands on the joist; kcr 0.67 in shear. The depth
 * factor kh (3.2(3), depths below 150 mm) may raise the bending strength; it is left out, on the safe side. A point
 * load goes to one joist whole: the deck spreads nothing. Notches, holes, bearing, rot and vibration are not looked at.
 *
 * @source EN 1995-1-1 6.1.6, 6.1.7, 6.6, 7.2 and tables 2.3, 3.1, 7.2; EN 1990 table A1.2(B); EN 338 table 1.
 * @param input as `joistUses`
 * @returns the three uses
 */
function strengthClassUses(input: JoistUsesInput & { readonly grade: Grade }, working?: Working): JoistUses {
  const { span, points } = input;
  const timber = STRENGTH_CLASSES[input.grade];
  const kmod = KMOD[input.duration];
  const onOneJoist = points.some((p) => p.load > 0);
  const ksys = onOneJoist ? 1 : KSYS;
  const step = stepsInto(working);
  const { dead, imposed, modulus, inertia, area } = joistOnSupports(input, step);

  step?.(
    'System factor',
    onOneJoist ? '1, a point load stands on one joist' : '1.1, even load on several joists',
    ksys,
    '',
    `${EC5} 6.6`,
  );

  const strengthUses = (
    name: string,
    formula: string,
    loads: SpanLoads,
    kmodHere: number,
    why: string,
  ): { bending: number; shear: number } => {
    const { moment, at } = greatestMoment(loads);
    const stress = moment / modulus;
    const strength = (kmodHere * timber.bending * ksys) / GAMMA_M;
    const bending = stress / strength;
    const { left, right } = reactions(loads);
    const force = Math.max(left, right);
    const shearStress = (1.5 * force) / (KCR * area);
    const shearStrength = (kmodHere * timber.shear * ksys) / GAMMA_M;
    const shear = shearStress / shearStrength;
    step?.(`Combination, ${name}`, formula, name, '', 'EN 1990 table A1.2(B)');
    step?.(`Moment, ${name}`, 'greatest along the span', moment / 1e6, 'kNm', 'statics');
    step?.(`Where, ${name}`, 'where the shear changes sign', at, 'mm', 'statics');
    step?.(`Bending stress, ${name}`, 'moment / section modulus', stress, 'N/mm2', `${EC5} 6.1.6`);
    step?.(`kmod, ${name}`, why, kmodHere, '', `${EC5} table 3.1; 3.1.3(2), from memory`);
    step?.(
      `Bending strength, ${name}`,
      'kmod x fm,k x ksys / 1.3',
      strength,
      'N/mm2',
      `${EC5} 2.4.1, table 2.3; EN 338 table 1`,
    );
    step?.(`Use in bending, ${name}`, 'stress / strength', bending, '', `${EC5} 6.1.6`);
    step?.(`Shear force, ${name}`, 'greatest reaction', force / 1000, 'kN', 'statics');
    step?.(
      `Shear stress, ${name}`,
      '1.5 force / (0.67 breadth x depth)',
      shearStress,
      'N/mm2',
      `${EC5} 6.1.7, kcr 0.67`,
    );
    step?.(
      `Shear strength, ${name}`,
      'kmod x fv,k x ksys / 1.3',
      shearStrength,
      'N/mm2',
      `${EC5} 2.4.1, table 2.3; EN 338 table 1`,
    );
    step?.(`Use in shear, ${name}`, 'stress / strength', shear, '', `${EC5} 6.1.7`);
    return { bending, shear };
  };

  const scaled = (line: number, factor: number): SpanLoads => ({
    span,
    line,
    points: points.map((p) => ({ load: factor * p.load, at: p.at })),
  });
  const all = strengthUses(
    `all loads, ${input.duration}`,
    '1.35 dead + 1.5 imposed + 1.5 points',
    scaled(GAMMA_PERMANENT * dead + GAMMA_IMPOSED * imposed, GAMMA_IMPOSED),
    kmod,
    'of actions together the shortest decides: the imposed load, which comes and goes, in service class 1',
  );
  const stays = strengthUses(
    'what stays, permanent',
    '1.35 dead + 1.35 points',
    scaled(GAMMA_PERMANENT * dead, GAMMA_PERMANENT),
    KMOD.permanent,
    'a table that stays for good is checked by itself, with the floor alone, in service class 1',
  );

  const stiffness = {
    bending: timber.elasticity * inertia,
    shear: (timber.shearModulus * area) / SHEAR_FACTOR,
  };
  const sag = greatestDeflection(scaled(dead + imposed, 1), stiffness).deflection;
  const allowed = span / DEFLECTION_PART;
  const deflection = sag / allowed;
  step?.(
    'Deflection at once',
    'dead + imposed + points, bending with Emean and shear with Gmean',
    sag,
    'mm',
    `${EC5} 7.2, 2.2.3`,
  );
  step?.('Deflection allowed at once', 'span / 300', allowed, 'mm', `${EC5} table 7.2`);
  step?.('Use in deflection', 'deflection / allowed', deflection, '', `${EC5} 7.2`);
  if (step) {
    const inTheEnd = scaled(dead * (1 + KDEF) + imposed * (1 + PSI2 * KDEF), 1 + KDEF);
    step(
      'Deflection in the end, for information',
      '1.6 dead + (1 + 0.3 x 0.6) imposed + 1.6 points',
      greatestDeflection(inTheEnd, stiffness).deflection,
      'mm',
      `${EC5} 2.2.3, table 3.2, kdef 0.6; EN 1990 table A1.1, psi2 0.3`,
    );
  }
  return {
    bending: Math.max(all.bending, stays.bending),
    shear: Math.max(all.shear, stays.shear),
    deflection,
  };
}
