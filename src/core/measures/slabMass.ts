import type { Working } from './working';

/**
 * Design density of slate [kg/m3]: EN 1991-1-1 table A.2 gives 28 kN/m3, from memory, which is 2855 kg/m3; rounded to
 * 2850, inside the 2700-2950 kg/m3 of Cardarelli, Materials Handbook, and on the heavy side of it.
 */
export const SLATE_DENSITY = 2850;

/** A slab, and what it is made of. */
export interface SlabMassInput {
  /** [mm] */
  readonly length: number;
  /** [mm] */
  readonly breadth: number;
  /** [mm] */
  readonly thickness: number;
  /** [kg/m3] */
  readonly density: number;
}

/** Cubic millimetres in a cubic metre. */
export const MM3_PER_M3 = 1e9;

/**
 * The mass of a plain slab; holes and pockets are not taken off, so a pocketed slate weighs a little less.
 *
 * @source mass = volume x density; density see `SLATE_DENSITY`.
 * @param input sizes [mm] in any order, density [kg/m3]
 * @returns mass [kg]
 * @example slabMass({ length: 2000, breadth: 1000, thickness: 20, density: 2850 }) // 114
 */
export function slabMass(input: SlabMassInput, working?: Working): number {
  const volume = (input.length * input.breadth * input.thickness) / MM3_PER_M3;
  working?.({
    what: 'Volume',
    formula: 'length x breadth x thickness',
    value: volume,
    unit: 'm3',
    source: 'geometry',
  });
  const mass = volume * input.density;
  working?.({
    what: 'Mass',
    formula: 'volume x density',
    value: mass,
    unit: 'kg',
    source: 'density of slate: EN 1991-1-1 table A.2, from memory',
  });
  return mass;
}
