import type { Browser, Page } from 'playwright-core';
import { STAGE_NAMES, stageNeeds } from '../../src/core/stages/kinds';
import { FORM_STAGES } from '../../src/drawing/formStages';
import { letteredDrawing } from '../../src/drawing/letteredDrawing';
import { surveyForm } from '../../src/form/surveyForm';
import { viewOf } from '../../src/drawing/stageViews';
import { launchBrowser } from '../support/browser';
import { axeFindings } from '../support/axeFindings';

const HTML = surveyForm('The way to your table');

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launchBrowser();
  page = await browser.newPage({ viewport: { width: 320, height: 800 } });
  await page.setContent(HTML);
}, 60000);
afterAll(() => browser.close());

test('has a part for each stage, with a line for every measure that it needs', async () => {
  expect(await page.locator('.part').count()).toBe(STAGE_NAMES.length);
  for (const [i, stage] of STAGE_NAMES.entries()) {
    const { measures, photographs } = FORM_STAGES[stage];
    for (const need of stageNeeds(stage).needs) expect(measures).toContain(need);
    const part = page.locator('.part').nth(i);
    expect(await part.locator('tbody tr').count()).toBe(measures.length);
    expect(await part.locator('.ticks li').count()).toBe(photographs.length);
  }
});

test('every letter of a drawing stands beside a measure, and no figure is printed', () => {
  for (const stage of STAGE_NAMES) {
    const named = viewOf(stage).view(FORM_STAGES[stage].drawnWith).paper.letter();
    for (const name of named.keys()) expect(Object.keys(FORM_STAGES[stage].drawn)).toContain(name);
    const { svg, letters } = letteredDrawing(stage, { id: 'one' });
    expect(letters.size).toBe(named.size);
    const printed = [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text!);
    for (const letter of letters.values()) expect(printed).toContain(letter);
    expect(printed.filter((text) => /\d{3}/.test(text))).toEqual([]);
  }
});

test('nothing is wider than a narrow screen, and axe finds nothing', async () => {
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  expect(await axeFindings(page)).toEqual([]);
});

test('a measure that is missing is marked where the tape goes, or named where the view does not show it', () => {
  const { svg, text } = letteredDrawing('half landing', { id: 'one', missing: ['depth', 'height'] });
  expect(svg.match(/class="dimension missing"/g)).toHaveLength(1);
  expect(text).toMatch(/[A-Z], Depth: missing\./);
  expect(text).toContain('Height (headroom): missing, not seen in this view.');
  expect(svg).not.toMatch(/>\d{3}/);
});
