import type { CellValue } from '../../src/sheetHost/hostValues';
import type { SheetHost } from '../../src/sheetHost/sheetHost';
import { testBundle } from './fixtures/bundle';
import { opened, sheetWith, shown } from './fixtures/sheetWith';

/** A workbook with results, saved and opened again, and not computed since. */
async function reopened(): Promise<SheetHost> {
  const host = await sheetWith((sheet) => {
    sheet.rows('A1', [[1, 2]]);
    sheet.spill('A3', 'CARRY.EACH(A1:B1)').spill('A5', 'CARRY.CELLS()');
    sheet.spill('D3', 'CARRY.EACH(A1:B1)+1').spill('D5', 'CARRY.EACH(A2:B2)');
    sheet.cell('A8', { formula: 'SUM(A3:B3)' }).cell('A9', { formula: 'CARRY.SAY(A1)' });
  });
  const again = await opened((await host.save()).bytes);
  again.register(testBundle());
  return again;
}

// Excel shows what was saved until it computes ("Change formula recalculation, iteration, or precision in Excel").
test('a workbook shows the results that were saved, spilled ones too, until it is computed', async () => {
  const host = await reopened();
  const results = (): (CellValue | CellValue[][])[] => ['A3:B3', 'D3:E3', 'A8'].map((at) => shown(host, at));
  // By hand: twice 1 and 2; one more; their sum.
  expect(results()).toEqual([[[2, 4]], [[3, 5]], 6]);
  expect(host.spill('A', 2, 1)).toEqual({ row: 2, column: 0, rows: 1, columns: 2 });
  host.write('A', 0, 1, 5);
  expect(results()).toEqual([[[2, 4]], [[3, 5]], 6]);
  host.recalculate();
  expect(results()).toEqual([[[2, 10]], [[3, 11]], 12]);
});

test('stored are the results of formulas that are one call, whole, and none with an error at its beginning', async () => {
  const stored = (await reopened()).stored();
  expect([...stored.keys()].sort()).toEqual(['A!A3', 'A!A5', 'A!A9']);
  expect(stored.get('A!A3')).toEqual([[2, 4]]);
  expect(stored.get('A!A5')?.map((row) => row.length)).toEqual([2, 2, 2]);
  expect(stored.get('A!A9')).toEqual([['[[1]] | null | null']]);
});
