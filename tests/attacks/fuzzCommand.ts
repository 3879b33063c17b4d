import { loadBundle } from '../../src/sheetHost/loadBundle';
import { builtFolder } from '../support/builtFolder';
import { fuzz } from './fuzz';

// npm run fuzz -- --seconds 600 --seed 7
const option = (name: string, otherwise: number): number => {
  const at = process.argv.indexOf(`--${name}`);
  if (at < 0) return otherwise;
  const value = Number(process.argv[at + 1]);
  if (!Number.isFinite(value) || value <= 0) {
    throw new Error(`--${name} is ${process.argv[at + 1]}: allowed is a number above 0`);
  }
  return value;
};

/** A call that blocks a sheet for longer is told [ms]. */
const LONG = 250;

async function main(): Promise<void> {
  const seconds = option('seconds', 60);
  const seed = option('seed', 7);
  const bundle = await loadBundle(builtFolder());
  const end = performance.now() + seconds * 1000;
  const { calls, findings, slowest } = await fuzz(bundle, seed, () => performance.now() > end);
  const made = Object.values(calls).reduce((sum, n) => sum + n, 0);
  console.log(`${made} calls in ${seconds} s, seed ${seed}`);
  for (const [id, n] of Object.entries(calls)) {
    console.log(
      `${id.padEnd(16)}${String(n).padStart(9)}   slowest ${(slowest[id]?.took ?? 0).toFixed(1)} ms`,
    );
  }
  const long = Object.entries(slowest).filter(([, { took }]) => took > LONG);
  for (const [id, { took, handed }] of long) console.log(`\n${id} took ${took.toFixed(0)} ms: ${handed}`);
  const seen = new Set<string>();
  for (const { id, what, handed } of findings) {
    const key = `${id} ${what.replace(/[\d.]+/g, '#').slice(0, 60)}`;
    if (seen.has(key)) continue;
    seen.add(key);
    console.log(`\n${id} ${what}\n  ${handed}`);
  }
  console.log(`\n${findings.length} findings, ${long.length} functions with a call above ${LONG} ms`);
  if (findings.length > 0) process.exitCode = 1;
}

void main();
