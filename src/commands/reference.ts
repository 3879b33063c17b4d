import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { FUNCTIONS } from '../worksheet/functions';
import { functionsJsonText } from '../worksheet/functionsJson';
import { functionTables, referencePage } from '../worksheet/reference';
import { withFunctionTables } from './readmeTables';

// Writes the reference page, the function tables of README between their marks, and the copy of functions.json that
// the tests hold, whose difference shows in review what users of the functions will see changed.
const ROOT = path.resolve(__dirname, '../..');
const page = path.join(ROOT, 'dist', 'reference.md');
mkdirSync(path.dirname(page), { recursive: true });
writeFileSync(page, referencePage(FUNCTIONS));
console.log(`Wrote the reference of ${FUNCTIONS.length} functions to ${path.relative(process.cwd(), page)}`);

/** Writes a file that is kept with the sources, where its text is another. */
function bringUpToDate(file: string, textFrom: (before: string) => string): void {
  const before = readFileSync(path.join(ROOT, file), 'utf8');
  const after = textFrom(before);
  if (after === before) return;
  writeFileSync(path.join(ROOT, file), after);
  console.log(`Brought ${file} up to date`);
}

bringUpToDate('README.md', (readme) => withFunctionTables(readme, functionTables(FUNCTIONS)));
bringUpToDate('tests/worksheet/golden/functions.json', () => functionsJsonText(FUNCTIONS));
