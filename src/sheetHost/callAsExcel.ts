import type { BundleFunction, BundleParameter } from './bundle';
import type { CustomFunctionsRuntime } from './customFunctionsRuntime';
import { isCellError, type CellError, type CellValue, type HostManners } from './hostValues';
import { firstOf } from '../core/lists/ends';

/** One argument of a call: left out, a lone value (`range` false), or the cells of a range. */
export type CallArgument =
  'left out' | { readonly range: boolean; readonly rows: readonly (readonly CellValue[])[] };

/** The cells that a call gives: at least one, rows of one length. */
export type CallResult = readonly (readonly (number | string | boolean | CellError)[])[];

/** Longest text that a cell holds [characters] ("Excel specifications and limits"). */
const LONGEST_TEXT = 32767;

// What a custom function may return; #NAME? and #REF! are documented as input only.
const RETURNABLE = new Set(['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NULL!']);

/** Only these show a message beside the code. */
const WITH_MESSAGE = new Set(['#VALUE!', '#N/A']);

const VALUE_ERROR: CallResult = [[{ code: '#VALUE!' }]];

/**
 * Calls a function of a bundle as Excel would: arguments in the shapes that its metadata ask for, the result
 * turned into cells. tests/sheetHost/conformance.test.ts says line by line what is documented.
 * @param address of the cell that calls, which goes along with `requiresAddress`
 */
export function callAsExcel(
  described: BundleFunction,
  given: readonly CallArgument[],
  manners: HostManners,
  runtime: CustomFunctionsRuntime,
  address?: string,
): CallResult {
  if (given.length < described.least || given.length > described.most) return VALUE_ERROR;
  const values: unknown[] = [];
  for (const [i, parameter] of described.parameters.entries()) {
    if (parameter.repeating) {
      const rest: unknown[] = [];
      for (const argument of given.slice(i)) {
        const value = handOver(argument, parameter, described.takesErrors, manners, runtime);
        if (isStop(value)) return [[value.stop]];
        rest.push(value);
      }
      values.push(rest);
      break;
    }
    const value = handOver(given[i] ?? 'left out', parameter, described.takesErrors, manners, runtime);
    if (isStop(value)) return [[value.stop]];
    values.push(value);
  }
  // Every function gets this as its last argument.
  const where = described.takesAddress && address !== undefined ? { address } : {};
  values.push({ functionName: described.id, ...where });

  let result: unknown;
  try {
    result = described.call(...values);
  } catch (thrown) {
    return [[isCellError(thrown) ? returned(thrown) : { code: '#VALUE!' }]];
  }
  return cellsOf(result, described.matrix);
}

/** Not called at all: this error is the result. */
interface Stop {
  readonly stop: CellError;
}

const isStop = (value: unknown): value is Stop =>
  typeof value === 'object' && value !== null && 'stop' in value;

function handOver(
  argument: CallArgument,
  parameter: BundleParameter,
  takesErrors: boolean,
  manners: HostManners,
  runtime: CustomFunctionsRuntime,
): unknown {
  if (argument === 'left out') return manners.leftOut;
  const empty = argument.range ? manners.emptyInRange : manners.emptyCell;
  const rows: unknown[][] = [];
  for (const row of argument.rows) {
    const out: unknown[] = [];
    for (const cell of row) {
      if (isCellError(cell)) {
        if (!takesErrors || parameter.type !== 'any') return { stop: { code: cell.code } } satisfies Stop;
        out.push(new runtime.global.Error(cell.code));
        continue;
      }
      const value = cell === null ? empty : cell;
      if (!fits(value, parameter.type)) return { stop: { code: '#VALUE!' } } satisfies Stop;
      out.push(value);
    }
    rows.push(out);
  }
  if (parameter.matrix) return rows;
  return rows.length === 1 && firstOf(rows).length === 1 ? firstOf(rows)[0] : { stop: { code: '#VALUE!' } };
}

const fits = (value: number | string | boolean | null, type: BundleParameter['type']): boolean =>
  type === 'any' || value === null || typeof value === type;

function cellsOf(result: unknown, matrix: boolean): CallResult {
  if (!matrix) return [[Array.isArray(result) ? { code: '#VALUE!' } : cellOf(result)]];
  if (!Array.isArray(result) || result.length === 0) return VALUE_ERROR;
  const width = Array.isArray(result[0]) ? (result[0] as unknown[]).length : 0;
  const rows: (number | string | boolean | CellError)[][] = [];
  for (const row of result as unknown[]) {
    if (!Array.isArray(row) || row.length !== width || width === 0) return VALUE_ERROR;
    rows.push((row as unknown[]).map(cellOf));
  }
  return rows;
}

function cellOf(value: unknown): number | string | boolean | CellError {
  if (value === null || value === undefined) return 0;
  if (typeof value === 'boolean') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value : { code: '#NUM!' };
  if (typeof value === 'string') return value.length > LONGEST_TEXT ? { code: '#VALUE!' } : value;
  return isCellError(value) ? returned(value) : { code: '#VALUE!' };
}

function returned({ code, message }: CellError): CellError {
  if (!RETURNABLE.has(code)) return { code: '#VALUE!' };
  return message !== undefined && WITH_MESSAGE.has(code) ? { code, message } : { code };
}
