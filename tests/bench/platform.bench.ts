import type { Browser } from 'playwright-core';
import { ROUTE_HEADINGS } from '../../src/core/survey/table/readHeaders';
import { SAMPLE_PIECES } from '../../src/sample/pieces';
import { routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { sampleWorkbook } from '../../src/sample/sampleWorkbook';
import { nextBuilds } from '../../src/sample/sheets/otherBuildsSheet';
import type { Bundle } from '../../src/sheetHost/bundle';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { loadBundle } from '../../src/sheetHost/loadBundle';
import { builtFolder } from '../support/builtFolder';
import { launchBrowser } from '../support/browser';
import { openFunctions, type Answering, type HostCall } from '../support/functionsHost';
import { longestTask } from '../support/longestTask';
import type { Figure } from './figure';

/*
 * The built functions under the platform's own runtime script in a real browser. Of blocks of the main thread the
 * processor time is told, which other programs do not lengthen; of all else what a clock says.
 * CARRY_MINUTES=5 makes the recalculation as long as that; CARRY_LANDINGS=1000 the landing cells as many.
 */
const MINUTES = Number(process.env['CARRY_MINUTES'] ?? 0.5);
const LANDINGS = Number(process.env['CARRY_LANDINGS'] ?? 100);
const CORNERS = 10_000;

const one = (value: unknown): unknown[][] => [[value]];
const corner = (i: number): HostCall => ({
  id: 'CORNER',
  values: [...[800 + i / 20, 900, 2400, 1830, 930, 25].map(one), null],
});
const landing = (i: number): HostCall => ({
  id: 'HALFLANDING',
  values: [...[900, 100, 950, 2100, 190, 250, 1400 + i / 4, 700, 25].map(one), null, null],
});

const month = [[...ROUTE_HEADINGS], ...routeRows(SAMPLE_SURVEYS)];
const pieces = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ...SAMPLE_PIECES.map((p) => [p.build, p.piece, p.length, p.breadth, p.thickness, p.mass, p.count]),
];
const surveys = (orders: readonly (readonly string[])[], tape: number): HostCall => ({
  id: 'SURVEYS',
  values: [month, pieces, [['Survey', 'Build'], ...orders], one(25), one(tape)],
});
const ordered = SAMPLE_SURVEYS.map(({ id, build }) => [id, build]);
const bothSheets = (tape: number): HostCall[] => [
  surveys(ordered, tape),
  surveys(nextBuilds(SAMPLE_SURVEYS), tape),
];

/** Every call that the sample workbook makes, with the arguments that it gets once all others are answered. */
async function callsOfSample(): Promise<HostCall[]> {
  const calls = new Map<string, HostCall>();
  const bundle = await loadBundle(builtFolder());
  const functions: Bundle['functions'] = new Map(
    [...bundle.functions].map(([name, described]) => [
      name,
      {
        ...described,
        call: (...given) => {
          const call = { id: described.id, values: given.slice(0, described.parameters.length) };
          calls.set(JSON.stringify(call), call);
          return described.call(...given);
        },
      },
    ]),
  );
  const opened = await openWorkbook(await sampleWorkbook());
  if (!opened.ok) throw new Error(opened.reason);
  opened.host.register({ ...bundle, functions });
  opened.host.recalculate();
  return [...calls.values()];
}

const rounded = (value: number): number => Math.round(value * 10) / 10;

export async function run(): Promise<Figure[]> {
  builtFolder();
  const browser = await launchBrowser();
  const figures: Figure[] = [];
  const add = (name: string, figure: number, unit: string, goal?: number): void => {
    figures.push({ name, figure: rounded(figure), unit, ...(goal === undefined ? {} : { goal }) });
  };
  const measured = async (how: Answering, calls: readonly HostCall[]) => {
    const page = await openFunctions(browser, how);
    // Once to warm up, as a workbook that has been open for a while.
    await page.run([corner(-1), landing(-1)]);
    const { result, longest } = await longestTask(browser, page.page, () => page.run(calls));
    await page.close();
    if (result.answers.some((answer) => answer === null)) throw new Error('a call was not answered');
    return { longest, time: result.time };
  };
  try {
    const batches: readonly (readonly [string, readonly HostCall[]])[] = [
      [`${CORNERS} cells of CORNER`, Array.from({ length: CORNERS }, (_, i) => corner(i))],
      [`${LANDINGS} cells of HALFLANDING`, Array.from({ length: LANDINGS }, (_, i) => landing(i))],
      ["the sample's two sheets of verdicts", bothSheets(5)],
    ];
    for (const [name, calls] of batches) {
      const own = await measured('nothing', calls);
      const ours = await measured('allowed', calls);
      add(`longest block, ${name}`, ours.longest, 'ms');
      add(`of it more than the platform's own, ${name}`, Math.max(0, ours.longest - own.longest), 'ms', 50);
      if (calls.length === CORNERS) {
        const atOnce = await measured('at once', calls);
        add(`longest block, ${name}, each at once`, atOnce.longest, 'ms');
        add(`time with workers over time at once, ${name}`, ours.time / atOnce.time, 'x', 1.2);
      } else add(`time, ${name}`, ours.time / 1000, 's', calls.length === 2 ? 15 : undefined);
    }
    const sample = await callsOfSample();
    const opened = await measured('allowed', sample);
    add(`the sample workbook opened, ${sample.length} calls, until the last value`, opened.time / 1000, 's');
    figures.push(...(await recalculated(browser)));
  } finally {
    await browser.close();
  }
  return figures;
}

/** Recalculates for some minutes; heap and workers after the first fifth against those at the end. */
async function recalculated(browser: Browser): Promise<Figure[]> {
  const page = await openFunctions(browser);
  const session = await page.page.context().newCDPSession(page.page);
  const heap = async (): Promise<number> => {
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    return usedSize / 2 ** 20;
  };
  const begun = performance.now();
  let rounds = 0;
  const until = async (share: number): Promise<void> => {
    while (performance.now() - begun < MINUTES * 60_000 * share) {
      const calls = Array.from({ length: 500 }, (_, i) => corner(rounds * 500 + i));
      await page.run([...calls, landing(rounds % 50), landing((rounds % 50) + 1)]);
      rounds++;
    }
  };
  await until(0.2);
  const [first, workers] = [await heap(), page.page.workers().length];
  await until(1);
  const [last, workersLast] = [await heap(), page.page.workers().length];
  await page.close();
  return [
    { name: `${MINUTES} minutes of recalculation, rounds of 502 calls`, figure: rounds, unit: '' },
    { name: 'heap at the end over that after a fifth', figure: last / first, unit: 'x', goal: 1.05 },
    { name: 'workers more at the end', figure: workersLast - workers, unit: '', goal: 0 },
  ];
}
