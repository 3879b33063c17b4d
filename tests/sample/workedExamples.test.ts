import path from 'node:path';
import { WORKED_EXAMPLES } from '../../src/worksheet/workedExamples';
import { workedExamplesSheet } from '../../src/sample/sheets/workedExamplesSheet';
import { isCellError, type CellValue } from '../../src/sheetHost/hostValues';
import { loadBundle } from '../../src/sheetHost/loadBundle';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import type { SheetHost } from '../../src/sheetHost/sheetHost';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import { createWorkbook } from '../../src/sheetHost/workbookWriter';

jest.setTimeout(60000);

const SHEET = 'Worked examples';
const DIST = path.resolve(__dirname, '../../dist');
const HEADER = ['What', 'Formula', 'Value', 'Unit', 'Source'];

/** Answers worked out apart from the project, by the title's example; the rest is held to its own working below. */
const BY_HAND: Readonly<Record<string, number>> = {
  // 1.83 x 0.93 x 0.026 m3 at 2800 kg/m3
  'What does the slate weigh?': 123.9,
  // leaf - stop - leaf thickness: Approved Document M
  'How wide is the door, really?': 762 - 12 - 35,
  // 30.5 in of 25.4 mm
  'A tape in feet and inches': 774.7,
  // square on: (775 - 330) / 2
  'Through the door': 222.5,
  'How steep is the stair?': (Math.atan2(190, 240) * 180) / Math.PI,
  // m (1/2 + h/d tan a): statics, as for the crate of Young & Freedman, University Physics, ch. 11
  'Who has the heavy end?': 124 * (0.5 + (350 / 1500) * Math.tan((38 * Math.PI) / 180)),
  // half of 3 x 25: HSE L23
  'Three people on the level': 37.5,
  // 23 x 25/40 x (1 - 0.003 x 15) x (0.82 + 4.5/30) x 0.95: DHHS/NIOSH 94-110
  'Lifting at the van': 23 * (25 / 40) * (1 - 0.003 * 15) * (0.82 + 4.5 / 30) * 0.95,
  // T (M - limit)/(M - resting): Murrell's form, engineering handbooks
  'How long a rest?': (30 * (480 - 350)) / (480 - 105),
  // half of the weight
  'Under one foot': (381 * 9.80665) / 2 / 1000,
  // 4800 - (1118 + 2 x 1470)
  'Room to play': 742,
};

let host: SheetHost;
let rows: CellValue[][];

const shown = (): CellValue[][] => host.read(SHEET, host.used(SHEET)!);
const topOf = (title: string): number =>
  rows.findIndex((row) => typeof row[0] === 'string' && row[0].endsWith(`. ${title}`));
const below = (top: number, label: string): number => rows.findIndex((row, r) => r > top && row[0] === label);

beforeAll(async () => {
  const book = createWorkbook();
  workedExamplesSheet(book);
  const opened = await openWorkbook(await writeWorkbook(book));
  if (!opened.ok) throw new Error(opened.reason);
  host = opened.host;
  host.register(await loadBundle(DIST));
  host.recalculate();
  rows = shown();
});

test('there are at least 12, and a whole route closes them', () => {
  const titles = rows.map((row) => row[0]).filter((a) => typeof a === 'string' && /^\d+\. /.test(a));
  expect(titles.length).toBeGreaterThanOrEqual(13);
  expect(titles.length).toBe(WORKED_EXAMPLES.length + 1);
  expect(titles[titles.length - 1]).toMatch(/whole route/);
});

test('no cell shows an error', () => {
  expect(rows.flat().filter(isCellError)).toEqual([]);
});

test.each(WORKED_EXAMPLES.map((e) => [e.title, e] as const))('%s: the working stands beside it', (title) => {
  const top = topOf(title);
  expect(rows[top + 2]!.slice(4, 9)).toEqual(HEADER);
  expect(rows[top + 3]![4]).not.toBeNull();
});

/** Writes answers into all examples and reads how each is marked. */
function marked(answer: (title: string) => CellValue): Map<string, CellValue> {
  const asked = WORKED_EXAMPLES.map((e) => e.title);
  for (const title of asked) {
    const value = answer(title);
    if (isCellError(value)) throw new Error(`${title}: ${value.code}`);
    host.write(SHEET, below(topOf(title), 'Your answer'), 1, value);
  }
  host.recalculate();
  const now = shown();
  return new Map(asked.map((title) => [title, now[below(topOf(title), 'Marked')]![1]!]));
}

/** The last number of the working beside an example: the function's result. */
function result(title: string): number {
  const top = topOf(title);
  let last = NaN;
  for (let r = top + 3; r < rows.length && rows[r]![4] !== null && rows[r]![4] !== ''; r++) {
    const value = rows[r]![6];
    if (typeof value === 'number') last = value;
  }
  return last;
}

test('an answer worked out by hand is marked right', () => {
  expect(Object.keys(BY_HAND).length).toBeGreaterThanOrEqual(10);
  const marks = marked((title) => BY_HAND[title] ?? null);
  for (const title of Object.keys(BY_HAND)) expect([title, marks.get(title)]).toEqual([title, 'right']);
});

test('the result of the working is marked right, and an answer off by twice the tolerance is not', () => {
  const right = marked(result);
  for (const [title, mark] of right) expect([title, mark]).toEqual([title, 'right']);
  const wrong = marked(
    (title) => result(title) + 2 * WORKED_EXAMPLES.find((e) => e.title === title)!.tolerance,
  );
  for (const [title, mark] of wrong)
    expect([title, mark]).toEqual([title, expect.stringMatching(/^not within /)]);
});

test('no answer and a word for an answer are marked as such', () => {
  expect([...new Set(marked(() => null).values())]).toEqual(['write your answer above']);
  expect([...new Set(marked(() => 'about ten').values())]).toEqual(['not a number']);
});

test('questions and labels are short enough to read in a row', () => {
  for (const { question, title, given } of WORKED_EXAMPLES) {
    expect(question.length).toBeLessThanOrEqual(170);
    expect(title.length).toBeLessThanOrEqual(50);
    for (const [label] of given) expect(label.length).toBeLessThanOrEqual(30);
  }
});
