import { XMLParser } from 'fast-xml-parser';
import { CAUTIONS } from '../../src/core/measures/cautions';
import { VERDICTS } from '../../src/core/route/verdict';
import { explainMonth } from '../../src/month/explainMonth';
import { surveyOfCells, type Month, type MonthSurvey } from '../../src/month/month';
import { monthPage } from '../../src/month/monthPage';
import { tasksOf } from '../../src/month/today';
import { verdictSign } from '../../src/month/verdictSign';

const HOSTILE = `<script>alert(1)</script><img src=x onerror="alert('2')">&amp;]]>"'`;
const WORDS = { title: 'October', remark: 'Invented.' };

const survey = (more: Partial<MonthSurvey>): MonthSurvey =>
  surveyOfCells({
    survey: 'S-1',
    customer: '',
    place: '',
    build: 'cabinet',
    verdict: 'goes',
    clearance: 40,
    step: '1',
    stage: 'door',
    piece: 'cabinet',
    pose: 'on edge',
    heaviest: 60,
    carry: 'mechanical aid and a written assessment',
    reason: 'step 1 (door)',
    caution: '',
    advise: '',
    nextStep: '',
    urgency: undefined,
    ...more,
  });
const monthOf = (surveys: MonthSurvey[]): Month => ({ surveys, allowance: 25, tape: 5 });

const PIECES = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ['cabinet', 'cabinet', 1830, 700, 600, 60, 1],
  [HOSTILE, HOSTILE, 1830, 700, 600, 60, 1],
];
const ROUTES = [
  ['Survey', 'Step', 'Stage', 'Width', 'Height', 'Width out'],
  ['S-1', 1, 'door', 900, 1981, null],
  ['S-2', 1, 'door', 630, 1981, null],
  ['S-3', 1, 'door', 500, 1981, null],
  ['S-4', 1, 'corner', 900, 2400, null],
  ['S-5', 1, 'corner', 610, 2400, 610],
  [HOSTILE, 1, 'door', 630, 1981, null],
];
const MONTH = explainMonth(
  monthOf([
    survey({}),
    // On edge, (630 - 600) / 2.
    survey({ survey: 'S-2', verdict: 'tight', clearance: 15 }),
    survey({ survey: 'S-3', verdict: 'cannot go', clearance: -50 }),
    survey({ survey: 'S-4', verdict: 'not measured', stage: 'corner', clearance: undefined, pose: '' }),
    survey({ survey: 'S-5', verdict: 'no way found', stage: 'corner', clearance: -100 }),
    survey({
      survey: HOSTILE,
      customer: HOSTILE,
      place: HOSTILE,
      build: HOSTILE,
      piece: HOSTILE,
      reason: HOSTILE,
      caution: HOSTILE,
      advise: HOSTILE,
      nextStep: HOSTILE,
      carry: HOSTILE,
      verdict: 'tight',
      clearance: 15,
    }),
    survey({ survey: 'S-7', verdict: HOSTILE, stage: HOSTILE, step: HOSTILE, pose: HOSTILE }),
  ]),
  ROUTES,
  PIECES,
);
const PAGE = monthPage(MONTH, { title: HOSTILE, remark: HOSTILE });

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

/** All elements of the page, read by another's parser, after closing what HTML leaves open. */
function elementsOf(page: string): Element[] {
  const xml = page.replace(/<!DOCTYPE html>/, '').replace(/<meta ([^>]*)>/g, '<meta $1/>');
  const parser = new XMLParser({ ignoreAttributes: false, preserveOrder: true, attributeNamePrefix: '' });
  const walk = (nodes: Record<string, unknown>[]): Element[] =>
    nodes.flatMap((node) =>
      Object.entries(node).flatMap(([name, inside]) =>
        Array.isArray(inside)
          ? [
              { name, attributes: (node[':@'] ?? {}) as Record<string, string> },
              ...walk(inside as Record<string, unknown>[]),
            ]
          : [],
      ),
    );
  return walk(parser.parse(xml) as Record<string, unknown>[]);
}
const ELEMENTS = elementsOf(PAGE);

