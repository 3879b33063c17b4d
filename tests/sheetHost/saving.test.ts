import { XMLParser } from 'fast-xml-parser';
import { readParts, writeParts } from '../../src/sheetHost/excelts/packageParts';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import type { SheetHost } from '../../src/sheetHost/sheetHost';
import { testBundle } from './fixtures/bundle';
import { excelPackage } from './fixtures/excelPackage';
import { opened, sheetWith } from './fixtures/sheetWith';

const parser = new XMLParser({ ignoreAttributes: false, parseAttributeValue: false, parseTagValue: false });

async function partsOf(bytes: Uint8Array): Promise<Map<string, string>> {
  return new Map([...(await readParts(bytes))].map(([name, part]) => [name, new TextDecoder().decode(part)]));
}

/** The elements of one kind in a part, as data, so that quotes and the order of attributes do not matter. */
function elements(xml: string, tag: string): unknown[] {
  return [...xml.matchAll(new RegExp(`<${tag}(?:\\s[^>]*)?(?:/>|>.*?</${tag}>)`, 'gs'))].map((m) =>
    sorted(parser.parse(m[0])),
  );
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([k, v]) => [k, sorted(v)]),
  );
}

let before: Map<string, string>;
let after: Map<string, string>;
let lost: readonly string[];
let host: SheetHost;
let again: SheetHost;

beforeAll(async () => {
  const bytes = await excelPackage();
  before = await partsOf(bytes);
  host = await opened(bytes);
  host.register(testBundle());
  host.write('Survey', 3, 0, 770);
  host.recalculate();
  const saved = await host.save();
  lost = saved.lost;
  after = await partsOf(saved.bytes);
  again = await opened(saved.bytes);
  again.register(testBundle());
});

const SHEET = 'xl/worksheets/sheet1.xml';

// The parts and elements are those of ECMA-376 Part 1, clause 18.
test.each([
  [SHEET, 'dataValidation', 3],
  [SHEET, 'conditionalFormatting', 3],
  [SHEET, 'mergeCell', 1],
  [SHEET, 'autoFilter', 1],
  [SHEET, 'pane', 1],
  [SHEET, 'tabColor', 1],
  [SHEET, 'pageMargins', 1],
  [SHEET, 'oddHeader', 1],
  [SHEET, 'tablePart', 1],
  ['xl/workbook.xml', 'definedName', 4],
  ['xl/tables/table1.xml', 'tableColumns', 1],
  ['xl/tables/table1.xml', 'tableStyleInfo', 1],
  ['xl/tables/table1.xml', 'autoFilter', 1],
  ['xl/styles.xml', 'numFmt', 1],
  ['xl/styles.xml', 'dxf', 2],
])('keeps in %s every %s (%i)', (part, tag, count) => {
  const expected = elements(before.get(part)!, tag);
  expect(expected).toHaveLength(count);
  // A pattern left out is solid, formats are numbered anew, and a sheet's name may be quoted without need.
  const key = (e: unknown) =>
    JSON.stringify(e)
      .replace('"@_patternType":"solid",', '')
      .replace('"@_numFmtId":"170"', '"@_numFmtId":"164"')
      .replace("'Survey'!", 'Survey!');
  expect(elements(after.get(part)!, tag).map(key).sort()).toEqual(expected.map(key).sort());
});

test('keeps column widths, row heights and what is hidden', () => {
  const sheet = after.get(SHEET)!;
  expect(elements(sheet, 'col')).toEqual([
    sorted({ col: { '@_min': '1', '@_max': '1', '@_width': '22.7109375', '@_customWidth': '1' } }),
    expect.objectContaining({
      col: expect.objectContaining({ '@_min': '4', '@_max': '5', '@_hidden': '1' }),
    }),
  ]);
  expect(sheet).toMatch(/<row r="1"[^>]* ht="30"[^>]*customHeight="1"/);
  expect(sheet).toMatch(/<row r="2"[^>]*hidden="1"/);
});

test('says which parts could not be kept', () => {
  expect(lost).toEqual(['customXml/item1.xml']);
});

test('reads every kind of cell', () => {
  expect(host.read('Survey', { row: 0, column: 0, rows: 3, columns: 3 })).toEqual([
    [12.5, null, null],
    [true, { code: '#DIV/0!' }, 45000.5],
    ['Width', 'Twice', null],
  ]);
  expect(host.format('Survey', 0, 0)).toBe('0.0" mm"');
  expect(host.format('Survey', 3, 0)).toBe('General');
  expect(host.tables()).toEqual([
    { name: 'Route', sheet: 'Survey', block: { row: 2, column: 0, rows: 4, columns: 2 } },
  ]);
  expect(
    host
      .names()
      .map((n) => n.name)
      .sort(),
  ).toEqual(['allowance', 'half', 'stages']);
  expect(host.formula('Survey', 3, 1)).toBe('=Route[@Width]*2');
});

