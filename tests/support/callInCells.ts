import type { Cell, CellError } from '../../src/core/measures/readQuantity';
import { hostFunction, type HostCell } from '../../src/worksheet/callFunction';
import { FUNCTIONS } from '../../src/worksheet/functions';

/** The host's error value, as the documentation describes CustomFunctions.Error. */
export class HostError implements CellError {
  constructor(
    readonly code: string,
    readonly message: string = '',
  ) {}
}

export type Given = Cell | readonly (readonly Cell[])[];

/** Calls a function as a cell does; a thrown host error comes back as the value of the cell. */
export function callInCells(id: string, ...values: readonly Given[]): HostCell[][] {
  const description = FUNCTIONS.find((f) => f.id === id);
  if (!description) throw new Error(`no function ${id}`);
  const call = hostFunction(description, (code, message) => new HostError(code, message));
  const each = values.map((v) => (Array.isArray(v) || v === undefined ? v : [[v as Cell]]));
  // A repeating argument takes all further ones as one list of ranges.
  const last = description.arguments.length - 1;
  const ranges = description.arguments[last]?.repeating ? [...each.slice(0, last), each.slice(last)] : each;
  try {
    return call(...ranges);
  } catch (error) {
    if (error instanceof HostError) return [[error]];
    throw error;
  }
}

/** The single value of a call with one cell as its result. */
export function callInCell(id: string, ...values: readonly Given[]): HostCell {
  const table = callInCells(id, ...values);
  if (table.length !== 1 || table[0]!.length !== 1) throw new Error(`${id} gave more than one cell`);
  return table[0]![0]!;
}
