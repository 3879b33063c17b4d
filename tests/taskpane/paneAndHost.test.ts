import type { Browser, Page } from 'playwright-core';
import { builtFolder } from '../support/builtFolder';
import { axeFindings } from '../support/axeFindings';
import type { FakeBook } from '../support/fakeExcel';
import { exampleBook, routeRow } from '../support/paneBooks';
import { openPane, type OpenPane } from '../support/panePage';
import { eventually } from '../support/eventually';
import { sharedBrowser } from '../support/sharedBrowser';
import { VERDICT_COLUMNS } from '../../src/worksheet/verdictTable';

/*
 * How the pane gets on with its host: out of sight, while a cell is edited, on protected sheets, with filters, on
 * results of functions, with long work, with formulas that show #NAME?. What the host does is after its documents:
 * Excel.RunOptions, Workbook.getSelectedRange, Range.getRowProperties, WorksheetProtection, Office.addin.
 */
let browser: Browser;
let open: OpenPane | undefined;

jest.setTimeout(30_000);
beforeAll(async () => {
  builtFolder();
  browser = await sharedBrowser();
}, 180_000);
afterAll(() => browser?.close());
afterEach(async () => {
  await open?.close();
  open = undefined;
});

async function pane(book: FakeBook = exampleBook()): Promise<Page> {
  open = await openPane(browser, book);
  return open.page;
}

/** Calls what the stand-in for Excel, or a test, has left in the page. */
const inPage = <T>(page: Page, name: string, ...given: unknown[]): Promise<T> =>
  page.evaluate(
    ([called, values]) => (window as never as Record<string, (...v: unknown[]) => T>)[called]!(...values),
    [name, given] as const,
  );
const valueIn = <T>(page: Page, name: string): Promise<T> =>
  page.evaluate((asked) => (window as never as Record<string, T>)[asked]!, name);

const select = (page: Page, sheet: string, row: number, rows = 1, column = 0): Promise<void> =>
  inPage(page, 'fakeSelect', { sheet, row: row - 1, column, rows, columns: 1 });

const says = (page: Page, text: string | RegExp) => page.getByRole('status').getByText(text).waitFor();

describe('out of sight', () => {
  test('nothing is read or judged while the pane is closed, and all that was missed when it opens', async () => {
    const page = await pane();
    await inPage(page, 'fakeVisibility', 'Hidden');
    const before = await valueIn<number>(page, 'fakeRuns');
    await select(page, 'Surveys', 8);
    await inPage(page, 'fakeType', 'Surveys', 7, 3, 800);
    await page.waitForTimeout(300);
    await eventually(async () => expect(await valueIn<number>(page, 'fakeRuns')).toBe(before));
    await inPage(page, 'fakeVisibility', 'Taskpane');
    await says(page, 'Row 8:');
    await eventually(async () =>
      expect(await page.locator('body').innerText()).toMatch(/Width\s+800\s+800 mm/),
    );
  });

  test('who points at it sees it, whatever the host has said', async () => {
    const page = await pane();
    await inPage(page, 'fakeVisibility', 'Hidden');
    await select(page, 'Surveys', 8);
    await eventually(async () => expect(await page.getByRole('status').innerText()).toMatch(/^Row 5:/));
    await page.locator('h1').click();
    await says(page, 'Row 8:');
  });
});

test('while a cell is edited the pane waits, and says nothing of an error', async () => {
  const page = await pane();
  await says(page, 'Row 5:');
  await inPage(page, 'fakeEdit', true);
  await select(page, 'Surveys', 8);
  await page.waitForTimeout(300);
  await eventually(async () => expect(await page.getByRole('status').innerText()).toMatch(/^Row 5:/));
  await inPage(page, 'fakeEdit', false);
  await says(page, 'Row 8:');
  expect(open!.complaints).toEqual([]);
});

