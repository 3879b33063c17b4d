import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { buildIfStale } from '../../src/commands/buildIfStale';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import { loadBundle, runBundle } from '../../src/sheetHost/loadBundle';
import { createWorkbook } from '../../src/sheetHost/workbookWriter';

const ROOT = path.resolve(__dirname, '../..');
const CELLS = 10_000;
const RUNS = 7;

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

const rounded = (value: number): number => Math.round(value * 100) / 100;

/** The built add-in in the sheet host: loading, size, and cells that each make a call of their own. */
export async function run(): Promise<{ name: string; figure: number; unit: string; goal?: number }[]> {
  await buildIfStale(ROOT, console.log);
  const dist = path.join(ROOT, 'dist');
  const script = await readFile(path.join(dist, 'functions.js'), 'utf8');
  const metadata: unknown = JSON.parse(await readFile(path.join(dist, 'functions.json'), 'utf8'));
  const loads: number[] = [];
  for (let i = 0; i < RUNS; i++) {
    const start = performance.now();
    runBundle(script, metadata);
    loads.push(performance.now() - start);
  }

  const book = createWorkbook();
  const sheet = book.sheet('Cells');
  for (let i = 1; i <= CELLS; i++) {
    sheet.cell(`A${i}`, 700 + (i % 400));
    sheet.cell(`B${i}`, { formula: `CARRY.CORNER(A${i},900,2000,1830,930,25)` });
  }
  const opened = await openWorkbook(await writeWorkbook(book));
  if (!opened.ok) throw new Error(opened.reason);
  opened.host.register(await loadBundle(dist));
  let start = performance.now();
  opened.host.recalculate();
  const first = performance.now() - start;
  if (typeof opened.host.value('Cells', CELLS - 1, 1) !== 'number')
    throw new Error('the cells have no numbers');
  opened.host.write('Cells', 0, 0, 701);
  start = performance.now();
  opened.host.recalculate();
  const later = performance.now() - start;

  return [
    { name: 'load and register functions.js, first', figure: rounded(loads[0]!), unit: 'ms', goal: 50 },
    {
      name: 'load and register functions.js, median of 7',
      figure: rounded(median(loads)),
      unit: 'ms',
      goal: 50,
    },
    {
      name: 'functions.js gzipped',
      figure: rounded(gzipSync(script, { level: 9 }).length / 1000),
      unit: 'kB',
      goal: 60,
    },
    { name: '10,000 cells of CORNER in the sheet host, first', figure: rounded(first), unit: 'ms' },
    { name: '10,000 cells of CORNER, one cell changed', figure: rounded(later), unit: 'ms' },
  ];
}
