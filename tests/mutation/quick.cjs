/**
 * Changes a room a little at a time, numbers too, and tells which changes no test notices. It is for rooms without a host,
 * a page or files, and some hundred times as quick as `npm run mutate`: the tests run in one process, by what is left of
 * jest without its runner, those that come through the changed function, the quickest first, and stop at the first that
 * fails. What was tried is kept in coverage/mutation, so that a room may be left and gone on with; what no test noticed,
 * and has to, is tried again once a test has changed.
 *
 * Of what no test notices the room's probes (probes.ts) say what it does to figures: nothing in the scenes looked at,
 * only worse verdicts or weaker proofs, or MORE: these are given all the tests there is time for, and need one.
 *
 *   node tests/mutation/quick.cjs floors [part of a file's name ...] [--seconds=380] [--first=3] [--longest=20] [--again] [--fresh]
 *
 * seconds: stop after that long; first and longest: seconds of tests for one change before the probes, and in all;
 * again: only what no test noticed before; fresh: forget what was tried.
 */
const { spawn } = require('node:child_process');
const { createHash } = require('node:crypto');
const fs = require('node:fs');
const path = require('node:path');
const readline = require('node:readline');
const Module = require('node:module');
const ts = require('typescript');

const root = path.resolve(__dirname, '../..');
const rooms = require('./rooms.json');
const [asked, ...rest] = process.argv.slice(2);
const option = (name, otherwise) =>
  Number(rest.find((o) => o.startsWith(`--${name}=`))?.split('=')[1] ?? otherwise);
const seconds = option('seconds', Infinity);
const first = 1000 * option('first', 3);
const longest = 1000 * option('longest', 20);
const parts = rest.filter((o) => !o.startsWith('--'));

const isTested = process.argv.includes('--here');
const state = path.join(root, 'coverage/mutation', `${asked}.quick.json`);
const hashOf = (...texts) => createHash('sha1').update(texts.join('\0')).digest('hex').slice(0, 16);
const read = (file) => fs.readFileSync(file, 'utf8');

const matching = (pattern) => {
  const [folder, name] = [path.dirname(pattern).replace(/\/\*\*$/, ''), path.basename(pattern)];
  const fits = new RegExp(
    `^${name
      .replaceAll('.', '\\.')
      .replaceAll('*', '.*')
      .replace(/\{(.*)\}/, (_, names) => `(${names.replaceAll(',', '|')})`)}$`,
  );
  return fs
    .readdirSync(path.join(root, folder), { recursive: pattern.includes('**') })
    .filter((file) => fits.test(path.basename(file)))
    .map((file) => path.join(root, folder, file));
};
const listed = (patterns) => {
  const out = patterns.filter((p) => p.startsWith('!')).flatMap((p) => matching(p.slice(1)));
  return [...new Set(patterns.filter((p) => !p.startsWith('!')).flatMap(matching))].filter(
    (file) => !out.includes(file),
  );
};

/** Files are compiled once; the one that is changed is compiled anew at each change. */
const compiled = new Map();
let changed;
let told = () => false;
const compile = (file, text) =>
  ts.transpileModule(text, {
    fileName: file,
    compilerOptions: { module: 'commonjs', target: 'es2022', esModuleInterop: true },
  }).outputText;
Module._extensions['.ts'] = (module, file) => {
  if (file === changed?.file) return module._compile(changed.code, file);
  if (!compiled.has(file)) compiled.set(file, compile(file, told(file) ? marked(file) : read(file)));
  return module._compile(compiled.get(file), file);
};

