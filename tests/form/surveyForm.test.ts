import type { Browser, Page } from 'playwright-core';
import { STAGE_NAMES, stageNeeds } from '../../src/core/stages/kinds';
import { FORM_STAGES } from '../../src/drawing/formStages';
import { letteredDrawing } from '../../src/drawing/letteredDrawing';
import { surveyForm } from '../../src/form/surveyForm';
import { viewOf } from '../../src/drawing/stageViews';
import { sharedBrowser } from '../support/sharedBrowser';
import { drawnFigures } from '../support/drawnFigures';
import { axeFindings } from '../support/axeFindings';

const HTML = surveyForm('The way to your table');

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await sharedBrowser();
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

test('every measure has its letter in a drawing, in the order of the list, and no figure is printed', () => {
  for (const stage of STAGE_NAMES) {
    const { measures, drawn, drawnWith } = FORM_STAGES[stage];
    const { pictures, letters } = letteredDrawing(stage, { id: 'one' });
    expect([...letters.keys()]).toEqual(measures);
    expect([...letters.values()].join('')).toBe('ABCDEFGHI'.slice(0, measures.length));
    const printed = pictures.flatMap(({ svg }) =>
      [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text!),
    );
    for (const letter of letters.values())
      expect([stage, letter, printed.includes(letter)]).toEqual([stage, letter, true]);
    expect(printed.filter((text) => /\d{3}/.test(text))).toEqual([]);
    // What the stage's own drawing dimensions is a measure of the form.
    const named = viewOf(stage)
      .view(drawnWith)
      .paper.letter(() => ({ letter: 'X', marked: false }));
    expect(named.filter((name) => drawn[name] === undefined)).toEqual([]);
  }
});

test('no letter lies on another, nor on a word', () => {
  for (const stage of STAGE_NAMES) {
    for (const { svg } of letteredDrawing(stage, { id: 'one' }).pictures) {
      const boxes = drawnFigures(svg).texts.filter(({ text }) => text !== '');
      boxes.forEach(({ text, box: a }, i) => {
        for (const { text: other, box: b } of boxes.slice(i + 1)) {
          const over = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
          const down = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
          expect([stage, text, other, over > 0.5 && down > 0.5]).toEqual([stage, text, other, false]);
        }
      });
    }
  }
});

test('nothing is wider than a narrow screen, and axe finds nothing', async () => {
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  expect(await axeFindings(page)).toEqual([]);
}, 60000);

test('measures that are missing are marked where the tape goes, each in the drawing that shows it', () => {
  const { pictures, text } = letteredDrawing('half landing', { id: 'one', missing: ['depth', 'height'] });
  expect(pictures).toHaveLength(2);
  for (const { svg } of pictures) {
    expect(svg.match(/class="dimension missing"/g)).toHaveLength(1);
    expect(svg).not.toMatch(/>\d{3}/);
  }
  expect(text).toMatch(/[A-Z], Depth: missing\./);
  expect(text).toMatch(/[A-Z], Height \(headroom\): missing\./);
});

test('of a row only the drawing is shown in which something is missing', () => {
  for (const stage of STAGE_NAMES) {
    for (const need of stageNeeds(stage).needs) {
      const { pictures, text } = letteredDrawing(stage, { id: 'one', missing: [need] });
      expect([stage, need, pictures.length]).toEqual([stage, need, 1]);
      expect(text).toContain('missing');
      expect(pictures[0]!.svg).toMatch(/>[A-I] \?</);
    }
  }
});
