import { createWorkbook } from '../../src/sheetHost/workbookWriter';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import { ColumnWidths } from '../../src/sheetHost/page/columnWidths';
import { RowHeights } from '../../src/sheetHost/page/rowHeights';
import { opened } from './fixtures/sheetWith';

/** Heights of the sheet with letters of 10 px, by which the lines below are counted by hand; the columns have 104 px. */
async function heights(): Promise<RowHeights> {
  const book = createWorkbook();
  const sheet = book.sheet('A');
  sheet.rows('A1', [['four words of text', 'one']], { wrap: true, bold: true });
  sheet.rows('A2', [['four words of text, none of which goes on below', 'one']]);
  sheet.rows('A4', [['aaaaaaaaaaaaaaaaaaaa', 'one\ntwo\nthree']], { wrap: true });
  sheet.rows('A6', [[Array(40).fill('longer').join(' '), null]], { wrap: true, bold: true });
  sheet.widths([14, 14]);
  const host = await opened(await writeWorkbook(book));
  const widths = new ColumnWidths();
  widths.measure(host, 'A');
  expect([widths.of(0), widths.of(1)]).toEqual([104, 104]);
  return new RowHeights(host, 'A', widths, (text) => text.length * 10);
}

test('a row is as high as the lines of the text that takes most of them: 4 of a heading at most, 2 of others', async () => {
  const rows = await heights();
  // 90 px a line: "four" | "words of" | "text"; not broken; a word of 200 px, and three lines; 40 lines of a heading.
  expect([0, 1, 2, 3, 4, 5, 6].map((row) => rows.of(row))).toEqual([
    3 * 18 + 6,
    24,
    24,
    2 * 18 + 6,
    24,
    4 * 18 + 6,
    24,
  ]);
  expect([0, 1, 3, 5].map((row) => rows.lines(row))).toEqual([3, 1, 2, 4]);
});

test('upper edges and rows under a point belong together', async () => {
  const rows = await heights();
  expect([0, 1, 3, 4, 6, 100].map((row) => rows.top(row))).toEqual([
    0,
    60,
    108,
    150,
    252,
    60 + 24 + 24 + 42 + 24 + 78 + 94 * 24,
  ]);
  for (let row = 0; row < 60; row++) {
    expect([rows.at(rows.top(row)), rows.at(rows.top(row + 1) - 1)]).toEqual([row, row]);
  }
});
