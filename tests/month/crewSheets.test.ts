import type { Browser, Page } from 'playwright-core';
import { crewSheets } from '../../src/month/crewSheets';
import { surveyOfCells, type Month, type MonthSurvey } from '../../src/month/month';
import { SAMPLE_PIECES } from '../../src/sample/pieces';
import { ROUTE_COLUMNS, routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { callInCells } from '../support/callInCells';
import { sharedBrowser } from '../support/sharedBrowser';
import { PIECES_TABLE } from '../support/samplePieces';
import { drawnFigures } from '../support/drawnFigures';
import { axeFindings } from '../support/axeFindings';

/** Level ways, a stair with a half landing, a slip that is not measured, and the longest carries with most pictures. */
const CHOSEN = SAMPLE_SURVEYS.filter(({ id }) =>
  ['Q-01', 'Q-02', 'Q-03', 'Q-11', 'Q-14', 'Q-18', 'Q-44'].includes(id),
);
const ROUTES = [ROUTE_COLUMNS.map(([header]) => header), ...routeRows(CHOSEN)];

const surveys = CHOSEN.map((chosen): MonthSurvey => {
  const route = [ROUTES[0]!, ...routeRows([chosen])];
  const own = PIECES_TABLE.filter(([build], i) => i === 0 || build === chosen.build);
  const [head, row] = callInCells('VERDICT', route, own) as [string[], unknown[]];
  const cell = (name: string): string => String(row[head.indexOf(name)] ?? '');
  return surveyOfCells({
    survey: chosen.id,
    customer: chosen.customer,
    place: chosen.place,
    build: chosen.build,
    verdict: cell('Verdict'),
    clearance: Number(cell('Clearance')),
    step: cell('Step'),
    stage: cell('Stage'),
    piece: cell('Piece'),
    pose: cell('Pose'),
    heaviest: undefined,
    carry: cell('Carry'),
    reason: cell('Reason'),
    caution: cell('Caution'),
    advise: '',
    nextStep: '',
    urgency: undefined,
  });
});
const MONTH: Month = { surveys, allowance: 25, tape: 5 };
const HTML = crewSheets(MONTH, ROUTES, PIECES_TABLE, { title: 'Sheets', remark: 'Invented.' });
const passing = surveys.filter(({ verdict }) => verdict === 'goes' || verdict.startsWith('tight'));

jest.setTimeout(30_000);
let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await sharedBrowser();
  page = await browser.newPage({ viewport: { width: 320, height: 800 } });
  await page.setContent(HTML);
}, 60000);
afterAll(() => browser.close());

test('a sheet for each survey that goes or is tight as ordered, and for no other', () => {
  expect(passing.length).toBeGreaterThan(1);
  expect(passing.length).toBeLessThan(surveys.length);
  const headings = [...HTML.matchAll(/<h2 id="[^"]+">([^:]+):/g)].map(([, name]) => name);
  expect(headings).toEqual(passing.map(({ survey }) => survey));
});

test('each has its address, its pieces, the strip with one step marked, the moves and the caution', async () => {
  for (const [i, survey] of passing.entries()) {
    const sheet = page.locator('.sheet').nth(i);
    expect(await sheet.locator('.where').textContent()).toContain(survey.place);
    const own = SAMPLE_PIECES.filter(({ build }) => build === survey.build);
    expect(await sheet.locator('.pieces li').count()).toBe(own.length);
    const steps = CHOSEN.find(({ id }) => id === survey.survey)!.steps.length;
    expect(await sheet.locator('.strip li').count()).toBe(steps);
    expect(await sheet.locator('.strip .marked').count()).toBe(1);
    expect(await sheet.locator('.moves tbody tr').count()).toBeGreaterThanOrEqual(steps);
    expect(await sheet.locator('.caution').textContent()).toContain('no promise');
    const text = (await sheet.textContent()) ?? '';
    expect(text).not.toMatch(/\b(?:two|three|four)\s+(?:people|persons|men|carriers|handlers)\b/i);
  }
});

test('no two words of a picture overlap, small as the pictures are', () => {
  const overlaps: string[] = [];
  const pictures = [...HTML.matchAll(/<svg[\s\S]*?<\/svg>/g)].map(([svg]) => drawnFigures(svg).texts);
  expect(pictures.length).toBeGreaterThan(40);
  for (const texts of pictures)
    texts.forEach(({ text, box: a }, i) => {
      for (const { text: other, box: b } of texts.slice(i + 1)) {
        const across = Math.min(a[2], b[2]) - Math.max(a[0], b[0]);
        const down = Math.min(a[3], b[3]) - Math.max(a[1], b[1]);
        if (across > 0.5 && down > 0.5) overlaps.push(`${text} | ${other}`);
      }
    });
  expect(overlaps).toEqual([]);
});

test('on a telephone the moves stand below one another, and none is cut off', async () => {
  const wide = await page
    .locator('.wide')
    .evaluateAll((all) => all.map((one) => one.scrollWidth - one.clientWidth));
  expect(wide).toHaveLength(passing.length);
  expect(Math.max(...wide)).toBeLessThanOrEqual(0);
});

test('each is one page of A4', async () => {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const pages = pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g) ?? [];
  expect(pages).toHaveLength(passing.length);
});

// What can be read from a sheet in the hand: common practice, no source.
test('on paper no letter is smaller than 7 points, in the pictures of steps and beside them', async () => {
  await page.emulateMedia({ media: 'print' });
  const points = await page.evaluate(() => {
    const sizes: number[] = [];
    for (const one of document.querySelectorAll('.sheet *')) {
      const own = [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent!.trim() !== '');
      if (!own) continue;
      const drawn = one instanceof SVGGraphicsElement ? one.getScreenCTM() : null;
      const scale = drawn ? Math.hypot(drawn.a, drawn.b) : 1;
      sizes.push(0.75 * scale * parseFloat(getComputedStyle(one).fontSize));
    }
    return sizes;
  });
  await page.emulateMedia({ media: null });
  expect(points.length).toBeGreaterThan(200);
  expect(Math.min(...points)).toBeGreaterThanOrEqual(6.99);
});

test('on a narrow screen nothing is wider than the page, and axe finds nothing', async () => {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(wide).toBeLessThanOrEqual(320);
  expect(await axeFindings(page)).toEqual([]);
});
