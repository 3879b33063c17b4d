import type { Cell } from '../../src/core/measures/readQuantity';
import { exampleOnSheet } from '../../src/taskpane/exampleOnSheet';
import { examplePicture } from '../../src/taskpane/examplePicture';
import type { SheetAccess } from '../../src/taskpane/sheetAccess';
import { starterSheets } from '../../src/taskpane/starterSheets';
import { WORKED_EXAMPLES } from '../../src/worksheet/workedExamples';

const SHEET = 'Worked examples';

/** The starter sheet as its plain values, with something written into one cell. */
function cellsOf(
  written: (row: number, column: number, value: Cell) => Cell = (_r, _c, value) => value,
): Cell[][] {
  const sheet = starterSheets({ sheets: [], tables: [] }).find(({ name }) => name === SHEET)!;
  const cells: Cell[][] = [];
  for (const { row, column, value } of sheet.cells) {
    while (cells.length <= row + 1) cells.push([null, null, null, null]);
    cells[row]![column] = typeof value === 'object' ? '...' : value;
  }
  return cells.map((line, row) => line.map((value, column) => written(row, column, value ?? null)));
}

/** Of the workbook only what an example is found by. */
const access = (cells: readonly (readonly Cell[])[]): SheetAccess =>
  ({
    used: () => Promise.resolve({ sheet: SHEET, row: 0, column: 0, rows: cells.length, columns: 4 }),
    read: ({ row, rows }: { row: number; rows: number }) => Promise.resolve(cells.slice(row, row + rows)),
  }) as unknown as SheetAccess;

const rowOf = (cells: readonly (readonly Cell[])[], label: string, nth = 0): number =>
  cells.flatMap((line, row) => (line.includes(label) ? [row] : []))[nth]!;

async function pictureAt(cells: readonly (readonly Cell[])[], row: number) {
  const found = await exampleOnSheet(access(cells), { sheet: SHEET, row, column: 2, rows: 1, columns: 1 });
  return { id: found?.example.id, picture: found && examplePicture(found) };
}

/** The same sheet with yes beside the n-th question whether the working is wanted. */
function asked(nth: number): Cell[][] {
  const plain = cellsOf();
  const at = rowOf(plain, 'Show the working? yes, or empty', nth);
  return cellsOf((row, column, value) => (row === at && column === 2 ? 'yes' : value));
}

test('every example of a clearance has its picture, whichever of its rows is selected', async () => {
  const cells = cellsOf();
  const clearances = WORKED_EXAMPLES.filter(({ unit }) => unit === 'mm a side');
  expect(clearances.length).toBeGreaterThan(4);
  for (const { id, given } of clearances) {
    const [first] = given[0]!;
    // Below its number.
    const top = cells.findIndex(
      (_line, row) =>
        typeof cells[row - 1]?.[0] === 'number' &&
        given.every(([label, , unit], i) => cells[row + i]?.includes(`${label}, ${unit}`)),
    );
    expect([id, first, top > 0]).toEqual([id, first, true]);
    for (const row of [top - 1, top, top + given.length - 1, top + given.length]) {
      const shown = await pictureAt(cells, row);
      expect([id, shown.id, shown.picture?.pictures.length]).toEqual([id, id, 1]);
      // The answer stays a secret until it is asked for.
      expect([id, /a side/.test(shown.picture?.text ?? '')]).toEqual([id, false]);
    }
  }
});

test('once the working is asked for, the piece is shown with what is left', async () => {
  const n = WORKED_EXAMPLES.findIndex(({ id }) => id === 'OPENING');
  const cells = asked(n);
  const { picture } = await pictureAt(cells, rowOf(cells, 'opening width, mm'));
  // By hand: (775 - 330)/2 = 222.5 between the sides, (1981 - 1150)/2 = 415.5 under the head; shown no greater than it is.
  expect(picture?.text).toContain('222 a side to spare');
  expect(picture?.pictures[0]?.svg).toContain('class="piece"');
  expect(picture?.pictures[0]?.svg).toContain('class="mark"');
});

test('a piece that is stood up reaches as high as its diagonal', async () => {
  const n = WORKED_EXAMPLES.findIndex(({ id }) => id === 'UPEND');
  const cells = asked(n);
  const { picture } = await pictureAt(
    cells,
    rowOf(cells, 'ceiling, mm', cells.filter((l) => l.includes('ceiling, mm')).length > 1 ? 1 : 0),
  );
  // By hand: sqrt(1830^2 + 26^2) = 1830.18.
  expect(picture?.text ?? '').toMatch(/1830\.2|1831/);
});

test('what is no length is not drawn, and a row of no example has no picture', async () => {
  const cells = cellsOf((_r, _c, value) => (value === 775 ? 'wide' : value));
  expect((await pictureAt(cells, rowOf(cells, 'opening width, mm'))).picture).toBeUndefined();
  expect((await pictureAt([['Notes', null, null, null]], 0)).id).toBeUndefined();
});
