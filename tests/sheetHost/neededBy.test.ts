import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import type { SheetHost } from '../../src/sheetHost/sheetHost';
import { createWorkbook } from '../../src/sheetHost/workbookWriter';
import { testBundle } from './fixtures/bundle';
import { opened } from './fixtures/sheetWith';

/*
 * Which formulas a sheet needs, in a chain that is written here: Shown reads Between, Between reads what a formula of
 * 'The source' spills, and Apart has nothing to do with them. What is expected is read off the formulas by eye.
 */

let host: SheetHost;

beforeAll(async () => {
  const book = createWorkbook();
  book.sheet('Shown').cell('A1', { formula: 'Between!B2+1' }).cell('B1', 'a text');
  book.sheet('Between').cell('B2', { formula: "SUM('The source'!A5:A9)" });
  const source = book.sheet('The source');
  source.spill('A3', 'CARRY.EACH(C1:C6)');
  source.rows('C1', [[1], [2], [3], [4], [5], [6]]);
  // Below all that is read, so nothing of it can come there.
  source.spill('A20', 'CARRY.EACH(C1:C2)');
  book.sheet('Apart').cell('A1', { formula: 'CARRY.SAY(1)' });
  host = await opened(await writeWorkbook(book));
  host.register(testBundle());
});

test('what a sheet shows is followed through other sheets and through what spills', () => {
  const expected = ['Shown!A1', 'Between!B2', "'The source'!A3"];
  expect(new Set(host.neededBy('Shown'))).toEqual(new Set(expected));
  host.recalculate();
  expect(new Set(host.neededBy('Shown'))).toEqual(new Set(expected));
});

test('a formula that is changed is followed anew', () => {
  expect([...host.neededBy('Apart')]).toEqual(['Apart!A1']);
  expect(host.write('Apart', 1, 0, { formula: 'Between!B2' })).toEqual({ ok: true });
  expect(new Set(host.neededBy('Apart'))).toEqual(
    new Set(['Apart!A1', 'Apart!A2', 'Between!B2', "'The source'!A3"]),
  );
});
