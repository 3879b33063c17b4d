import { reportFault } from './reportFault';
import type { Cell, CellError } from '../core/measures/readQuantity';
import type { Outcome } from '../core/measures/problem';
import { runToEnd, type Parts } from '../core/measures/parts';
import { commonShape, type Shape } from './broadcast';
import type {
  ArgumentDescription,
  FunctionDescription,
  NumberFunction,
  Table,
  TableCell,
  TableFunction,
} from './description';
import { camelCase } from './namedArguments';
import { readArgument, isCellError, plainBounds, type ArgumentValue } from './readArgument';
import { cutToUsed, MOST_ROWS } from './usedRows';
import { CALL_MESSAGES, messageOf, type Message } from './messages';

/** Makes the host's own error value. */
export type MakeError = (code: string, message?: string) => CellError;

/** What a host hands over for one argument: a range row by row, or a lone cell. */
export type HostArgument = Cell | readonly (readonly Cell[])[];

export type HostCell = string | number | boolean | CellError;
export type HostFunction = (...values: unknown[]) => HostCell[][];

/**
 * Turns a description into the function that a host calls. A single cell's error is thrown, as the host
 * documents; in a range each error stays in its own place.
 */
export function hostFunction(description: FunctionDescription, makeError: MakeError): HostFunction {
  const call = callInParts(description, makeError);
  return (...values) => {
    const table = runToEnd(call(values.slice(0, description.arguments.length) as HostArgument[]));
    if (table.length === 1 && table[0]!.length === 1 && isCellError(table[0]![0])) throw table[0]![0];
    return table;
  };
}

/**
 * The same as a call that pauses after each part of its work: each cell of a range, each build of a survey. A single
 * cell's error is not thrown but its only cell.
 */
export const callInParts = (
  description: FunctionDescription,
  makeError: MakeError,
): ((values: readonly HostArgument[]) => Parts<HostCell[][]>) =>
  description.kind === 'number' ? liftedCall(description, makeError) : tableCall(description, makeError);

const asRange = (value: HostArgument): readonly (readonly Cell[])[] =>
  Array.isArray(value) ? (value as readonly (readonly Cell[])[]) : [[value as Cell]];

/** Longest text that a cell holds [characters] ("Excel specifications and limits"). */
const LONGEST_TEXT = 32767;

/** Whether a cell is a number, a text, a truth value, empty, or an error. */
const isKnown = (cell: Cell): boolean =>
  cell === null || ['number', 'string', 'boolean', 'undefined'].includes(typeof cell) || isCellError(cell);

const shapeOf = (range: readonly (readonly Cell[])[]): Shape => ({
  rows: range.length,
  columns: range[0]?.length ?? 0,
});

const shapeWords = (shape: Shape): string => `${shape.rows} x ${shape.columns}`;

/** Says of the first argument that has no place among those before it which one it does not go with. */
function apart(described: readonly ArgumentDescription[], shapes: readonly Shape[]): Message {
  const empty = shapes.findIndex(({ rows, columns }) => rows === 0 || columns === 0);
  if (empty >= 0) return CALL_MESSAGES.noCells(described[empty]!.name);
  const words = (i: number): string => `${described[i]!.name} ${shapeWords(shapes[i]!)}`;
  const last = shapes.findIndex((_, i) => !commonShape(shapes.slice(0, i + 1)));
  const other = shapes.findIndex((shape) => !commonShape([shape, shapes[last]!]));
  return CALL_MESSAGES.shapes(words(other), words(last));
}

