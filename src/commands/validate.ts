import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { manifestFaults } from './manifestRules';
import { platformTool } from './platformTools';

const ROOT = path.resolve(__dirname, '../..');
const USAGE = 'npm run validate [-- [file] [--online]]: manifest.xml of this folder when no file is named';

/** Holds a manifest against the rules that the host's documents state; `--online` also asks the host's own service. */
function validate(given: readonly string[]): void {
  const unknown = given.find((word) => word.startsWith('-') && word !== '--online');
  const files = given.filter((word) => !word.startsWith('-'));
  if (unknown !== undefined || files.length > 1)
    throw new Error(`"${unknown ?? files[1]}" is not known. ${USAGE}`);
  const file = path.resolve(ROOT, files[0] ?? 'manifest.xml');
  const faults = manifestFaults(readFileSync(file, 'utf8'));
  for (const fault of faults) console.log(`- ${fault}`);
  console.log(
    faults.length === 0
      ? `${file} meets the rules for order, ids, lengths, addresses, icons and the shared runtime. Not looked at here: whether its addresses answer.`
      : `${file} has ${faults.length === 1 ? '1 fault' : `${faults.length} faults`}.`,
  );
  if (faults.length > 0) process.exitCode = 1;
  if (!given.includes('--online')) return;
  const { command, words, shell } = platformTool('office-addin-manifest', ['validate', file]);
  execFileSync(command, words, { stdio: 'inherit', shell });
}

try {
  validate(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
