import { spawn } from 'node:child_process';
import path from 'node:path';
import { getHttpsServerOptions } from 'office-addin-dev-certs';
import { startAddInServer } from './addInServer';
import { buildIfStale } from './buildIfStale';
import { readExcelOrder } from './excelArguments';
import { platformTool } from './platformTools';

const ROOT = path.resolve(__dirname, '../..');
/** The port in manifest.xml. */
const PORT = 3000;
const MANIFEST = path.join(ROOT, 'dist', 'manifest.xml');

/** Opens Excel with the add-in, served from here over https until Ctrl+C; `stop` takes it out of Excel again. */
async function excel(): Promise<void> {
  const order = readExcelOrder(process.argv.slice(2));
  await buildIfStale(ROOT, console.log);
  if (order.act === 'stop') {
    await debugging(['stop', MANIFEST]);
    return;
  }
  // Makes a certificate for this computer, and asks before it is trusted.
  const server = await startAddInServer(path.join(ROOT, 'dist'), PORT, await getHttpsServerOptions());
  console.log(`The add-in is served at ${server.origin} on this machine only. Ctrl+C ends it.`);
  const document = order.place === 'web' ? ['--document', order.document] : [];
  try {
    await debugging(['start', MANIFEST, order.place, '--no-debug', ...document]);
  } catch (error) {
    await server.close();
    throw error;
  }
}

/** Runs the host's own debugging command. */
function debugging(words: readonly string[]): Promise<void> {
  const { command, words: all, shell } = platformTool('office-addin-debugging', words);
  return new Promise((ended, failed) => {
    const child = spawn(command, all, { stdio: 'inherit', shell });
    child.once('error', failed);
    child.once('exit', (code) =>
      code === 0 ? ended() : failed(new Error(`The host's debugging command ended with ${code}.`)),
    );
  });
}

excel().catch((error: unknown) => {
  const taken = (error as { code?: unknown }).code === 'EADDRINUSE';
  console.error(
    taken
      ? `Port ${PORT} is taken: end what serves there, perhaps another npm run excel.`
      : error instanceof Error
        ? error.message
        : error,
  );
  process.exitCode = 1;
});
