import type { Browser, Page } from 'playwright-core';
import { examplesPage } from '../../src/form/examplesPage';
import { WORKED_EXAMPLES } from '../../src/worksheet/workedExamples';
import { axeFindings } from '../support/axeFindings';
import { sharedBrowser } from '../support/sharedBrowser';
import { WORKED_ANSWERS } from '../support/workedAnswers';

const HTML = examplesPage('Worked examples');

let browser: Browser;
let page: Page;
jest.setTimeout(30_000);
beforeAll(async () => {
  browser = await sharedBrowser();
  page = await browser.newPage({ viewport: { width: 320, height: 800 } });
  await page.setContent(HTML);
}, 180_000);
afterAll(() => browser.close());

const part = (i: number) => page.locator('.part').nth(i);

test('every example of a clearance has its place in a picture, and the piece on its way with the working alone', async () => {
  const clearances = WORKED_EXAMPLES.filter(({ unit }) => unit === 'mm a side');
  expect(clearances.length).toBeGreaterThanOrEqual(6);
  for (const [i, example] of WORKED_EXAMPLES.entries()) {
    if (!clearances.includes(example)) continue;
    const own = part(i);
    expect(await own.locator('.beside svg').count()).toBe(1);
    expect(await own.locator('details svg').count()).toBeGreaterThanOrEqual(1);
    // The place alone does not say where it is closest, nor by how much.
    expect(await own.locator('.beside').textContent()).not.toMatch(/closest|a side|to spare/i);
    expect(await own.locator('.beside svg circle').count()).toBe(0);
  }
  const [, , , opening] = WORKED_EXAMPLES;
  expect(opening!.id).toBe('OPENING');
  expect(await part(3).locator('details svg path.piece').count()).toBeGreaterThan(0);
});

test('the question has what is given, and the answer stands in the working alone, which is closed', async () => {
  for (const [i, { given, title }] of WORKED_EXAMPLES.entries()) {
    const own = part(i);
    const open = await own.evaluate((one) => {
      const copy = one.cloneNode(true) as Element;
      copy.querySelector('details')!.remove();
      return copy.textContent ?? '';
    });
    expect(open).not.toMatch(/\{\d\}/);
    for (const [, value] of given) expect(open).toContain(String(value));
    expect(await own.locator('details').evaluate((one: HTMLDetailsElement) => one.open)).toBe(false);
    // Its last row is the result, to four places.
    const last = await own.locator('.working tbody tr').last().locator('td').nth(2).textContent();
    expect([title, Math.abs(Number(last) - WORKED_ANSWERS[title]!) < 0.0021]).toEqual([title, true]);
  }
});

test('the working opens by the keyboard', async () => {
  const summary = part(0).locator('summary');
  await summary.focus();
  await page.keyboard.press('Enter');
  expect(
    await part(0)
      .locator('details')
      .evaluate((one: HTMLDetailsElement) => one.open),
  ).toBe(true);
});

test('all open, nothing is wider than the page, and axe finds nothing', async () => {
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => (one.open = true)));
  for (const width of [900, 320]) {
    await page.setViewportSize({ width, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    const cut = await page
      .locator('.wide')
      .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth));
    expect(cut).toEqual([]);
  }
  expect(await axeFindings(page)).toEqual([]);
});
