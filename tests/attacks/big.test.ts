import { Workbook } from 'exceljs';
import { loadBundle } from '../../src/sheetHost/loadBundle';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import { createWorkbook } from '../../src/sheetHost/workbookWriter';
import { builtFolder } from '../support/builtFolder';
import { callInCells } from '../support/callInCells';
import { sheetWith, shown } from '../sheetHost/fixtures/sheetWith';

/**
 * What a large firm may lay out, and tables that went wrong on their way. A share of it is a test;
 * `BIG=1 npx jest tests/attacks/big` is all of it, and says how long it takes and what it holds.
 */
const BIG = process.env['BIG'] !== undefined;
const ROWS = BIG ? 20_000 : 400;
const BUILDS = BIG ? 200 : 10;
const FORMULAS = BIG ? 10_000 - 1 : 2000;

jest.setTimeout(600_000);

type Cell = string | number | null;

async function told<T>(what: string, work: () => T | Promise<T>): Promise<T> {
  const started = performance.now();
  const done = await work();
  const held = Math.round(process.memoryUsage().rss / 1e6);
  if (BIG) console.log(`${what}: ${((performance.now() - started) / 1000).toFixed(1)} s, ${held} MB held`);
  return done;
}

const HEADINGS = ['Survey', 'Step', 'Stage', 'Width', 'Height', 'Width out', 'Length'];
const PIECES = ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'];

test(`${ROWS} rows of ${ROWS / 4} surveys are checked and judged, each as it is alone`, async () => {
  const house = (n: number): Cell[][] => [
    [`House ${n}`, 1, 'door', 700 + (n % 200), 1981, null, null],
    [`House ${n}`, 2, 'passage', 900, 2400, null, 4000],
    [`House ${n}`, 3, 'corner', 900 + (n % 50), 2400, 900, null],
    [`House ${n}`, 4, 'room', 4000, 2400, null, 5000],
  ];
  const table: Cell[][] = [HEADINGS, ...Array.from({ length: ROWS / 4 }, (_, n) => house(n)).flat()];
  const pieces = [PIECES, ['panel', 'panel', 1500, 600, 25, 30, 1]];
  const checked = await told(`CHECKROUTE of ${ROWS} rows`, () => callInCells('CHECKROUTE', table));
  expect(checked.length).toBeGreaterThanOrEqual(ROWS);
  const judged = await told(`SURVEYS of ${ROWS} rows`, () => callInCells('SURVEYS', table, pieces));
  expect(judged.length - 1).toBe(ROWS / 4);
  for (const n of [0, 1, 77, ROWS / 4 - 1]) {
    const alone = callInCells('SURVEYS', [HEADINGS, ...house(n)], pieces);
    expect(judged[n + 1]).toEqual(alone[1]);
    expect(judged[n + 1]![0]).toBe(`House ${n}`);
  }
});

test(`${BUILDS} builds of 12 pieces are judged on one route, each as it is alone`, async () => {
  const route: Cell[][] = [
    HEADINGS,
    ['A', 1, 'door', 762, 1981, null, null],
    ['A', 2, 'corner', 900, 2400, 900, null],
    ['A', 3, 'room', 4000, 2400, null, 5000],
  ];
  const build = (n: number): Cell[][] =>
    Array.from({ length: 12 }, (_, k): Cell[] => [
      `build ${n}`,
      `piece ${k}`,
      900 + 8 * n + 20 * k,
      400 + 3 * n - 20 * k,
      25 + k,
      20 + k,
      1,
    ]);
  const pieces: Cell[][] = [PIECES, ...Array.from({ length: BUILDS }, (_, n) => build(n)).flat()];
  const judged = await told(`VERDICT on ${BUILDS} builds`, () => callInCells('VERDICT', route, pieces));
  expect(judged.length - 1).toBe(BUILDS);
  for (const n of [0, 7, BUILDS - 1]) {
    expect(judged[n + 1]).toEqual(callInCells('VERDICT', route, [PIECES, ...build(n)])[1]);
  }
});

