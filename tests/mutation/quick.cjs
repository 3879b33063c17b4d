/**
 * The same as mutate.ts for rooms without a host, a page or files, some hundred times as quick: the tests run in this one
 * process, by what is left of jest without its runner, and stop at the first that fails. It changes numbers too.
 *
 *   node tests/mutation/quick.cjs floors [part of a file's name ...]
 */
const fs = require('node:fs');
const path = require('node:path');
const Module = require('node:module');
const ts = require('typescript');
/** The one that jest itself has. */
const { expect } = Module.createRequire(require.resolve('jest'))('expect');

const root = path.resolve(__dirname, '../..');
const rooms = require('./rooms.json');

/** Files are compiled once; the one that is changed is compiled anew at each change. */
const compiled = new Map();
let changed;
const compile = (file, text) =>
  ts.transpileModule(text, {
    fileName: file,
    compilerOptions: { module: 'commonjs', target: 'es2022', esModuleInterop: true },
  }).outputText;
Module._extensions['.ts'] = (module, file) => {
  if (file === changed?.file) return module._compile(compile(file, changed.text), file);
  if (!compiled.has(file)) compiled.set(file, compile(file, fs.readFileSync(file, 'utf8')));
  return module._compile(compiled.get(file), file);
};

let tests = [];
const rowsOf = (rows) => rows.map((row) => (Array.isArray(row) ? row : [row]));
const test = (_name, run) => void tests.push(run);
test.each = (rows) => (_name, run) => rowsOf(rows).forEach((row) => tests.push(() => run(...row)));
const describe = (_name, make) => make();
describe.each = (rows) => (_name, make) => rowsOf(rows).forEach((row) => make(...row));
Object.assign(globalThis, { test, it: test, describe, expect, beforeAll: (run) => void tests.push(run) });
globalThis.jest = { setTimeout: () => undefined };

/** @returns whether a test fails */
async function notices(files) {
  for (const file of Object.keys(require.cache))
    if (/[\\/](src|tests)[\\/].*\.ts$/.test(file)) delete require.cache[file];
  tests = [];
  try {
    files.forEach((file) => require(file));
    for (const run of tests) await run();
    return false;
  } catch {
    return true;
  }
}

const listed = (patterns) =>
  patterns
    .filter((pattern) => !pattern.startsWith('!'))
    .flatMap((pattern) => {
      const [folder, name] = [path.dirname(pattern).replace(/\/\*\*$/, ''), path.basename(pattern)];
      const fits = new RegExp(`^${name.replaceAll('.', '\\.').replaceAll('*', '.*')}$`);
      return fs
        .readdirSync(path.join(root, folder), { recursive: pattern.includes('**') })
        .filter((file) => fits.test(path.basename(file)))
        .map((file) => path.join(root, folder, file));
    });

async function main() {
  const [room, ...parts] = process.argv.slice(2);
  if (!(room in rooms))
    throw new Error(`${room} is no room to mutate: allowed is ${Object.keys(rooms).join(', ')}`);
  const { mutationsOf } = require('./mutationsOf.ts');
  const files = listed(rooms[room].tests);
  if (await notices(files))
    throw new Error(`the tests of ${room} fail as they are, or ask for more of jest than is here`);
  let [caught, made] = [0, 0];
  for (const file of listed(rooms[room].mutate)) {
    const name = path.relative(root, file);
    if (parts.length > 0 && !parts.some((part) => name.includes(part))) continue;
    for (const { line, was, becomes, text } of mutationsOf(file, fs.readFileSync(file, 'utf8'))) {
      changed = { file, text };
      made++;
      if (await notices(files)) caught++;
      else console.log(`${name}:${line} ${was} -> ${becomes}: no test notices`);
    }
  }
  console.log(`${caught} of ${made} changes noticed`);
}

void main();
