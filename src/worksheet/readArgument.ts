import { found, refused, type Outcome, type Problem } from '../core/measures/problem';
import type { Cell, CellError, ReadFailure } from '../core/measures/readQuantity';
import type { ArgumentDescription } from './description';
import { QUANTITIES } from './quantities';
import { allowedText } from './allowedText';

export type ArgumentValue = number | string | undefined;

/** An error value among the arguments comes through as itself. */
export const isCellError = (cell: unknown): cell is CellError =>
  typeof cell === 'object' && cell !== null && typeof (cell as CellError).code === 'string';

const isBlank = (cell: Cell): boolean =>
  cell === null || cell === undefined || (typeof cell === 'string' && cell.trim() === '');

/** Whether `value` lies in the argument's range. */
export function inRange(argument: ArgumentDescription, value: number): boolean {
  return (
    (argument.least === undefined || value >= argument.least) &&
    (argument.above === undefined || value > argument.above) &&
    (argument.most === undefined || value <= argument.most) &&
    (argument.below === undefined || value < argument.below) &&
    (!argument.whole || Number.isInteger(value))
  );
}

/**
 * Makes the reader of one argument: a cell, never an error value, to the value that `compute` gets, or the
 * problem with it. Plain numbers in range take a short way, since a range call reads thousands of them.
 */
export function argumentReader(argument: ArgumentDescription): (cell: Cell) => Outcome<ArgumentValue> {
  const least = Math.max(argument.least ?? -Infinity, -Number.MAX_VALUE);
  const most = Math.min(argument.most ?? Infinity, Number.MAX_VALUE);
  const strict = argument.above !== undefined || argument.below !== undefined || argument.whole === true;
  const words = argument.quantity === 'choice' || argument.quantity === 'text';
  return (cell) => {
    if (!words && typeof cell === 'number' && cell !== 0 && cell >= least && cell <= most) {
      if (!strict || inRange(argument, cell)) return found(cell);
    }
    return readSlowly(argument, cell);
  };
}

function readSlowly(argument: ArgumentDescription, cell: Cell): Outcome<ArgumentValue> {
  if (isBlank(cell)) {
    if (!argument.optional) return refused({ kind: 'not measured', argument: argument.name });
    return found(argument.optional.default ?? undefined);
  }
  if (argument.quantity === 'choice' || argument.quantity === 'text') return readWord(argument, cell);
  const read = QUANTITIES[argument.quantity].read(cell);
  if (!read.ok) return refused(notReadable(argument, cell, read.why));
  if (read.value === 0 && read.bare && !zeroIsPlain(argument)) return refused(zeroRefused(argument));
  if (!inRange(argument, read.value)) {
    return refused({
      kind: 'out of range',
      argument: argument.name,
      got: cell,
      allowed: allowedText(argument),
    });
  }
  return found(read.value);
}

function zeroIsPlain(argument: ArgumentDescription): boolean {
  return argument.plainZero === true || argument.optional?.default === 0;
}

function zeroRefused(argument: ArgumentDescription): Problem {
  const canMeanNone =
    argument.optional !== undefined && argument.quantity === 'length' && inRange(argument, 0);
  return {
    kind: 'out of range',
    argument: argument.name,
    got: 0,
    allowed: allowedText(argument),
    hint: canMeanNone ? 'write "0 mm" to mean none' : '0 may be an empty cell',
  };
}

function readWord(argument: ArgumentDescription, cell: Cell): Outcome<ArgumentValue> {
  // 0 is how an empty cell can arrive on some hosts, and no word of ours is a number.
  if (typeof cell !== 'string') {
    return refused({
      kind: 'not readable',
      argument: argument.name,
      got: cell,
      allowed: allowedText(argument),
      ...(cell === 0 ? { why: 'blank' as const } : {}),
    });
  }
  if (!argument.choices) return found(cell);
  const word = cell.trim().toLowerCase();
  const choice = argument.choices.find((c) => c.toLowerCase() === word);
  if (choice !== undefined) return found(choice);
  return refused({
    kind: 'not readable',
    argument: argument.name,
    got: cell,
    allowed: allowedText(argument),
  });
}

function notReadable(argument: ArgumentDescription, got: Cell, why: ReadFailure): Problem {
  return {
    kind: 'not readable',
    argument: argument.name,
    got,
    allowed: allowedText(argument),
    why,
  };
}
