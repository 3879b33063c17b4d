import { readQuantity, type Cell, type ReadNumber, type Unit } from './readQuantity';

const ANGLE_UNITS: readonly Unit[] = [{ words: ['°', 'deg', 'degree', 'degrees'], factor: 1 }];

/** What an angle may look like, for messages. */
export const ANGLE_FORMS = 'a number of degrees, or text such as 42 deg';

/**
 * Reads an angle.
 * @param cell a number [degrees], or text: `42 deg`, `42°`
 * @returns the angle [degrees], or why it is refused
 * @example readAngle('42 deg') // { ok: true, value: 42, bare: false }
 */
export function readAngle(cell: Cell): ReadNumber {
  return readQuantity(cell, ANGLE_UNITS);
}
