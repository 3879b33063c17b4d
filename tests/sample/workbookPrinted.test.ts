import { Workbook, type Worksheet } from 'exceljs';
import { describeSampleWorkbook, sampleWorkbook } from '../../src/sample/sampleWorkbook';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { readParts, writeParts } from '../../src/sheetHost/excelts/packageParts';
import { VERDICTS } from '../../src/core/route/verdict';

jest.setTimeout(60000);

// What is written is read back by a second library, which shares nothing with the one that wrote it.
let book: Workbook;
const sheet = (name: string): Worksheet => book.getWorksheet(name)!;

beforeAll(async () => {
  book = new Workbook();
  // Its reader of tables stumbles over a calculated column, which no test here looks at.
  const parts = await readParts(await sampleWorkbook());
  for (const [name, part] of parts) {
    if (!name.startsWith('xl/tables/')) continue;
    const xml = new TextDecoder()
      .decode(part)
      .replace(/<calculatedColumnFormula>.*?<.calculatedColumnFormula>/gs, '');
    parts.set(name, new TextEncoder().encode(xml));
  }
  await book.xlsx.load((await writeParts(parts)).buffer as ArrayBuffer);
});

const names = (): string[] => book.worksheets.map(({ name }) => name);

test('every sheet is printed one page wide, across, with a part named', () => {
  expect(names()).toHaveLength(describeSampleWorkbook().sheets.length);
  for (const { name, pageSetup } of book.worksheets) {
    expect([
      name,
      pageSetup.orientation,
      pageSetup.fitToPage,
      pageSetup.fitToWidth,
      pageSetup.fitToHeight,
    ]).toEqual([name, 'landscape', true, 1, 0]);
    expect([name, pageSetup.printArea]).toEqual([name, expect.stringMatching(/^\$?A\$?1:\$?[A-Z]+\$?\d+$/)]);
    // 9 is A4, 8 is A3 (ECMA-376, part 1, 18.3.1.63).
    expect([name, pageSetup.paperSize]).toEqual([name, ['Route', 'Job'].includes(name) ? 8 : 9]);
  }
});

// A character of the body font is 7 pixels wide and a cell has 5 pixels of edges (ECMA-376, part 1, 18.3.1.13); 96 of
// them are an inch. What can be read from a sheet in the hand: common practice, no source.
test('printed one page wide, no body text of 11 points is smaller than 5, and none for the crew smaller than 7', () => {
  for (const printed of book.worksheets) {
    const { name, pageSetup } = printed;
    const last = printed.getColumn(/:\$?([A-Z]+)/.exec(pageSetup.printArea!)![1]!).number;
    let wide = 0;
    for (let column = 1; column <= last; column++) {
      wide += ((printed.getColumn(column).width ?? 8.43) * 7 + 5) / 96;
    }
    const paper = (pageSetup.paperSize === (8 as never) ? 420 : 297) / 25.4;
    const { left, right } = pageSetup.margins!;
    const scale = Math.min(1, (paper - left - right) / wide);
    const least = name === 'Crew' ? 7 : 5;
    expect([name, 11 * scale >= least ? 'can be read' : (11 * scale).toFixed(1)]).toEqual([
      name,
      'can be read',
    ]);
  }
});

test.each(['Month', 'Measure again', 'Orders', 'Route', 'Pieces', 'Verdicts', 'Other builds'])(
  '%s begins every page with its headings, and keeps at most 6 rows in sight',
  (name) => {
    const { pageSetup, views } = sheet(name);
    const [view] = views;
    const frozen = view?.state === 'frozen' ? view.ySplit! : 0;
    expect(frozen).toBeGreaterThan(0);
    expect(frozen).toBeLessThanOrEqual(6);
    const [from, to] = pageSetup.printTitlesRow!.replace(/\$/g, '').split(':').map(Number) as [
      number,
      number,
    ];
    expect(to).toBe(frozen);
    expect(from).toBeGreaterThanOrEqual(frozen - 1);
  },
);

test('no sheet freezes more than 6 rows', () => {
  for (const { name, views } of book.worksheets) {
    const view = (views as typeof views | undefined)?.[0];
    expect([name, view?.state === 'frozen' ? view.ySplit! <= 6 : true]).toEqual([name, true]);
  }
});

test('the verdict has the advice and the next step beside it, and the printed part holds all three', () => {
  const headings = (sheet('Month').getRow(6).values as unknown[]).slice(1);
  expect(headings.slice(0, 5)).toEqual([
    'Survey',
    'Verdict',
    'Advise',
    'Next step',
    'Clearance, mm a side, rounded down',
  ]);
  expect(sheet('Month').pageSetup.printArea).toMatch(new RegExp(`K\\$?${6 + SAMPLE_SURVEYS.length}$`));
});

test('a survey of the month is a link to its first row on Route, and each sheet is linked from Start', () => {
  const cell = sheet('Month').getCell('A7');
  expect(cell.formula).toMatch(/^HYPERLINK\("#'Route'!A"&\(MATCH\(.*RouteRows/);
  const linked = (sheet('Start').getColumn(1).values as unknown[]).flatMap((value) => {
    const formula = (value as { formula?: string } | null)?.formula ?? '';
    return [...formula.matchAll(/HYPERLINK\("#'([^']+)'!A1"/g)].map((m) => m[1]);
  });
  expect(new Set(linked)).toEqual(new Set(names().filter((name) => name !== 'Start')));
});

// The fills that a spreadsheet offers ready-made for good, neutral and bad; from memory.
const STOCK = ['C6EFCE', 'FFEB9C', 'FFC7CE', 'FFCC99', 'F2F2F2', 'FFFFCC'];

test('each verdict has a fill of our own, dark text on it, and none is the same as an input', () => {
  const rules = (
    sheet('Start') as unknown as {
      conditionalFormattings: { rules: { style: { fill: { bgColor: { argb: string } } } }[] }[];
    }
  ).conditionalFormattings.map(({ rules: [rule] }) => rule!.style.fill.bgColor.argb.slice(2));
  expect(rules).toHaveLength(VERDICTS.length);
  expect(new Set([...rules, 'FFF4B8']).size).toBe(VERDICTS.length + 1);
  expect(rules.filter((fill) => STOCK.includes(fill))).toEqual([]);
});

test('no table has a style of the host', () => {
  for (const each of book.worksheets) {
    for (const table of each.getTables() as unknown as { table: { style?: { theme?: string | null } } }[]) {
      expect([each.name, table.table.style?.theme ?? null]).toEqual([each.name, null]);
    }
  }
});

test('on the sheets of measures each heading of a measure has its unit over it', () => {
  for (const [name, row] of [
    ['Route', 5],
    ['Pieces', 5],
    ['Verdicts', 6],
    ['Other builds', 5],
  ] as const) {
    sheet(name)
      .getRow(row)
      .eachCell((cell, column) => {
        const heading = String(cell.value);
        if (
          !/^(?:Width|Height|Ceiling|Length|Breadth|Thickness|Rise|Going|Well|Run|Clearance)$/.test(heading)
        )
          return;
        const unit = sheet(name)
          .getRow(row - 1)
          .getCell(column).value;
        expect([name, heading, unit]).toEqual([name, heading, expect.stringMatching(/^mm/)]);
      });
  }
});
