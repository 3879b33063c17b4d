import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { startSheetServer } from '../../src/commands/sheetServer';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import { runBundle } from '../../src/sheetHost/loadBundle';
import { createWorkbook } from '../../src/sheetHost/workbookWriter';
import { eventually } from '../support/eventually';
import { sharedBrowser } from '../support/sharedBrowser';
import { builtFolder } from '../support/builtFolder';
import { openSheetPage, type OpenSheetPage } from '../support/sheetPage';
import { axeFindings } from '../support/axeFindings';

/** The sheet page in a real browser, as it is built and as `npm start` serves it. */

let browser: Browser;
let book: Uint8Array;
let open: OpenSheetPage | undefined;

jest.setTimeout(30_000);
beforeAll(async () => {
  builtFolder();
  browser = await sharedBrowser();
  book = await invented();
}, 180_000);
afterAll(() => browser?.close());
afterEach(async () => {
  await open?.close();
  open = undefined;
});

/** An invented house: a header row, two steps, and a stock of one slate. */
function invented(): Promise<Uint8Array> {
  const made = createWorkbook();
  made.sheet('Route').rows('A1', [
    ['Step', 'Stage', 'Width', 'Height', 'Length', 'Note', 'Clearance'],
    [1, 'door', 790, 2030, null, null, { formula: 'CARRY.OPENING(C2,D2,1830,930,25)' }],
    [2, 'passage', 900, 2300, 3000, null, { formula: 'CARRY.OPENING(C3,D3,1830,930,25)' }],
  ]);
  made.sheet('Stock').rows('A1', [
    ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
    ['7 ft', 'Slate', 1830, 930, 25, 119, 1],
  ]);
  return writeWorkbook(made);
}

async function sheetPage(workbook = book, look: Parameters<typeof openSheetPage>[2] = {}): Promise<Page> {
  open = await openSheetPage(browser, workbook, look);
  return open.page;
}

async function goTo(page: Page, address: string): Promise<void> {
  await page.getByLabel('Cell', { exact: true }).fill(address);
  await page.getByLabel('Cell', { exact: true }).press('Enter');
}

const shown = (page: Page, row: number, column: number): Promise<string> =>
  page.locator(`#cell-${row - 1}-${column - 1}`).innerText();

async function enter(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address);
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

test('says that it is a try-out and not Excel, and shows what the built add-in computes', async () => {
  const page = await sheetPage();
  await eventually(async () =>
    expect(await page.locator('header').innerText()).toMatch(/try-out and test bench[^.]*not Excel/i),
  );
  // By hand: on edge through 790 mm, (790 - 25)/2; the height leaves more.
  await eventually(async () => expect(await shown(page, 2, 7)).toBe('382.5'));
});

