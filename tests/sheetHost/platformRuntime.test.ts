import type { Browser } from 'playwright-core';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { callInCells, HostError, type Given } from '../support/callInCells';
import { sharedBrowser } from '../support/sharedBrowser';
import { openFunctions, type FunctionsPage, type HostCall } from '../support/functionsHost';

jest.setTimeout(120000);

/*
 * The built functions under the platform's own runtime script (custom-functions-runtime.js of the office-js package),
 * in a real browser: what it makes of numbers, errors, tables and promises, with workers and without.
 */
let browser: Browser;
const pages: Partial<Record<'allowed' | 'blocked', FunctionsPage>> = {};

beforeAll(async () => {
  browser = await sharedBrowser();
  for (const workers of ['allowed', 'blocked'] as const)
    pages[workers] = await openFunctions(browser, workers);
});
afterAll(async () => {
  for (const page of Object.values(pages)) await page.close();
  await browser.close();
});

const landing = (length: number): HostCall => ({
  id: 'HALFLANDING',
  values: [900, 100, 950, 2100, 190, 250, length, 700, 25].map((v): unknown => [[v]]).concat([null, null]),
});

/** The cells of an answer: errors inside a table as `#N/A message`. */
const cellsOf = (value: unknown): unknown[][] =>
  (value as unknown[][]).map((row) =>
    row.map((cell) => {
      if (typeof cell !== 'object' || cell === null) return cell;
      const { code, message } = cell as { code: string; message?: string };
      return `${code} ${message ?? ''}`.trim();
    }),
  );

