import { readQuantity, type Cell, type ReadNumber, type Unit } from './readQuantity';

/** 1 lb = 0.45359237 kg exactly: international yard and pound agreement, 1959. */
export const KG_PER_POUND = 0.45359237;

const MASS_UNITS: readonly Unit[] = [
  { words: ['kg', 'kgs', 'kilogram', 'kilograms'], factor: 1 },
  { words: ['g', 'gram', 'grams'], factor: 0.001 },
  { words: ['t', 'tonne', 'tonnes'], factor: 1000 },
  {
    words: ['lb', 'lbs', 'pound', 'pounds'],
    factor: KG_PER_POUND,
    then: { unit: 'oz', below: 16 },
  },
  { words: ['oz', 'ounce', 'ounces'], factor: KG_PER_POUND / 16 },
  {
    words: ['st', 'stone', 'stones'],
    factor: 14 * KG_PER_POUND,
    then: { unit: 'lb', below: 14 },
  },
];

/** What a mass may look like, for messages. */
export const MASS_FORMS = 'a number of kg, or text with a unit such as 120 kg, 265 lb or 18 st 12 lb';

/**
 * Reads a mass.
 * @param cell a number [kg], or text with a unit: `265 lb`, `18 st 12 lb`
 * @returns the mass [kg], or why it is refused
 * @example readMass('265 lb').value // 120.20197805 kg
 */
export function readMass(cell: Cell): ReadNumber {
  return readQuantity(cell, MASS_UNITS);
}
