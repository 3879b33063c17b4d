import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { sampleWorkbook } from '../../sample/sampleWorkbook';
import { buildIfStale } from '../buildIfStale';
import { openWorkbook } from '../excelts/openWorkbook';
import { loadBundle } from '../loadBundle';
import { monthSummary } from './monthSummary';
import { cellAddress } from '../address';

const ROOT = path.resolve(__dirname, '../../..');
const OUTPUT = 'sample-month.xlsx';

/** Computes the sample month in the built add-in, prints it, and writes the workbook. */
async function month(): Promise<void> {
  if (await buildIfStale(ROOT)) console.log('Built the add-in into dist.');
  const bundle = await loadBundle(path.join(ROOT, 'dist'));
  if (bundle.faults.length > 0) throw new Error(`The add-in is not whole: ${bundle.faults.join('; ')}`);

  const opened = await openWorkbook(await sampleWorkbook());
  if (!opened.ok) throw new Error(`The sample workbook was refused: ${opened.reason}`);
  const { host } = opened;
  host.register(bundle);
  const { circular, unreadable } = host.recalculate();
  const faulty = [...circular, ...unreadable].map((c) => `${c.sheet}!${cellAddress(c.row, c.column)}`);
  if (faulty.length > 0) throw new Error(`Formulas that cannot be computed: ${faulty.join(', ')}`);

  for (const line of monthSummary(host)) console.log(line);

  const { bytes } = await host.save();
  const file = path.join(ROOT, 'dist', OUTPUT);
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, bytes);
  console.log(`\nThe workbook with all results: ${path.relative(process.cwd(), file)}`);
}

month().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
