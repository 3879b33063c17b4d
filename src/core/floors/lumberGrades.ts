import { STANDARD_GRAVITY } from '../measures/gravity';
import { MM_PER_INCH } from '../measures/readLength';
import { KG_PER_POUND } from '../measures/readMass';

/** Reference design values of a grade of lumber [psi], as its tables print them. */
interface PrintedGrade {
  /** Bending, one for each of the `DEPTHS`. */
  readonly bending: readonly number[];
  /** Shear along the grain. */
  readonly shear: number;
  /** Modulus of elasticity [million psi]; it holds shear deflection already, as the code's span tables do. */
  readonly elasticity: number;
}

/** 1 psi in N/mm2: 0.45359237 x 9.80665 N on 25.4 mm square, exactly. */
const NEWTON_PER_MM2 = (KG_PER_POUND * STANDARD_GRAVITY) / MM_PER_INCH ** 2;

/** Actual depths of the nominal sizes 4, 5, 6, 8, 10 and 12 [in]; deeper counts as a row of its own. */
const DEPTHS = [3.5, 4.5, 5.5, 7.25, 9.25, 11.25, Infinity] as const;

/** Joists are written to the millimetre: 7.25 in is 184.15 mm, and stands as 184 or 185. */
const WRITTEN_TO = 1;

/** NDS Supplement, table 4A, read at second hand: size factor on bending of No. 1 to No. 3, 2 and 3 in thick; less than that of 4 in. */
const SIZE_FACTORS = [1.5, 1.4, 1.3, 1.2, 1.1, 1, 0.9] as const;

const sized = (bending: number): readonly number[] => SIZE_FACTORS.map((factor) => factor * bending);

/**
 * NDS Supplement, tables 4A (Douglas fir-larch, hem-fir, spruce-pine-fir) and 4B (southern pine, whose sizes are in the
 * table; 5 in counts as 6, and deeper than 12 in has .9 of it), visually graded, 2 to 4 in thick, dry. The tables themselves
 * were not read. Read at second hand, in public source text: all of table 4A but No. 3 of hem-fir, which is from memory;
 * the size factors; southern pine in N/mm2 to a tenth, after its growers' guide. The bending values of 4 to 10 in deep
 * reproduce the ceiling joists of IRC 2018 table R802.5.1(2), which were read.
 */
const PRINTED = {
  'DF-L No. 1': { bending: sized(1000), shear: 180, elasticity: 1.7 },
  'DF-L No. 2': { bending: sized(900), shear: 180, elasticity: 1.6 },
  'DF-L No. 3': { bending: sized(525), shear: 180, elasticity: 1.4 },
  'HF No. 1': { bending: sized(975), shear: 150, elasticity: 1.5 },
  'HF No. 2': { bending: sized(850), shear: 150, elasticity: 1.3 },
  'HF No. 3': { bending: sized(500), shear: 150, elasticity: 1.2 },
  'SPF No. 1': { bending: sized(875), shear: 135, elasticity: 1.4 },
  'SPF No. 2': { bending: sized(875), shear: 135, elasticity: 1.4 },
  'SPF No. 3': { bending: sized(500), shear: 135, elasticity: 1.2 },
  'SP No. 1': { bending: [1500, 1350, 1350, 1250, 1050, 1000, 900], shear: 175, elasticity: 1.6 },
  'SP No. 2': { bending: [1100, 1000, 1000, 925, 800, 750, 675], shear: 175, elasticity: 1.4 },
  'SP No. 3': { bending: [650, 575, 575, 525, 475, 450, 405], shear: 175, elasticity: 1.3 },
} as const satisfies Readonly<Record<string, PrintedGrade>>;

/** A grade of North American lumber: species as its stamp has it, and its number. */
export type LumberGrade = keyof typeof PRINTED;

/** Every grade of North American lumber held here. */
export const LUMBER_GRADES = Object.keys(PRINTED) as readonly LumberGrade[];

/** Whether a grade is one of North American lumber. */
export const isLumberGrade = (grade: string): grade is LumberGrade =>
  (LUMBER_GRADES as readonly string[]).includes(grade);

/** Breadths for which the values hold, 2 to 4 in nominal [mm]: 1.5 to 3.5 in, and old full sizes in between. */
export const LUMBER_BREADTHS = {
  least: 1.5 * MM_PER_INCH - WRITTEN_TO,
  most: 3.5 * MM_PER_INCH + WRITTEN_TO,
} as const;

/** Reference design values of a joist [N/mm2]. */
export interface LumberValues {
  /** Bending, at the size. */
  readonly bending: number;
  readonly shear: number;
  readonly elasticity: number;
}

/**
 * Reference design values of a joist by its grade and depth. Between two sizes of the table the deeper one counts, which
 * is the careful side.
 *
 * @source NDS Supplement, tables 4A and 4B, at second hand (see `PRINTED`).
 * @param grade species and number
 * @param depth actual depth [mm]
 * @returns values [N/mm2]
 * @example lumberValues('SPF No. 2', 235).bending // 6.636, that is 1.1 x 875 psi
 */
export function lumberValues(grade: LumberGrade, depth: number): LumberValues {
  const printed: PrintedGrade = PRINTED[grade];
  const row = DEPTHS.findIndex((most) => depth <= most * MM_PER_INCH + WRITTEN_TO);
  return {
    bending: (printed.bending[row] ?? 0) * NEWTON_PER_MM2,
    shear: printed.shear * NEWTON_PER_MM2,
    elasticity: printed.elasticity * 1e6 * NEWTON_PER_MM2,
  };
}
