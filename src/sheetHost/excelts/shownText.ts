import { formatCellValue } from '@cj-tech-master/excelts';
import { isCellError, type CellValue } from '../hostValues';

/** More digits than these tell only how numbers are stored. */
const DIGITS = 11;

/**
 * What a cell shows: its value under its number format, the code of an error, '' when it is empty.
 * @param format as `SheetHost.format` gives it
 */
export function shownText(value: CellValue, format: string): string {
  if (value === null) return '';
  if (isCellError(value)) return value.code;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'string') return value;
  if (format === 'General') return String(Number(value.toPrecision(DIGITS)));
  return formatCellValue(value, format);
}
