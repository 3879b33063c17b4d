/**
 * Changes one room of the core a little at a time and tells which changes no test notices: `npm run mutate -- floors`.
 * What was tried before and has not changed since is not tried again, so that a room may be left and gone on with.
 */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import rooms from './rooms.json';

const root = path.resolve(__dirname, '../..');
const asked = process.argv.slice(2);
const known = Object.keys(rooms);
const unknown = asked.filter((room) => !known.includes(room));
if (asked.length === 0 || unknown.length > 0) {
  console.error(`${unknown[0] ?? 'no room'} is no room to mutate: allowed is ${known.join(', ')}`);
  process.exitCode = 1;
} else {
  for (const room of asked) {
    const { status } = spawnSync('npx', ['stryker', 'run', 'tests/mutation/stryker.config.mjs'], {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, MUTATION_ROOM: room },
    });
    if (status !== 0) process.exitCode = 1;
  }
}