describe.each(['allowed', 'blocked'] as const)('with workers %s', (workers) => {
  const run: FunctionsPage['run'] = (calls, options) => pages[workers]!.run(calls, options);

  test('a short call, a refusal, errors in and out of a table', async () => {
    const { answers } = await run([
      { id: 'PITCH', values: [[[190]], [[250]]], address: 'Route!A1' },
      { id: 'PITCH', values: [[[7]], [[250]]] },
      { id: 'TOMM', values: [[['30 in'], [null], [0], [{ type: 'CustomFunctionError', code: '#DIV/0!' }]]] },
    ]);
    expect(answers[0]).toMatchObject({ failed: false, value: [[expect.any(Number)]] });
    // 7 is the runtime's number for #VALUE!.
    expect(answers[1]).toMatchObject({ failed: true, errorCode: 7 });
    expect(String(answers[1]!.value)).toMatch(/^rise is 7: allowed is/);
    expect(cellsOf(answers[2]!.value)).toEqual([
      [762],
      ['#N/A measure is not measured'],
      [0].map(() => expect.stringMatching(/^#VALUE! measure is 0/)),
      ['#DIV/0!'],
    ]);
  });

  test('long calls are answered as they are in a cell, and a refusal keeps its code and words', async () => {
    const route = [
      ['Step', 'Stage', 'Width', 'Height'],
      [1, 'door', 125, 1981],
      [2, 'door', null, 1981],
    ];
    const pieces = [
      ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
      ['one-piece', 'slate', 1830, 930, 25, 121, 1],
    ];
    const { answers } = await run([
      landing(1500),
      landing(1500),
      { id: 'VERDICT', values: [route, pieces, null, null] },
      { id: 'CHECKROUTE', values: [route] },
      { id: 'VERDICT', values: [[['nothing']], pieces, null, null] },
      { id: 'WORKING', values: [[['PITCH']], [[[190]]]] },
    ]);
    const expected = callInCells('HALFLANDING', 900, 100, 950, 2100, 190, 250, 1500, 700, 25);
    expect(answers[0]).toMatchObject({ failed: false, value: expected });
    expect(answers[1]!.value).toEqual(answers[0]!.value);
    expect(answers[2]!.value).toEqual(callInCells('VERDICT', route, pieces));
    expect(answers[3]!.value).toEqual(callInCells('CHECKROUTE', route));
    const refused = callInCells('VERDICT', [['nothing']], pieces)[0]![0] as HostError;
    expect(answers[4]).toMatchObject({ failed: true, value: refused.message, errorCode: 7 });
    expect((answers[5]!.value as unknown[][]).at(-1)).toEqual([
      'Refused',
      'going is not measured',
      '',
      '',
      '',
    ]);
  });

  test('1,000 cells at once are all answered, each with its own result', async () => {
    const width = (i: number): number => 838 + i;
    const { answers } = await run(
      Array.from({ length: 1000 }, (_, i) => ({
        id: 'CORNER',
        values: [[[width(i)]], [[900]], [[2400]], [[1830]], [[930]], [[25]], null],
      })),
    );
    for (const i of [0, 1, 500, 999]) {
      expect(answers[i]!.value).toEqual(callInCells('CORNER', width(i), 900, 2400, 1830, 930, 25));
    }
    expect(answers.filter((answer) => answer === null || answer.failed)).toEqual([]);
  });

  test('a call that was taken back is given no answer', async () => {
    const table: HostCall = {
      ...landing(1500),
      values: landing(1500).values.map((value, i) =>
        i === 6 ? Array.from({ length: 3000 }, (_, k) => [1400 + k / 10]) : value,
      ),
    };
    const { answers } = await run([table], { cancelAfter: 100 });
    expect(answers).toEqual([null]);
    const { answers: next } = await run([landing(1501)]);
    expect(next[0]).toMatchObject({ failed: false });
  });
});

/** What a host hands over for the arguments of an example: each as a range, what is left out as null. */
function handedOver({ arguments: described, example }: (typeof FUNCTIONS)[number]): unknown[] {
  const range = (value: unknown): unknown => (Array.isArray(value) ? value : [[value]]);
  return described.map((argument, i) => {
    if (argument.repeating) return example.arguments.slice(i).map(range);
    const value: unknown = example.arguments[i];
    return value === undefined || value === null ? null : range(value);
  });
}

const near = (row: readonly unknown[]): unknown[] =>
  row.map((cell) => (typeof cell === 'number' ? Number(cell.toPrecision(12)) : cell));

test('every example of every function gives through the runtime what it gives in a cell', async () => {
  const { answers } = await pages.allowed!.run(FUNCTIONS.map((f) => ({ id: f.id, values: handedOver(f) })));
  FUNCTIONS.forEach(({ id, example }, i) => {
    const cells = callInCells(id, ...(example.arguments as Given[]));
    expect([id, answers[i]?.failed]).toEqual([id, false]);
    // The last bit of a figure is the engine's, and that of the browser is another one.
    expect([id, cellsOf(answers[i]!.value).map(near)]).toEqual([id, cellsOf(cells).map(near)]);
  });
});

test('nothing, 0 and errors for every first argument are answered as in a cell, none by a fault', async () => {
  // How the runtime says an error: its number for the code, and the message. 1 is #N/A, 5 #DIV/0!, 7 #VALUE!.
  const CODES: Readonly<Record<string, number>> = { '#N/A': 1, '#DIV/0!': 5, '#VALUE!': 7 };
  const firsts: readonly (readonly [unknown, Given])[] = [
    [[[null]], null],
    [[[0]], 0],
    [[['']], ''],
    [[['soon']], 'soon'],
    [[[{ type: 'CustomFunctionError', code: '#DIV/0!' }]], new HostError('#DIV/0!')],
  ];
  const calls = FUNCTIONS.flatMap((f) => firsts.map(([sent, given]) => ({ f, sent, given })));
  const { answers } = await pages.allowed!.run(
    calls.map(({ f, sent }) => ({ id: f.id, values: [sent, ...handedOver(f).slice(1)] })),
  );
  calls.forEach(({ f: { id, example }, given }, i) => {
    const cells = callInCells(id, given, ...(example.arguments.slice(1) as Given[]));
    const [only] = cells[0]!;
    const answer = answers[i]!;
    const what = `${id} of ${JSON.stringify(given)}`;
    if (cells.length === 1 && cells[0]!.length === 1 && only instanceof HostError) {
      expect([what, answer.failed, answer.errorCode, answer.value]).toEqual([
        what,
        true,
        CODES[only.code],
        only.message,
      ]);
    } else expect([what, answer.failed, cellsOf(answer.value)]).toEqual([what, false, cellsOf(cells)]);
  });
});

test('200 long calls at once: all are answered, and the page has its turn all the while', async () => {
  const { answers, turns } = await pages.allowed!.run(
    // 40 different ones, each from five cells: what is in flight is computed once.
    Array.from({ length: 200 }, (_, i) => landing(1500 + (i % 40) * 400)),
  );
  expect(answers.filter((answer) => answer === null)).toEqual([]);
  for (let i = 0; i < 40; i++) expect(answers[i + 40]!.value).toEqual(answers[i]!.value);
  // How long the longest pause is depends on what else the machine does: the benchmark tells it.
  expect(turns).toBeGreaterThan(20);
});

test('every function is known to the runtime', async () => {
  const known = await pages.allowed!.page.evaluate(
    'Object.keys(CustomFunctions._association ? CustomFunctions._association.mappings : {})',
  );
  expect(FUNCTIONS.map(({ id }) => id).filter((id) => !(known as string[]).includes(id))).toEqual([]);
});

// The runtime script itself looks for a library of old browsers (MicrosoftAjax.js), which is not served here.
const OF_THE_RUNTIME = /MicrosoftAjax|status of 404/;

test('the page complains of nothing but the workers that it is not allowed', () => {
  const ours = (page: FunctionsPage) => page.complaints.filter((text) => !OF_THE_RUNTIME.test(text));
  expect(ours(pages.allowed!)).toEqual([]);
  expect(ours(pages.blocked!).filter((text) => !/worker/i.test(text))).toEqual([]);
  expect(ours(pages.blocked!).some((text) => /worker-src/.test(text))).toBe(true);
});