test(`${FORMULAS} cells with formulas compute, are saved, and another program reads their results`, async () => {
  const bundle = await loadBundle(builtFolder());
  const host = await told(`${FORMULAS} formulas`, () =>
    sheetWith(
      (sheet) => {
        for (let i = 1; i <= FORMULAS; i++) {
          sheet
            .cell(`A${i}`, 700 + (i % 300))
            .cell(`B${i}`, { formula: `CARRY.OPENING(A${i},2000,1830,930,25)` });
        }
        sheet.cell('C1', { formula: `SUM(B1:B${FORMULAS})` });
      },
      undefined,
      bundle,
    ),
  );
  // By hand: on edge 25 mm in each width, half to a side.
  const sum = Array.from({ length: FORMULAS }, (_, k) => (700 + ((k + 1) % 300) - 25) / 2).reduce(
    (a, b) => a + b,
    0,
  );
  expect(shown(host, 'C1')).toBeCloseTo(sum, 4);
  const { bytes } = await told('saving them', () => host.save());
  const again = new Workbook();
  await told('another program reads them', () => again.xlsx.load(bytes as never));
  const sheet = again.getWorksheet('A')!;
  for (const i of [1, 299, FORMULAS]) {
    expect(sheet.getCell(`B${i}`).result).toBeCloseTo((700 + (i % 300) - 25) / 2, 6);
  }
});

test('more formulas than the stand-in for Excel computes are refused, never shown as #NAME?', async () => {
  const book = createWorkbook();
  const sheet = book.sheet('A');
  for (let i = 1; i <= 50_000; i++) sheet.cell(`B${i}`, { formula: `A${i}*2` });
  const result = await openWorkbook(await writeWorkbook(book));
  expect(result).toEqual({
    ok: false,
    reason: 'the workbook has 50000 formulas; at most 10000 are computed here',
  });
});

describe('tables that went wrong', () => {
  const checked = (table: Cell[][]): string => callInCells('CHECKROUTE', table).flat().join('\n');
  const verdicts = (table: Cell[][]) =>
    callInCells('SURVEYS', table, [PIECES, ['panel', 'panel', 1500, 600, 25, 30, 1]])
      .slice(1)
      .map((row) => row[2]);
  const rows: Cell[][] = [
    ['A', 1, 'door', 762, 1981, null, null],
    ['A', 2, 'room', 4000, 2400, null, 5000],
  ];

  test('two houses under one name: their steps are there twice, and neither is judged as one house', () => {
    const other = rows.map((row) => row.map((cell, c) => (c === 3 ? Number(cell) + 40 : cell)));
    const both = [HEADINGS, ...rows, ...other];
    expect(checked(both)).toMatch(/Step 1 is there twice/);
    expect(verdicts(both)).toEqual(['not measured']);
    expect(verdicts([HEADINGS, ...rows])).toEqual(['goes']);
  });
  test('a heading that is there twice is named', () => {
    const table = [[...HEADINGS, 'Width'], ...rows.map((row) => [...row, 300])];
    expect(checked(table)).toMatch(/Width/);
    expect(verdicts(table)).not.toContain('goes');
  });
  test('headings merged over two columns leave the second without a name: what is missing is named', () => {
    const table = [HEADINGS.map((heading) => (heading === 'Height' ? null : heading)), ...rows];
    expect(checked(table)).toMatch(/Height/);
    expect(verdicts(table)).toEqual(['not measured']);
  });
  test('stages merged over two rows leave the second without a stage: it is named, and nothing goes', () => {
    const table = [HEADINGS, rows[0]!, rows[1]!.map((cell, c) => (c === 2 ? null : cell))];
    expect(checked(table)).toMatch(/stage/i);
    expect(verdicts(table)).toEqual(['not measured']);
  });
});

test('text in every column of text comes back as text, never as a formula or an error', () => {
  for (const text of [
    '=1+1',
    '=cmd|" /C calc"!A0',
    '<img src=x onerror=alert(1)>',
    '"); DROP',
    '\u202egoes',
    '@A1',
  ]) {
    const route: Cell[][] = [
      ['Survey', 'Step', 'Stage', 'Width', 'Height', 'Note', 'Length'],
      [text, 1, 'door', 762, 1981, text, null],
      [text, 2, 'room', 4000, 2400, text, 5000],
    ];
    const pieces: Cell[][] = [PIECES, [text, text, 1500, 600, 25, 30, 1]];
    const judged = callInCells('SURVEYS', route, pieces, [
      ['Survey', 'Build'],
      [text, text],
    ]);
    expect(judged[1]!.slice(0, 3)).toEqual([text, text, 'goes']);
    for (const id of ['REPLY', 'VERDICT', 'ADVISE', 'QUESTIONS']) {
      const cells = (id === 'QUESTIONS' ? callInCells(id, route) : callInCells(id, route, pieces)).flat();
      expect(cells.length).toBeGreaterThan(0);
      for (const cell of cells) expect(['string', 'number', 'boolean']).toContain(typeof cell);
    }
  }
});
