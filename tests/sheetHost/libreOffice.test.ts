import { blockAddress } from '../../src/sheetHost/address';
import { isCellError, type CellValue } from '../../src/sheetHost/hostValues';
import { findLibreOffice, throughLibreOffice, withoutResults } from '../support/libreOffice';
import { opened, sheetWith, shown } from './fixtures/sheetWith';

const program = findLibreOffice();
const required = process.env['LIBREOFFICE'] === 'required';

// An independent evaluator: what our host computes, LibreOffice has to compute as well. Where it is skipped, the end of
// the run says so (endSharedBrowser).
(program || required ? test : test.skip)(
  'LibreOffice opens what we save, keeps the values of our functions and computes the same',
  async () => {
    const host = await sheetWith((sheet, book) => {
      sheet.table({
        name: 'Route',
        at: 'A1',
        columns: [{ name: 'Width' }, { name: 'Stage' }, { name: 'Half', formula: '[@Width]/2' }],
        rows: [
          [760, 'door'],
          [812.5, 'flight'],
          [900, 'door'],
        ],
      });
      book.name('widest', 'A!$E$1');
      sheet
        .cell('E1', { formula: 'MAX(Route[Width])' })
        .cell('E2', { formula: 'SUMIFS(Route[Half],Route[Stage],"door")' })
        .cell('E3', { formula: 'TEXTJOIN("+",TRUE,Route[Stage])' })
        .cell('E4', { formula: 'IFERROR(INDEX(Route[Width],MATCH("lift",Route[Stage],0)),"none")' })
        .cell('E5', { formula: 'widest*2>1799' })
        .cell('E6', { formula: 'CARRY.SAY(A2)' })
        .cell('E7', { formula: 'LEN(E6)&"/"&COUNTIF(Route[Stage],"d*")' })
        .cell('E8', { formula: 'ROUND(SQRT(SUMSQ(A2:A4)),3)' })
        .cell('E9', { formula: '1/0' })
        .cell('E10', { formula: 'IFS(A2>800,"wide",A2>700,"usual",TRUE,"narrow")' })
        .spill('G1', 'CARRY.EACH(A2:A4)')
        .cell('E11', { formula: 'SUM(G1:G3)' });
    });
    const { bytes } = await host.save();
    const expected = shown(host, 'A1:G11') as CellValue[][];
    expect(expected[10]![4]).toBe(2 * (760 + 812.5 + 900));

    const asSaved = await opened(await throughLibreOffice(program!, bytes));
    expect(shown(asSaved, 'E6')).toBe('[[760]] | null | null');
    expect(asSaved.formula('A', 5, 4)).toMatch(/carry\.say/i);

    const anew = await opened(await throughLibreOffice(program!, await withoutResults(bytes)));
    const got = shown(anew, 'A1:G11') as CellValue[][];
    const plain = (value: CellValue) => (isCellError(value) ? value.code : value);
    for (const [r, row] of expected.entries()) {
      for (const [c, value] of row.entries()) {
        const address = blockAddress({ row: r, column: c, rows: 1, columns: 1 });
        expect([address, plain(got[r]![c]!)]).toEqual([address, plain(value)]);
      }
    }
  },
  120_000,
);

test('results of plain formulas are taken out, and those of our functions stay as values', async () => {
  const host = await sheetWith((sheet) =>
    sheet.cell('A1', 4).cell('A2', { formula: 'A1*2' }).cell('A3', { formula: 'CARRY.SAY(A1)' }),
  );
  const bare = await opened(await withoutResults((await host.save()).bytes));
  expect(shown(bare, 'A1:A3')).toEqual([[4], [null], ['[[4]] | null | null']]);
  expect(bare.formula('A', 1, 0)).toBe('=A1*2');
  expect(bare.formula('A', 2, 0)).toBeUndefined();
});
