import { found, refused, type Outcome, type Problem } from '../core/measures/problem';
import type { Cell, CellError, ReadFailure } from '../core/measures/readQuantity';
import { meantAs } from '../core/survey/words/problemWords';
import { nearestWord } from '../core/survey/table/nearestWord';
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
function inRange(argument: ArgumentDescription, value: number): boolean {
  return (
    (argument.least === undefined || value >= argument.least) &&
    (argument.above === undefined || value > argument.above) &&
    (argument.most === undefined || value <= argument.most) &&
    (argument.below === undefined || value < argument.below) &&
    (!argument.whole || Number.isInteger(value))
  );
}

/**
 * Bounds within which a plain number other than 0 is taken as it stands; empty (low > high) where each cell
 * needs a look. A bound that is itself excluded becomes the next number inside.
 */
export function plainBounds(argument: ArgumentDescription): { readonly low: number; readonly high: number } {
  const looked = ['choice', 'text', 'range'].includes(argument.quantity) || argument.whole === true;
  if (looked) return { low: Infinity, high: -Infinity };
  const low = argument.above !== undefined ? nextNumber(argument.above, 1) : argument.least;
  const high = argument.below !== undefined ? nextNumber(argument.below, -1) : argument.most;
  return {
    low: Math.max(low ?? -Infinity, -Number.MAX_VALUE),
    high: Math.min(high ?? Infinity, Number.MAX_VALUE),
  };
}

/** A number just above (1) or below (-1) another: at most one part in 2^51 away, on the safe side. */
const nextNumber = (from: number, way: 1 | -1): number =>
  from === 0 ? way * Number.MIN_VALUE : from + way * Math.abs(from) * 2 * Number.EPSILON;

/** Reads a cell, never an error value: the value that `compute` gets, or the problem with it. */
export function readArgument(argument: ArgumentDescription, cell: Cell): Outcome<ArgumentValue> {
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
      ...hintOf(argument, cell),
    });
  }
  return found(read.value);
}

/** What a value out of range may have been meant as, or what to use in its place. */
function hintOf(argument: ArgumentDescription, cell: Cell): { readonly hint?: string } {
  const { least = 0, most, usual } = argument;
  const ordinary = usual ?? (least > 0 && most !== undefined ? { least, most } : undefined);
  const meant = argument.quantity === 'length' ? meantAs(cell, ordinary) : '';
  const hint = [meant, argument.beyond ?? ''].filter((words) => words !== '').join('; ');
  return hint === '' ? {} : { hint };
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
  const prefix = argument.prefix?.toLowerCase() ?? '';
  const typed = cell.trim().toLowerCase();
  const word = typed.startsWith(prefix) ? typed.slice(prefix.length) : typed;
  const choice = argument.choices.find((c) => c.toLowerCase() === word);
  if (choice !== undefined) return found(choice);
  // The list can be long, and what is shown of a message is short: the word that is probably meant comes first.
  const near = nearestWord(word, argument.choices);
  const choices = near === undefined ? argument.choices : [...new Set([near, ...argument.choices])];
  return refused({
    kind: 'not readable',
    argument: argument.name,
    got: cell,
    allowed: allowedText({ ...argument, choices }),
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
