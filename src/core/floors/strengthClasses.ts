/** Characteristic values of a timber strength class [N/mm2]. */
export interface StrengthClass {
  /** Bending strength. */
  readonly bending: number;
  /** Shear strength. */
  readonly shear: number;
  /** Mean modulus of elasticity along the grain. */
  readonly elasticity: number;
  /** Mean shear modulus. */
  readonly shearModulus: number;
}

/** A strength class of EN 338 for softwood. */
export type Grade = 'C14' | 'C16' | 'C18' | 'C20' | 'C22' | 'C24' | 'C27' | 'C30';

/**
 * EN 338 table 1, softwood. Bending, shear and elasticity of C16 and C24 were read in a quotation of the standard; the
 * others, and the shear moduli, were read in a second-hand table of EN 338:2016 (public source text, not the standard).
 */
export const STRENGTH_CLASSES: Readonly<Record<Grade, StrengthClass>> = {
  C14: { bending: 14, shear: 3, elasticity: 7000, shearModulus: 440 },
  C16: { bending: 16, shear: 3.2, elasticity: 8000, shearModulus: 500 },
  C18: { bending: 18, shear: 3.4, elasticity: 9000, shearModulus: 560 },
  C20: { bending: 20, shear: 3.6, elasticity: 9500, shearModulus: 590 },
  C22: { bending: 22, shear: 3.8, elasticity: 10000, shearModulus: 630 },
  C24: { bending: 24, shear: 4, elasticity: 11000, shearModulus: 690 },
  C27: { bending: 27, shear: 4, elasticity: 11500, shearModulus: 720 },
  C30: { bending: 30, shear: 4, elasticity: 12000, shearModulus: 750 },
};

/** Every strength class held here, the weakest first. */
export const GRADES = Object.keys(STRENGTH_CLASSES) as readonly Grade[];
