import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { FUNCTIONS } from '../worksheet/functions';
import { functionTables, referencePage } from '../worksheet/reference';
import { withFunctionTables } from './readmeTables';

// Writes the reference page, and the function tables of README between their marks.
const ROOT = path.resolve(__dirname, '../..');
const page = path.join(ROOT, 'dist', 'reference.md');
mkdirSync(path.dirname(page), { recursive: true });
writeFileSync(page, referencePage(FUNCTIONS));
console.log(`Wrote the reference of ${FUNCTIONS.length} functions to ${path.relative(process.cwd(), page)}`);

const readme = path.join(ROOT, 'README.md');
const before = readFileSync(readme, 'utf8');
const after = withFunctionTables(before, functionTables(FUNCTIONS));
if (after !== before) {
  writeFileSync(readme, after);
  console.log('Brought the tables of README up to date');
}
