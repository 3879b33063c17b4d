import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';

/** The sample workbook with its results, in the folder of built files. */
export const WORKBOOK = 'sample-month.xlsx';

/** What computes the results, in the page and in its workers. */
const COMPUTES = ['functions.js', 'callWorker.js'];

/**
 * The sample workbook with the results that the month's command has computed; undefined where it has not, or where the
 * add-in was built again since, so that they could be those of another version.
 */
export async function computedSample(
  root: string,
): Promise<{ readonly file: string; readonly bytes: Uint8Array } | undefined> {
  const dist = path.join(root, 'dist');
  const file = path.join(dist, WORKBOOK);
  const written = await stat(file).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code === 'ENOENT') return undefined;
    throw fault;
  });
  if (!written) return undefined;
  const built = await Promise.all(COMPUTES.map((name) => stat(path.join(dist, name))));
  if (built.some(({ mtimeMs }) => mtimeMs > written.mtimeMs)) return undefined;
  return { file, bytes: new Uint8Array(await readFile(file)) };
}
