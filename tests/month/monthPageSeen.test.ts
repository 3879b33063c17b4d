import type { Browser, Page } from 'playwright-core';
import { explainMonth } from '../../src/month/explainMonth';
import { monthPage } from '../../src/month/monthPage';
import { surveyOfCells, type MonthSurvey } from '../../src/month/month';
import { sharedBrowser } from '../support/sharedBrowser';
import type { Look } from '../support/panePage';
import { axeFindings } from '../support/axeFindings';

/** The month's page in a real browser, at several widths. */
const LONG = 'Averylongwordwithoutanyspaces'.repeat(6);

let browser: Browser;
let page: Page | undefined;

jest.setTimeout(30_000);
beforeAll(async () => {
  browser = await sharedBrowser();
}, 180_000);
afterEach(() => page?.close());
afterAll(() => browser?.close());

const survey = (more: Partial<MonthSurvey>): MonthSurvey =>
  surveyOfCells({
    survey: 'S-1',
    customer: 'Ann Moss',
    place: '3 Weir Lane',
    day: '2',
    build: '7 ft',
    verdict: 'tight',
    clearance: 15,
    step: '1',
    stage: 'door',
    piece: 'Cabinet',
    pose: 'on edge',
    heaviest: 60,
    carry: 'mechanical aid and a written assessment',
    reason: 'measured, and tight: step 1 (door): 15 mm a side left',
    caution: '',
    advise: '6 ft',
    nextStep: 'offer the other build',
    urgency: 4,
    ...more,
  });

const PAGE = monthPage(
  explainMonth(
    {
      surveys: [
        survey({}),
        survey({ survey: 'S-2', verdict: 'goes', reason: 'step 1 (door)' }),
        survey({ survey: 'S-3', verdict: 'not measured', stage: 'corner', clearance: undefined }),
        survey({ survey: LONG, customer: LONG, reason: LONG, verdict: 'cannot go', advise: LONG }),
      ],
      allowance: 25,
      tape: 5,
    },
    [
      ['Survey', 'Step', 'Stage', 'Width', 'Height', 'Width out'],
      ['S-1', 1, 'door', 630, 1981, null],
      ['S-2', 1, 'door', 900, 1981, null],
      ['S-3', 1, 'corner', 900, 2400, null],
    ],
    [
      ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
      ['7 ft', 'Cabinet', 1830, 700, 600, 60, 1],
    ],
  ),
  { title: 'October', remark: 'Invented.' },
);

async function open(width: number, look: Look = {}, scale = 1): Promise<Page> {
  page = await browser.newPage({
    viewport: { width: width / scale, height: 800 },
    deviceScaleFactor: scale,
    ...look,
  });
  await page.setContent(PAGE);
  return page;
}

// 200 % of 1400 and of 640 px: half as many of the page's own pixels.
test.each([
  [1400, 1],
  [640, 1],
  [320, 1],
  [1400, 2],
  [640, 2],
])('at %d px and a zoom of %d nothing is cut off and nothing scrolls sideways', async (width, scale) => {
  const shown = await open(width, {}, scale);
  const wide = await shown.evaluate(() => {
    const { clientWidth, scrollWidth } = document.documentElement;
    const over = [...document.body.querySelectorAll('*')].filter(
      (one) =>
        !(one instanceof SVGElement) &&
        one.getClientRects().length > 0 &&
        !one.closest('thead') &&
        one.getBoundingClientRect().right > clientWidth + 1,
    );
    const inside = [...document.querySelectorAll('.wide')].filter((one) => one.scrollWidth > one.clientWidth);
    return { page: scrollWidth - clientWidth, over: over.map((o) => o.tagName), inside: inside.length };
  });
  expect(wide).toEqual({ page: 0, over: [], inside: 0 });
});

test.each([
  ['light', { colorScheme: 'light' }],
  ['dark', { colorScheme: 'dark' }],
  ['forced colours', { colorScheme: 'dark', forcedColors: 'active' }],
] as const)('axe finds nothing in %s, wide and narrow', async (_, look) => {
  for (const width of [1400, 320]) {
    const shown = await open(width, look);
    // The page's own policy lets no script in; the checker comes by the tester's door.
    expect(await axeFindings(shown)).toEqual([]);
    await shown.close();
  }
});

test('what leads to a survey leads to it', async () => {
  const shown = await open(640);
  await shown.locator('.task a', { hasText: 'S-1' }).click();
  expect(await shown.evaluate(() => document.querySelector(':target h3')?.textContent)).toContain('S-1');
});
