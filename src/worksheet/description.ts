import type { Outcome, Problem } from '../core/measures/problem';
import type { Cell } from '../core/measures/readQuantity';
import type { SmallerCalls } from './calls/smallerCalls';
import type { Working } from '../core/measures/working';
import type { Parts } from '../core/measures/parts';
import type { QuantityName } from './quantities';

/** A range of cells, row by row. */
export type Table = readonly (readonly Cell[])[];

/**
 * The arguments of one call by name, in camel case: numbers in the base unit, words for a choice, a table for a
 * range, a list of tables for a repeating one, undefined for one left out that has no default.
 */
export type GivenArguments = Readonly<Record<string, number | string | Table | readonly Table[] | undefined>>;

/**
 * One argument of a function, as data. Reading, range checks, messages, functions.json, help and the
 * reference page all come from this.
 */
export interface ArgumentDescription {
  /** Snake case, as the worksheet contract names it. */
  readonly name: string;
  /** One line, without the unit: the quantity gives that. */
  readonly help: string;
  readonly quantity: QuantityName;
  /** Least value allowed, itself included unless `above` says otherwise. */
  readonly least?: number;
  /** The value must be greater than this. */
  readonly above?: number;
  /** Greatest value allowed, itself included unless `below` says otherwise. */
  readonly most?: number;
  /** The value must be less than this. */
  readonly below?: number;
  /** What is ordinary [base unit]: where a bare number is refused, the units that would make it so are named. */
  readonly usual?: { readonly least: number; readonly most: number };
  readonly whole?: boolean;
  /** A bare 0 is a plain answer here and not a sign of an empty cell. */
  readonly plainZero?: boolean;
  /** Present when the argument may be left out; `default` null: the function does without it. */
  readonly optional?: { readonly default: number | string | null; readonly meaning?: string };
  /** For quantity 'choice': the words allowed. */
  readonly choices?: readonly string[];
  /** What may stand before a word allowed, and is taken off. */
  readonly prefix?: string;
  /** What to use instead where a value lies outside the range, for the message. */
  readonly beyond?: string;
  /** Takes all further arguments; last only. */
  readonly repeating?: boolean;
}

/** The rooms of the reference, in its order. */
export type Group =
  'Measures and pieces' | 'Clearance' | 'Carrying' | 'Floors' | 'Room' | 'Routes and surveys';

interface Described {
  readonly id: string;
  readonly group: Group;
  /** One line: what the function answers. */
  readonly summary: string;
  readonly arguments: readonly ArgumentDescription[];
  /** Where the formula comes from, with its clause or equation. */
  readonly source: string;
  /** The families of motion that are looked at, for a clearance. */
  readonly motions?: string;
  /** Where the formula holds and where it does not. */
  readonly validity?: string;
  /** Where the answer can hurt someone. */
  readonly caution?: string;
}

/**
 * A function with one number as its result: it takes cells or ranges and spills in their shape.
 * Written through `numberFunction`, which knows the arguments' names and types. `compute` reads what it is given
 * before it returns and keeps nothing of it; sometimes it gets a notebook for the working.
 */
export interface NumberFunction extends Described {
  readonly kind: 'number';
  readonly result: { readonly meaning: string; readonly unit: string };
  readonly example: Example<number>;
  readonly compute: (given: GivenArguments, working?: Working) => Outcome<number> | number;
}

/** A cell of a table that is spilled; a problem shows as an error in its own place. */
export type TableCell = string | number | boolean | { readonly problem: Problem };

/**
 * A function that takes a table or gives more than one cell: it does not lift. Written through `tableFunction`.
 */
export interface TableFunction extends Described {
  readonly kind: 'table';
  readonly result: { readonly meaning: string; readonly unit: string };
  /** `result`: the expected table, or its first rows. */
  readonly example: Example<readonly (readonly TableCell[])[]>;
  readonly compute: (given: GivenArguments, working?: Working) => Outcome<TableCells>;
  /** The same with a pause after each part, where it can take long: other calls are not kept waiting then. */
  readonly computeInParts?: (given: GivenArguments) => Parts<Outcome<TableCells>>;
  /** Its calls as smaller ones, where several workers can share one; undefined where a call cannot be. */
  readonly inSmallerCalls?: (values: readonly unknown[]) => SmallerCalls | undefined;
}

export type TableCells = readonly (readonly TableCell[])[];

export interface Example<R> {
  /** What a user would type: scalars, or a range as rows of cells. */
  readonly arguments: readonly (Cell | readonly (readonly Cell[])[])[];
  readonly result: R;
  /** Tolerance of the printed result, where it is rounded. */
  readonly within?: number;
  /** Where the expected value is printed, or how it follows by hand: never that we computed it with the function itself. */
  readonly source: string;
}

export type FunctionDescription = NumberFunction | TableFunction;
