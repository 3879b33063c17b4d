import { execFile } from 'node:child_process';
import { readdir, stat, utimes } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { shownGiven } from '../core/measures/shown';

/** What the built files are made from, beside the folder of sources. */
const OTHER_SOURCES = ['webpack.config.js', 'package.json', 'manifest.xml'];

/** What has to be there after a build. */
const BUILT = ['functions.js', 'functions.json', 'sheetPage.js', 'callWorker.js'];

/** In the folder of sources, but nothing is built from them: they are made from what is built. */
const NO_SOURCES = ['pictures', 'results'].map((folder) => path.join('src', 'sample', folder));

async function newest(file: string): Promise<number> {
  if (NO_SOURCES.some((folder) => file.endsWith(folder))) return 0;
  const found = await stat(file).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code === 'ENOENT') return undefined;
    throw fault;
  });
  if (!found) return 0;
  if (!found.isDirectory()) return found.mtimeMs;
  const names = await readdir(file);
  const times = await Promise.all(names.map((name) => newest(path.join(file, name))));
  return Math.max(0, ...times);
}

/** Whether `dist` lacks a file, or has one older than the sources. */
export async function isStale(root: string): Promise<boolean> {
  const built = await Promise.all(BUILT.map((name) => newest(path.join(root, 'dist', name))));
  const sources = await Promise.all(['src', ...OTHER_SOURCES].map((name) => newest(path.join(root, name))));
  return Math.min(...built) < Math.max(...sources);
}

/**
 * Builds the add-in into `dist` where it is missing or older than its sources.
 * @param say what is being done, before it is done: it takes a while
 */
export async function buildIfStale(root: string, say: (line: string) => void): Promise<void> {
  if (!(await isStale(root))) return;
  say('Building the add-in into dist; this takes some 20 seconds…');
  const webpack = path.join(root, 'node_modules', 'webpack', 'bin', 'webpack.js');
  const begun = new Date();
  await promisify(execFile)(process.execPath, [webpack, '--mode', 'production', '--no-stats'], { cwd: root });
  // webpack leaves a file alone whose content has not changed; it would look old for ever.
  await Promise.all(BUILT.map((name) => utimes(path.join(root, 'dist', name), begun, begun)));
  say(`Built in ${shownGiven((Date.now() - begun.getTime()) / 1000, 0)} s.`);
}
