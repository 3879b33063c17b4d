import { found, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { footLoad, type FootLoadInput } from './footLoad';

/** A table on its feet, each on a square pad. */
export interface FootPressureInput extends FootLoadInput {
  /** Side of the square pad [mm]. */
  readonly padSide: number;
}

/**
 * The pressure under a square pad at the worst foot, even over the pad.
 *
 * @source load / area.
 * @param input as `footLoad`, and the pad's side [mm]
 * @returns pressure [N/mm2]
 * @problems as `footLoad`.
 * @example footPressure({ mass: 400, feet: 4, padSide: 100 }) // 0.196
 */
export function footPressure(input: FootPressureInput, working?: Working): Outcome<number> {
  const load = footLoad(input, working);
  if (!load.ok) return load;
  const area = input.padSide ** 2;
  working?.({ what: 'Pad', formula: 'pad_side^2', value: area, unit: 'mm2', source: 'geometry' });
  const pressure = (load.value * 1000) / area;
  working?.({
    what: 'Pressure under the pad',
    formula: 'load at the worst foot / pad',
    value: pressure,
    unit: 'N/mm2',
    source: 'statics',
  });
  return found(pressure);
}
