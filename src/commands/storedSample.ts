import { createHash } from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { readParts } from '../sheetHost/excelts/packageParts';

/** Kept beside the sample, so that the try-out page of a fresh clone need not compute for a minute before it has values. */
export const RESULTS = path.join('src', 'sample', 'results');
const WORKBOOK = 'sample-month.xlsx';
const FINGERPRINT = 'computed-from.json';

/** It holds when a file was written, and nothing of what is in it. */
const WHEN_WRITTEN = 'docProps/core.xml';

/** What results hang on. */
interface ComputedFrom {
  /** The built functions. */
  readonly functions: string;
  /** The workbook before it was computed. */
  readonly workbook: string;
}

const hashOf = (contents: readonly (string | Uint8Array)[]): string => {
  const hash = createHash('sha256');
  for (const content of contents) hash.update(content).update('\0');
  return hash.digest('hex');
};

/**
 * The fingerprint of what the sample's results hang on: the functions as built and the workbook.
 * @param blank the sample workbook before it is computed
 */
export async function computedFrom(root: string, blank: Uint8Array): Promise<ComputedFrom> {
  const parts = [...(await readParts(blank))].filter(([name]) => name !== WHEN_WRITTEN);
  parts.sort(([one], [other]) => (one < other ? -1 : 1));
  return {
    functions: hashOf([await readFile(path.join(root, 'dist', 'functions.js'))]),
    workbook: hashOf(parts.flat()),
  };
}

/** The stored results; undefined where there are none, or where the code or the sample is another than they were computed from. */
export async function storedSample(
  root: string,
  blank: Uint8Array,
): Promise<{ readonly file: string; readonly bytes: Uint8Array } | undefined> {
  const file = path.join(root, RESULTS, WORKBOOK);
  const read = (name: string): Promise<Buffer | undefined> =>
    readFile(path.join(root, RESULTS, name)).catch((fault: NodeJS.ErrnoException) => {
      if (fault.code === 'ENOENT') return undefined;
      throw fault;
    });
  const [bytes, from] = await Promise.all([read(WORKBOOK), read(FINGERPRINT)]);
  if (!bytes || !from) return undefined;
  const now = await computedFrom(root, blank);
  const then = JSON.parse(from.toString('utf8')) as Partial<ComputedFrom>;
  if (then.functions !== now.functions || then.workbook !== now.workbook) return undefined;
  return { file, bytes: new Uint8Array(bytes) };
}

/**
 * Stores results with what they were computed from.
 * @param computed the sample workbook with its results
 */
export async function storeSample(root: string, blank: Uint8Array, computed: Uint8Array): Promise<string> {
  const folder = path.join(root, RESULTS);
  await mkdir(folder, { recursive: true });
  await writeFile(path.join(folder, WORKBOOK), computed);
  const from = JSON.stringify(await computedFrom(root, blank), undefined, 2);
  await writeFile(path.join(folder, FINGERPRINT), `${from}\n`);
  return folder;
}
