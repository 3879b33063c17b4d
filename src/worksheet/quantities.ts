import { ANGLE_FORMS, readAngle } from '../core/measures/readAngle';
import { LENGTH_FORMS, readLength } from '../core/measures/readLength';
import { MASS_FORMS, readMass } from '../core/measures/readMass';
import { readQuantity, type Cell, type ReadNumber } from '../core/measures/readQuantity';

/** A quantity: its unit as shown, how a cell is read, and the forms a cell may take, for messages. */
export interface Quantity {
  readonly unit: string;
  readonly read: (cell: Cell) => ReadNumber;
  readonly forms: string;
}

const plain = (unit: string): Quantity => ({
  unit,
  read: (cell) => readQuantity(cell, []),
  forms: unit ? `a plain number of ${unit}` : 'a plain number',
});

const UNREADABLE = (): ReadNumber => ({ ok: false, why: 'not a number' });

/** Quantities whose cells are read as numbers. */
export const QUANTITIES = {
  length: { unit: 'mm', read: readLength, forms: LENGTH_FORMS },
  mass: { unit: 'kg', read: readMass, forms: MASS_FORMS },
  angle: { unit: 'degrees', read: readAngle, forms: ANGLE_FORMS },
  count: plain(''),
  ratio: plain(''),
  percent: { ...plain('%'), forms: 'a plain number of per cent, 10 for 10 %' },
  density: plain('kg/m3'),
  'area load': plain('kN/m2'),
  force: plain('kN'),
  speed: plain('km/h'),
  power: plain('W'),
  minutes: plain('min'),
  hours: plain('h'),
  rate: plain('a minute'),
  /** A word out of `choices`. */
  choice: { unit: '', read: UNREADABLE, forms: 'one of the words allowed' },
  /** Any text. */
  text: { unit: '', read: UNREADABLE, forms: 'a text' },
  /** Cells as they stand. */
  range: { unit: '', read: UNREADABLE, forms: 'a range' },
} satisfies Record<string, Quantity>;

export type QuantityName = keyof typeof QUANTITIES;
