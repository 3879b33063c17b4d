import { mkdir, mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { isStale } from '../../src/commands/buildIfStale';
import { computedSample } from '../../src/commands/computedSample';

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
    const others = ['functions.json', 'sheetPage.js', 'callWorker.js'];
    for (const file of others) await put(`dist/${file}`, 2000);
    expect(await isStale(root)).toBe(false);
    // A picture for README is made from what is built.
    await mkdir(path.join(root, 'src', 'sample', 'pictures'), { recursive: true });
    await put('src/sample/pictures/pane.png', 3000);
    expect(await isStale(root)).toBe(false);
    await put('src/core/a.ts', 3000);
    expect(await isStale(root)).toBe(true);
  } finally {
    await rm(root, { recursive: true, force: true });
  }
});

test('results of the sample count while nothing that computes them was built after them', async () => {
  const root = await mkdtemp(path.join(tmpdir(), 'computed-'));
  try {
    await mkdir(path.join(root, 'dist'));
    const put = async (name: string, seconds: number) => {
      const file = path.join(root, 'dist', name);
      await writeFile(file, name);
      await utimes(file, seconds, seconds);
    };
    for (const name of ['functions.js', 'callWorker.js']) await put(name, 2000);
    expect(await computedSample(root)).toBeUndefined();
    await put('sample-month.xlsx', 2060);
    const computed = await computedSample(root);
    expect(Buffer.from(computed!.bytes).toString()).toBe('sample-month.xlsx');
    await put('callWorker.js', 2100);
    expect(await computedSample(root)).toBeUndefined();
  } finally {
    await rm(root, { recursive: true, force: true });
  }
});
