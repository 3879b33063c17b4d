import type { Browser, Page } from 'playwright-core';
import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import { eventually } from '../support/eventually';
import { sharedBrowser } from '../support/sharedBrowser';
import { builtFolder } from '../support/builtFolder';
import type { FakeBook } from '../support/fakeExcel';
import { exampleBook, routeRow } from '../support/paneBooks';
import { openPane, type Look, type OpenPane } from '../support/panePage';
import { axeFindings } from '../support/axeFindings';

/** The pane in a real browser, as it is built, beside a stand-in for Excel. */
const START = 180_000;

let browser: Browser;
let open: OpenPane | undefined;

jest.setTimeout(20_000);
beforeAll(async () => {
  builtFolder();
  browser = await sharedBrowser();
}, START);
afterAll(() => browser?.close());
afterEach(async () => {
  await open?.close();
  open = undefined;
});

async function pane(book: FakeBook = exampleBook(), look: Look = {}): Promise<Page> {
  open = await openPane(browser, book, look);
  return open.page;
}

/** Selects a row of the first sheet, counted as Excel does, and waits for the pane to show it. */
async function goTo(page: Page, row: number): Promise<void> {
  await page.evaluate((r) => {
    (window as never as { fakeSelect(s: object): void }).fakeSelect({
      sheet: 'Surveys',
      row: r,
      column: 3,
      rows: 1,
      columns: 1,
    });
  }, row - 1);
  await page.getByRole('status').getByText(`Row ${row}:`).waitFor();
}

const cellOf = (page: Page, sheet: string, row: number, column: number): Promise<unknown> =>
  page.evaluate(
    ([s, r, c]) =>
      (window as never as { fakeBook: FakeBook }).fakeBook.sheets.find(({ name }) => name === s)?.cells[
        r - 1
      ]?.[c] ?? null,
    [sheet, row, column] as const,
  );

const writes = (page: Page): Promise<unknown[]> =>
  page.evaluate(() => (window as never as { fakeWrites: unknown[] }).fakeWrites);

const type = (page: Page, row: number, column: number, value: unknown): Promise<void> =>
  page.evaluate(
    ([r, c, v]) => {
      const { fakeType } = window as never as { fakeType(s: string, r: number, c: number, v: unknown): void };
      fakeType('Surveys', r - 1, c, v);
    },
    [row, column, value] as const,
  );

/** Types parts of a piece's name and takes the first that fits. */
async function choose(page: Page, words: string): Promise<void> {
  await page.getByLabel('Piece to carry').fill(words);
  await page.keyboard.press('Enter');
}

const WIDTH = 3;
const NOTE = ROUTE_HEADINGS.indexOf('Note');

