import path from 'node:path';
import { sampleWorkbook } from '../sample/sampleWorkbook';
import { buildIfStale } from './buildIfStale';
import { computedSample } from './computedSample';
import { storedSample } from './storedSample';
import { startSheetServer } from './sheetServer';

const ROOT = path.resolve(__dirname, '../..');
const PORT = 4680;

/** Serves the sheet page with the sample workbook: `npm start`, or `npm start -- 5000` for another port. */
async function serve(): Promise<void> {
  const asked = process.argv[2];
  const port = asked === undefined ? PORT : Number(asked);
  if (!Number.isInteger(port) || port < 1 || port > 65535)
    throw new Error(`"${asked}" is no port: 1 to 65535`);
  await buildIfStale(ROOT, console.log);
  const blank = await sampleWorkbook();
  const computed = (await computedSample(ROOT)) ?? (await storedSample(ROOT, blank));
  console.log(
    computed
      ? `The page opens with the results in ${path.relative(process.cwd(), computed.file)}, and computes them again.`
      : 'The stored results are of another version, so the page computes those of the sample month, those of the ' +
          'sheet in front first; all take one to two minutes. After npm run month it opens with them.',
  );
  const sample = computed?.bytes ?? blank;
  const { origin } = await startSheetServer(path.join(ROOT, 'dist'), sample, port);
  console.log(`The try-out page is at ${origin} on this machine only. Ctrl+C ends it.`);
}

serve().catch((error: unknown) => {
  const taken = (error as { code?: unknown }).code === 'EADDRINUSE';
  console.error(
    taken
      ? 'The port is taken: npm start -- 5000 asks for another.'
      : error instanceof Error
        ? error.message
        : error,
  );
  process.exitCode = 1;
});
