import { mkdtemp, mkdir, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { isStale } from '../../src/sheetHost/buildIfStale';
import { monthSummary } from '../../src/sheetHost/commands/monthSummary';
import { readMonth } from '../../src/sheetHost/readMonth';
import { sheetWith } from './fixtures/sheetWith';

// The layout is our own: regression only.
test('prints one line a survey, its best verdict, closest stage and clearance', async () => {
  const host = await sheetWith((sheet) =>
    sheet.cell('A1', 'October').rows('B3', [
      ['Survey', 'Build', 'Verdict', 'Clearance', 'Step', 'Stage', 'Note'],
      ['S-1', '8 ft', 'tight', 12.4, 3, 'corner', null],
      ['S-1', '7 ft', 'goes', 31, 2, 'door', null],
      ['S-2', '8 ft', 'cannot go', -140.2, 4, 'half landing', null],
      ['S-3', '8 ft', 'not measured', null, 1, 'flight', null],
      [null, null, 'goes', 1, 1, 'below a gap', null],
    ]),
  );
  expect(monthSummary(readMonth(host))).toEqual([
    'Survey  Verdict       Closest stage   Clearance       Build',
    'S-1     goes          2 door          31 mm a side    7 ft',
    'S-2     cannot go     4 half landing  -140 mm a side  8 ft',
    'S-3     not measured  1 flight                        8 ft',
    '',
    '3 surveys: 1 goes, 0 tight, 0 no way found, 1 not measured, 1 cannot go',
  ]);
});

test('says so when the workbook has no such rows', async () => {
  const host = await sheetWith((sheet) => sheet.cell('A1', 'Survey'));
  expect(monthSummary(readMonth(host))).toEqual([
    'The workbook has no rows with Survey, Verdict, Clearance and Stage.',
  ]);
});

test('a build is stale when a file of it is missing or older than a source', async () => {
  const root = await mkdtemp(path.join(tmpdir(), 'stale-'));
  try {
    await mkdir(path.join(root, 'src', 'core'), { recursive: true });
    await mkdir(path.join(root, 'dist'));
    const put = async (name: string, seconds: number) => {
      const file = path.join(root, name);
      await writeFile(file, '');
      await utimes(file, seconds, seconds);
    };
    await put('src/core/a.ts', 1000);
    await put('dist/functions.js', 2000);
    expect(await isStale(root)).toBe(true);
    for (const file of ['functions.json', 'sheetPage.js', 'sheetCalls.js']) await put(`dist/${file}`, 2000);
    expect(await isStale(root)).toBe(false);
    await put('src/core/a.ts', 3000);
    expect(await isStale(root)).toBe(true);
  } finally {
    await rm(root, { recursive: true, force: true });
  }
});