test('a long sheet is read in parts: no answer of the host carries more than 2,000 rows', async () => {
  const book = exampleBook();
  const stock = book.sheets[1]!;
  stock.cells.push(...Array.from({ length: 9000 }, (_, i) => [`build ${i}`, 'Slate', 1830, 930, 25, 119, 1]));
  const page = await pane(book);
  await page.getByText('Add starter sheets').waitFor();
  await page.getByRole('button', { name: 'Enter the formulas again' }).click();
  await says(page, 'No formula here calls');
  const most = await valueIn<number>(page, 'fakeMostRows');
  expect(most).toBeLessThanOrEqual(2000);
  expect(most).toBeGreaterThan(1000);
});

describe('selections', () => {
  test('several areas are said to be that', async () => {
    const page = await pane({ ...exampleBook(), areas: 2 });
    await says(page, 'Several areas are selected');
    expect(open!.complaints).toEqual([]);
  });

  test('rows that a filter hides are left out of the lines and of the way to the next problem', async () => {
    // Row 6 has a problem and is hidden; row 8 has one and is not.
    const page = await pane({ ...exampleBook(), hiddenRows: [5] });
    await inPage(page, 'fakeSelect', { sheet: 'Surveys', row: 3, column: 0, rows: 6, columns: 1 });
    const lines = page.locator('.rows-selected li');
    await lines.nth(4).waitFor();
    expect((await lines.allInnerTexts()).map((line) => /^Row \d+/.exec(line)?.[0])).toEqual([
      'Row 4',
      'Row 5',
      'Row 7',
      'Row 8',
      'Row 9',
    ]);
    await page.getByRole('button', { name: 'Next row with a problem' }).click();
    await says(page, 'Row 8:');
    await page.getByRole('button', { name: 'Next row with a problem' }).click();
    await says(page, 'No other row here has a problem. Hidden rows with a problem: 1');
  });
});

describe('protection', () => {
  test('a locked cell is named, nothing is written, and the pane goes on', async () => {
    const page = await pane({ ...exampleBook(), protectedSheets: ['Surveys'] });
    await page.getByRole('button', { name: 'Write this into Surveys!AD5' }).click();
    await says(page, 'Surveys!AD5 is locked and its sheet protected. Nothing was written');
    await eventually(async () => expect(await valueIn<unknown[]>(page, 'fakeWrites')).toEqual([]));
    await select(page, 'Surveys', 8);
    await says(page, 'Row 8:');
  });

  test('a workbook whose structure is protected takes no sheets, and the pane says so', async () => {
    const page = await pane({ ...exampleBook(), protectedStructure: true });
    await page.getByRole('button', { name: 'Add starter sheets' }).click();
    await says(page, 'its structure is protected');
    const { sheets } = await valueIn<FakeBook>(page, 'fakeBook');
    expect(sheets).toHaveLength(exampleBook().sheets.length);
  });
});

const line = (values: Readonly<Record<string, unknown>>): never[] =>
  VERDICT_COLUMNS.map((column) => (values[column] ?? '') as never);

/** The example with results below a formula, and a second survey with the same steps. */
function withResults(headers: readonly string[], ...rows: never[][]): FakeBook {
  const book = exampleBook();
  const other = routeRow({
    Survey: 'Quay 4',
    Step: 3,
    Stage: 'corner',
    Width: 950,
    'Width out': 950,
    Height: 2300,
    Turn: 90,
  });
  book.sheets[0]!.cells.push(other);
  book.tables[0] = { ...book.tables[0]!, rows: book.tables[0]!.rows + 1 };
  book.sheets.push({ name: 'Verdicts', cells: [[...headers], ...rows] });
  return { ...book, selection: { sheet: 'Verdicts', row: 1, column: 1, rows: 1, columns: 1 } };
}

