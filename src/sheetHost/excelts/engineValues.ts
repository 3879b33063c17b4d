import type { CallArgument, CallResult } from '../callAsExcel';
import type { CellError, CellValue } from '../hostValues';

// The engine's kinds of values.
const BLANK = 0;
const NUMBER = 1;
const TEXT = 2;
const BOOLEAN = 3;
export const ERROR = 4;
const ARRAY = 5;

/** A value as the engine of formulas hands it about. */
export type EngineValue =
  | { readonly kind: 0 }
  | { readonly kind: 1; readonly value: number }
  | { readonly kind: 2; readonly value: string }
  | { readonly kind: 3; readonly value: boolean }
  | { readonly kind: 4; readonly code: string }
  | {
      readonly kind: 5;
      readonly rows: readonly (readonly EngineValue[])[];
      readonly height: number;
      readonly width: number;
    };

/** Stands for an argument that was left out; told by its identity. */
export const LEFT_OUT_VALUE: EngineValue = { kind: BLANK };

/** What a lone code is to the engine. */
export const engineError = (code: string): EngineValue => ({ kind: ERROR, code });

/** Text that tells values apart, to remember a call by. */
export function keyOf(value: EngineValue): string {
  if (value === LEFT_OUT_VALUE) return 'o';
  switch (value.kind) {
    case BLANK:
      return 'b';
    case NUMBER:
      return `n${value.value}`;
    case TEXT:
      return `s${value.value}`;
    case BOOLEAN:
      return value.value ? 't' : 'f';
    case ERROR:
      return `e${value.code}`;
    default:
      return `a${value.height}x${value.width}${value.rows.map((row) => row.map(keyOf).join('\u0002')).join('\u0002')}`;
  }
}

/** A value as an argument of one of the bundle's functions. */
export function argumentOf(value: EngineValue): CallArgument {
  if (value === LEFT_OUT_VALUE) return 'left out';
  if (value.kind !== ARRAY) return { range: false, rows: [[cellValueOf(value)]] };
  return { range: true, rows: value.rows.map((row) => row.map(cellValueOf)) };
}

function cellValueOf(value: EngineValue): CellValue {
  if (value.kind === NUMBER || value.kind === TEXT || value.kind === BOOLEAN) return value.value;
  return value.kind === ERROR ? { code: value.code } : null;
}

function engineValue(value: number | string | boolean | CellError): EngineValue {
  if (typeof value === 'number') return { kind: NUMBER, value };
  if (typeof value === 'string') return { kind: TEXT, value };
  if (typeof value === 'boolean') return { kind: BOOLEAN, value };
  return { kind: ERROR, code: value.code };
}

/** The result of a call as the engine takes it: one value, or an array. */
export function engineResult(result: CallResult): EngineValue {
  const [first = []] = result;
  const [only] = first;
  if (result.length === 1 && first.length === 1 && only !== undefined) return engineValue(only);
  return {
    kind: ARRAY,
    rows: result.map((row) => row.map(engineValue)),
    height: result.length,
    width: first.length,
  };
}
