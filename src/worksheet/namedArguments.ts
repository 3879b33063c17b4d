import type { Outcome } from '../core/measures/problem';
import type { Working } from '../core/measures/working';
import type { ArgumentValue } from './readArgument';
import { runToEnd, type Parts } from '../core/measures/parts';
import type {
  ArgumentDescription,
  GivenArguments,
  NumberFunction,
  Table,
  TableCells,
  TableFunction,
} from './description';

/** `wall_thickness` as code writes it: `wallThickness`. */
type CamelCase<Name extends string> = Name extends `${infer Head}_${infer Tail}`
  ? `${Head}${Capitalize<CamelCase<Tail>>}`
  : Name;

/** What a cell of the argument's quantity becomes. */
type ReadValue<A extends ArgumentDescription> = A extends { readonly repeating: true }
  ? readonly Table[]
  : A['quantity'] extends 'range'
    ? Table
    : A extends { readonly choices: readonly (infer Choice)[] }
      ? Choice
      : A['quantity'] extends 'text' | 'choice'
        ? string
        : number;

/** undefined only where the argument may be left out and has no default. */
type Value<A extends ArgumentDescription> = A extends {
  readonly optional: { readonly default: null };
  readonly repeating?: never;
}
  ? ReadValue<A> | undefined
  : ReadValue<A>;

/**
 * The arguments of a function by name, derived from its descriptions. An argument whose name is not written out
 * in its description leaves nothing: then no name compiles, instead of every one.
 */
export type NamedArguments<All extends readonly ArgumentDescription[]> = string extends All[number]['name']
  ? Readonly<Record<never, never>>
  : { readonly [A in All[number] as CamelCase<A['name']>]: Value<A> };

/** A description as it is written: `compute` takes the arguments that the description lists, by name. */
type Written<
  F extends NumberFunction | TableFunction,
  All extends readonly ArgumentDescription[],
  Result,
> = Omit<F, 'kind' | 'arguments' | 'compute' | 'computeInParts'> & {
  readonly arguments: All;
  readonly compute: (given: NamedArguments<All>, working?: Working) => Result;
};

/** The name under which `compute` gets an argument: `wall_thickness` is `wallThickness`. */
export const camelCase = (name: string): string =>
  name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());

/**
 * Arguments by the names under which `compute` takes them, read from a list of values in the order of the description.
 * To set each by its name at every row of a range takes longer than most formulas.
 * @returns the arguments, and what changes the list they are read from
 */
export function argumentsByName(described: readonly ArgumentDescription[]): {
  readonly named: GivenArguments;
  readonly readFrom: (values: readonly ArgumentValue[]) => void;
} {
  let from: readonly ArgumentValue[] = [];
  const named = {};
  for (const [i, { name }] of described.entries())
    Object.defineProperty(named, camelCase(name), { enumerable: true, get: () => from[i] });
  return { named, readFrom: (values) => void (from = values) };
}

/**
 * Describes a function with one number as its result.
 * @param written its description; `compute` destructures its arguments by their names in camel case, and a name that
 * the description does not list does not compile
 * @returns the description as a host calls it
 * @example
 * numberFunction({ arguments: [{ name: 'over_rail' }], compute: ({ overRail }) => 2 * overRail }).compute({ overRail: 50 })
 * // 100
 */
export const numberFunction = <const All extends readonly ArgumentDescription[]>(
  written: Written<NumberFunction, All, Outcome<number> | number>,
): NumberFunction & { readonly arguments: All } => ({
  ...written,
  kind: 'number',
  // The caller builds the object from the same descriptions that this type is derived from.
  compute: written.compute as NumberFunction['compute'],
});

/** Describes a function that takes a table or gives more than one cell; otherwise as `numberFunction`. */
export const tableFunction = <const All extends readonly ArgumentDescription[]>(
  written: Written<TableFunction, All, Outcome<TableCells>>,
): TableFunction & { readonly arguments: All } => ({
  ...written,
  kind: 'table',
  compute: written.compute as TableFunction['compute'],
});

/** The same for one that can take long: `compute` pauses after each part, so that other calls need not wait. */
export const tableFunctionInParts = <const All extends readonly ArgumentDescription[]>(
  written: Written<TableFunction, All, Parts<Outcome<TableCells>>>,
): TableFunction & { readonly arguments: All } => {
  const computeInParts = written.compute as (given: GivenArguments) => Parts<Outcome<TableCells>>;
  return {
    ...written,
    kind: 'table',
    compute: (given) => runToEnd(computeInParts(given)),
    computeInParts,
  };
};