describe('a row of results', () => {
  test('of SURVEYS leads to that step of that survey, with the build it speaks of', async () => {
    const page = await pane(
      withResults(
        ['Survey', ...VERDICT_COLUMNS],
        [
          'Quay 4' as never,
          ...line({ Build: '7 ft', Verdict: 'goes', Step: 3, Stage: 'corner', Reason: 'x' }),
        ],
      ),
    );
    await says(page, 'This is a row of results.');
    await page.getByText('It speaks of step 3 of Quay 4, Surveys!A10:AD10.').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Go to that step' }).click();
    await says(page, 'Row 10:');
    await eventually(async () =>
      expect(await page.getByLabel('Piece to carry').inputValue()).toMatch(/^7 ft/),
    );
    await eventually(async () =>
      expect(await page.getByRole('button', { name: 'Go to that step' }).isVisible()).toBe(false),
    );
  });

  test("of a month's list leads there too, and is no row of a route that lacks its measures", async () => {
    const headers = ['Survey', 'Verdict', 'Advise', 'At step', 'Stage', 'Build asked for', 'Reason'];
    const row = ['Quay 4', 'goes', 'as asked', 3, 'corner', '7 ft', 'x'];
    const page = await pane(withResults(headers, row as never[]));
    await says(page, 'This is a row of results.');
    await page.getByText('It speaks of step 3 of Quay 4, Surveys!A10:AD10.').waitFor();
    await page.getByRole('button', { name: 'Go to that step' }).click();
    await says(page, 'Row 10:');
    await eventually(async () =>
      expect(await page.getByLabel('Piece to carry').inputValue()).toMatch(/^7 ft/),
    );
  });

  test('of ADVISE, which names no survey, asks which of several is meant', async () => {
    const page = await pane(
      withResults(VERDICT_COLUMNS, line({ Build: '7 ft', Step: 3, Stage: 'corner', Reason: 'x' })),
    );
    await says(page, '2 rows of routes are step 3, corner: select the one you mean.');
    await eventually(async () =>
      expect(await page.getByRole('button', { name: 'Go to that step' }).isVisible()).toBe(false),
    );
  });

  test('of STAGES leads to the only step that it can mean; its last row is the whole route', async () => {
    const headers = ['Step', 'Stage', 'Verdict', 'Clearance', 'Pose', 'Reason'];
    const book = withResults(
      headers,
      [4, 'flight', 'goes', 100, 'on edge', 'x'] as never[],
      ['Route', '', 'goes', 100, '', 'x'] as never[],
    );
    const page = await pane(book);
    await page.getByText('It speaks of step 4 of Mill Lane').waitFor();
    await select(page, 'Verdicts', 3);
    await says(page, 'on the whole route');
    await select(page, 'Verdicts', 1);
    await says(page, 'This is the header row.');
    await eventually(async () =>
      expect(await page.getByRole('button', { name: 'Go to that step' }).isVisible()).toBe(false),
    );
  });

  test('of a step that no route has says so', async () => {
    const page = await pane(withResults(VERDICT_COLUMNS, line({ Step: 9, Stage: 'door', Reason: 'x' })));
    await says(page, 'No route here has step 9, door.');
    await eventually(async () =>
      expect(await page.getByRole('button', { name: 'Go to that step' }).isVisible()).toBe(false),
    );
  });
});

