import { reportFault } from './reportFault';
import type { Cell, CellError } from '../core/measures/readQuantity';
import type { Outcome } from '../core/measures/problem';
import { runToEnd, type Parts } from '../core/measures/parts';
import { cellCost } from './calls/cellCost';
import { commonShape, type Shape } from './broadcast';
import type {
  ArgumentDescription,
  FunctionDescription,
  NumberFunction,
  Table,
  TableCell,
  TableFunction,
} from './description';
import { argumentsByName, camelCase } from './namedArguments';
import { readArgument, isCellError, plainBounds, type ArgumentValue } from './readArgument';
import { cutToUsed, MOST_ROWS } from './usedRows';
import { CALL_MESSAGES, messageOf, type Message } from './messages';
import { firstOf } from '../core/lists/ends';
import { entryAt } from '../core/lists/entryAt';

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
    const only = onlyCell(table);
    if (isCellError(only)) throw only;
    return table;
  };
}

/**
 * The same as a call that pauses after each part of its work: some cells of a range, each build of a survey. A single
 * cell's error is not thrown but its only cell.
 */
export const callInParts = (
  description: FunctionDescription,
  makeError: MakeError,
): ((values: readonly HostArgument[]) => Parts<HostCell[][]>) =>
  description.kind === 'number' ? liftedCall(description, makeError) : tableCall(description, makeError);

const isRange = (value: HostArgument): value is readonly (readonly Cell[])[] => Array.isArray(value);

const asRange = (value: HostArgument): readonly (readonly Cell[])[] => (isRange(value) ? value : [[value]]);

/** Longest text that a cell holds [characters] ("Excel specifications and limits"). */
const LONGEST_TEXT = 32767;

/** Whether a cell is a number, a text, a truth value, empty, or an error. */
const isKnown = (cell: Cell): boolean =>
  cell === null || ['number', 'string', 'boolean', 'undefined'].includes(typeof cell) || isCellError(cell);

const shapeOf = (range: readonly (readonly Cell[])[]): Shape => ({
  rows: range.length,
  columns: range[0]?.length ?? 0,
});

/** The cell of a range that has one only. */
function onlyCell<C>(range: readonly (readonly C[])[]): C | undefined {
  const row = range[0];
  return range.length === 1 && row?.length === 1 ? row[0] : undefined;
}

/** The cells of a call in which each argument is one; undefined where one is a range of more, or of none. */
function loneCells(values: readonly HostArgument[], count: number): Cell[] | undefined {
  const cells: Cell[] = [];
  for (let i = 0; i < count; i++) {
    const value = values[i];
    if (!isRange(value)) cells.push(value);
    else if (value.length === 1 && value[0]?.length === 1) cells.push(value[0][0]);
    else return undefined;
  }
  return cells;
}

const shapeWords = (shape: Shape): string => `${shape.rows} x ${shape.columns}`;

/** Says of the first argument that has no place among those before it which one it does not go with. */
function apart(given: readonly GivenArgument[]): Message {
  const empty = given.find(({ shape: { rows, columns } }) => rows === 0 || columns === 0);
  if (empty) return CALL_MESSAGES.noCells(empty.lifted.described.name);
  const words = ({ lifted, shape }: GivenArgument): string => `${lifted.described.name} ${shapeWords(shape)}`;
  const shapes = given.map(({ shape }) => shape);
  const last = entryAt(
    given,
    shapes.findIndex((_, i) => !commonShape(shapes.slice(0, i + 1))),
  );
  const other = entryAt(
    given,
    shapes.findIndex((shape) => !commonShape([shape, last.shape])),
  );
  return CALL_MESSAGES.shapes(words(other), words(last));
}

/** An argument of a function that is lifted over ranges, with what the rows of a call need of it. */
interface LiftedArgument {
  /** Its place among the arguments. */
  readonly at: number;
  readonly described: ArgumentDescription;
  readonly bounds: ReturnType<typeof plainBounds>;
}

/** What one call hands over for an argument. */
interface GivenArgument {
  readonly lifted: LiftedArgument;
  readonly range: readonly (readonly Cell[])[];
  readonly shape: Shape;
}

/** An argument that is another cell in each row, or in each column. */
interface VaryingArgument {
  readonly argument: LiftedArgument;
  readonly range: readonly (readonly Cell[])[];
  readonly oneRow: boolean;
  readonly oneColumn: boolean;
}

/** A call over a range pauses after cells that take no longer than this [ms]. */
const PART = 5;

