import { readFileSync } from 'node:fs';
import path from 'node:path';
import { filesIn } from '../support/filesIn';

const FOLDER = path.resolve(__dirname, '../../src/sheetHost');

/** What runs in Node only: it reads files or starts programs. */
const NODE_ONLY = [/^loadBundle\.ts$/];

const shared = filesIn(FOLDER)
  .map((file) => path.relative(FOLDER, file).split(path.sep).join('/'))
  .filter((file) => file.endsWith('.ts') && !NODE_ONLY.some((pattern) => pattern.test(file)));

const importsOf = (file: string): string[] =>
  [...readFileSync(path.join(FOLDER, file), 'utf8').matchAll(/from\s+'([^']+)'/g)].map((m) => m[1]!);

test('what a page runs as well imports nothing of Node, and nothing that does', () => {
  expect(shared).toContain('excelts/openWorkbook.ts');
  const wrong = shared.flatMap((file) =>
    importsOf(file)
      .filter((target) => {
        if (target.startsWith('node:')) return true;
        const file2 = path.posix.normalize(path.posix.join(path.posix.dirname(file), target));
        return target.startsWith('.') && NODE_ONLY.some((pattern) => pattern.test(`${file2}.ts`));
      })
      .map((target) => `${file} imports ${target}`),
  );
  expect(wrong).toEqual([]);
});

test('only the folder excelts knows the library', () => {
  const wrong = filesIn(FOLDER)
    .map((file) => path.relative(FOLDER, file).split(path.sep).join('/'))
    .filter(
      (file) =>
        !file.startsWith('excelts/') &&
        readFileSync(path.join(FOLDER, file), 'utf8').includes('@cj-tech-master'),
    );
  expect(wrong).toEqual([]);
});