test('computes table columns, totals, spills, old array formulas and shared ones', () => {
  const block = { row: 11, column: 0, rows: 3, columns: 4 };
  for (const book of [host, again]) {
    book.recalculate();
    expect(book.read('Survey', { row: 3, column: 1, rows: 3, columns: 1 })).toEqual([[1540], [1600], [3140]]);
    // What had been saved as spilled, and a third row that the spill no longer has, do not block it.
    expect(book.read('Survey', block)).toEqual([
      [1540, null, 2310, 771],
      [1600, null, 2400, 801],
      [null, null, null, null],
    ]);
  }
});

test('stores a spill with its block, and calls with the prefix of custom functions', () => {
  expect(after.get(SHEET)).toContain(
    '<c r="A12" cm="1"><f t="array" ref="A12:A13">_xldudf_CARRY_EACH(A4:A5)</f><v>1540</v></c>',
  );
  expect(after.get(SHEET)).toContain('<c r="A13"><v>1600</v></c>');
  expect(after.get(SHEET)).not.toContain('r="A14"');
  expect(after.get('xl/metadata.xml')).toContain('fDynamic="1"');
});

test('a typed formula of one cell is stored plain; a blocked spill as a spill whose value is #VALUE!', async () => {
  const sheet = await sheetWith((s) => s.cell('A1', 1).cell('A2', 2).cell('B11', 'x'));
  sheet.write('A', 2, 0, { formula: 'CARRY.SAY(TEXTJOIN("",TRUE,A1:A2))' });
  sheet.write('A', 9, 1, { formula: 'CARRY.EACH(A1:A2)' });
  sheet.recalculate();
  const { bytes } = await sheet.save();
  const xml = (await partsOf(bytes)).get(SHEET)!.replace(/&quot;/g, '"');
  expect(xml).toContain('<f>_xldudf_CARRY_SAY(_xlfn.TEXTJOIN("",TRUE,A1:A2))</f>');
  expect(xml).toContain(
    '<c r="B10" t="e" cm="1"><f t="array" ref="B10">_xldudf_CARRY_EACH(A1:A2)</f><v>#VALUE!</v></c>'.replace(
      ' t="e" cm="1"',
      ' cm="1" t="e"',
    ),
  );
  const back = await opened(bytes);
  back.register(testBundle());
  back.recalculate();
  expect(back.value('A', 9, 1)).toEqual({ code: '#SPILL!' });
  expect(back.value('A', 10, 1)).toBe('x');
});

test('saving twice gives the same, and leaves the workbook as it was', async () => {
  const first = await partsOf((await host.save()).bytes);
  const second = await partsOf((await host.save()).bytes);
  expect(second.get(SHEET)).toBe(first.get(SHEET));
  host.recalculate();
  expect(host.value('Survey', 12, 0)).toBe(1600);
});

test('adds a sheet with a table, and refuses names that are taken', async () => {
  const book = await opened(await excelPackage());
  const description = (name: string, table: string) => ({
    name,
    cells: [{ address: 'D1', value: { formula: `SUM(${table}[x])` }, spills: false }],
    tables: [{ name: table, at: 'A1', columns: [{ name: 'x' }], rows: [[1], [2]] }],
    lists: [],
    conditions: [],
    formats: [],
    merges: [],
    widths: [],
  });
  expect(book.addSheet(description('survey', 'T'))).toEqual({
    ok: false,
    reason: 'there is a sheet survey already',
  });
  expect(book.addSheet(description('New', 'route'))).toEqual({
    ok: false,
    reason: 'there is a table or a name route already',
  });
  expect(book.addSheet(description('New', 'T'))).toEqual({ ok: true });
  book.recalculate();
  expect(book.value('New', 0, 3)).toBe(3);
  expect(book.sheets()).toEqual(['Survey', 'New']);
});

test('refuses files that are no workbook, with the reason', async () => {
  const good = await excelPackage();
  const reason = async (bytes: Uint8Array, sizeLimit?: number) => {
    const result = await openWorkbook(bytes, sizeLimit === undefined ? {} : { sizeLimit });
    return result.ok ? 'opened' : result.reason;
  };
  expect(await reason(good)).toBe('opened');
  expect(await reason(new Uint8Array())).toBe('the file is empty');
  expect(await reason(good, 1000)).toMatch(/^the file has 0\.0 MB; at most 0\.001 MB are opened$/);
  expect(await reason(new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1]))).toContain('old .xls format');
  expect(await reason(new TextEncoder().encode('Survey,Step'))).toContain('cannot be unpacked');
  expect(await reason(good.slice(0, good.length / 2))).toMatch(/damaged/);
  expect(await reason(await writeParts(new Map([['a.txt', new Uint8Array([1])]])))).toBe(
    'the file is no .xlsx workbook',
  );
  const parts = await readParts(good);
  parts.set(SHEET, new TextEncoder().encode('<worksheet><sheetData><row r="1"><c r="A1"'));
  expect(await reason(await writeParts(parts))).toMatch(/^the workbook is damaged: /);
});