/** Functions with a body, by where they begin. */
function functionsOf(file) {
  const source = ts.createSourceFile(file, read(file), ts.ScriptTarget.ES2022, true);
  const found = [];
  const visit = (node) => {
    if (ts.isFunctionLike(node) && node.body) found.push(node);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { source, found };
}

/** A file that tells which of its functions are come through. */
function marked(file) {
  const { source, found } = functionsOf(file);
  const put = found.flatMap((node) => {
    const [from, to] = [node.body.getStart(source), node.body.getEnd()];
    const mark = `globalThis.come(${JSON.stringify(`${file}:${node.getStart(source)}`)})`;
    return ts.isBlock(node.body)
      ? [[from + 1, `${mark};`, 0]]
      : [
          [from, `(${mark},`, 0],
          [to, ')', 1],
        ];
  });
  let text = source.text;
  // From behind; of marks at one place the one that closes stands first.
  put.sort((a, b) => b[0] - a[0] || a[2] - b[2]);
  for (const [at, mark] of put) text = text.slice(0, at) + mark + text.slice(at);
  return text;
}

/** What a tested process says, at once: it may never come back from what it does next. */
const say = (what) => fs.writeSync(3, `${JSON.stringify(what)}\n`);

let found = [];
const rowsOf = (rows) => rows.map((row) => (Array.isArray(row) ? row : [row]));
const test = (_name, run) => void found.push({ run });
test.each = (rows) => (_name, run) => rowsOf(rows).forEach((row) => found.push({ run: () => run(...row) }));
const describe = (_name, make) => make();
describe.each = (rows) => (_name, make) => rowsOf(rows).forEach((row) => make(...row));

function prepare() {
  /** The one that jest itself has. */
  const { expect } = Module.createRequire(require.resolve('jest'))('expect');
  Object.assign(globalThis, { test, it: test, describe, expect });
  globalThis.beforeAll = (run) => void found.push({ run, first: true });
  globalThis.jest = { setTimeout: () => undefined };
  require('fast-check').configureGlobal({ endOnFailure: true });
}

/** @returns the tests of a file, read anew */
function testsIn(file) {
  found = [];
  delete require.cache[file];
  require(file);
  return found;
}

function forget() {
  for (const loaded of Object.keys(require.cache)) if (isOurs(loaded)) delete require.cache[loaded];
}

const isOurs = (file) => /[\\/](src|tests)[\\/].*\.(ts|json)$/.test(file);

/** Forgets a file, what imports it, what imports that; and all tests. */
function forgetFrom(file) {
  const gone = new Set([file]);
  for (let before = -1; before < gone.size;) {
    before = gone.size;
    for (const [name, module] of Object.entries(require.cache))
      if (isOurs(name) && module.children.some(({ id }) => gone.has(id))) gone.add(name);
  }
  for (const name of Object.keys(require.cache))
    if (gone.has(name) || name.endsWith('.test.ts')) delete require.cache[name];
}

/** @throws where a test fails, or expects nothing */
async function runOne({ run, first }) {
  expect.setState({ assertionCalls: 0, testFailing: false });
  await run();
  if (!first && expect.getState().assertionCalls === 0) throw new Error('it expects nothing');
}

/** Runs all tests once, as they are, and says how long each takes and what it comes through. */
async function look(files, mutated) {
  told = (file) => mutated.has(file);
  let come = new Set();
  globalThis.come = (where) => come.add(where);
  for (const file of files) {
    forget();
    const entries = testsIn(file);
    const loaded = Object.keys(require.cache).filter((name) => mutated.has(name));
    say({ file, loaded });
    for (const [at, entry] of entries.entries()) {
      come = new Set();
      const since = process.cpuUsage();
      say({ begins: at, took: 60_000 });
      await runOne(entry);
      say({ file, at, took: tookSince(since), come: [...come] });
    }
  }
  forget();
  for (const [at, [name, figures]] of probes().entries()) {
    come = new Set();
    const since = process.cpuUsage();
    say({ begins: name, took: 60_000 });
    const are = figures();
    say({ probe: at, took: tookSince(since), come: [...come], are });
  }
}

/** Processor time [ms]: beside other work the clock tells little. */
function tookSince(since) {
  const { user, system } = process.cpuUsage(since);
  return Math.round((user + system) / 1000);
}

/** The room's probes. */
const probes = () => require('./probes.ts').PROBES[asked] ?? [];

/** What needs no test of its own. */
const HARMLESS = /^(no figure changes|less)/;

/** What a change does to figures: nothing, less, or more. */
function effectOf(looked, key) {
  if (looked.length === 0) return 'no probe comes here';
  let now;
  try {
    now = probes();
  } catch (error) {
    return `fails: ${String(error.message).slice(0, 80)}`;
  }
  let effect = 'no figure changes';
  for (const { probe, took, are } of looked) {
    say({ key, begins: probe, took });
    const [name, figures] = now[probe];
    let changedTo;
    try {
      changedTo = figures();
    } catch (error) {
      return `fails: ${String(error.message).slice(0, 80)}`;
    }
    const more = differences(changedTo.shown, are.shown);
    const refuses = differences(are.proved, changedTo.proved);
    if (more.most > 0) return `MORE: ${name}, ${more.count} figures by up to ${more.most.toPrecision(3)}`;
    if (refuses.most > 0)
      return `MORE PROVED: ${name}, ${refuses.count} figures by up to ${refuses.most.toPrecision(3)}`;
    if (more.other || refuses.other) effect = 'less';
  }
  return effect;
}

/** How much greater some figures are than others. */
function differences(some, others) {
  if (some.length !== others.length) return { most: Infinity, count: 1, other: true };
  let [most, count, other] = [0, 0, false];
  some.forEach((value, k) => {
    const by = value - others[k];
    // A proof, or a padding, off by less is nothing to a delivery.
    if (by > 1e-3 || Number.isNaN(by)) {
      most = Math.max(most, Number.isNaN(by) ? Infinity : by);
      count++;
    } else if (by < -1e-3) other = true;
  });
  return { most, count, other };
}

/** Makes each change that stands in the list and says whether a test notices, or what it does to figures. */
async function attack(todo, looked) {
  const { mutationsOf } = require('./mutationsOf.ts');
  const changes = new Map();
  for (const { file, index, key, tests, more, probed } of todo) {
    if (!changes.has(file)) changes.set(file, mutationsOf(file, read(file)));
    changed = { file, code: compile(file, changes.get(file)[index].text) };
    forgetFrom(file);
    // Figures last: most changes are noticed by a test within its first seconds.
    let noticed = await noticedBy(tests, key);
    const effect = noticed
      ? ''
      : effectOf(
          looked.filter(({ probe }) => probed.includes(probe)),
          key,
        );
    if (!noticed && !HARMLESS.test(effect)) noticed = await noticedBy(more, key);
    forgetFrom(file);
    changed = undefined;
    say({ key, noticed, effect: noticed ? '' : effect });
  }
}

/** @returns the file of the test that notices; nothing where none does */
async function noticedBy(tests, key) {
  for (const { file, ats } of tests) {
    try {
      say({ key, begins: file, took: 1000 });
      const entries = testsIn(file);
      for (const entry of entries.filter((e) => e.first)) await runOne(entry);
      for (const { at, took } of ats) {
        say({ key, begins: at, took });
        await runOne(entries[at]);
      }
    } catch {
      return path.relative(root, file);
    }
  }
  return '';
}

/** How often a process that takes too long is looked for [ms]. */
const TICK = 500;
/** One that does nothing is given up after so many times what it may take. */
const AWAKE = 40;

/** What a process has had of the processor [ms]; NaN where no system tells. */
function processorTime(pid) {
  try {
    const [user, system] = read(`/proc/${pid}/stat`).split(') ')[1].split(' ').slice(11, 13);
    return 10 * (Number(user) + Number(system));
  } catch {
    return NaN;
  }
}

/** A process of its own, given up where a test takes ten times as long as it should; @returns whether it came to its end. */
function tested(input, heard, until = Infinity) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--max-old-space-size=1500', __filename, asked, '--here'], {
      stdio: ['pipe', 'ignore', 'pipe', 'pipe'],
    });
    let [ended, error] = ['', ''];
    const stop = (why) => {
      ended ||= why;
      child.kill('SIGKILL');
    };
    // By the processor's time, where it can be read: beside other work a test may take many times as long.
    let [spent, since] = [0, 0];
    let most = Infinity;
    const wait = (ms) => {
      [spent, since] = [processorTime(child.pid), 0];
      most = ms;
    };
    const timer = setInterval(() => {
      since += TICK;
      const ran = processorTime(child.pid) - spent;
      if ((Number.isNaN(ran) ? since : Math.max(ran, since / AWAKE)) > most) stop('endless');
    }, TICK);
    wait(60_000);
    child.stderr.on('data', (text) => (error = (error + text).slice(-2000)));
    readline.createInterface({ input: child.stdio[3] }).on('line', (line) => {
      const what = JSON.parse(line);
      wait(what.begins === undefined ? 60_000 : 10_000 + 10 * what.took);
      heard(what);
      if (what.noticed !== undefined && Date.now() > until) stop('time');
    });
    child.on('close', (code) => {
      clearInterval(timer);
      resolve({ ended: ended || (code === 0 ? '' : 'broken'), error });
    });
    child.stdin.end(JSON.stringify(input));
  });
}

