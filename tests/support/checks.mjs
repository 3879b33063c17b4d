// What has to hold before the tests are worth running, two at a time, for none of it uses more than one core. The
// longest goes first.
import { spawn } from 'node:child_process';

const npmRun = (name, ...rest) => ['npm', ['run', '--silent', name, ...rest]];
const CHECKS = {
  'types and lint': [process.execPath, ['tests/support/typesAndLint.mjs']],
  formatted: npmRun('formatted'),
  build: npmRun('build', '--', '--no-stats'),
  unused: npmRun('unused'),
};
const AT_A_TIME = 2;

/** Runs a check; its output is shown when it has ended, so that no two are mixed. */
function check(name) {
  const begun = performance.now();
  const [command, words] = CHECKS[name];
  return new Promise((ended) => {
    const run = spawn(command, words, {
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32' && command === 'npm',
    });
    const output = [];
    for (const stream of [run.stdout, run.stderr]) stream.on('data', (part) => output.push(part));
    run.on('error', (error) => output.push(Buffer.from(`${error}\n`)));
    run.on('close', (code) => {
      process.stdout.write(Buffer.concat(output));
      console.log(
        `${name}: ${code === 0 ? 'ok' : 'FAILED'}, ${((performance.now() - begun) / 1000).toFixed(0)} s`,
      );
      ended(code === 0);
    });
  });
}

const waiting = Object.keys(CHECKS);
let allHold = true;
async function workThrough() {
  for (let name = waiting.shift(); name !== undefined; name = waiting.shift()) {
    if (!(await check(name))) allHold = false;
  }
}
await Promise.all(Array.from({ length: AT_A_TIME }, workThrough));
process.exitCode = allHold ? 0 : 1;
