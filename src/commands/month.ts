import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { CAUTIONS } from '../core/measures/cautions';
import { FIRM, INVENTED } from '../sample/firm';
import { sampleWorkbook } from '../sample/sampleWorkbook';
import { buildIfStale } from './buildIfStale';
import { failed } from './failed';
import { storeSample } from './storedSample';
import { WORKBOOK } from './computedSample';
import { openWorkbook } from '../sheetHost/excelts/openWorkbook';
import { loadBundle } from '../sheetHost/loadBundle';
import { explainMonth } from '../month/explainMonth';
import { crewSheets } from '../month/crewSheets';
import { monthPage } from '../month/monthPage';
import { readMonth, readTable } from '../month/readMonth';
import { monthSummary } from '../month/monthSummary';
import { cellAddress } from '../sheetHost/address';

const ROOT = path.resolve(__dirname, '../..');
const PAGE = 'sample-month.html';
const CREW = 'sample-month-crew.html';
const WRITTEN: Readonly<Record<string, string>> = {
  [WORKBOOK]: 'The workbook, with all results',
  [PAGE]: 'A page to read and print',
  [CREW]: 'A sheet for the crew for each survey that goes, to print',
};
/** Stores the workbook beside the sample too. */
const KEEP = '--keep';
const TITLE = `${FIRM.name}: surveys of ${FIRM.month} ${FIRM.year}`;

/**
 * Computes the sample month in the built add-in, prints it, and writes the workbook and a page that shows it;
 * `npm run month -- --keep` stores the workbook for the try-out page too.
 */
async function month(): Promise<void> {
  await buildIfStale(ROOT, console.log);
  const bundle = await loadBundle(path.join(ROOT, 'dist'));
  if (bundle.faults.length > 0) throw new Error(`The add-in is not whole: ${bundle.faults.join('; ')}`);

  const blank = await sampleWorkbook();
  const opened = await openWorkbook(blank);
  if (!opened.ok) throw new Error(`The sample workbook was refused: ${opened.reason}`);
  const { host } = opened;
  host.register(bundle);
  console.log('Judging all surveys of the month; this takes one to two minutes…\n');
  const { circular, unreadable } = host.recalculate();
  const faulty = [...circular, ...unreadable].map((c) => `${c.sheet}!${cellAddress(c.row, c.column)}`);
  if (faulty.length > 0) throw new Error(`Formulas that cannot be computed: ${faulty.join(', ')}`);

  const read = readMonth(host);
  const routes = readTable(host, ['Survey', 'Step', 'Stage']);
  const pieces = readTable(host, ['Build', 'Piece', 'Length']);
  const explained = read && routes && pieces ? explainMonth(read, routes, pieces) : read;
  for (const line of monthSummary(explained)) console.log(line);

  const { bytes } = await host.save();
  const written = new Map<string, Uint8Array | string>([[WORKBOOK, bytes]]);
  if (explained) written.set(PAGE, monthPage(explained, { title: TITLE, remark: INVENTED }));
  if (read && routes && pieces) {
    const title = `${FIRM.name}: sheets for the crew, ${FIRM.month} ${FIRM.year}`;
    written.set(CREW, crewSheets(read, routes, pieces, { title, remark: INVENTED }));
  }
  await mkdir(path.join(ROOT, 'dist'), { recursive: true });
  console.log(`\n${CAUTIONS.route}\n`);
  for (const [name, content] of written) {
    const file = path.join(ROOT, 'dist', name);
    await writeFile(file, content);
    console.log(`${WRITTEN[name] ?? name}: ${path.relative(process.cwd(), file)}`);
  }
  if (process.argv.includes(KEEP)) {
    const folder = await storeSample(ROOT, blank, bytes);
    console.log(`Stored for the try-out page: ${path.relative(process.cwd(), folder)}`);
  }
}

month().catch(failed);
