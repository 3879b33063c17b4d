import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { computedFrom, RESULTS, storedSample } from '../../src/commands/storedSample';
import { readTable } from '../../src/month/readMonth';
import { sampleWorkbook } from '../../src/sample/sampleWorkbook';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { isCellError, type CellValue } from '../../src/sheetHost/hostValues';
import { opened } from '../sheetHost/fixtures/sheetWith';
import { MONTH, readGolden, type GoldenVerdict } from '../golden/golden';
import { builtFolder } from '../support/builtFolder';

// The try-out page opens with these results until it has computed them itself. `npm run month -- --keep` writes them.

const ROOT = path.dirname(builtFolder());
jest.setTimeout(60_000);

let blank: Uint8Array;
beforeAll(async () => {
  blank = await sampleWorkbook();
});

async function stored(): Promise<Uint8Array> {
  const found = await storedSample(ROOT, blank);
  if (!found) throw new Error('The stored results are of another version: npm run month -- --keep');
  return found.bytes;
}

test('they were computed by the functions as they are built now, from the sample as it is now', async () => {
  const from = JSON.parse(await readFile(path.join(ROOT, RESULTS, 'computed-from.json'), 'utf8')) as unknown;
  expect(from).toEqual(await computedFrom(ROOT, blank));
});

test('each verdict of the month is the one that it has to be', async () => {
  const host = await opened(await stored());
  const golden = readGolden<GoldenVerdict[]>(MONTH);
  const { row, column, rows } = host.spill('Verdicts', 5, 15)!;
  const cells = host.read('Verdicts', { row: row + 1, column, rows: rows - 1, columns: 4 });
  const tenth = (value: CellValue): number | null =>
    typeof value === 'number' ? Number(value.toFixed(1)) : null;
  expect(
    cells.map(([survey, build, verdict, clearance = null]) => ({
      survey,
      build,
      verdict,
      clearance: tenth(clearance),
    })),
  ).toEqual(golden);
  expect(golden).toHaveLength(SAMPLE_SURVEYS.length);
});

test('every long call of the workbook has its result, and no cell is in error', async () => {
  const host = await opened(await stored());
  const found = host.stored();
  const long = ['Verdicts!P6', "'Other builds'!Q5", 'Job!AH27', 'Job!A43', 'Job!BB43', 'Crew!N28'];
  expect(long.filter((address) => !found.has(address))).toEqual([]);
  expect(found.get('Verdicts!P6')).toHaveLength(SAMPLE_SURVEYS.length + 1);
  expect(readTable(host, ['Survey', 'Build', 'Customer'])).toBeDefined();
  for (const sheet of host.sheets()) {
    const used = host.used(sheet)!;
    const faults = host.read(sheet, used).flat().filter(isCellError);
    expect([sheet, faults]).toEqual([sheet, []]);
  }
});

test('with other functions, or another sample, they are not taken', async () => {
  const root = await mkdtemp(path.join(tmpdir(), 'stored-'));
  try {
    await mkdir(path.join(root, 'dist'));
    await cp(path.join(ROOT, RESULTS), path.join(root, RESULTS), { recursive: true });
    const script = await readFile(path.join(ROOT, 'dist', 'functions.js'), 'utf8');
    const build = (changed: string) => writeFile(path.join(root, 'dist', 'functions.js'), changed);
    await build(script);
    expect(await storedSample(root, blank)).toBeDefined();
    expect(await storedSample(root, await sampleWorkbook(SAMPLE_SURVEYS.slice(1)))).toBeUndefined();
    await build(`${script} `);
    expect(await storedSample(root, blank)).toBeUndefined();
    await build(script);
    await rm(path.join(root, RESULTS, 'sample-month.xlsx'));
    expect(await storedSample(root, blank)).toBeUndefined();
  } finally {
    await rm(root, { recursive: true });
  }
});