test('a route row that is typed by the keyboard alone gives its clearance and its verdict', async () => {
  const page = await sheetPage();
  // The cells have the keyboard from the start.
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  for (const text of ['3', 'door', '76 cm', '6\' 6"']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.type('=OPEN');
  await page.locator('.message').getByText('Tab takes it').waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.type('C4,');
  // The second argument is the one that is typed, in the words of functions.json.
  await eventually(async () =>
    expect(await page.locator('.message mark').innerText()).toBe('opening_height'),
  );
  await page.keyboard.type('D4,1830,930,25)');
  await page.keyboard.press('Enter');
  // By hand: (760 - 25)/2.
  await eventually(async () => expect(await shown(page, 4, 7)).toBe('367.5'));
  await page.keyboard.press('ArrowUp');
  await page.locator('#pane').getByRole('heading', { name: 'Step 3: door' }).waitFor();
  await page.locator('#pane .verdict').getByText('goes').waitFor();
  // On to the pane and back to the cells.
  await page.keyboard.press('F6');
  expect(await page.evaluate(() => document.querySelector('#pane')!.contains(document.activeElement))).toBe(
    true,
  );
  await page.keyboard.press('Shift+F6');
  await eventually(async () =>
    expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('grid'),
  );
  await page.keyboard.press('Delete');
  await page.keyboard.press('Control+z');
  await eventually(async () => expect(await shown(page, 4, 7)).toBe('367.5'));
});

test('a broken measure shows its error with the message, in the cell line and in the pane', async () => {
  const page = await sheetPage();
  await enter(page, 'C2', '79 parsecs');
  await goTo(page, 'G2');
  await eventually(async () => expect(await shown(page, 2, 7)).toMatch(/^#VALUE!/));
  await page
    .locator('.message .fault')
    .getByText(/opening_width.*79 parsecs/)
    .waitFor();
  await page.locator('#pane .problems').getByText(/Width/).first().waitFor();
});

test('a result spills, its cells say from where, and a cell in its way is told', async () => {
  const page = await sheetPage();
  await enter(page, 'I2', '=CARRY.OPENING(C2:C3,D2:D3,1830,930,25)');
  await eventually(async () =>
    expect([await shown(page, 2, 9), await shown(page, 3, 9)]).toEqual(['382.5', '437.5']),
  );
  await goTo(page, 'I3');
  await eventually(async () =>
    expect(await page.locator('.message').innerText()).toContain('Filled from I2'),
  );
  await page.keyboard.type('x');
  await page.keyboard.press('Enter');
  await goTo(page, 'I2');
  await page.locator('.message .fault').getByText('#SPILL!').waitFor();
});

test('a text that is spilled into a cell is told whole, however short, since its column may cut it', async () => {
  const page = await sheetPage();
  await enter(page, 'I2', '=CARRY.STAGES(A1:E3,1830,930,25)');
  await eventually(async () => expect(await shown(page, 3, 11)).toBe('goes'));
  await goTo(page, 'K3');
  await eventually(async () => expect((await page.locator('.message p').allInnerTexts())[0]).toBe('goes'));
});

test('a formula that cannot be read is refused with the reason, and what was typed stays', async () => {
  const page = await sheetPage();
  await enter(page, 'I2', '=CARRY.OPENING(790)');
  await eventually(async () =>
    expect(await page.getByRole('alert').innerText()).toMatch(/Not entered: too few arguments/),
  );
  await page.keyboard.press('Escape');
  await eventually(async () => expect(await shown(page, 2, 9)).toBe(''));
});

test('a click while a formula is typed puts in the address, a drag the block, and Escape always frees', async () => {
  const page = await sheetPage();
  await goTo(page, 'I2');
  await page.keyboard.type('=CARRY.OPENING(');
  await page.locator('#cell-1-2').click();
  await page.keyboard.type(',');
  await page.locator('#cell-1-3').click();
  await page.keyboard.type(',1830,930,25)');
  await page.keyboard.press('Enter');
  await eventually(async () => expect(await shown(page, 2, 9)).toBe('382.5'));
  await goTo(page, 'I5');
  await page.keyboard.type('=SUM(');
  await page.locator('#cell-1-2').hover();
  await page.mouse.down();
  await page.locator('#cell-2-2').hover();
  await page.mouse.up();
  await page.keyboard.type(')');
  await page.keyboard.press('Enter');
  // By hand: 790 + 900.
  await eventually(async () => expect(await shown(page, 5, 9)).toBe('1690'));
  await goTo(page, 'I6');
  await page.keyboard.type('=SUM(1');
  await page.keyboard.press('Enter');
  await eventually(async () =>
    expect(await page.getByRole('alert').innerText()).toMatch(/1 closing bracket is missing/),
  );
  await page.locator('#cell-8-2').click();
  await page.keyboard.press('Escape');
  await eventually(async () => expect(await page.getByRole('alert').isVisible()).toBe(false));
  await goTo(page, 'A1');
  await eventually(async () => expect(await page.locator('.message').innerText()).not.toContain('SUM'));
});

test('the mouse drawn over cells selects the block, and a cell pressed and left again is no click', async () => {
  const page = await sheetPage();
  await page.locator('#cell-1-2').hover();
  await page.mouse.down();
  await page.locator('#cell-2-2').hover();
  await page.locator('#cell-2-3').hover();
  await page.mouse.up();
  await page.locator('#cell-5-5').hover();
  await eventually(async () =>
    expect(await page.getByLabel('Cell', { exact: true }).inputValue()).toBe('C2:D3'),
  );
  await eventually(async () =>
    expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('grid'),
  );
  await page.locator('#cell-1-2').dblclick();
  await eventually(async () => expect(await page.locator('.cell-editor').inputValue()).toBe('790'));
});

test('a semicolon between arguments is explained', async () => {
  const page = await sheetPage();
  await enter(page, 'I2', '=CARRY.PITCH(190;240)');
  await eventually(async () =>
    expect(await page.getByRole('alert').innerText()).toMatch(/parted by a comma here, not by a semicolon/),
  );
  await page.keyboard.press('Escape');
});

test('a sheet or a table that is not there is named, and nothing is entered', async () => {
  const page = await sheetPage();
  for (const [formula, missing] of [
    ['=CARRY.OPENING(Nowhere!A1,1981,1830,930,25)', 'no sheet "nowhere"'],
    ['=CARRY.VERDICT(NoTable[#All],A1:G3)', 'no table NoTable'],
  ] as const) {
    await enter(page, 'A8', formula);
    await eventually(async () =>
      expect(await page.getByRole('alert').innerText()).toContain(`there is ${missing} in this workbook`),
    );
    await page.keyboard.press('Escape');
    await eventually(async () => expect(await shown(page, 8, 1)).toBe(''));
  }
});

test('F6 goes round all parts both ways, and Escape and then Tab leaves the cells', async () => {
  const page = await sheetPage();
  const part = (): Promise<string> =>
    page.evaluate(() => {
      const at = document.activeElement;
      if (at?.getAttribute('role') === 'grid') return 'cells';
      if (at?.closest('#pane')) return 'pane';
      return at?.closest('.tools, .tabs, .cell-line')?.className ?? 'nowhere';
    });
  for (const key of ['F6', 'Shift+F6']) {
    const seen: string[] = [];
    for (let i = 0; i < 5; i++) {
      seen.push(await part());
      await page.keyboard.press(key);
    }
    expect([...seen].sort()).toEqual(['cell-line', 'cells', 'pane', 'tabs', 'tools']);
    await eventually(async () => expect(await part()).toBe('cells'));
  }
  await page.keyboard.press('Escape');
  await page.keyboard.press('Tab');
  await eventually(async () => expect(await part()).not.toBe('cells'));
});

test('what is copied keeps its formula with its references moved, and fills what is selected', async () => {
  const page = await sheetPage();
  await enter(page, 'I2', '=C2*2+$C$2+0*G2');
  await goTo(page, 'I2');
  await page.evaluate(() => {
    const data = new DataTransfer();
    const grid = document.querySelector('[role="grid"]')!;
    grid.dispatchEvent(new ClipboardEvent('copy', { clipboardData: data, bubbles: true }));
    Object.assign(window, { clip: data });
  });
  await goTo(page, 'I3:I4');
  await page.evaluate(() => {
    const clipboardData = (window as never as { clip: DataTransfer }).clip;
    const grid = document.querySelector('[role="grid"]')!;
    grid.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  });
  // By hand: 2 x 900 + 790, and 0 + 790 in the empty row below.
  await eventually(async () =>
    expect([await shown(page, 3, 9), await shown(page, 4, 9)]).toEqual(['2590', '790']),
  );
  await goTo(page, 'I4');
  await eventually(async () => expect(await page.locator('#cell-line').inputValue()).toBe('=C4*2+$C$2+0*G4'));
});

/** A sheet with a heading that stays, a yellow cell, a word with its colour, and a drop-down. */
function coloured(): Promise<Uint8Array> {
  const made = createWorkbook();
  const sheet = made.sheet('Crew');
  sheet.rows('A1', [['Who', 'Word', 'Mass']], { bold: true, fill: 'E3DBCB', color: '2A2620' });
  sheet.rows(
    'A2',
    Array.from({ length: 90 }, (_, i) => [`row ${i + 2}`, i % 2 === 0 ? 'goes' : 'tight', i]),
  );
  sheet.format('C2', { fill: 'FFF4B8' });
  sheet.cell('D2', 'a text that runs over the cells beside it', { fill: 'E5C3D0', color: '5C0F33' });
  sheet.condition('B2:B91', '$B2="goes"', { fill: 'CBE2E4', color: '0F3B45' });
  sheet.list('B2', ['goes', 'tight'], 'refused');
  sheet.widths([30, 12, 12]);
  sheet.freeze(1, 1);
  return writeWorkbook(made);
}

describe('as the workbook has it', () => {
  const fillOf = (page: Page, row: number, column: number): Promise<string> =>
    page.locator(`#cell-${row - 1}-${column - 1}`).evaluate((cell) => getComputedStyle(cell).backgroundColor);

  test('fills and the colours of words are shown, and follow what is typed', async () => {
    const page = await sheetPage(await coloured());
    await eventually(async () => expect(await fillOf(page, 2, 3)).toBe('rgb(255, 244, 184)'));
    await eventually(async () => expect(await fillOf(page, 2, 2)).toBe('rgb(203, 226, 228)'));
    await eventually(async () => expect(await fillOf(page, 3, 2)).not.toBe('rgb(203, 226, 228)'));
    await enter(page, 'B3', 'goes');
    await eventually(async () => expect(await fillOf(page, 3, 2)).toBe('rgb(203, 226, 228)'));
    const box = await page.locator('#cell-1-0').boundingBox();
    expect(box!.width).toBeGreaterThan(200);
    // Where a text runs over its neighbours, its fill goes with it: their paper may be dark as its letters are.
    const text = page.locator('#cell-1-3 span').first();
    const [own, whole] = [await page.locator('#cell-1-3').boundingBox(), await text.boundingBox()];
    expect(whole!.x + whole!.width).toBeGreaterThan(own!.x + own!.width + 50);
    expect(await text.evaluate((span) => getComputedStyle(span).backgroundColor)).toBe('rgb(229, 195, 208)');
  });

  test('frozen rows and columns stay in sight, also in a narrow window only while they leave room', async () => {
    const page = await sheetPage(await coloured());
    await goTo(page, 'M80');
    await page.waitForTimeout(100);
    await eventually(async () => expect(await page.locator('#cell-0-1').isVisible()).toBe(true));
    await eventually(async () => expect(await page.locator('#cell-79-0').isVisible()).toBe(true));
    const [grid, held, head] = await Promise.all([
      page.locator('.grid-scroll').boundingBox(),
      page.locator('#cell-79-0').boundingBox(),
      page.locator('#cell-0-0').boundingBox(),
    ]);
    expect(held!.x).toBeLessThan(grid!.x + 60);
    expect(head!.y).toBeLessThan(grid!.y + 60);
    await page.setViewportSize({ width: 320, height: 700 });
    await goTo(page, 'C80');
    await eventually(async () => expect(await page.locator('#cell-79-2').isVisible()).toBe(true));
    const [cell, narrow] = await Promise.all([
      page.locator('#cell-79-2').boundingBox(),
      page.locator('.grid-scroll').boundingBox(),
    ]);
    expect(cell!.x).toBeGreaterThanOrEqual(narrow!.x);
  });

  test('a heading and a long text go on in lines below, whole, and what is under them moves down', async () => {
    const made = createWorkbook();
    const sheet = made.sheet('Month');
    sheet.rows('A1', [['Clearance, mm a side, rounded down', 'Reason']], { bold: true, wrap: true });
    sheet.rows(
      'A2',
      Array.from({ length: 60 }, (_, i) => [i, 'closest between the newel post and the wall']),
    );
    sheet.format('B2:B61', { wrap: true });
    sheet.widths([12, 30]).freeze(1, 1);
    const page = await sheetPage(await writeWorkbook(made));
    const whole = (row: number, column: number): Promise<boolean> =>
      page
        .locator(`#cell-${row - 1}-${column - 1} span`)
        .first()
        .evaluate((text) => text.scrollHeight <= text.clientHeight && text.scrollWidth <= text.clientWidth);
    await eventually(async () => expect([await whole(1, 1), await whole(2, 2)]).toEqual([true, true]));
    const box = async (row: number, column: number) =>
      (await page.locator(`#cell-${row - 1}-${column - 1}`).boundingBox())!;
    const [heading, first, second] = [await box(1, 1), await box(2, 2), await box(3, 2)];
    expect(heading.height).toBeGreaterThan(50);
    expect(first.height).toBeGreaterThan(40);
    expect(Math.abs(second.y - (first.y + first.height))).toBeLessThan(1);
    expect(first.y).toBeGreaterThanOrEqual(heading.y + heading.height);
    await goTo(page, 'B60');
    const [last, grid] = [await box(60, 2), (await page.locator('.grid-scroll').boundingBox())!];
    expect(last.y + last.height).toBeLessThanOrEqual(grid.y + grid.height + 1);
    expect((await box(1, 1)).y).toBeLessThan(grid.y + 60);
    await page.locator('#cell-57-1').click();
    await eventually(async () =>
      expect(await page.getByLabel('Cell', { exact: true }).inputValue()).toBe('B58'),
    );
  });

  test('a drop-down offers its words, and another word is refused', async () => {
    const page = await sheetPage(await coloured());
    await goTo(page, 'B2');
    const list = page.getByLabel('or one of');
    await eventually(async () =>
      expect(await list.locator('option').allInnerTexts()).toEqual(['empty', 'goes', 'tight']),
    );
    await list.selectOption('tight');
    await eventually(async () => expect(await shown(page, 2, 2)).toBe('tight'));
    await enter(page, 'B2', 'maybe');
    await eventually(async () =>
      expect(await page.locator('#book .refused').innerText()).toMatch(/"maybe" is none of the words/),
    );
    await page.keyboard.press('Escape');
    await eventually(async () => expect(await shown(page, 2, 2)).toBe('tight'));
    await goTo(page, 'C2');
    await eventually(async () => expect(await list.isVisible()).toBe(false));
  });

  test.each([
    ['light', { colorScheme: 'light' }],
    ['dark', { colorScheme: 'dark' }],
    ['forced colours', { colorScheme: 'dark', forcedColors: 'active' }],
  ] as const)('axe finds nothing in %s', async (_, look) => {
    const page = await sheetPage(await coloured(), look);
    expect(await axeFindings(page)).toEqual([]);
  });
});

test('a long call runs aside: its cells say so, and then hold the verdict', async () => {
  const page = await sheetPage();
  await enter(page, 'A8', '=CARRY.STAGES(A1:E3,1830,930,25)');
  await page.locator('#cell-7-0').getByText('Step').waitFor();
  await eventually(async () => expect(await shown(page, 9, 3)).toBe('goes'));
});

test('what the sheet in front needs is computed before all else, and how far it is can be seen', async () => {
  const made = createWorkbook();
  const widths = Array.from({ length: 400 }, (_, i) => [800 + i / 2]);
  const landing = (width: string, length: number) =>
    `CARRY.HALFLANDING(${width},100,900,2000,200,230,${length},930,25)`;
  const long = made.sheet('Long');
  long.rows('A1', widths);
  long.spill('B1', landing('A1:A400', 1830)).spill('C1', landing('A1:A400', 1600));
  made.sheet('Short').cell('A1', { formula: landing('850', 1700) });
  const page = await sheetPage(await writeWorkbook(made));
  const status = page.locator('.tools .status');
  const bar = page.getByRole('progressbar', { name: 'Done of the longest calculation' });

  await expect(status.innerText()).resolves.toBe(
    '0 of 3 long calculations done; 2 still to come on this sheet, which goes first',
  );
  await page.waitForFunction(() => document.querySelector<HTMLProgressElement>('.tools progress')!.value > 0);
  await eventually(async () => expect(await bar.getAttribute('max')).toBe('400'));
  expect(await axeFindings(page)).toEqual([]);

  await page.getByRole('tab', { name: 'Short' }).click();
  await page.waitForFunction(() => /^-?[\d.]+$/.test(document.querySelector('#cell-0-0')!.textContent ?? ''));
  await eventually(async () =>
    expect(await status.innerText()).toBe('1 of 3 long calculations done; this sheet is ready'),
  );

  // What nobody asks for any more is given up.
  await page.getByRole('tab', { name: 'Long' }).click();
  await goTo(page, 'B1:C1');
  await page.keyboard.press('Delete');
  await page.waitForFunction(() =>
    document.querySelector('.tools .status')!.textContent.startsWith('All formulas computed'),
  );
  await eventually(async () => expect(await bar.count()).toBe(0));
});

/** A workbook whose long call has stored what it does not give, so that what is stored and what is computed differ. */
async function storedOtherwise(): Promise<Uint8Array> {
  const made = createWorkbook();
  const sheet = made.sheet('Long');
  sheet.rows(
    'A1',
    Array.from({ length: 24 }, (_, i) => [800 + i / 2]),
  );
  sheet.spill('B1', 'CARRY.HALFLANDING(A1:A24,100,900,2000,200,230,C1,930,25)').cell('C1', 1830);
  sheet.cell('D1', { formula: 'COUNT(B1:B24)' });
  const opened = await openWorkbook(await writeWorkbook(made));
  if (!opened.ok) throw new Error(opened.reason);
  const parameters = Array.from({ length: 11 }, (_, i) => ({
    name: `p${i}`,
    type: 'any',
    dimensionality: 'matrix',
    optional: true,
  }));
  const result = { type: 'any', dimensionality: 'matrix' };
  const script = `CustomFunctions.associate('HALFLANDING', (widths) => widths.map(() => [7.5]));`;
  const metadata = { functions: [{ id: 'HALFLANDING', name: 'HALFLANDING', parameters, result }] };
  opened.host.register(runBundle(script, metadata));
  opened.host.recalculate();
  return (await opened.host.save()).bytes;
}

test('a workbook with results opens with them, they are computed again, and a change lets none of them stand', async () => {
  const bytes = await storedOtherwise();
  const server = await startSheetServer(builtFolder(), bytes, 0);
  const page = await browser.newPage();
  // What is seen before the first answer would else be gone before it is looked at.
  await page.addInitScript(() => {
    const seen: string[] = [];
    Object.assign(window, { seen });
    new MutationObserver(() => {
      const text = (at: string): string => document.querySelector(at)?.textContent ?? '';
      const now = [text('.tools .status'), text('#cell-0-1'), text('#cell-20-1'), text('#cell-0-3')];
      if (now[1] !== '') seen.push(now.join(' | '));
    }).observe(document, { childList: true, subtree: true, characterData: true });
  });
  try {
    await page.goto(server.origin);
    await page.waitForFunction(() =>
      document.querySelector('.tools .status')?.textContent.startsWith('All formulas computed'),
    );
    const seen = await page.evaluate(() => (window as never as { seen: string[] }).seen);
    expect(seen).toContain('Stored values, computed again now: 0 of 1 done | 7.5 | 7.5 | 24');
    expect(seen.filter((line) => /computing/.test(line.split(' | ')[1]!))).toEqual([]);
    await eventually(async () => expect(await shown(page, 1, 2)).not.toBe('7.5'));
    await eventually(async () => expect(await shown(page, 1, 4)).toBe('24'));
    await enter(page, 'C1', '1700');
    await page.waitForFunction(() =>
      (window as never as { seen: string[] }).seen.some((line) => / \| computing… \| /.test(line)),
    );
  } finally {
    await page.close();
    await server.close();
  }
});

test('a link is followed by a click and by Ctrl+Enter, and says where it leads', async () => {
  const made = createWorkbook();
  made.sheet('Month').cell('B2', { formula: `HYPERLINK("#'Route'!A"&(20+20),"Q-01")` });
  made.sheet('Route').cell('A40', 'door');
  const page = await sheetPage(await writeWorkbook(made));
  const at = async (): Promise<string> =>
    `${await page.locator('[role="tab"][aria-selected="true"]').innerText()} ${await page.getByLabel('Cell', { exact: true }).inputValue()}`;
  await goTo(page, 'B2');
  await page.locator('.message').getByText('A link to Route, A40').waitFor();
  await page.keyboard.press('Control+Enter');
  await eventually(async () => expect(await at()).toBe('Route A40'));
  await page.getByRole('tab', { name: 'Month' }).click();
  await goTo(page, 'A1');
  await page.locator('#cell-1-1').click();
  await eventually(async () => expect(await at()).toBe('Route A40'));
  await eventually(async () => expect(await page.locator('#cell-39-0').isVisible()).toBe(true));
});

test('the pane writes into the cells of the page', async () => {
  const page = await sheetPage();
  await goTo(page, 'A3');
  await page.getByRole('button', { name: 'Write this into Route!F3' }).click();
  await page
    .locator('#cell-2-5')
    .getByText(/^Slate: goes/)
    .waitFor();
  await eventually(async () =>
    expect(await page.getByRole('status').allInnerTexts()).toContain('Written into Route!F3.'),
  );
});

test('a workbook is saved and opened again; a damaged or too large one is refused with the reason', async () => {
  const page = await sheetPage();
  await enter(page, 'C2', '650');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a copy' }).click(),
  ]);
  // The browser is another process's: it hands the file over.
  const file = path.join(mkdtempSync(path.join(tmpdir(), 'saved-')), 'book.xlsx');
  await download.saveAs(file);
  const saved = readFileSync(file);
  rmSync(path.dirname(file), { recursive: true });
  const give = (name: string, buffer: Buffer) =>
    page.locator('#book-file').setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
  await give('damaged.xlsx', saved.subarray(0, saved.length - 400));
  await page
    .getByRole('alert')
    .getByText(/damaged\.xlsx was not opened: .*damaged/)
    .waitFor();
  await give('notes.xlsx', Buffer.from('no workbook at all'));
  await page
    .getByRole('alert')
    .getByText(/notes\.xlsx was not opened/)
    .waitFor();
  await give('large.xlsx', Buffer.alloc(20_000_001));
  await page
    .getByRole('alert')
    .getByText(/at most 20 MB/)
    .waitFor();
  await eventually(async () => expect(await shown(page, 2, 3)).toBe('650'));
  await enter(page, 'C2', '700');
  await give('saved.xlsx', saved);
  await page.locator('#cell-1-2').getByText('650').waitFor();
  await eventually(async () => expect(await page.getByRole('alert').isVisible()).toBe(false));
});

// How long it takes from the key to the result is measured by the benchmark.
test('1,000 rows follow a change of the cell that they hang on', async () => {
  const made = createWorkbook();
  const sheet = made.sheet('Rows');
  sheet.cell('A1', 30);
  for (let i = 1; i <= 1000; i++) {
    sheet.cell(`B${i}`, 700 + (i % 300));
    sheet.cell(`C${i}`, { formula: `CARRY.OPENING(B${i},2000,1830,930,$A$1)` });
  }
  sheet.cell('D1', { formula: 'SUM(C1:C1000)' });
  const page = await sheetPage(await writeWorkbook(made));
  // By hand: on edge in each width; 700 + i mod 300 adds up to 700000 + 3 x 44850 + (1 + ... + 100).
  const widths = 700000 + 3 * 44850 + 5050;
  for (const thickness of [25, 26, 27, 28, 29]) {
    await enter(page, 'A1', String(thickness));
    await eventually(async () => expect(await shown(page, 1, 3)).toBe(String((701 - thickness) / 2)));
    await eventually(async () =>
      expect(await shown(page, 1, 4)).toBe(String((widths - 1000 * thickness) / 2)),
    );
  }
});

test('nothing scrolls the page sideways at 320 px; the cells scroll inside themselves', async () => {
  const page = await sheetPage(book, { width: 320, height: 700 });
  await enter(page, 'B3', 'Averylongwordwithoutanyspaces'.repeat(8));
  await goTo(page, 'B3');
  const { scrolls, visible } = await page.evaluate(() => ({
    scrolls: document.documentElement.scrollWidth,
    visible: document.documentElement.clientWidth,
  }));
  expect(scrolls).toBeLessThanOrEqual(visible);
});

test.each([
  ['light', { colorScheme: 'light' }],
  ['dark', { colorScheme: 'dark' }],
  ['forced colours', { colorScheme: 'dark', forcedColors: 'active' }],
] as const)('axe finds nothing in %s, while a formula is typed as well', async (_, look) => {
  const page = await sheetPage(book, look);
  await enter(page, 'C2', '79 parsecs');
  for (const typed of [undefined, '=CARRY.OPENING(C2,']) {
    await goTo(page, 'G2');
    if (typed !== undefined) await page.keyboard.type(typed);
    expect(await axeFindings(page)).toEqual([]);
  }
});

test('text from cells never becomes markup; only this machine is asked, and for listed files only', async () => {
  const page = await sheetPage();
  await enter(page, 'B2', '<img src=x onerror="window.ran=1">');
  await eventually(async () => expect(await page.locator('#book img').count()).toBe(0));
  const { asked, complaints, server } = open!;
  expect(asked.length).toBeGreaterThan(5);
  expect(asked.filter((url) => !url.startsWith(server.origin))).toEqual([]);
  expect(complaints).toEqual([]);
  for (const path of ['/package.json', '/..%2fpackage.json', '/constructor', '/taskpane.html']) {
    await eventually(async () => expect((await fetch(server.origin + path)).status).toBe(404));
  }
  await eventually(async () => expect((await fetch(server.origin, { method: 'POST' })).status).toBe(405));
  const policy = (await fetch(server.origin)).headers.get('content-security-policy');
  expect(policy).toContain("default-src 'none'");
  expect(policy).not.toMatch(/unsafe/);
});
