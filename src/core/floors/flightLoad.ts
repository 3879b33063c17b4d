import { weightInKN } from '../measures/gravity';
import type { Working } from '../measures/working';
import { besideTheCode } from './besideTheCode';

/** A piece with its crew on a flight. */
export interface FlightLoadInput {
  /** Mass of the piece [kg]. */
  readonly mass: number;
  /** How many people are on the flight with it. */
  readonly crew: number;
  /** The flight in plan [mm]. */
  readonly length: number;
  /** [mm] */
  readonly width: number;
  /** Mass of each of the crew [kg]. */
  readonly bodyMass: number;
}

/**
 * Piece and crew spread over the plan of a flight, to compare with the imposed load that a code gives stairs.
 *
 * @source weight / plan area, standard gravity.
 * @param input mass [kg], crew, plan of the flight [mm], body mass [kg]
 * @returns load [kN/m2]
 * @example flightLoad({ mass: 120, crew: 4, length: 2750, width: 860, bodyMass: 90 }) // 1.990
 */
export function flightLoad(input: FlightLoadInput, working?: Working): number {
  const mass = input.mass + input.crew * input.bodyMass;
  const weight = weightInKN(mass);
  const plan = (input.length * input.width) / 1e6;
  const load = weight / plan;
  if (working) {
    working({
      what: 'Piece and crew',
      formula: 'mass + crew x body_mass',
      value: mass,
      unit: 'kg',
      source: 'a sum',
    });
    working({
      what: 'Weight',
      formula: 'piece and crew x 9.80665 / 1000',
      value: weight,
      unit: 'kN',
      source: 'standard gravity, CGPM 1901',
    });
    working({
      what: 'Plan of the flight',
      formula: 'length x width',
      value: plan,
      unit: 'm2',
      source: 'geometry',
    });
    besideTheCode(working, load, 'stairs', 'area');
    working({
      what: 'Load on the flight',
      formula: 'weight / plan of the flight',
      value: load,
      unit: 'kN/m2',
      source: 'statics',
    });
  }
  return load;
}
