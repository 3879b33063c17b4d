import type { Worksheet } from '@cj-tech-master/excelts';
import { blockAddress, cellAddress } from '../address';
import { isCellError, type CellValue } from '../hostValues';
import type { Spill } from './calculationView';
import { hasFormula, type GridCell } from './grid';

// Codes that the format had from its beginning. Excel keeps the younger ones apart and writes #VALUE! here.
const STORABLE_ERRORS = new Set(['#N/A', '#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!']);

type Storable = number | string | boolean | { error: '#VALUE!' } | null;

/** A value as the format can store it. */
export function storable(value: CellValue): Storable {
  if (!isCellError(value)) return value;
  // The writer's type lists the codes of the format.
  return { error: (STORABLE_ERRORS.has(value.code) ? value.code : '#VALUE!') as '#VALUE!' };
}

/** Puts what a formula gave into its cell, in the form in which the file keeps it. */
export function storeResult(worksheet: Worksheet, cell: GridCell, spills: readonly Spill[]): void {
  if (!hasFormula(cell) && !cell.ofArray) return;
  const target = worksheet.getCell(cell.row, cell.column);
  const result = storable(cell.value);
  if (!hasFormula(cell)) {
    target.value = result;
    return;
  }
  const { stored, fills } = cell.formula;
  if (fills === 'cell' || typeof fills === 'object') {
    if (result !== null) target.result = result;
    return;
  }
  const spill = spills.find((s) => s.row === cell.row && s.column === cell.column);
  const blocked = isCellError(cell.value) && cell.value.code === '#SPILL!';
  const ref = spill
    ? blockAddress({ row: cell.row - 1, column: cell.column - 1, rows: spill.rows, columns: spill.columns })
    : cellAddress(cell.row - 1, cell.column - 1);
  const shown = result === null ? {} : { result };
  target.value =
    fills === 'typed' && !spill && !blocked
      ? { formula: stored, ...shown }
      : { formula: stored, ...shown, shareType: 'array', ref, isDynamicArray: true };
}
