import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import path from 'node:path';
import { FUNCTIONS } from '../../src/worksheet/functions';
import { BUILD_NAMES, SAMPLE_PIECES, type BuildName } from '../../src/sample/pieces';
import { routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { describeSampleWorkbook, sampleWorkbook } from '../../src/sample/sampleWorkbook';
import { VERDICTS } from '../../src/core/route/verdict';
import { VERDICT_CLASSES, verdictClassOf } from '../../src/core/route/verdictClass';
import { nextBuilds } from '../../src/sample/sheets/otherBuildsSheet';
import { readAddress } from '../../src/sheetHost/address';
import { isCellError, type CellValue } from '../../src/sheetHost/hostValues';
import { loadBundle } from '../../src/sheetHost/loadBundle';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import type { SheetHost } from '../../src/sheetHost/sheetHost';
import { callInCells } from '../support/callInCells';

jest.setTimeout(60000);

const DIST = path.resolve(__dirname, '../../dist');
// Landings and winders are searched for motions, which `npm run month` has time for and this has not.
const SEARCHED = /landing|winder/;
const SURVEYS = SAMPLE_SURVEYS.filter(
  (survey) => survey.slips || !survey.steps.some((step) => SEARCHED.test(step.stage)),
);

const book = describeSampleWorkbook(SURVEYS);
const sheetOf = (name: string) => book.sheets.find((s) => s.description.name === name)!.description;
const formulas = book.sheets.flatMap(({ description }) => [
  ...description.cells.flatMap(({ value }) =>
    typeof value === 'object' && value !== null && 'formula' in value ? [value.formula] : [],
  ),
  ...description.tables.flatMap((t) => t.columns.flatMap((c) => (c.formula ? [c.formula] : []))),
]);

let host: SheetHost;
let month: CellValue[][];
let verdicts: CellValue[][];

/** The rows below the header row that begins with these words, by name, down to the first that is empty there. */
function below(cells: readonly (readonly CellValue[])[], headers: readonly string[]): CellValue[][] {
  const startsAt = (row: readonly CellValue[]): number =>
    row.findIndex((_, c) => headers.every((h, i) => row[c + i] === h));
  const top = cells.findIndex((row) => startsAt(row) >= 0);
  const column = startsAt(cells[top]!);
  const rows = cells.slice(top + 1).map((row) => row.slice(column));
  const end = rows.findIndex((row) => row[0] === null || row[0] === '');
  return end < 0 ? rows : rows.slice(0, end);
}

const sheet = (name: string): CellValue[][] => host.read(name, host.used(name)!);
const at = (name: string, address: string): CellValue => {
  const { row, column } = readAddress(address)!;
  return host.value(name, row, column);
};

beforeAll(async () => {
  const opened = await openWorkbook(await sampleWorkbook(SURVEYS));
  if (!opened.ok) throw new Error(opened.reason);
  host = opened.host;
  host.register(await loadBundle(DIST));
  const { circular, unreadable } = host.recalculate();
  expect([circular, unreadable]).toEqual([[], []]);
  month = sheet('Month');
  verdicts = sheet('Verdicts');
});

test('enough of the month is left to look at: every kind but stairs that turn', () => {
  expect(SURVEYS.length).toBeGreaterThanOrEqual(35);
});

test('the next builds follow the one asked for in the order of preference', () => {
  const orders = nextBuilds(SAMPLE_SURVEYS);
  for (const { id, build } of SAMPLE_SURVEYS) {
    const places = orders
      .filter(([survey]) => survey === id)
      .map(([, b]) => BUILD_NAMES.indexOf(b as BuildName));
    const own = BUILD_NAMES.indexOf(build);
    expect(places).toEqual([1, 2, 3].map((n) => own + n).filter((n) => n < BUILD_NAMES.length));
  }
});

test('every CARRY function that it calls is one of the add-in, and most of them are called', () => {
  const ids = new Set(formulas.flatMap((f) => [...f.matchAll(/CARRY\.([A-Z]+)/g)].map((m) => m[1]!)));
  const known = new Set(FUNCTIONS.map((f) => f.id));
  expect([...ids].filter((id) => !known.has(id))).toEqual([]);
  expect(ids.size).toBeGreaterThan(30);
});

test('no cell shows an error', () => {
  for (const name of host.sheets()) {
    expect([name, sheet(name).flat().filter(isCellError)]).toEqual([name, []]);
  }
});

test('formulas and texts keep to what a cell can hold', () => {
  for (const formula of formulas) expect(formula.length).toBeLessThan(8192);
  const texts = book.sheets.flatMap(({ description }) =>
    description.cells.flatMap(({ value }) => (typeof value === 'string' ? [value] : [])),
  );
  for (const text of texts) expect(text.length).toBeLessThanOrEqual(255);
});

test('each sheet says what it is and carries a caution', () => {
  for (const { description } of book.sheets) {
    const first = description.cells.filter((c) => /^A[123]$/.test(c.address)).map((c) => c.value);
    expect([description.name, first.length]).toEqual([description.name, 3]);
  }
});

test('the words of stages and builds can be picked from lists', () => {
  expect(sheetOf('Route').lists).toHaveLength(1);
  expect(sheetOf('Orders').lists).toHaveLength(1);
  expect(sheetOf('Quote').lists.length).toBeGreaterThanOrEqual(3);
});

test('verdicts are shown in words, and each word has a colour of its own', () => {
  const fills = sheetOf('Start').conditions.slice(0, VERDICTS.length);
  const own = 'IF(LEFT($A10,4)="goes","goes",IF(LEFT($A10,5)="tight","tight",$A10))';
  expect(fills.map((c) => c.formula)).toEqual(VERDICTS.map((v) => `${own}="${v}"`));
  expect(new Set(fills.map((c) => c.style.fill)).size).toBe(VERDICTS.length);
});

test('the month judges each survey once, in a known verdict, and the counts add up to them', () => {
  const judged = below(verdicts, ['Survey', 'Build', 'Verdict']);
  expect(judged.map((row) => row[0])).toEqual(SURVEYS.map((s) => s.id));
  expect(judged.map((row) => row[1])).toEqual(SURVEYS.map((s) => s.build));
  const counts = below(sheet('Start'), ['Verdict', 'Surveys']);
  for (const [i, one] of VERDICT_CLASSES.entries()) {
    const count = judged.filter((row) => verdictClassOf(String(row[2]), String(row[10])) === one).length;
    expect(counts[i]!.slice(0, 2)).toEqual([one.name, count]);
  }
  expect(counts[VERDICT_CLASSES.length]![1]).toBe(SURVEYS.length);
  // What only goes if a slip is none is no green one.
  expect(counts[1]).toEqual(['goes as typed, but look first', expect.any(Number), expect.any(String)]);
  expect(counts[1]![1]).toBeGreaterThan(0);
});

test('a survey with a measure that is missing or cannot be taken is not measured', () => {
  const judged = new Map(below(verdicts, ['Survey', 'Build', 'Verdict']).map((row) => [row[0], row[2]]));
  const unreadable = SURVEYS.filter((s) =>
    s.slips?.some((slip) => /missing|unit|comma|inches|misspelt/.test(slip.kind)),
  );
  expect(unreadable.length).toBeGreaterThanOrEqual(6);
  for (const { id } of unreadable) expect([id, judged.get(id)]).toEqual([id, 'not measured']);
});

test('the advice is the first of the next builds with a better verdict, and what is tight is not swapped for what is as tight', () => {
  const all = below(sheet('Other builds'), ['Survey', 'Build', 'Verdict']);
  expect(all.map((row) => row.slice(0, 2))).toEqual(nextBuilds(SURVEYS));
  const judged = below(verdicts, ['Survey', 'Build', 'Verdict']);
  const advised = below(month, ['Advise', 'Next step']);
  expect(advised).toHaveLength(judged.length);
  judged.forEach(([survey, , verdict, , , , , , , , reason], i) => {
    const asTyped = String(reason).startsWith('as typed, but look first: ');
    const first = (word: string) => all.find((row) => row[0] === survey && row[2] === word)?.[1];
    const tight = first('tight');
    const expected =
      verdict === 'goes'
        ? asTyped
          ? 'as asked, if what Route marks is right'
          : 'as asked'
        : verdict === 'not measured'
          ? 'measure first'
          : (first('goes') ??
            (verdict === 'tight'
              ? 'as asked, if it passes the trial'
              : tight === undefined
                ? 'none of the next builds'
                : `tight: ${String(tight)}`));
    expect([survey, advised[i]![0]]).toEqual([survey, expected]);
  });
});

test('no next step says otherwise than the advice or the reason beside it', () => {
  const rows = below(verdicts, ['Survey', 'Build', 'Verdict', 'Clearance']).map((row) => ({
    survey: row[0],
    verdict: row[2],
    reason: String(row[10]),
  }));
  const advised = below(month, ['Advise', 'Next step']);
  rows.forEach(({ survey, verdict, reason }, i) => {
    const [advice, step] = advised[i]!.map(String) as [string, string];
    if (advice === 'none of the next builds')
      expect([survey, step]).toEqual([survey, expect.not.stringMatching(/the other build/)]);
    if (/the check asks/.test(reason))
      expect([survey, step]).toEqual([survey, expect.stringMatching(/Route/)]);
    else if (verdict === 'goes') expect([survey, step]).toEqual([survey, 'plan people, aids and floor']);
  });
  // The slips that leave a survey judged, and that its verdict must not hide.
  const slipped = SURVEYS.filter((s) =>
    s.slips?.some(({ kind }) => /exchanged|ends before|left out|leaf|square/.test(kind)),
  );
  expect(slipped.length).toBeGreaterThanOrEqual(6);
  for (const { id } of slipped) {
    expect(rows.find(({ survey }) => survey === id)!.reason).toMatch(/the check asks to look at step/);
  }
});

test('what to re-measure first begins with what is not measured, each survey once', () => {
  const list = below(sheet('Measure again'), ['No.', 'Re-measure']).filter((row) => row[1] !== '');
  const missing = below(verdicts, ['Survey', 'Build', 'Verdict']).filter((row) => row[2] === 'not measured');
  expect(list.slice(0, missing.length).map((row) => row[1])).toEqual(missing.map((row) => row[0]));
  expect(new Set(list.map((row) => row[1])).size).toBe(list.length);
});

test('the job holds the route and the pieces chosen, empty cells empty', () => {
  const chosen = SURVEYS.find((s) => s.id === at('Quote', 'B5'))!;
  const empty = (cell: CellValue): CellValue => (cell === '' ? null : cell);
  const route = below(sheet('Job'), ['Survey', 'Step', 'Stage']).map((row) =>
    row.slice(0, ROUTE_HEADINGS.length).map(empty),
  );
  expect(route).toEqual(routeRows([chosen]));
  const pieces = below(sheet('Job'), ['Build', 'Piece', 'Length']).map((row) => row.slice(0, 7));
  expect(pieces).toEqual(
    SAMPLE_PIECES.filter((p) => p.build === chosen.build).map((p) => [
      p.build,
      p.piece,
      p.length,
      p.breadth,
      p.thickness,
      p.mass,
      p.count,
    ]),
  );
});

test('the quote agrees with the month, and its total is the sum of quantity times price', () => {
  const judged = below(verdicts, ['Survey', 'Build', 'Verdict']).find((row) => row[0] === at('Quote', 'B5'))!;
  expect(at('Quote', 'B13')).toBe(judged[2]);
  const lines = below(sheet('Quote'), ['What', 'Quantity', 'Each, price units', 'Amount, price units']);
  const total = lines.pop()!;
  const sum = lines.reduce((s, row) => s + Number(row[1]) * Number(row[2]), 0);
  expect(sum).toBeGreaterThan(100);
  expect(total[3]).toBeCloseTo(sum, 6);
});

// Values of the UK National Annex from memory, as in the list of loads; the rest by hand.
test('the floors sheet holds the table against the code', () => {
  const rows = new Map(below(sheet('Floors'), ['Check', 'Value', 'Unit']).map((row) => [row[0], row]));
  const mass = 197 + 92 + 4 * 9 + 34 + 18;
  expect(rows.get('Mass of the table')![1]).toBe(mass);
  const load = rows.get('Load over its footprint')!;
  const borne = (mass * 9.80665) / 1000 / (2.5 * 1.38);
  expect(load[1]).toBe(Math.ceil(1000 * borne) / 1000);
  expect([load[3], load[5]]).toEqual([1.5, 'within, and no permission']);
  const share = rows.get('Share of the lower end')!;
  expect(share[5]).toMatch(/^over/);
  // Held at its lower edge a slate of 1210 on edge has its centre 605 above: 1/2 + 605/1500 x 190/240 of 197 kg.
  expect(rows.get('Centre of mass over the grip line')![1]).toBe(605);
  // What is borne is shown rounded up, a mass to the first place.
  expect(share[1]).toBe(Math.ceil(10 * 197 * (0.5 + (605 / 1500) * (190 / 240))) / 10);
  // Beside 25 of 900 one side has room for a body; between the ends 1130 holds one more, two treads apart.
  const carriers = rows.get('Carriers at the heaviest piece')!;
  expect(carriers.slice(1, 6)).toEqual([3, 'people', 3, expect.any(String), 'within, and no permission']);
});

/** What a function answers to what stands on the sheets. */
const answered = (id: string, ...given: unknown[]): CellValue[][] => callInCells(id, ...(given as never[]));

test('times are those of the function, rounded up to a tenth wherever they stand, and what is priced is what is shown', () => {
  const job = sheet('Job');
  const top = job.findIndex((row) => row.includes('Stage'));
  const left = job[top]!.indexOf('Survey');
  const jobRoute = job.slice(top, top + 17).map((row) => row.slice(left, left + ROUTE_HEADINGS.length));
  const rates = below(sheet('Quote'), ['Rate', 'Minutes']).map((row) => row.slice(0, 2));
  const pieceHeaders = ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'];
  const pieces = [pieceHeaders, ...below(sheet('Pieces'), pieceHeaders).map((row) => row.slice(0, 7))];
  const [header, ...exact] = answered(
    'JOBTIME',
    jobRoute,
    pieces,
    at('Quote', 'B11'),
    rates,
    at('Quote', 'B12'),
  );
  const roundedUp = exact.map((row) =>
    row.map((cell) => (typeof cell === 'number' ? Math.ceil(cell * 10 - 1e-8) / 10 : cell)),
  );
  expect(roundedUp).not.toEqual(exact);
  // As JOBTIME gives them, in the order of the pieces; beside the advice rounded up.
  expect(below(job, header as string[]).map((row) => row.slice(0, 5))).toEqual(exact);
  const shown = below(job, ['Build', 'Carry, min', 'Set-up, min']).map((row) => row.slice(0, 5));
  for (const row of shown) expect(roundedUp).toContainEqual(row);
  expect(shown).toHaveLength(roundedUp.length);
  const quoted = roundedUp.find((row) => row[0] === at('Quote', 'B10'))!;
  expect([19, 20, 21, 22].map((row) => at('Quote', `B${row}`))).toEqual(quoted.slice(1));
  const lines = below(sheet('Quote'), ['What', 'Quantity', 'Each, price units']);
  expect(lines[0]!.slice(0, 2)).toEqual(['Person-hours', quoted[3]]);
});

test('the sheet for the crew tells no more clearance than there is, and no less raise or load', () => {
  const crew = sheet('Crew');
  const top = crew.findIndex((row) => row[0] === 'Step');
  const given = crew.slice(top).map((row) => row.slice(13, 25));
  const told = crew.slice(top, top + 37).map((row) => row.slice(0, 12));
  const moves = given.filter((row) => row[0] !== null && row[0] !== undefined && row[0] !== '');
  expect(moves.length).toBeGreaterThan(4);
  // Of the heaviest piece of the job, as the function answers.
  const rounding = [, , , , , Math.ceil, Math.floor, , , Math.ceil];
  let rounded = 0;
  moves.forEach((row, i) =>
    row.forEach((cell, c) => {
      const round = rounding[c];
      const isFigure = i > 0 && round && typeof cell === 'number';
      const expected = isFigure ? round(cell + (c === 6 ? 1e-9 : -1e-9)) : cell;
      if (isFigure && expected !== cell) rounded++;
      expect([i, c, told[i]![c]]).toEqual([i, c, expected]);
    }),
  );
  expect(rounded).toBeGreaterThan(1);
  // Below the last move the page is empty, and no error stands there.
  for (const row of told.slice(moves.length)) expect(row.every((cell) => cell === '')).toBe(true);
});

// Statics and EN 1995-1-1 (the values that the joist's own tests hold), worked by hand: C24 50 x 200, span 3600, 400 apart.
test('the floors sheet puts on a joist what stands on it, evenly or rocking', () => {
  const rows = new Map(below(sheet('Floors'), ['Check', 'Value', 'Unit']).map((row) => [row[0], row]));
  const weight = ((197 + 92 + 4 * 9 + 34 + 18) * 9.80665) / 1000;
  const byHand = (point: number, at: readonly number[]): number => {
    // A load on one joist: no system factor. All loads at kmod medium 0.8, what stays at permanent 0.6.
    const use = (line: number, factor: number, kmod: number): number => {
      const moment = (x: number): number =>
        (line * x * (3600 - x)) / 2 +
        at.reduce(
          (sum, a) => sum + (factor * point * 1000 * Math.min(x, a) * (3600 - Math.max(x, a))) / 3600,
          0,
        );
      const places = Array.from({ length: 3599 }, (_, i) => moment(i + 1));
      return Math.max(...places) / ((50 * 200 ** 2) / 6) / ((kmod * 24) / 1.3);
    };
    const dead = 0.5 * 0.4;
    const imposed = 1.5 * 0.4;
    // At mid-span, with E and G of C24: 5wL^4/384EI and Pa(3L^2 - 4a^2)/48EI, and M/(GA/1.2) for shear; at most span/300.
    const [bending, shear] = [(11000 * 50 * 200 ** 3) / 12, (690 * 50 * 200) / 1.2];
    const sag = at.reduce(
      (sum, x) => {
        const a = Math.min(x, 3600 - x);
        return (
          sum +
          (point * 1000 * a * (3 * 3600 ** 2 - 4 * a ** 2)) / (48 * bending) +
          (point * 1000 * a) / 2 / shear
        );
      },
      (5 * (dead + imposed) * 3600 ** 4) / (384 * bending) + ((dead + imposed) * 3600 ** 2) / 8 / shear,
    );
    return Math.max(use(1.35 * dead + 1.5 * imposed, 1.5, 0.8), use(1.35 * dead, 1.35, 0.6), sag / 12);
  };
  const even = rows.get('Joist, even: two feet where they stand')![1] as number;
  const rocking = rows.get('Joist, rocking on two: one of them where it stands')![1] as number;
  const midSpan = rows.get('Joist, rocking on two: one of them at mid-span')![1] as number;
  for (const [use, found] of [
    [byHand(weight / 4, [1050, 2550]), even],
    [byHand(weight / 2, [1050]), rocking],
    [byHand(weight / 2, [1800]), midSpan],
  ] as const) {
    // The greatest sag may be beside mid-span, by less than a hundredth.
    expect(found).toBeGreaterThan(use - 1e-6);
    expect(found).toBeLessThan(use * 1.01);
  }
  expect([even, rocking, midSpan].map((use) => Number(use.toFixed(2)))).toEqual([0.75, 0.75, 0.89]);
});
