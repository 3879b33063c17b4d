import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import path from 'node:path';
import type { Figure } from './figure';

/** Runs every *.bench.ts beside this file, or those whose name holds a word given, and prints JSON and a table. */
async function main(words: readonly string[]): Promise<void> {
  const files = readdirSync(__dirname)
    .filter((name) => name.endsWith('.bench.ts'))
    .filter((name) => words.length === 0 || words.some((word) => name.includes(word)))
    .sort();
  const figures: (Figure & { readonly room: string })[] = [];
  for (const file of files) {
    const bench = (await import(path.join(__dirname, file))) as { run: () => Promise<Figure[]> };
    for (const figure of await bench.run()) figures.push({ room: file.replace('.bench.ts', ''), ...figure });
  }
  const machine = { node: process.version, cpu: cpus()[0]?.model ?? 'unknown', cores: cpus().length };
  console.log(JSON.stringify({ machine, figures }));
  const width = Math.max(...figures.map((f) => f.room.length + f.name.length)) + 2;
  for (const f of figures) {
    const goal = f.goal === undefined ? '' : `   goal ${f.goal}${f.figure <= f.goal ? '' : '   missed'}`;
    const figure = `${Number(f.figure.toPrecision(3))} ${f.unit}`;
    console.log(`${`${f.room}: ${f.name}`.padEnd(width)}  ${figure.padStart(12)}${goal}`);
  }
}

void main(process.argv.slice(2));
