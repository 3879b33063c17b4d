import type { CellValue } from '../hostValues';
import { isCellError } from '../hostValues';
import type { WriterValue } from '../workbookWriter';

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/**
 * What typed text means as the content of a cell: a formula behind `=`, a plain number, TRUE or FALSE, nothing, or
 * text. An apostrophe in front keeps all of it text.
 * @example enteredValue("'=2") // the text =2
 */
export function enteredValue(typed: string): WriterValue {
  if (typed.startsWith("'")) return typed.slice(1);
  const trimmed = typed.trim();
  if (trimmed === '') return null;
  if (trimmed.startsWith('=') && trimmed.length > 1) return { formula: trimmed.slice(1) };
  if (NUMBER.test(trimmed)) return Number(trimmed);
  if (/^(?:true|false)$/i.test(trimmed)) return trimmed.toLowerCase() === 'true';
  return typed;
}

/** The text that would be typed for what a cell holds; '' where it holds nothing. */
export function entryText(formula: string | undefined, value: CellValue): string {
  if (formula !== undefined) return formula;
  if (value === null) return '';
  if (isCellError(value)) return value.code;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  const text = String(value);
  return typeof value === 'string' && enteredValue(text) !== text ? `'${text}` : text;
}