test('hostile text in every cell stays text', () => {
  expect(PAGE).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
  expect(ELEMENTS.length).toBeGreaterThan(200);
  expect(ELEMENTS.filter(({ name }) => /^(script|img|iframe|link|object|base)$/i.test(name))).toEqual([]);
  const names = ELEMENTS.flatMap(({ attributes }) => Object.keys(attributes));
  expect(names.filter((name) => /^on|^style$/i.test(name))).toEqual([]);
  // The elements are those of a page with plain words in the same places.
  const plain = JSON.parse(
    JSON.stringify({ MONTH, ROUTES, PIECES }).split(JSON.stringify(HOSTILE).slice(1, -1)).join('plain'),
  );
  const again = explainMonth(plain.MONTH, plain.ROUTES, plain.PIECES);
  const count = (elements: readonly Element[], name: string) =>
    elements.filter((e) => e.name === name).length;
  const other = elementsOf(monthPage(again, WORDS));
  for (const name of ['section', 'tr', 'td', 'dt', 'figure', 'a', 'table']) {
    expect([name, count(ELEMENTS, name)]).toEqual([name, count(other, name)]);
  }
});

test('nothing is fetched: no address but places of the page itself, and a policy that forbids the rest', () => {
  const addresses = ELEMENTS.flatMap(({ attributes }) =>
    ['href', 'src', 'srcset', 'action', 'xlink:href', 'data'].flatMap((name) => attributes[name] ?? []),
  );
  expect(addresses.length).toBeGreaterThan(0);
  const ids = new Set(ELEMENTS.map(({ attributes }) => attributes['id']));
  for (const address of addresses) {
    expect(address).toMatch(/^#/);
    expect(ids.has(address.slice(1))).toBe(true);
  }
  expect(PAGE).toMatch(
    /content="default-src 'none'; style-src 'sha256-[^']+'; base-uri 'none'; form-action 'none'"/,
  );
  expect(PAGE).not.toMatch(/@import|url\((?!#)/);
});

test('every survey has its line, and every one that does not go its section', () => {
  const page = monthPage(MONTH, WORDS);
  expect(ELEMENTS.filter(({ attributes }) => attributes['class'] === 'survey').length).toBe(
    MONTH.surveys.filter(({ verdict }) => verdict !== 'goes').length,
  );
  for (const [i, { survey: name, verdict }] of MONTH.surveys.entries()) {
    if (name === HOSTILE) continue;
    expect(page).toMatch(new RegExp(`<tr[^>]*><th scope="row" class="name">(<a [^>]*>)?${name}<`));
    expect(page.includes(`id="survey-${i + 1}">\n<h3><span>${name}<`)).toBe(verdict !== 'goes');
  }
});

test('what the check asks to look at stands beside the verdict, whatever it is', () => {
  // A plain route of a door and a room needs no look; width and height exchanged do, and so does a gap in the steps.
  const routes = [
    ['Survey', 'Step', 'Stage', 'Width', 'Height', 'Length'],
    ['S-1', 1, 'door', 900, 1981, null],
    ['S-1', 2, 'room', 4000, 2400, 5000],
    ['S-2', 1, 'door', 1981, 900, null],
    ['S-2', 3, 'room', 4000, 2400, 5000],
  ];
  const { surveys } = explainMonth(
    monthOf([survey({}), survey({ survey: 's-2', verdict: 'tight' })]),
    routes,
    PIECES,
  );
  expect(surveys[0]!.toCheck).toBeUndefined();
  expect(surveys[1]!.toCheck).toEqual([
    expect.stringMatching(/^step 1: .*look exchanged\.$/),
    expect.stringMatching(/^step 3: Step 2 is missing/),
  ]);
  const page = monthPage(monthOf([...surveys]), WORDS);
  // Once in its line, once in its section; what to do today says that it is to be looked at first.
  expect(page.split('look exchanged.')).toHaveLength(3);
  expect(page).toContain('; the check asks to look at the survey first');
});

// On edge, 600 of the piece, 25 a side of allowance, and the tape off both the door and the piece: 660 and 690.
test('a survey with a tape of its own is explained with that', () => {
  const { surveys } = explainMonth(
    monthOf(['S-1', 'S-2'].map((name) => survey({ survey: name, verdict: 'tight', clearance: 15 }))),
    [
      ['Survey', 'Step', 'Stage', 'Width', 'Height', 'Tape'],
      ['S-1', 1, 'door', 630, 1981, null],
      ['S-2', 1, 'door', 630, 1981, 20],
    ],
    PIECES,
  );
  expect(surveys.map(({ explanation }) => explanation?.remeasure[0]?.needed)).toEqual([660, 690]);
});

test('each that does not go has the drawing of its stage with the piece, or why there is none', () => {
  const [goes, tight, blocked, unmeasured, notFound] = MONTH.surveys.map((s) => s.explanation);
  expect(goes).toBeUndefined();
  for (const explained of [tight, blocked, notFound]) {
    expect(explained?.drawings?.length).toBeGreaterThan(0);
    for (const { svg } of explained!.drawings!) expect(PAGE).toContain(svg);
  }
  expect(tight?.drawings?.[0]?.svg).toContain('class="piece"');
  expect(tight?.drawings?.[0]?.text).toContain('15 a side to spare');
  // What does not pass is not drawn as if it did.
  for (const explained of [blocked, notFound])
    expect(explained?.drawings?.[0]?.svg).not.toContain('class="piece"');
  expect(unmeasured?.drawings).toBeUndefined();
  expect(PAGE).toContain('No drawing: a measure that it needs is missing');
  const ids = ELEMENTS.flatMap(({ attributes }) => attributes['id'] ?? []);
  expect(new Set(ids).size).toBe(ids.length);
});

test('a winder that turns right round is drawn, with no way shown or with one', () => {
  const month = explainMonth(
    monthOf([survey({ survey: 'S-1', verdict: 'no way found', stage: 'winder', clearance: -90 })]),
    [
      ['Survey', 'Step', 'Stage', 'Width', 'Height', 'Turn', 'Rise', 'Going'],
      ['S-1', 1, 'winder', 800, 2000, 180, 200, 220],
    ],
    PIECES,
  );
  const { drawings, undrawn } = month.surveys[0]!.explanation!;
  expect(undrawn).toBeUndefined();
  expect(drawings![0]!.text).toContain('winder, from above');
  expect(drawings![0]!.text).toContain('No way shown for the piece itself');
});

test('what to measure again has the figure it needs', () => {
  // On edge, 600 + 2 x 25 of allowance + 2 x 5 of tape.
  expect(MONTH.surveys[1]?.explanation?.remeasure[0]).toMatchObject({
    step: 1,
    measure: 'Width',
    asMeasured: 630,
    needed: 660,
  });
  expect(PAGE.includes('data-head="As measured">630 mm</td>')).toBe(true);
  expect(PAGE.includes('data-head="Needed">660 mm</td>')).toBe(true);
  expect(MONTH.surveys[3]?.explanation?.remeasure[0]).toMatchObject({ measure: 'Width out' });
});

test('a verdict has its word and a shape of its own', () => {
  const shapes = VERDICTS.map((verdict) => {
    const { text } = verdictSign(verdict);
    expect(text).toContain(`</svg> ${verdict}</span>`);
    return text.replace(/<\/svg>.*/, '');
  });
  expect(new Set(shapes).size).toBe(VERDICTS.length);
});

test('counts add up, and the cautions stand before everything else', () => {
  const page = monthPage(MONTH, WORDS);
  const counted = [...page.matchAll(/<tr><th scope="row">.*?<td class="number">(\d+)<\/td>/g)].map(
    (m) => +m[1]!,
  );
  const all = counted.pop();
  expect(all).toBe(MONTH.surveys.length);
  expect(counted.reduce((a, b) => a + b, 0)).toBe(all);
  for (const caution of [CAUTIONS.route, CAUTIONS.stairs, CAUTIONS.floors]) {
    const said = caution.replace(/"/g, '&quot;');
    expect(page.indexOf(said)).toBeGreaterThan(0);
    expect(page.indexOf(said)).toBeLessThan(page.indexOf('<main>'));
  }
});

describe('what to do today', () => {
  const reason = 'step 1 (door)';
  const month = monthOf([
    survey({ survey: 'A', customer: 'Ann Moss', day: '3' }),
    survey({ survey: 'B', customer: 'Bo Lunt', day: '4', verdict: 'not measured' }),
    survey({ survey: 'C', verdict: 'tight', advise: '7 ft', urgency: 4 }),
    survey({ survey: 'D', verdict: 'cannot go', advise: 'none of the next builds' }),
    survey({ survey: 'E', verdict: 'tight', reason: `measured, and tight: ${reason}`, advise: 'as asked' }),
    survey({ survey: 'F', verdict: 'goes', toCheck: ['step 2: look exchanged.'] }),
    survey({ survey: 'G', verdict: 'tight', reason: `not measured enough: ${reason}` }),
    survey({ survey: 'H', verdict: 'no way found', advise: 'tight: 6 ft', urgency: 3 }),
    // A doubt about what does not go anyway changes nothing of what to do.
    survey({
      survey: 'I',
      verdict: 'tight',
      reason: `measured, and tight: ${reason}`,
      advise: 'as asked',
      toCheck: ['step 2: steep.'],
    }),
  ]);
  const tasks = tasksOf(month);

  test('names every survey that does not simply go once, and no other', () => {
    const named = tasks.flatMap(({ surveys }) => surveys.map((one) => one.survey.survey));
    expect([...named].sort()).toEqual(['B', 'C', 'D', 'E', 'F', 'G', 'H', 'I']);
    const byTitle = tasks.map(({ title, surveys }) => [
      title,
      surveys.map((one) => one.survey.survey).join(),
    ]);
    expect(byTitle).toEqual([
      ['Look at the survey first', 'F'],
      ['Measure again', 'B,G'],
      ['Advise another build', 'H,C'],
      ['Call the customer', 'D'],
      ['Try with a frame or template', 'E,I'],
    ]);
    const trial = tasks[tasks.length - 1]!.surveys;
    expect(trial.map(({ what }) => /the check asks to look at the survey first$/.test(what))).toEqual([
      false,
      true,
    ]);
  });

  test('stands before the lines, each with its customer, its day and a link that leads somewhere', () => {
    const page = monthPage(month, WORDS);
    expect(page.indexOf('What to do today')).toBeLessThan(page.indexOf('A line a survey'));
    expect(page).toContain('<a href="#survey-2">B</a> <span class="who">Bo Lunt, day 4</span>: ');
    const ids = new Set(elementsOf(page).map(({ attributes }) => attributes['id']));
    for (const [, id] of page.matchAll(/href="#([^"]+)"/g)) expect(ids.has(id)).toBe(true);
  });

  test('of a month in which all goes says so', () => {
    expect(monthPage(monthOf([survey({})]), WORDS)).toContain('every survey goes');
  });
});

test('each caution is said once, and no sentence has the name of a function', () => {
  const page = monthPage(MONTH, WORDS);
  for (const caution of Object.values(CAUTIONS)) {
    expect(page.split(caution.replace(/"/g, '&quot;')).length).toBeLessThanOrEqual(2);
  }
  const words = page.slice(page.indexOf('<body>'));
  expect(/CARRY\.|\b[A-Z]{5,}\b/.exec(words)?.[0]).toBeUndefined();
});
