import { weightInKN } from '../measures/gravity';
import type { Working } from '../measures/working';
import { besideTheCode } from './besideTheCode';

/** A mass, and the floor that it is spread over. */
export interface FloorLoadInput {
  /** [kg] */
  readonly mass: number;
  /** [mm] */
  readonly length: number;
  /** [mm] */
  readonly breadth: number;
}

/** Square millimetres in a square metre. */
const MM2_PER_M2 = 1e6;

/**
 * The weight of a table spread evenly over its footprint. Real tables stand on feet: see `footLoad` and `joist`.
 *
 * @source weight / area, standard gravity.
 * @param input mass [kg], footprint [mm]
 * @returns load [kN/m2]
 * @example floorLoad({ mass: 400, length: 2500, breadth: 1400 }) // 1.121
 */
export function floorLoad(input: FloorLoadInput, working?: Working): number {
  const weight = weightInKN(input.mass);
  const area = (input.length * input.breadth) / MM2_PER_M2;
  const load = weight / area;
  if (working) {
    working({
      what: 'Weight',
      formula: 'mass x 9.80665 / 1000',
      value: weight,
      unit: 'kN',
      source: 'standard gravity, CGPM 1901',
    });
    working({ what: 'Footprint', formula: 'length x breadth', value: area, unit: 'm2', source: 'geometry' });
    besideTheCode(working, load, 'dwelling', 'area');
    working({
      what: 'Load over the footprint',
      formula: 'weight / footprint',
      value: load,
      unit: 'kN/m2',
      source: 'statics',
    });
  }
  return load;
}
