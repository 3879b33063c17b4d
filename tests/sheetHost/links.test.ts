import { sheetWith } from './fixtures/sheetWith';

// HYPERLINK(link_location, [friendly_name]), "#Sheet!A1" for a place in the workbook ("HYPERLINK function").
test('a cell with a HYPERLINK leads where its formula says, worked out, and shows its name', async () => {
  const host = await sheetWith((sheet, book) => {
    sheet.rows('A1', [[7, 'Q-01']]);
    sheet.cell('A3', { formula: `HYPERLINK("#'Far away'!B"&(A1+2),B1)` });
    sheet.cell('A4', { formula: 'IF(A1>8,"",HYPERLINK("#a!A1:B1"))' });
    sheet.cell('A5', { formula: 'IF(A1>6,"none",HYPERLINK("#A!A1","far"))' });
    sheet.cell('A6', { formula: 'HYPERLINK("https://example.org/","outside")' });
    sheet.cell('A7', { formula: `HYPERLINK("#'Nowhere'!A1","nowhere")` });
    sheet.cell('A8', { formula: 'HYPERLINK("#A1"&NA(),"broken")' });
    book.sheet('Far away').cell('A1', 1);
  });
  const shown = [3, 4, 5, 6, 7, 8].map((row) => host.value('A', row - 1, 0));
  expect(shown).toEqual(['Q-01', '#a!A1:B1', 'none', 'outside', 'nowhere', { code: '#N/A' }]);
  expect(host.link('A', 2, 0)).toEqual({
    sheet: 'Far away',
    block: { row: 8, column: 1, rows: 1, columns: 1 },
  });
  expect(host.link('A', 3, 0)).toEqual({ sheet: 'A', block: { row: 0, column: 0, rows: 1, columns: 2 } });
  expect([5, 6, 7, 8, 1].map((row) => host.link('A', row - 1, 0))).toEqual(Array(5).fill(undefined));
  host.write('A', 0, 0, 10);
  host.recalculate();
  expect(host.link('A', 2, 0)?.block.row).toBe(11);
  expect(host.link('A', 3, 0)).toBeUndefined();
});
