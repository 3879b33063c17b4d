import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { filesIn } from '../support/filesIn';

/*
 * What DEVELOPERS.md names between backticks is in the tree: a path is that of a file or a folder, whole or from some
 * folder on and with its ending or without it; a name of one word is a word of some source; a command is one of package.json.
 */

const ROOT = path.resolve(__dirname, '../..');
const TEXT = readFileSync(path.join(ROOT, 'DEVELOPERS.md'), 'utf8');
/** What stands for another name, or is made only when a command runs. */
const NOT_THERE = [/\/name\.ts$/, /\/yourFunction\.ts$/, /^xView\.ts$/, /^coverage\//, /^dist\//];

const files = ['src', 'tests', '.config', '.ci', '.github']
  .map((folder) => path.join(ROOT, folder))
  .filter((folder) => existsSync(folder))
  .flatMap(filesIn);
/** Every file and folder, from each of its folders on, with its endings and without them. */
const known = new Set<string>();
for (const file of files) {
  const parts = path.relative(ROOT, file).split(path.sep);
  for (let end = parts.length; end > 0; end--) {
    for (let start = 0; start < end; start++) {
      const tail = parts.slice(start, end).join('/');
      known.add(tail);
      const name = tail.slice(tail.lastIndexOf('/') + 1);
      for (let dot = name.indexOf('.', 1); dot > 0; dot = name.indexOf('.', dot + 1))
        known.add(tail.slice(0, tail.length - name.length + dot));
    }
  }
}
const spoken = [...TEXT.matchAll(/`([^`\n]+)`/g)].flatMap(([, code = '']) =>
  code.split(/\s+/).map((word) => word.replace(/^[(]+|[),;:]+$/g, '')),
);

test('every path that it names is there', () => {
  const paths = spoken.filter(
    (word) => /^[\w.{},-]+(?:\/[\w.{},*-]+)+\/?$/.test(word) && !NOT_THERE.some((one) => one.test(word)),
  );
  expect(paths.length).toBeGreaterThan(60);
  expect(paths.filter((word) => !known.has(word.replace(/\/$/, '')))).toEqual([]);
});

test('every name that it uses is one of the sources', () => {
  const words = new Set(
    files
      .filter((file) => /\.(?:ts|mjs|cjs|json|txt)$/.test(file))
      .flatMap((file) => readFileSync(file, 'utf8').match(/[A-Za-z_$][\w$]*/g) ?? []),
  );
  const names = spoken.filter((word) => /^[a-z]+[A-Z]\w*$|^[A-Z][a-z]+[A-Z]\w*$|^[A-Z]+_[A-Z_]+$/.test(word));
  expect(names.length).toBeGreaterThan(60);
  expect(names.filter((word) => !words.has(word) && !known.has(word))).toEqual([]);
});

test('every command that it gives is one of package.json', () => {
  const { scripts } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as {
    readonly scripts: Readonly<Record<string, string>>;
  };
  const own = [...TEXT.matchAll(/npm (?:run (?!`)|(?=test\b|start\b))([a-z]+)\b/g)].map(
    ([, name = '']) => name,
  );
  expect(own.length).toBeGreaterThan(10);
  expect(own.filter((name) => scripts[name] === undefined)).toEqual([]);
});
