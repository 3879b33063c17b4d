import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import path from 'node:path';
import type { Figure } from './figure';

/** What a bench file exports: its figures, all at once or each as it is known. */
interface Bench {
  readonly run: () => Iterable<Figure> | Promise<Iterable<Figure>>;
}

/**
 * Runs every *.bench.ts beside this file, or those whose name holds a word given; prints each figure as it is known, and
 * JSON in the end.
 */
async function main(words: readonly string[]): Promise<void> {
  const files = readdirSync(__dirname)
    .filter((name) => name.endsWith('.bench.ts'))
    .filter((name) => words.length === 0 || words.some((word) => name.includes(word)))
    .sort();
  const figures: (Figure & { readonly room: string })[] = [];
  for (const file of files) {
    const bench = (await import(path.join(__dirname, file))) as Bench;
    for (const figure of await bench.run()) {
      const named = { room: file.replace('.bench.ts', ''), ...figure };
      console.log(inWords(named));
      figures.push(named);
    }
  }
  const machine = { node: process.version, cpu: cpus()[0]?.model ?? 'unknown', cores: cpus().length };
  console.log(JSON.stringify({ machine, figures }));
}

/** Names are mostly no longer. */
const WIDTH = 84;

function inWords({ room, name, figure, unit, goal }: Figure & { readonly room: string }): string {
  const aim = goal === undefined ? '' : `   goal ${goal}${figure <= goal ? '' : '   missed'}`;
  const shown = `${Number(figure.toPrecision(3))} ${unit}`;
  return `${`${room}: ${name}`.padEnd(WIDTH)}  ${shown.padStart(12)}${aim}`;
}

void main(process.argv.slice(2));
