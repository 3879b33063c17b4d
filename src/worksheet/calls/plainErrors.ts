import type { CellError } from '../../core/measures/readQuantity';
import { isCellError } from '../readArgument';

/** Errors as plain data, which can be sent; the arguments themselves where there is none among them. */
export function withPlainErrors(values: readonly unknown[]): readonly unknown[] {
  const plain = values.map(plainValue);
  return plain.some((value, i) => value !== values[i]) ? plain : values;
}

function plainValue(value: unknown): unknown {
  if (Array.isArray(value)) return withPlainErrors(value as readonly unknown[]);
  if (!isCellError(value)) return value;
  const { code, message }: CellError = value;
  return message === undefined ? { code } : { code, message };
}
