import type { Working } from '../measures/working';

/** A person who walks with a load. */
export interface WorkRateInput {
  /** [kg] */
  readonly bodyMass: number;
  /** Carried [kg]. */
  readonly load: number;
  /** [km/h] */
  readonly speed: number;
  /** Uphill [%], 0-25; the equation does not hold downhill. */
  readonly grade: number;
  /** Terrain factor: 1 for a hard floor. */
  readonly terrain: number;
}

const SOURCE = 'Pandolf, Givoni & Goldman, J. Appl. Physiol. 43, 1977, 577-581';

/** 1 m/s = 3.6 km/h. */
const KMH_PER_MS = 3.6;

/**
 * Metabolic rate of a person who walks with a load, on the level or uphill; not for stairs and not downhill.
 *
 * @source Pandolf, Givoni & Goldman 1977: 1.5 W + 2 (W + L)(L/W)^2 + n (W + L)(1.5 v^2 + 0.35 v G), v in m/s.
 * @param input masses [kg], speed [km/h], grade [%] 0-25, terrain factor from 1
 * @returns metabolic rate [W]
 * @example workRate({ bodyMass: 80, load: 0, speed: 4, grade: 0, terrain: 1 }) // 268.1
 */
export function workRate(input: WorkRateInput, working?: Working): number {
  const { bodyMass, load, grade, terrain } = input;
  const speed = input.speed / KMH_PER_MS;
  const standing = 1.5 * bodyMass;
  const holding = 2 * (bodyMass + load) * (load / bodyMass) ** 2;
  const walking = terrain * (bodyMass + load) * (1.5 * speed ** 2 + 0.35 * speed * grade);
  const rate = standing + holding + walking;
  if (working) {
    const step = (what: string, formula: string, value: number, unit = 'W'): void =>
      working({ what, formula, value, unit, source: SOURCE });
    step('Speed', 'speed / 3.6', speed, 'm/s');
    step('Standing', '1.5 body_mass', standing);
    step('Holding the load', '2 (body_mass + load) (load / body_mass)^2', holding);
    step('Walking', 'terrain (body_mass + load) (1.5 v^2 + 0.35 v grade)', walking);
    step('Work rate', 'the sum of the three', rate);
  }
  return rate;
}