describe('entering formulas again', () => {
  const book = (): FakeBook => {
    const made = exampleBook();
    made.sheets.push({
      name: 'Sums',
      cells: [
        ['=CARRY.PITCH(190,250)', 190],
        ['=_xldudf_CARRY_PITCH(190,250)', '=B1*2'],
        [
          '=[2]!_xldudf_CARRY_PITCH(190,250)+Other.xla!_xldudf_CARRY_TOMM("CARRY.TOMM(1)")',
          '=OTHER.PITCH(1)',
        ],
        ['CARRY.PITCH(190,250)', '=_xldudf_CARRY_NOTHING(1)'],
      ],
    });
    return made;
  };

  test('counts them, asks, and enters each as it stands, without what was left before its name', async () => {
    const page = await pane(book());
    await page.getByRole('button', { name: 'Enter the formulas again' }).click();
    await page
      .getByText('3 formulas with functions of this add-in on Sums. 2 of them have a prefix')
      .waitFor();
    await eventually(async () =>
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Leave them'),
    );
    expect(await axeFindings(page)).toEqual([]);
    await eventually(async () => expect(await valueIn<unknown[]>(page, 'fakeWrites')).toEqual([]));
    await page.getByRole('button', { name: 'Enter 3 formulas again' }).click();
    await says(page, '3 formulas were entered again.');
    const { sheets } = await valueIn<FakeBook>(page, 'fakeBook');
    expect(sheets.at(-1)!.cells).toEqual([
      ['=CARRY.PITCH(190,250)', 190],
      ['=CARRY.PITCH(190,250)', '=B1*2'],
      ['=CARRY.PITCH(190,250)+CARRY.TOMM("CARRY.TOMM(1)")', '=OTHER.PITCH(1)'],
      ['CARRY.PITCH(190,250)', '=_xldudf_CARRY_NOTHING(1)'],
    ]);
    expect(sheets.slice(0, -1)).toEqual(book().sheets.slice(0, -1));
    expect(await valueIn<unknown[]>(page, 'fakeWrites')).toEqual([
      { sheet: 'Sums', row: 0, column: 0, rows: 3, columns: 1 },
    ]);
  });

  test('a no enters nothing; what has changed since stays; a protected sheet is named', async () => {
    const page = await pane(book());
    const look = page.getByRole('button', { name: 'Enter the formulas again' });
    await look.click();
    await page.getByRole('button', { name: 'Leave them' }).click();
    await says(page, 'Nothing was entered.');
    await look.click();
    await page.getByRole('button', { name: 'Enter 3 formulas again' }).waitFor();
    await page.evaluate(() => {
      (window as never as { fakeBook: FakeBook }).fakeBook.sheets.at(-1)!.cells[1]![0] = 38.4;
    });
    await page.getByRole('button', { name: 'Enter 3 formulas again' }).click();
    await says(page, '0 formulas were entered again. 3 had changed meanwhile and stay as they are.');
    await page.evaluate(() => {
      (window as never as { fakeBook: FakeBook }).fakeBook.protectedSheets = ['Sums'];
    });
    await look.click();
    await page.getByRole('button', { name: 'Enter 2 formulas again' }).click();
    await says(page, 'Nothing was entered where sheets are protected: Sums.');
    await eventually(async () => expect(await valueIn<unknown[]>(page, 'fakeWrites')).toEqual([]));
  });
});

/** Calls a function as the host does, with the cell that its formula stands in; what comes of it is not waited for. */
const call = (page: Page, id: string, address: string, ...values: unknown[][][]): Promise<void> =>
  page.evaluate(
    ([name, cell, given]) => {
      const { fakeFunctions } = window as never as {
        fakeFunctions: Map<string, (...v: unknown[]) => unknown>;
      };
      const answer = Promise.resolve().then(() => fakeFunctions.get(name)!(...given, { address: cell }));
      void answer.catch(() => {});
    },
    [id, address, values] as const,
  );

describe('calls of the functions', () => {
  test('the last refusal of the selected cell is given in full, and goes when the cell is mended', async () => {
    const page = await pane();
    await call(page, 'PITCH', 'Stock!I2', [[7]], [[250]]);
    await select(page, 'Stock', 2, 1, 8);
    const refusal = page.locator('.refusal');
    await refusal.getByText('#VALUE! from the formula in Stock!I2: rise is 7: allowed is').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await call(page, 'PITCH', 'Stock!I2', [[190]], [[250]]);
    await refusal.waitFor({ state: 'hidden' });
    // One of a table that the formula has spilled.
    await call(page, 'TOMM', "'Stock'!I2", [['76 cm'], ['76']]);
    await select(page, 'Stock', 3, 1, 8);
    await refusal.getByText('from the formula in').waitFor();
  });

  test('long work is shown with how far it is, and stopped by its button', async () => {
    const page = await pane();
    const lengths = Array.from({ length: 3000 }, (_, i) => [1400 + i / 10]);
    const one = (value: number | null): unknown[][] => [[value]];
    await call(
      page,
      'HALFLANDING',
      'Stock!I2',
      ...[900, 100, 950, 2100, 190, 250].map(one),
      lengths,
      ...[700, 25, null, null].map(one),
    );
    const part = page.getByRole('region', { name: 'Being worked out' });
    await part.getByText(/1 formula to go, 0 done\. The longest has \d+ of 3000 parts done\./).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await part.getByRole('button', { name: 'Stop' }).click();
    await part.waitFor({ state: 'hidden' });
    await select(page, 'Stock', 2, 1, 8);
    await page.locator('.refusal').getByText('stopped in the pane before it was computed').waitFor();
  });
});