describe('a row of a route', () => {
  test('is shown with its measures as read, its verdict, its caution and its drawing', async () => {
    const page = await pane();
    await page.getByRole('heading', { name: 'Step 2: passage' }).waitFor();
    const text = await page.locator('body').innerText();
    // By hand: on edge in 900 mm, (900 - 25)/2; with a tape of 5, (895 - 30)/2 and (905 - 20)/2.
    expect(text).toMatch(/Worst case\s+432\.5/);
    expect(text).toMatch(/As measured\s+437\.5/);
    expect(text).toMatch(/Best case\s+442\.5/);
    await eventually(async () => expect(await page.locator('.verdict').innerText()).toBe('goes'));
    expect(text).toContain('"Goes" is about space alone');
    await eventually(async () =>
      expect(await page.getByRole('img', { name: 'step 2, passage, from the front' }).count()).toBe(1),
    );
    expect(text).toMatch(/Width\s+900\s+900 mm/);
  });

  test('follows the selection, and reads feet and inches', async () => {
    const page = await pane();
    await goTo(page, 8);
    await eventually(async () =>
      expect(await page.locator('body').innerText()).toMatch(/Width\s+2' 6"\s+762 mm/),
    );
  });

  test('says which measure is missing and what cannot be read', async () => {
    const page = await pane();
    await goTo(page, 6);
    await eventually(async () => expect(await page.locator('.problems').innerText()).toMatch(/Width out/));
    await eventually(async () => expect(await page.locator('.verdict').innerText()).toBe('not measured'));
    await goTo(page, 8);
    await eventually(async () => expect(await page.locator('.problems').innerText()).toMatch(/Height/));
    await eventually(async () => expect(await page.locator('tr.refused').innerText()).toMatch(/Height\s+78/));
  });

  test('a measure that is broken and mended is seen at once', async () => {
    const page = await pane();
    await type(page, 5, WIDTH, '2 parsecs');
    await page.locator('.problems').getByText(/Width/).waitFor();
    await type(page, 5, WIDTH, '2\' 6"');
    // By hand: (762 - 25)/2.
    await page.getByRole('cell', { name: '368.5' }).waitFor();
    await eventually(async () => expect(await page.locator('.problems').isVisible()).toBe(false));
  });

  test('says what to select where there is no route', async () => {
    const page = await pane();
    await page.evaluate(() => {
      (window as never as { fakeSelect(s: object): void }).fakeSelect({
        sheet: 'Stock',
        row: 1,
        column: 0,
        rows: 1,
        columns: 1,
      });
    });
    await page.getByRole('status').getByText('No header row with a Stage column').waitFor();
    await eventually(async () => expect(await page.locator('.verdict').isVisible()).toBe(false));
  });

  test('next row with a problem moves the selection there, and round again from the top', async () => {
    const page = await pane();
    const next = page.getByRole('button', { name: 'Next row with a problem' });
    await next.click();
    await page.getByRole('heading', { name: 'Step 3: corner' }).waitFor();
    await next.click();
    await page.getByRole('heading', { name: 'Step 5: door' }).waitFor();
    await next.click();
    await page.getByRole('heading', { name: 'Step 3: corner' }).waitFor();
    const selected = await page.evaluate(
      () => (window as never as { fakeBook: FakeBook }).fakeBook.selection.row,
    );
    expect(selected).toBe(5);
    await eventually(async () => expect(await writes(page)).toEqual([]));
  });
});

/** The example with a build of two pieces that a survey orders, and its orders as a table after the route. */
function orderedBook(): FakeBook {
  const book = exampleBook();
  book.sheets[1]!.cells.push(['8 ft', 'Cabinet side', 2400, 300, 60, 22, 2]);
  book.sheets.push({
    name: 'Orders',
    cells: [
      ['Survey', 'Build', 'Customer'],
      ['Mill Lane', '8 ft', 'A. N.'],
    ],
  });
  book.tables.push({ name: 'Ordered', sheet: 'Orders', row: 0, column: 0, rows: 2, columns: 3 });
  return book;
}

describe('the piece', () => {
  test('is the build that the survey orders, judged as a whole and named piece by piece', async () => {
    const page = await pane(orderedBook());
    // By hand, on edge in 900 mm: the section (900 - 25)/2, the side (900 - 60)/2; the side decides.
    await page.getByRole('cell', { name: '420.0' }).waitFor();
    await eventually(async () =>
      expect(await page.getByLabel('Piece to carry').inputValue()).toMatch(/^8 ft: whole build/),
    );
    const text = await page.locator('body').innerText();
    expect(text).toMatch(/Slate section\s+goes/);
    expect(text).toMatch(/Cabinet side\s+goes/);
    await page.getByRole('button', { name: 'Write this into' }).click();
    await page.getByRole('status').getByText('Written into').waitFor();
    await eventually(async () =>
      expect(await cellOf(page, 'Surveys', 5, NOTE)).toMatch(/^8 ft: goes, Cabinet side, /),
    );
  });

  test('is found by typing parts of its name, and stays for that survey', async () => {
    const page = await pane(orderedBook());
    const field = page.getByLabel('Piece to carry');
    await field.click();
    await eventually(async () => expect(await page.getByRole('option').count()).toBe(5));
    await field.fill('side ft 8');
    expect(await page.getByRole('option').allInnerTexts()).toEqual([
      expect.stringMatching(/^8 ft: Cabinet side, 2400 x 300 x 60/),
    ]);
    await page.keyboard.press('Escape');
    await eventually(async () => expect(await field.inputValue()).toMatch(/^8 ft: whole build/));
    await choose(page, '7 ft slate');
    await page.getByRole('cell', { name: '437.5' }).waitFor();
    await goTo(page, 7);
    await eventually(async () => expect(await field.inputValue()).toMatch(/^7 ft: Slate/));
    await field.fill('nothing of the kind');
    await eventually(async () =>
      expect(await page.getByRole('option').allInnerTexts()).toEqual(['None fits.']),
    );
  });

  test('without an order it is the last one chosen', async () => {
    const page = await pane();
    await choose(page, 'section');
    await goTo(page, 4);
    await eventually(async () =>
      expect(await page.getByLabel('Piece to carry').inputValue()).toMatch(/^8 ft: Slate section/),
    );
  });
});

test('several rows selected are all checked, with a line each', async () => {
  const page = await pane();
  await page.evaluate(() => {
    (window as never as { fakeSelect(s: object): void }).fakeSelect({
      sheet: 'Surveys',
      row: 3,
      column: 0,
      rows: 6,
      columns: 4,
    });
  });
  const list = page.locator('.rows-selected li');
  await list.nth(5).waitFor();
  const lines = await list.allInnerTexts();
  expect(lines).toHaveLength(6);
  expect(lines[0]).toMatch(/^Row 4 Step 1, door: goes$/);
  expect(lines[2]).toMatch(/^Row 6 Step 3, corner: not measured; 1 problem: .*Width out/);
  expect(lines[4]).toMatch(/^Row 8 Step 5, door: not measured; \d problems?: .*Height/);
  expect(lines[5]).toMatch(/^Row 9 Step 6, room: goes$/);
});

test('a selected row of another survey is held against what that one orders, and says so', async () => {
  const book = exampleBook();
  // The slate's breadth of 930 is more than the diagonal of 200 x 900, 922; the section of 800 has 50 over and under.
  book.sheets[0]!.cells.push(
    routeRow({ Survey: 'Weir House', Step: 1, Stage: 'door', Width: 200, Height: 900 }),
  );
  book.tables[0]!.rows++;
  book.sheets.push({
    name: 'Orders',
    cells: [
      ['Survey', 'Build', 'Customer'],
      ['Mill Lane', '7 ft', 'A. N.'],
      ['Weir House', '8 ft', 'B. N.'],
    ],
  });
  book.tables.push({ name: 'Ordered', sheet: 'Orders', row: 0, column: 0, rows: 3, columns: 3 });
  const page = await pane(book);
  await page.evaluate(() => {
    (window as never as { fakeSelect(s: object): void }).fakeSelect({
      sheet: 'Surveys',
      row: 8,
      column: 0,
      rows: 2,
      columns: 4,
    });
  });
  const list = page.locator('.rows-selected li');
  await list.nth(1).waitFor();
  const [own, other] = await list.allInnerTexts();
  expect(own).toBe('Row 9 Step 6, room: goes');
  expect(other).toMatch(/^Row 10 survey Weir House with Slate section, Step 1, door: goes/);
});

test.each([4, 5, 7, 9])(
  'at 320 x 700 the verdict, what decides and the drawing of row %d are seen without scrolling',
  async (row) => {
    const page = await pane(orderedBook());
    await goTo(page, row);
    const bottoms = await page.evaluate(() =>
      ['.verdict', '.verdict + p', '.stage-drawing'].map((selector) => {
        const { top, bottom } = document.querySelector(selector)!.getBoundingClientRect();
        return bottom > top ? bottom : Infinity;
      }),
    );
    expect(Math.max(...bottoms)).toBeLessThanOrEqual(700);
  },
);

describe('writing', () => {
  test('goes only into an empty cell, the one that the button names', async () => {
    const page = await pane();
    await page.getByRole('button', { name: 'Write this into Surveys!AD5' }).click();
    await page.getByRole('status').getByText('Written into Surveys!AD5').waitFor();
    await eventually(async () => expect(await cellOf(page, 'Surveys', 5, NOTE)).toMatch(/^Slate: goes/));
    await eventually(async () =>
      expect(await writes(page)).toEqual([{ sheet: 'Surveys', row: 4, column: NOTE, rows: 1, columns: 1 }]),
    );
  });

  test('never over something without a second yes', async () => {
    const page = await pane();
    await goTo(page, 6);
    await page.getByRole('button', { name: 'Write this into Surveys!AD6' }).click();
    await page.getByText('It holds:').waitFor();
    await eventually(async () => expect(await page.locator('blockquote').last().innerText()).toBe('mirror'));
    await eventually(async () => expect(await writes(page)).toEqual([]));
    await page.getByRole('button', { name: 'Leave it as it is' }).click();
    await eventually(async () => expect(await cellOf(page, 'Surveys', 6, NOTE)).toBe('mirror'));
    await eventually(async () => expect(await writes(page)).toEqual([]));

    await page.getByRole('button', { name: 'Write this into Surveys!AD6' }).click();
    await page.getByRole('button', { name: 'Replace what Surveys!AD6 holds' }).click();
    await page.getByRole('status').getByText('Written into Surveys!AD6').waitFor();
    await eventually(async () => expect(await cellOf(page, 'Surveys', 6, NOTE)).toMatch(/Width out/));
  });

  test('a yes does not hold for what has changed since', async () => {
    const page = await pane();
    await goTo(page, 6);
    await page.getByRole('button', { name: 'Write this into Surveys!AD6' }).click();
    const replace = page.getByRole('button', { name: 'Replace what Surveys!AD6 holds' });
    await replace.waitFor();
    // Straight into the book, as if another person's change had not reached the pane yet.
    await page.evaluate((note) => {
      const { sheets } = (window as never as { fakeBook: FakeBook }).fakeBook;
      sheets[0]!.cells[5]![note] = 'mind the mirror';
    }, NOTE);
    await replace.click();
    await page.getByRole('status').getByText('Nothing was written').waitFor();
    await eventually(async () => expect(await cellOf(page, 'Surveys', 6, NOTE)).toBe('mind the mirror'));
  });

  test('starter sheets take free names and touch nothing that is there', async () => {
    const book = exampleBook();
    book.sheets.push({ name: 'route', cells: [['mine']] });
    const page = await pane(book);
    await page.getByText('Route 2, Pieces, Quote, Worked examples, Exercises, Survey form').waitFor();
    await page.getByRole('button', { name: 'Add starter sheets' }).click();
    await page.getByRole('status').getByText('Added Route 2').waitFor();
    const after = await page.evaluate(() => (window as never as { fakeBook: FakeBook }).fakeBook);
    expect(after.sheets.map(({ name }) => name)).toEqual([
      'Surveys',
      'Stock',
      'route',
      'Route 2',
      'Pieces',
      'Quote',
      'Worked examples',
      'Exercises',
      'Survey form',
    ]);
    expect(after.sheets.slice(0, 3)).toEqual(book.sheets);
    expect(after.tables.map(({ name }) => name)).toEqual(['OurRoute', 'CarryRoute', 'CarryPieces']);
    const titles = await page.evaluate(() => (window as never as { fakeTitles: unknown }).fakeTitles);
    expect(titles).toEqual({ 'Route 2': '$3:$3', Pieces: '$3:$3' });
    // What would be added now has the next free names.
    await page
      .getByText('Route 3, Pieces 2, Quote 2, Worked examples 2, Exercises 2, Survey form 2')
      .waitFor();
    // The pieces of the new table are offered beside none of the plain range's, which a table comes before.
    await page.getByLabel('Piece to carry').click();
    await page.getByRole('option', { name: /^7 ft, one slate \(example\): Slate/ }).waitFor();
  });
});

describe('text from cells', () => {
  test('stays text', async () => {
    const book = exampleBook();
    const evil = '<img src=x onerror="document.title=1"><script>document.title=2</script>';
    book.sheets[0]!.cells[4] = routeRow({ Survey: evil, Step: 2, Stage: evil, Width: evil, Height: evil });
    book.sheets[1]!.cells[1]![1] = evil;
    const page = await pane(book);
    await page.getByRole('heading', { name: 'Step 2' }).waitFor();
    await goTo(page, 4);
    await eventually(async () =>
      expect(await page.locator('.pane img, .pane script, .pane svg script').count()).toBe(0),
    );
    await eventually(async () => expect(await page.title()).toBe('Carry Route Functions'));
    await eventually(async () =>
      expect(await page.locator('.stage-drawing').first().innerHTML()).toContain('&lt;img'),
    );
  });
});

describe('everybody', () => {
  const looks: readonly [string, Look][] = [
    ['light', { colorScheme: 'light' }],
    ['dark', { colorScheme: 'dark' }],
    ['forced colours', { colorScheme: 'dark', forcedColors: 'active' }],
  ];

  test.each(looks)('axe finds nothing in %s', async (_, look) => {
    const page = await pane(exampleBook(), look);
    for (const row of [5, 6]) {
      await goTo(page, row);
      expect(await axeFindings(page)).toEqual([]);
    }
  });

  test('nothing scrolls sideways at 320 px, whatever the cells hold, and the host keeps its corner', async () => {
    const book = exampleBook();
    const long = 'Averylongwordwithoutanyspaces'.repeat(8);
    book.sheets[0]!.cells[4] = routeRow({ Survey: long, Step: 2, Stage: 'door', Width: long, Height: 2000 });
    book.sheets[1]!.cells[1]![1] = long;
    const page = await pane(book);
    await page.getByRole('heading', { name: 'Step 2: door' }).waitFor();
    for (const row of [4, 5, 7, 9]) {
      await goTo(page, row);
      const { scrolls, visible, corner } = await page.evaluate(() => {
        const root = document.documentElement;
        const covered: string[] = [];
        const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        for (let node = walker.nextNode(); node; node = walker.nextNode()) {
          if (!node.textContent?.trim()) continue;
          const range = document.createRange();
          range.selectNodeContents(node);
          for (const box of range.getClientRects()) {
            if (box.right > root.clientWidth - 34 && box.top < 32) covered.push(node.textContent);
          }
        }
        return { scrolls: root.scrollWidth, visible: root.clientWidth, corner: covered };
      });
      expect(scrolls).toBeLessThanOrEqual(visible);
      expect(corner).toEqual([]);
    }
  });

  test('the page asks this machine only, and its policy has nothing to complain of', async () => {
    const page = await pane();
    await goTo(page, 6);
    const { asked, complaints, served } = open!;
    expect(asked.length).toBeGreaterThan(3);
    expect(asked.filter((url) => !url.startsWith(served.origin))).toEqual([]);
    expect(complaints).toEqual([]);
    const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
    expect(policy).not.toMatch(/unsafe/);
    // Nothing was let through only because it was never tried.
    expect(
      await page.evaluate(() => {
        const script = document.createElement('script');
        script.textContent = 'window.ranInline = true';
        document.body.append(script);
        return (window as never as { ranInline?: boolean }).ranInline === true;
      }),
    ).toBe(false);
  });

  test('the keyboard alone goes from the row to a written note', async () => {
    const page = await pane();
    const focused = (): Promise<string> =>
      page.evaluate(() => {
        const at = document.activeElement as HTMLElement | null;
        // The page itself, which has the focus between its end and its beginning, says all of its words.
        if (!(at instanceof HTMLElement) || at === document.body) return '';
        return at instanceof HTMLInputElement ? (at.labels?.[0]?.textContent ?? '') : at.innerText;
      });
    const tabTo = async (name: RegExp): Promise<void> => {
      for (let i = 0; i < 40; i++) {
        await page.keyboard.press('Tab');
        if (name.test(await focused())) return;
      }
      throw new Error(`no way by keyboard to ${name}`);
    };
    await tabTo(/Piece to carry/);
    await page.keyboard.type('typed');
    await page.keyboard.press('Enter');
    await tabTo(/^Length/);
    await page.keyboard.type('100 cm');
    await tabTo(/^Breadth/);
    await page.keyboard.type('400');
    await tabTo(/^Thickness/);
    await page.keyboard.type('30');
    await page.keyboard.press('Tab');
    // By hand: on edge in a passage of 900 mm, (900 - 30)/2.
    await page.getByRole('cell', { name: '435.0' }).waitFor();
    await tabTo(/The drawing in words/);
    await page.keyboard.press('Enter');
    await page.locator('details p').getByText('435 a side to spare').waitFor();
    await tabTo(/Write this into/);
    await page.keyboard.press('Enter');
    await page.getByRole('status').getByText('Written into').waitFor();
    await eventually(async () => expect(await cellOf(page, 'Surveys', 5, NOTE)).toMatch(/^Piece: goes/));
    // Writing again asks, and the safe answer has the focus.
    await eventually(async () => expect(await focused()).toMatch(/Write this into/));
    await page.keyboard.press('Enter');
    await page.getByText('It holds:').waitFor();
    await eventually(async () => expect(await focused()).toBe('Leave it as it is'));
  }, 60_000);

  test('what is typed wrongly is said with what is allowed', async () => {
    const page = await pane();
    await choose(page, 'typed');
    await page.getByLabel('Length, mm').fill('72');
    await page.getByLabel('Breadth, mm').fill('36');
    await page.getByLabel('Thickness, mm').fill('1');
    await page.getByLabel('Thickness, mm').blur();
    const problem = page.locator('.problem');
    await problem.getByText('allowed is 300 to 6000 mm').waitFor();
    await page.getByLabel('Length, mm').fill('1,830');
    await page.getByLabel('Length, mm').blur();
    await problem.getByText('length cannot be read from "1,830"').waitFor();
    await eventually(async () => expect(await page.locator('.verdict').count()).toBe(0));
  });
});
