import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';

const SOURCE = path.resolve(__dirname, '../../src');

/** Which rooms a room may import from, itself always. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  core: [],
  drawing: ['core'],
  worksheet: ['core'],
  taskpane: ['core', 'worksheet', 'drawing'],
  sheetHost: ['core', 'worksheet', 'taskpane'],
  month: ['core', 'worksheet', 'drawing', 'sheetHost'],
  sample: ['core', 'worksheet', 'sheetHost'],
  form: ['core', 'worksheet', 'drawing', 'month'],
  commands: ['core', 'worksheet', 'sheetHost', 'month', 'sample', 'form'],
};

function sources(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const file = path.join(folder, name);
    if (statSync(file).isDirectory()) return sources(file);
    return /\.(ts|mts|tsx)$/.test(name) ? [file] : [];
  });
}

const files = sources(SOURCE);
const roomOf = (file: string): string => path.relative(SOURCE, file).split(path.sep)[0]!;
const importsOf = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/(?:from|import|require)\s*\(?\s*['"]([^'"]+)['"]/g)].map(
    (m) => m[1]!,
  );

test('there is something to look at', () => {
  expect(files.length).toBeGreaterThan(20);
});

test('rooms import only from the rooms below them', () => {
  const wrong: string[] = [];
  for (const file of files) {
    const room = roomOf(file);
    const allowed = MAY_IMPORT[room];
    if (!allowed) {
      wrong.push(`${path.relative(SOURCE, file)}: room ${room} is not in the list`);
      continue;
    }
    for (const target of importsOf(file).filter((i) => i.startsWith('.'))) {
      const to = roomOf(path.resolve(path.dirname(file), target));
      if (to !== room && !allowed.includes(to))
        wrong.push(`${path.relative(SOURCE, file)} imports ${target}`);
    }
  }
  expect(wrong).toEqual([]);
});

/** The core's own rooms, each from what is below it: none imports from one that stands after it. */
const CORE_ORDER = [
  'lists',
  'measures',
  'geometry',
  'space',
  'motion',
  'stages',
  'survey',
  'carrying',
  'floors',
  'room',
  'joint',
  'route',
  'crew',
  'customer',
];

/** What may be known of a stage where surveys are read and checked: its kind, not how a piece passes it. */
const STAGES_AS_DATA = ['kinds', 'measures', 'stageKind'];

test('inside the core no arrow runs back', () => {
  const wrong: string[] = [];
  for (const file of files.filter((f) => roomOf(f) === 'core')) {
    const inside = (target: string) => path.relative(path.join(SOURCE, 'core'), target).split(path.sep);
    const [room] = inside(file);
    for (const target of importsOf(file).filter((i) => i.startsWith('.'))) {
      const [to, ...rest] = inside(path.resolve(path.dirname(file), target));
      const unknown = [room, to].filter((name) => !CORE_ORDER.includes(name!));
      const back = CORE_ORDER.indexOf(to!) > CORE_ORDER.indexOf(room!);
      const solver = room === 'survey' && to === 'stages' && !STAGES_AS_DATA.includes(rest.join('/'));
      if (unknown.length > 0 || back || solver) {
        wrong.push(`${path.relative(SOURCE, file)} imports ${target}`);
      }
    }
  }
  expect(wrong).toEqual([]);
});

/** The files of ours that a file imports, types among them. */
function ownImports(file: string): string[] {
  return importsOf(file)
    .filter((target) => target.startsWith('.'))
    .flatMap((target) => {
      const at = path.resolve(path.dirname(file), target);
      return files.filter((one) => one === `${at}.ts` || one === path.join(at, 'index.ts'));
    });
}

test('no file imports itself round a circle, not even a type', () => {
  const imported = new Map(files.map((file) => [file, ownImports(file)]));
  // What nothing that is left imports, or imports nothing that is left, is in no circle.
  let left = files;
  for (let before = -1; before !== left.length;) {
    before = left.length;
    const now = new Set(left);
    const wanted = new Set(left.flatMap((file) => imported.get(file)!));
    left = left.filter((file) => wanted.has(file) && imported.get(file)!.some((other) => now.has(other)));
  }
  expect(left.map((file) => path.relative(SOURCE, file))).toEqual([]);
});

test('the core and the worksheet import no package at all', () => {
  const wrong = files
    .filter((file) => ['core', 'worksheet', 'drawing'].includes(roomOf(file)))
    .flatMap((file) =>
      importsOf(file)
        .filter((i) => !i.startsWith('.'))
        .map((i) => `${file}: ${i}`),
    );
  expect(wrong).toEqual([]);
});

test('the core holds no host, page, clock, chance or file', () => {
  const forbidden =
    /\b(?:window|document|Office|Excel|CustomFunctions|process|performance|setTimeout|localStorage|fetch)\s*[.(]|\bnew Date\b|\bDate\.now\b|Math\.random/;
  const strip = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '');
  const wrong = files
    .filter((file) => roomOf(file) === 'core')
    .filter((file) => forbidden.test(strip(readFileSync(file, 'utf8'))));
  expect(wrong).toEqual([]);
});