function liftedCall(description: NumberFunction, makeError: MakeError) {
  const { arguments: described, compute, id } = description;
  const bounds = described.map(plainBounds);
  const names = described.map((argument) => camelCase(argument.name));
  const fail = (message: Message): CellError => makeError(message.code, message.text);
  const count = described.length;

  return function* (values: readonly HostArgument[]): Parts<HostCell[][]> {
    const given = described.map((_, i) => asRange(values[i]));
    const ranges = cutToUsed(given);
    const shapes = ranges.map(shapeOf);
    const shape = commonShape(shapes);
    if (!shape || shape.rows === 0 || shape.columns === 0) return [[fail(apart(described, shapes))]];
    if (shape.rows > MOST_ROWS) return [[fail(CALL_MESSAGES.tooLong(shape.rows, MOST_ROWS))]];
    // A single cell given for an argument is read once and not at every row.
    const single = shapes.map((s) => s.rows === 1 && s.columns === 1);
    const constant = new Array<ArgumentValue | CellError>(count);
    // One object for all rows: `compute` reads it before it returns.
    const named: Record<string, ArgumentValue> = {};
    const readInto = (i: number, cell: Cell): CellError | undefined => {
      // The short way: a plain number within bounds, as nearly every cell of a long range is.
      if (typeof cell === 'number' && cell >= bounds[i]!.low && cell <= bounds[i]!.high && cell !== 0) {
        named[names[i]!] = cell;
        return undefined;
      }
      if (isCellError(cell)) return makeError(cell.code, cell.message);
      const outcome = readArgument(described[i]!, cell);
      if (!outcome.ok) return fail(messageOf(outcome.problem));
      named[names[i]!] = outcome.value;
      return undefined;
    };
    for (let i = 0; i < count; i++) {
      if (single[i]) constant[i] = readInto(i, ranges[i]![0]![0]);
    }

    const answer = (row: number, column: number): HostCell => {
      for (let i = 0; i < count; i++) {
        if (single[i]) {
          const error = constant[i];
          if (error !== undefined) return error;
          continue;
        }
        const cells = shapes[i]!.rows === 1 ? ranges[i]![0]! : ranges[i]![row]!;
        const cell = shapes[i]!.columns === 1 ? cells[0] : cells[column];
        const error = readInto(i, cell);
        if (error !== undefined) return error;
      }
      let outcome: Outcome<number> | number;
      try {
        outcome = compute(named);
      } catch (fault) {
        reportFault(id, fault);
        return fail(CALL_MESSAGES.unforeseen(id));
      }
      if (typeof outcome === 'number') return finite(outcome);
      return outcome.ok ? finite(outcome.value) : fail(messageOf(outcome.problem));
    };
    const finite = (number: number): HostCell =>
      Number.isFinite(number) ? number : fail(CALL_MESSAGES.unforeseen(id));

    const table = new Array<HostCell[]>(shape.rows);
    for (let row = 0; row < shape.rows; row++) {
      const out = new Array<HostCell>(shape.columns);
      for (let column = 0; column < shape.columns; column++) {
        out[column] = answer(row, column);
        yield { done: row, of: shape.rows };
      }
      table[row] = out;
    }
    return table;
  };
}

function tableCall(description: TableFunction, makeError: MakeError) {
  const { arguments: described, compute, computeInParts, id } = description;
  const fail = (message: Message): HostCell[][] => [[makeError(message.code, message.text)]];

  return function* (values: readonly HostArgument[]): Parts<HostCell[][]> {
    const ready: Record<string, ArgumentValue | Table | readonly Table[]> = {};
    for (let i = 0; i < described.length; i++) {
      const argument = described[i]!;
      const name = camelCase(argument.name);
      const given = values[i];
      if (argument.repeating) {
        // The host hands all further arguments over as one list of ranges.
        const further = ((given ?? []) as unknown as readonly HostArgument[]).map(asRange);
        const many = further.find((range) => range.length !== 1 || range[0]!.length !== 1);
        if (many) return fail(CALL_MESSAGES.manyCells(argument.name, shapeWords(shapeOf(many))));
        const wrong = further.find((range) => isCellError(range[0]![0]));
        if (wrong) {
          const error = wrong[0]![0] as CellError;
          return [[makeError(error.code, error.message)]];
        }
        ready[name] = further;
        continue;
      }
      if (argument.quantity === 'range') {
        const absent = given === null || given === undefined;
        if (absent && !argument.optional) {
          return fail(messageOf({ kind: 'not measured', argument: argument.name }));
        }
        if (isCellError(given)) return [[makeError(given.code, given.message)]];
        ready[name] = absent ? undefined : known(cutToUsed([asRange(given)])[0]!);
        continue;
      }
      const range = asRange(given);
      const shape = shapeOf(range);
      if (shape.rows !== 1 || shape.columns !== 1) {
        return fail(CALL_MESSAGES.manyCells(argument.name, shapeWords(shape)));
      }
      const cell = range[0]![0];
      if (isCellError(cell)) return [[makeError(cell.code, cell.message)]];
      const outcome = readArgument(described[i]!, cell);
      if (!outcome.ok) return fail(messageOf(outcome.problem));
      ready[name] = outcome.value;
    }
    let outcome: Outcome<readonly (readonly TableCell[])[]>;
    try {
      outcome = computeInParts ? yield* computeInParts(ready) : compute(ready);
    } catch (fault) {
      reportFault(id, fault);
      return fail(CALL_MESSAGES.unforeseen(id));
    }
    if (!outcome.ok) return fail(messageOf(outcome.problem));
    if (outcome.value.length > MOST_ROWS) {
      return fail(CALL_MESSAGES.tooLong(outcome.value.length, MOST_ROWS));
    }
    return outcome.value.map((row) => row.map(tableCell));
  };

  /** A table whose cells are what the core knows: a data type of the host's own counts as an error in its cell. */
  function known(table: Table): Table {
    if (table.every((row) => row.every(isKnown))) return table;
    return table.map((row) => row.map((cell) => (isKnown(cell) ? cell : makeError('#VALUE!'))));
  }

  function tableCell(cell: TableCell): HostCell {
    if (typeof cell === 'string') {
      return cell.length > LONGEST_TEXT ? `${cell.slice(0, LONGEST_TEXT - 1)}…` : cell;
    }
    if (typeof cell !== 'object') return cell;
    const message = messageOf(cell.problem);
    return makeError(message.code, message.text);
  }
}