function liftedCall(description: NumberFunction, makeError: MakeError) {
  const { compute, id } = description;
  const lifted = description.arguments.map((described, at): LiftedArgument => ({
    at,
    described,
    bounds: plainBounds(described),
  }));
  const fail = (message: Message): CellError => makeError(message.code, message.text);
  // To pause takes longer than a cell of a formula.
  const cellsAtOnce = Math.max(1, Math.floor(PART / cellCost(description)));
  const { named, readFrom } = argumentsByName(description.arguments);

  const readInto = (
    values: ArgumentValue[],
    { at, described, bounds }: LiftedArgument,
    cell: Cell,
  ): CellError | undefined => {
    // The short way: a plain number within bounds, as nearly every cell of a long range is.
    if (typeof cell === 'number' && cell >= bounds.low && cell <= bounds.high && cell !== 0) {
      values[at] = cell;
      return undefined;
    }
    if (isCellError(cell)) return makeError(cell.code, cell.message);
    const outcome = readArgument(described, cell);
    if (!outcome.ok) return fail(messageOf(outcome.problem));
    values[at] = outcome.value;
    return undefined;
  };
  /** `compute` reads its arguments before it returns, so that calls that pause between cells can share `named`. */
  const computed = (values: readonly ArgumentValue[]): HostCell => {
    let outcome: Outcome<number> | number;
    try {
      readFrom(values);
      outcome = compute(named);
    } catch (fault) {
      reportFault(id, fault);
      return fail(CALL_MESSAGES.unforeseen(id));
    }
    if (typeof outcome === 'object') {
      if (!outcome.ok) return fail(messageOf(outcome.problem));
      outcome = outcome.value;
    }
    return Number.isFinite(outcome) ? outcome : fail(CALL_MESSAGES.unforeseen(id));
  };
  // Thousands of cells may each make a call of their own: nothing is laid out for ranges there.
  const ofLoneCells = (cells: readonly Cell[]): HostCell => {
    const values: ArgumentValue[] = [];
    for (const argument of lifted) {
      const fault = readInto(values, argument, cells[argument.at]);
      if (fault !== undefined) return fault;
    }
    return computed(values);
  };

  return function* (given: readonly HostArgument[]): Parts<HostCell[][]> {
    const alone = loneCells(given, lifted.length);
    if (alone) return [[ofLoneCells(alone)]];
    const ranges = cutToUsed(lifted.map((_, i) => asRange(given[i])));
    const asked = lifted.map((argument, i): GivenArgument => {
      const range = entryAt(ranges, i);
      return { lifted: argument, range, shape: shapeOf(range) };
    });
    const shape = commonShape(asked.map((argument) => argument.shape));
    if (!shape || shape.rows === 0 || shape.columns === 0) return [[fail(apart(asked))]];
    if (shape.rows > MOST_ROWS) return [[fail(CALL_MESSAGES.tooLong(shape.rows, MOST_ROWS))]];
    // A single cell given for an argument is read once and not at every row; of several errors in a row the first
    // counts, in the order of the arguments.
    // Of numbers from the beginning: a list that may hold anything takes a box for each.
    const values: ArgumentValue[] = asked.map(() => 0);
    const varying: VaryingArgument[] = [];
    let singleFault: CellError | undefined;
    for (const { lifted: argument, range, shape: own } of asked) {
      if (own.rows > 1 || own.columns > 1) {
        varying.push({ argument, range, oneRow: own.rows === 1, oneColumn: own.columns === 1 });
        continue;
      }
      singleFault = readInto(values, argument, onlyCell(range));
      // What comes after it is read in no row.
      if (singleFault !== undefined) break;
    }

    const answer = (row: number, column: number): HostCell => {
      for (const { argument, range, oneRow, oneColumn } of varying) {
        const fault = readInto(values, argument, range[oneRow ? 0 : row]?.[oneColumn ? 0 : column]);
        if (fault !== undefined) return fault;
      }
      return singleFault ?? computed(values);
    };
    const { rows, columns } = shape;
    const table: HostCell[][] = [];
    let row = 0;
    let line: HostCell[] = [];
    /** Some more cells, by a loop of its own: one that may pause is not compiled as well. */
    const goOn = (most: number): void => {
      for (let left = most; left > 0 && row < rows; left--) {
        if (columns === 1) table.push([answer(row++, 0)]);
        else if (line.push(answer(row, line.length)) === columns) {
          table.push(line);
          line = [];
          row++;
        }
      }
    };
    for (;;) {
      goOn(cellsAtOnce);
      if (row === rows) return table;
      yield { done: row, of: rows };
    }
  };
}

function tableCall(description: TableFunction, makeError: MakeError) {
  const { arguments: described, compute, computeInParts, id } = description;
  const fail = (message: Message): HostCell[][] => [[makeError(message.code, message.text)]];

  return function* (values: readonly HostArgument[]): Parts<HostCell[][]> {
    const ready: Record<string, ArgumentValue | Table | readonly Table[]> = {};
    for (const [i, argument] of described.entries()) {
      const name = camelCase(argument.name);
      const given = values[i];
      if (argument.repeating) {
        // The host hands all further arguments over as one list of ranges.
        const further = ((given ?? []) as unknown as readonly HostArgument[]).map(asRange);
        const many = further.find((range) => range.length !== 1 || range[0]?.length !== 1);
        if (many) return fail(CALL_MESSAGES.manyCells(argument.name, shapeWords(shapeOf(many))));
        const wrong = further.map(onlyCell).find(isCellError);
        if (wrong) return [[makeError(wrong.code, wrong.message)]];
        ready[name] = further;
        continue;
      }
      if (argument.quantity === 'range') {
        const absent = given === null || given === undefined;
        if (absent && !argument.optional) {
          return fail(messageOf({ kind: 'not measured', argument: argument.name }));
        }
        if (isCellError(given)) return [[makeError(given.code, given.message)]];
        ready[name] = absent ? undefined : known(firstOf(cutToUsed([asRange(given)])));
        continue;
      }
      const range = asRange(given);
      const shape = shapeOf(range);
      if (shape.rows !== 1 || shape.columns !== 1) {
        return fail(CALL_MESSAGES.manyCells(argument.name, shapeWords(shape)));
      }
      const cell = onlyCell(range);
      if (isCellError(cell)) return [[makeError(cell.code, cell.message)]];
      const outcome = readArgument(argument, cell);
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
