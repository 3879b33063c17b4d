import path from 'node:path';
import { WORKED_ANSWERS } from '../support/workedAnswers';
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

let host: SheetHost;
let rows: CellValue[][];
/** As the sheet is handed out. */
let before: CellValue[][];

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
  before = rows = shown();
  rows.forEach((row, r) => {
    if (row[0] === 'Show the working') host.write(SHEET, r, 1, 'yes');
  });
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

test('no working is shown before it is asked for', () => {
  const texts = before.flat();
  expect(texts).not.toContain(HEADER[0]);
  expect(texts.filter((text) => /^write yes in [A-Z]+\d+ to see it$/.test(String(text)))).toHaveLength(
    WORKED_EXAMPLES.length + 1,
  );
});

test.each(WORKED_EXAMPLES.map((e) => [e.title, e] as const))(
  '%s: the working stands beside it once it is asked for',
  (title) => {
    const top = topOf(title);
    expect(rows[top + 2]!.slice(4, 9)).toEqual(HEADER);
    expect(rows[top + 3]![4]).not.toBeNull();
  },
);

test('a question follows the cells of what is given', () => {
  const top = topOf('What does the slate weigh?');
  expect(rows[top + 1]![0]).toContain('measures 1830 x 930 x 26 mm');
  host.write(SHEET, top + 3, 1, 2000);
  host.recalculate();
  expect(shown()[top + 1]![0]).toContain('measures 2000 x 930 x 26 mm');
  host.write(SHEET, top + 3, 1, 1830);
  host.recalculate();
  for (const { title } of WORKED_EXAMPLES) expect(String(rows[topOf(title) + 1]![0])).not.toMatch(/[{}]/);
});

test.each([
  ['What does the slate weigh?', '124 kg'],
  ['How wide is the door, really?', '71.5 cm'],
  ['Through the door', '222.5 mm a side'],
  ['How steep is the stair?', '38.4 degrees'],
  ['Under one foot', '1.87 kN'],
])('%s: an answer with its unit is taken', (title, answer) => {
  expect(marked((one) => (one === title ? answer : null)).get(title)).toBe('right');
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

test('an answer worked out by hand is marked right, in every example', () => {
  const marks = marked((title) => WORKED_ANSWERS[title] ?? null);
  expect(marks.size).toBe(WORKED_EXAMPLES.length);
  for (const [title, mark] of marks) expect([title, mark]).toEqual([title, 'right']);
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
  expect([...new Set(marked(() => 'about ten').values())]).toEqual(['not a number, and none with its unit']);
});

test('questions and labels are short enough to read in a row', () => {
  for (const { question, title, given } of WORKED_EXAMPLES) {
    expect(question.length).toBeLessThanOrEqual(170);
    expect(title.length).toBeLessThanOrEqual(50);
    for (const [label] of given) expect(label.length).toBeLessThanOrEqual(30);
  }
});
