import { cellAddress } from '../../src/sheetHost/address';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import { loadBundle } from '../../src/sheetHost/loadBundle';
import { createWorkbook, type WriterValue } from '../../src/sheetHost/workbookWriter';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { builtFolder } from '../support/builtFolder';

/** Rows between two examples: more than any spill of one. */
const APART = 80;
/** Columns of what is handed over; formulas stand beside them. */
const FORMULA_COLUMN = 40;

/** Where the formula of each function stands on the sheet Examples. */
export const formulaCell = (id: string): { row: number; column: number } => ({
  row: FUNCTIONS.findIndex((f) => f.id === id) * APART,
  column: FORMULA_COLUMN,
});

/** A workbook with the example of every function as a formula over cells, and its results, as this version saves it. */
export async function exampleBook(): Promise<Uint8Array> {
  const book = createWorkbook();
  const sheet = book.sheet('Examples');
  FUNCTIONS.forEach((f, i) => {
    let column = 0;
    const references = f.example.arguments.map((given) => {
      const rows = (Array.isArray(given) ? given : [[given]]) as readonly (readonly WriterValue[])[];
      const from = cellAddress(i * APART, column);
      rows.forEach((row, r) =>
        row.forEach((cell, c) => {
          if (cell !== null && cell !== undefined) sheet.cell(cellAddress(i * APART + r, column + c), cell);
        }),
      );
      const width = Math.max(...rows.map((row) => row.length));
      const to = cellAddress(i * APART + rows.length - 1, column + width - 1);
      column += width;
      return from === to ? from : `${from}:${to}`;
    });
    if (column >= FORMULA_COLUMN) throw new Error(`the example of ${f.id} is ${column} columns wide`);
    sheet.spill(cellAddress(i * APART, FORMULA_COLUMN), `CARRY.${f.id}(${references.join(',')})`);
  });
  const opened = await openWorkbook(await writeWorkbook(book));
  if (!opened.ok) throw new Error(opened.reason);
  opened.host.register(await loadBundle(builtFolder()));
  opened.host.recalculate();
  return (await opened.host.save()).bytes;
}
