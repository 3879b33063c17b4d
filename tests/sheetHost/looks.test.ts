import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import type { SheetHost } from '../../src/sheetHost/sheetHost';
import { createWorkbook } from '../../src/sheetHost/workbookWriter';

/** The look of a workbook as it was written, read back by the host. */
async function opened(): Promise<SheetHost> {
  const book = createWorkbook();
  const sheet = book.sheet('Crew');
  sheet.rows('A1', [['Word', 'Mass', 'Other']], { bold: true, fill: 'E3DBCB', color: '2A2620' });
  sheet.rows('A2', [
    ['goes', 12, null],
    ['tight', 30, null],
    ['goes', 30, null],
  ]);
  sheet.format('B2', { fill: 'FFF4B8' });
  // The first that holds is the one that is seen; what only a later one says is added.
  sheet.condition('A2:B4', '$A2="goes"', { fill: 'CBE2E4', color: '0F3B45' });
  sheet.condition('A2:B4', 'AND($B2>25,LEFT($A2,1)<>"")', { fill: 'E9D2A0', bold: true });
  sheet.condition('C2:C4', 'COUNTIF($A$2:$A$4,"goes")>0', { fill: '000000' });
  sheet.list('A2', ['goes', 'tight'], 'refused').list('B2', { from: 'Stock!$A$1:$A$2' });
  sheet.widths([22, 8]);
  sheet.freeze(1, 1);
  book.sheet('Stock').rows('A1', [[20], [40]]);
  const open = await openWorkbook(await writeWorkbook(book));
  if (!open.ok) throw new Error(open.reason);
  return open.host;
}

test('fills, letters, widths and what is frozen are as they were written', async () => {
  const look = (await opened()).look('Crew');
  expect(look.cell(0, 1)).toEqual({ fill: 'E3DBCB', color: '2A2620', bold: true });
  expect(look.cell(5, 5)).toEqual({});
  expect([look.width(0), look.width(1), look.width(7)]).toEqual([22, 8, undefined]);
  expect(look.frozen).toEqual({ rows: 1, columns: 1 });
  expect((await opened()).look('Stock').frozen).toEqual({ rows: 0, columns: 0 });
});

test('a conditional format holds for its own row, before the own look of a cell, and the first wins', async () => {
  const host = await opened();
  const look = (): ReturnType<SheetHost['look']> => host.look('Crew');
  expect(look().cell(1, 1)).toEqual({ fill: 'CBE2E4', color: '0F3B45' });
  expect(look().cell(2, 0)).toEqual({ fill: 'E9D2A0', bold: true });
  expect(look().cell(3, 0)).toEqual({ fill: 'CBE2E4', color: '0F3B45', bold: true });
  host.write('Crew', 1, 0, 'cannot go');
  expect(look().cell(1, 1)).toEqual({ fill: 'FFF4B8' });
  host.write('Crew', 1, 0, { formula: '1/0' });
  host.recalculate();
  expect(look().cell(1, 1)).toEqual({ fill: 'FFF4B8' });
});

test('a condition that reads more than single cells colours nothing', async () => {
  expect((await opened()).look('Crew').cell(1, 2)).toEqual({});
});

test('a drop-down has its words, from a list or from cells, and says what becomes of others', async () => {
  const host = await opened();
  expect(host.look('Crew').choices(1, 0)).toEqual({ words: ['goes', 'tight'], others: 'refused' });
  expect(host.look('Crew').choices(1, 1)).toEqual({ words: ['20', '40'], others: 'allowed' });
  expect(host.look('Crew').choices(2, 1)).toBeUndefined();
});