async function main() {
  if (!(asked in rooms))
    throw new Error(`${asked} is no room to mutate: allowed is ${Object.keys(rooms).join(', ')}`);
  const until = Date.now() + 1000 * seconds;
  const files = listed(rooms[asked].tests);
  const mutated = listed(rooms[asked].mutate);
  const known = fs.existsSync(state) && !rest.includes('--fresh') ? JSON.parse(read(state)) : {};
  const results = known.results ?? {};
  const testsAre = hashOf(...files.map(read));
  const all = hashOf(testsAre, read(path.join(__dirname, 'probes.ts')), ...mutated.map(read));
  let { runs, looked } = known.all === all ? known : {};
  if (!runs) {
    [runs, looked] = [[], []];
    const { ended, error } = await tested({ look: files, mutated }, (what) => {
      if (what.loaded) runs.push({ file: what.file, loaded: what.loaded, tests: [] });
      else if (what.are) looked.push(what);
      else if (what.come) runs.at(-1).tests.push({ at: what.at, took: what.took, come: what.come });
    });
    if (ended)
      throw new Error(
        `a test of ${path.relative(root, runs.at(-1)?.file ?? '')} fails as it is, or asks for more of jest than is here\n${error}`,
      );
  }
  let saved = 0;
  const save = () => {
    saved = Date.now();
    fs.mkdirSync(path.dirname(state), { recursive: true });
    fs.writeFileSync(state, JSON.stringify({ all, runs, looked, results }));
  };
  save();

  Module._extensions['.ts'](Object.assign(module, {}), path.join(__dirname, 'mutationsOf.ts'));
  const { mutationsOf } = module.exports;
  const list = [];
  for (const file of mutated) {
    const name = path.relative(root, file);
    if (parts.length > 0 && !parts.some((part) => name.includes(part))) continue;
    const text = read(file);
    const source = hashOf(text);
    const { source: parsed, found: bodies } = functionsOf(file);
    for (const [index, { at, line, was, becomes }] of mutationsOf(file, text).entries()) {
      const body = bodies.filter((node) => node.getStart(parsed) <= at && at < node.getEnd()).at(-1);
      const where = body && `${file}:${body.getStart(parsed)}`;
      const through = runs
        .filter(({ loaded }) => loaded.includes(file))
        .map(({ file: by, tests }) => ({
          file: by,
          ats: tests.filter(({ come }) => where === undefined || come.includes(where)),
        }))
        .filter(({ ats }) => ats.length > 0);
      const [tests, more] = shares(through, [first, longest]);
      const probed = looked
        .filter(({ come }) => where === undefined || come.includes(where))
        .map((l) => l.probe);
      const key = `${name}#${source}#${index}`;
      list.push({
        file,
        index,
        key,
        tests,
        more,
        probed,
        shown: `${name}:${line} ${was} -> ${becomes}`,
        code: text.split('\n')[line - 1].trim(),
      });
    }
  }
  // Where the room has probes only what makes a verdict better is tried again.
  const needsNone = ({ effect }) => effect && HARMLESS.test(effect);
  const done = ({ key }) =>
    results[key] &&
    (results[key].noticed ||
      needsNone(results[key]) ||
      (results[key].tests === testsAre && results[key].effect));
  // In no order, so that what was tried tells of the whole.
  const again = rest.includes('--again');
  const todo = list
    .filter((one) => !done(one) && (!again || results[one.key]))
    .sort((a, b) => (hashOf(a.key) < hashOf(b.key) ? -1 : 1));
  const twice = new Set();
  while (todo.length > 0 && Date.now() < until) {
    let at;
    const { ended, error } = await tested(
      {
        todo: todo.map(({ file, index, key, tests, more, probed }) => ({
          file,
          index,
          key,
          tests,
          more,
          probed,
        })),
        looked,
      },
      (what) => {
        at = what.key;
        if (what.noticed === undefined) return;
        results[what.key] = { noticed: what.noticed, effect: what.effect, tests: testsAre };
        todo.shift();
        if (Date.now() - saved > 20_000) save();
      },
      until,
    );
    if (ended === 'time' || !ended) continue;
    // Out of memory is an end of its own; anything else is a fault here.
    if (at === undefined || at !== todo[0]?.key || (ended === 'broken' && !/heap/.test(error)))
      throw new Error(error || 'nothing was tried');
    const [one] = todo.splice(0, 1);
    // Beside other work a test may take too long once, for nothing: what seems endless is tried again, the last of all.
    if (ended === 'endless' && !twice.has(at)) todo.push(one);
    else results[at] = { noticed: ended, tests: testsAre };
    twice.add(at);
    save();
  }
  save();
  const tried = list.filter(done);
  const survived = tried.filter(({ key }) => !results[key].noticed);
  for (const { shown, code, tests, key } of survived.sort((a, b) => (a.shown < b.shown ? -1 : 1))) {
    const none = tests.length === 0 ? ' (none comes here)' : '';
    console.log(`${shown}: no test notices${none}; ${results[key].effect}   | ${code}`);
  }
  console.log(
    `${tried.length - survived.length} of ${tried.length} changes noticed` +
      `${tried.length < list.length ? `; ${list.length - tried.length} not tried yet` : ''}`,
  );
}

/** Of tests the quickest, as many as each share has time for [ms]; a later share goes on where one before ended. */
function shares(through, limits) {
  const ordered = through.flatMap(({ file, ats }) => ats.map(({ at, took }) => ({ file, at, took })));
  ordered.sort((a, b) => a.took - b.took);
  let [sum, from] = [0, 0];
  return limits.map((limit) => {
    let to = from;
    while (to < ordered.length && (sum += ordered[to].took) <= limit) to++;
    const share = ordered.slice(from, to);
    from = to;
    return [...new Set(share.map(({ file }) => file))].map((file) => ({
      file,
      ats: share.filter((one) => one.file === file),
    }));
  });
}

async function here() {
  prepare();
  const { look: files, mutated, todo, looked } = JSON.parse(read(0));
  if (files) await look(files, new Set(mutated));
  else await attack(todo, looked);
}

void (isTested ? here() : main());
