import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync, utimesSync } from 'node:fs';
import path from 'node:path';

const ROOT = path.resolve(__dirname, '../..');
const DIST = path.join(ROOT, 'dist');

/** The folder of the built add-in; built first when a source is newer, so that no test looks at an old one. */
export function builtFolder(): string {
  const built = path.join(DIST, 'taskpane.js');
  const newest = Math.max(
    newestIn(path.join(ROOT, 'src')),
    statSync(path.join(ROOT, 'webpack.config.js')).mtimeMs,
  );
  if (!existsSync(built) || statSync(built).mtimeMs < newest) {
    const webpack = path.join(ROOT, 'node_modules/webpack/bin/webpack.js');
    execFileSync(process.execPath, [webpack, '--mode', 'production', '--no-stats'], { cwd: ROOT });
    // webpack leaves a file alone whose content has not changed.
    utimesSync(built, new Date(), new Date());
  }
  return DIST;
}

/** Nothing is built from pictures and stored results: these are made from what is built. */
const newestIn = (folder: string): number =>
  Math.max(
    ...readdirSync(folder, { withFileTypes: true }).map((entry) => {
      const file = path.join(folder, entry.name);
      if (entry.name === 'pictures' || entry.name === 'results') return 0;
      return entry.isDirectory() ? newestIn(file) : statSync(file).mtimeMs;
    }),
  );
