import type { Working } from '../measures/working';
import { ADVICE } from '../carrying/advice';
import { CODES, CODE_LOADS, type Use } from './codeLoads';

/**
 * Writes into a working how a load stands against each code's value for a use, and what to do where it is over one.
 * Only rows: the result that they stand beside is the load itself.
 * @param load [kN/m2] for 'area', [kN] for 'point'
 */
export function besideTheCode(working: Working, load: number, use: Use, kind: 'area' | 'point'): void {
  let over = false;
  for (const code of CODES) {
    const given = CODE_LOADS[code][use]?.[kind];
    if (!given) continue;
    over ||= load > given.value;
    working({
      what: `Code ${code}, ${use}`,
      formula: 'a value of the code, which is no permission',
      value: given.value,
      unit: kind === 'area' ? 'kN/m2' : 'kN',
      source: `${given.clause} (${given.status})`,
    });
  }
  if (!over) return;
  working({
    what: 'Next',
    formula: 'a load over a code value',
    value: use === 'stairs' ? ADVICE.stair : ADVICE.floor,
    unit: '',
    source: '',
  });
}
