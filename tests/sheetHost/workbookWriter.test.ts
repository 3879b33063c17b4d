import { readParts } from '../../src/sheetHost/excelts/packageParts';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import { createWorkbook } from '../../src/sheetHost/workbookWriter';

/** A workbook with one of everything that the writer can write. */
function described() {
  const book = createWorkbook();
  book
    .sheet('Route 1')
    .cell('A1', 'Title', { bold: true, size: 14, fill: 'DDEEFF' })
    .cell('B2', 25, { format: '0" mm"' })
    .cell('C1', '=not a formula')
    .cell('E1', { formula: '=TEXTJOIN(",",TRUE,A4:A5)' })
    .table({
      name: 'Route',
      at: 'A3',
      columns: [
        { name: 'Width', width: 9, format: '0' },
        { name: 'Twice', formula: '[@Width]*2' },
      ],
      rows: [[760], ['2 ft 6 in', 5]],
    })
    .spill('G3', 'CARRY.CHECKROUTE(Route[#All])')
    .list('A4:A20', ['door', 'corner'])
    .list('B4:B20', { from: "'Route 1'!$A$4:$A$5" }, 'refused')
    .condition('A4:C20', '$C4="goes"', { fill: 'E2F0D9', color: '1E4620' })
    .merge('A1:B1')
    .freeze(3)
    .widths([20])
    .print({ area: 'A1:G9', repeat: { from: 2, to: 3 }, across: 'landscape' });
  book.name('allowance', "'Route 1'!$B$2");
  return book;
}

let parts: Map<string, string>;

beforeAll(async () => {
  const bytes = await writeWorkbook(described());
  parts = new Map(
    [...(await readParts(bytes))].map(([name, part]) => [name, new TextDecoder().decode(part)]),
  );
});

const sheet = () => parts.get('xl/worksheets/sheet1.xml')!;

// The elements are those of ECMA-376 Part 1, clause 18; the spill cell as [MS-XLSX] 2.2.4.6 (dynamic arrays).
test.each([
  ['a spill', '<c r="G3" cm="1"><f t="array" ref="G3">_xldudf_CARRY_CHECKROUTE(Route[#All])</f></c>'],
  ['a formula with the prefix of younger functions', '<f>_xlfn.TEXTJOIN(",",TRUE,A4:A5)</f>'],
  ['a calculated cell with its table named', '<f>Route[[#This Row],[Width]]*2</f>'],
  ['a cell that was given in a calculated column', '<c r="B5"><v>5</v></c>'],
  ['a list', '<dataValidation type="list" allowBlank="1" sqref="A4:A20"><formula1>"door,corner"</formula1>'],
  [
    'a strict list',
    '<dataValidation type="list" allowBlank="1" showErrorMessage="1" sqref="B4:B20"><formula1>\'Route 1\'!$A$4:$A$5</formula1>',
  ],
  ['a condition', '<cfRule type="expression" dxfId="0" priority="1"><formula>$C4="goes"</formula></cfRule>'],
  ['frozen rows', '<pane ySplit="3" topLeftCell="A4" activePane="bottomLeft" state="frozen"/>'],
  ['widths, those of the sheet first', '<col min="1" max="1" width="20" customWidth="1"/>'],
  ['a merge', '<mergeCell ref="A1:B1"/>'],
  ['one page wide', '<pageSetUpPr fitToPage="1"/>'],
  ['landscape on A4', 'paperSize="9"'],
])('writes %s', (_, xml) => {
  expect(
    sheet()
      .replace(/&quot;/g, '"')
      .replace(/&apos;/g, "'")
      .replace(/&gt;/g, '>'),
  ).toContain(xml);
});

test('a text that begins with = is no formula', () => {
  expect(sheet()).toMatch(/<c r="C1" t="s"><v>\d+<\/v><\/c>/);
  expect(parts.get('xl/sharedStrings.xml')).toContain('=not a formula');
});

test('writes the table, its calculated column and the defined name', () => {
  expect(parts.get('xl/tables/table1.xml')).toContain('displayName="Route" ref="A3:B5"');
  expect(parts.get('xl/tables/table1.xml')).toContain(
    '<calculatedColumnFormula>Route[[#This Row],[Width]]*2</calculatedColumnFormula>',
  );
  expect(parts.get('xl/workbook.xml')!.replace(/&apos;/g, "'")).toContain(
    `<definedName name="allowance">'Route 1'!$B$2</definedName>`,
  );
});

test('marks spills as dynamic arrays and gives a conditional fill its pattern', () => {
  expect(parts.get('xl/metadata.xml')).toContain('fDynamic="1"');
  expect(parts.get('xl/styles.xml')).toMatch(
    /<dxf>.*<patternFill patternType="solid"><bgColor rgb="FFE2F0D9"\/>/,
  );
  expect(parts.get('xl/styles.xml')).toContain('0&quot; mm&quot;');
});

test('refuses what makes no workbook', async () => {
  const long = createWorkbook();
  long.sheet('A').list('A1:A2', ['one, two']);
  await expect(writeWorkbook(long)).rejects.toThrow('has a comma');
  const empty = createWorkbook();
  empty.sheet('A').table({ name: 'T', at: 'A1', columns: [{ name: 'x' }], rows: [] });
  await expect(writeWorkbook(empty)).rejects.toThrow('has no place or no row');
});
