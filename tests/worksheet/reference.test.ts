import { readFileSync } from 'node:fs';
import path from 'node:path';
import { withFunctionTables } from '../../src/commands/readmeTables';
import type { FunctionDescription } from '../../src/worksheet/description';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { functionsJsonText } from '../../src/worksheet/functionsJson';
import { functionTables, referencePage, signature } from '../../src/worksheet/reference';

const readme = readFileSync(path.resolve(__dirname, '../../README.md'), 'utf8');

test('the tables of README are those of the descriptions (npm run reference)', () => {
  expect(withFunctionTables(readme, functionTables(FUNCTIONS))).toBe(readme);
});

test('every function and every argument is in the reference', () => {
  const page = referencePage(FUNCTIONS);
  for (const f of FUNCTIONS) {
    expect(page).toContain(`### ${f.id}\n`);
    expect(page).toContain(`=${signature(f)}`);
    if (f.caution) expect(page).toContain(`**Caution:** ${f.caution}`);
    for (const a of f.arguments) expect(page).toContain(`| \`${a.name}\` |`);
  }
});

test('a README without its marks is refused', () => {
  expect(() => withFunctionTables('# x', 'y')).toThrow(/marks/);
});

// The worksheet contract fixes ids, order and defaults, because saved workbooks depend on them; the file holds them.
const golden = (name: string): string => readFileSync(path.join(__dirname, 'golden', name), 'utf8');
const PINNED = golden('signatures.txt')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'));

/** A function as the file of signatures writes it: `CORNERLENGTH(width_in, width_out, thickness, [turn=90])`. */
const pinned = (f: FunctionDescription): string =>
  `${f.id}(${f.arguments
    .map(({ name, optional, repeating }) => {
      if (repeating) return `${name}…`;
      if (!optional) return name;
      return optional.default === null ? `[${name}]` : `[${name}=${JSON.stringify(optional.default)}]`;
    })
    .join(', ')})`;

test.each(PINNED)('%s stands as saved workbooks expect it', (call) => {
  const id = call.slice(0, call.indexOf('('));
  const found = FUNCTIONS.find((f) => f.id === id);
  expect(found && pinned(found)).toBe(call);
});

test('no function is without a line in tests/worksheet/golden/signatures.txt', () => {
  const ids = PINNED.map((call) => call.slice(0, call.indexOf('(')));
  expect(new Set(ids).size).toBe(ids.length);
  expect(FUNCTIONS.filter((f) => !ids.includes(f.id)).map(pinned)).toEqual([]);
});

test('functions.json is the one that the tests hold (npm run reference; read its difference)', () => {
  expect(functionsJsonText(FUNCTIONS)).toBe(golden('functions.json'));
});
