import { readQuantity, type Cell, type ReadNumber, type Unit } from './readQuantity';

/** 1 in = 25.4 mm exactly: international yard and pound agreement, 1959. */
export const MM_PER_INCH = 25.4;
/** Twelve of them, written out because 12 x 25.4 is no 304.8 to a machine. */
const MM_PER_FOOT = 304.8;

const LENGTH_UNITS: readonly Unit[] = [
  { words: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'], factor: 1 },
  { words: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'], factor: 10 },
  { words: ['m', 'metre', 'metres', 'meter', 'meters'], factor: 1000 },
  { words: ['in', 'inch', 'inches', 'ins', '"'], factor: MM_PER_INCH },
  {
    words: ['ft', 'foot', 'feet', "'"],
    factor: MM_PER_FOOT,
    then: { unit: 'in', below: 12, understood: true },
  },
];

/** What a length may look like, for messages. */
export const LENGTH_FORMS = 'a number of mm, or text with a unit such as 76 cm, 0.76 m, 30 in or 2\' 6"';

/**
 * Reads a length.
 * @param cell a number [mm], or text with a unit: `76 cm`, `0.76 m`, `30 in`, `30"`, `2' 6"`, `2 ft 6 1/2 in`
 * @returns the length [mm], or why it is refused
 * @example readLength("2' 6\"") // { ok: true, value: 762, bare: false }
 */
export function readLength(cell: Cell): ReadNumber {
  return readQuantity(cell, LENGTH_UNITS);
}
