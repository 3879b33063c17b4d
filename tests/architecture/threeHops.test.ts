import { readFileSync } from 'node:fs';
import path from 'node:path';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { sourcesIn } from '../support/filesIn';

// From any cell to its code, its source and its printed test: by name alone, or from what the description says.

const ROOT = path.resolve(__dirname, '../..');
const DESCRIPTIONS = path.join(ROOT, 'src/worksheet/functions');

const described = sourcesIn(DESCRIPTIONS).filter((file) => path.basename(file) !== 'index.ts');
const tests = sourcesIn(path.join(ROOT, 'tests'))
  .filter((file) => file.endsWith('.test.ts'))
  .map((file) => ({
    name: path.basename(file, '.test.ts').toLowerCase(),
    titles: [
      ...readFileSync(file, 'utf8').matchAll(/\b(?:describe|test)(?:\.each\([^()]*\))?\(\s*(['"`])(.*?)\1/g),
    ].map((match) => match[2] ?? ''),
  }));

const fileOf = (id: string): string | undefined =>
  described.find((file) => path.basename(file, '.ts').toLowerCase() === id.toLowerCase());

test('each function is described in the file of its name, and each such file describes one', () => {
  expect(FUNCTIONS.filter(({ id }) => fileOf(id) === undefined).map(({ id }) => id)).toEqual([]);
  expect(described).toHaveLength(FUNCTIONS.length);
});

test('each description leads into the core', () => {
  const astray = FUNCTIONS.filter(({ id }) => {
    const file = fileOf(id);
    return file === undefined || !reachesCore(file, new Set());
  });
  expect(astray.map(({ id }) => id)).toEqual([]);
});

function reachesCore(file: string, seen: Set<string>): boolean {
  if (seen.has(file)) return false;
  seen.add(file);
  const targets = [
    ...readFileSync(file, 'utf8').matchAll(/^(?:import|export) (?!type)[^;]*? from '(\.[^']+)'/gm),
  ];
  return targets.some((match) => {
    const target = `${path.resolve(path.dirname(file), match[1] ?? '')}.ts`;
    return target.includes('/src/core/') || reachesCore(target, seen);
  });
}

test('each function has a test file of its name, or a test whose title names it', () => {
  const without = FUNCTIONS.filter(({ id }) => {
    // `CODELOAD` as a cell calls it anywhere in a title, or `codeLoad` as the code does, by itself or with another.
    const asCalled = new RegExp(`\\b${id}\\b`);
    const asWritten = path.basename(fileOf(id) ?? '', '.ts');
    return !tests.some(
      ({ name, titles }) =>
        name === id.toLowerCase() ||
        titles.some((title) => asCalled.test(title) || title.split(/ and |, /).includes(asWritten)),
    );
  });
  expect(without.map(({ id }) => id)).toEqual([]);
});
