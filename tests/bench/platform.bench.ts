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
import { openFunctions, type Answering, type FunctionsPage, type HostCall } from '../support/functionsHost';
import { longestTask } from '../support/longestTask';
import type { Figure } from './figure';
import { corner, landing, oneCell } from './hostCalls';

/*
 * The built functions under the platform's own runtime script in a real browser. Of blocks of the main thread the
 * processor time is told, which other programs do not lengthen; of all else what a clock says.
 * CARRY_LANDINGS=1000 makes the landing cells as many; CARRY_ONLY=CORNER measures only what has that word in its name.
 */
const LANDINGS = Number(process.env['CARRY_LANDINGS'] ?? 100);
const ONLY = process.env['CARRY_ONLY'] ?? '';
const CORNERS = 10_000;

const month = [[...ROUTE_HEADINGS], ...routeRows(SAMPLE_SURVEYS)];
const pieces = [
  ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
  ...SAMPLE_PIECES.map((p) => [p.build, p.piece, p.length, p.breadth, p.thickness, p.mass, p.count]),
];
const surveys = (orders: readonly (readonly string[])[], tape: number): HostCall => ({
  id: 'SURVEYS',
  values: [month, pieces, [['Survey', 'Build'], ...orders], oneCell(25), oneCell(tape)],
});
const ordered = SAMPLE_SURVEYS.map(({ id, build }) => [id, build]);
const bothSheets = (tape: number): HostCall[] => [
  surveys(ordered, tape),
  surveys(nextBuilds(SAMPLE_SURVEYS), tape),
];

/** The same calls where the first door of the month is 1 mm wider. */
function withOneChange(calls: readonly HostCall[]): HostCall[] {
  const width = month[0]?.indexOf('Width') ?? -1;
  const first = month.findIndex((row, i) => i > 0 && typeof row[width] === 'number');
  const changed = month.map((row, i) =>
    i === first ? row.map((cell, j) => (j === width ? Number(cell) + 1 : cell)) : row,
  );
  return calls.map((call) => ({ ...call, values: [changed, ...call.values.slice(1)] }));
}

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
  const opened = async <T>(how: Answering, measure: (page: FunctionsPage) => Promise<T>): Promise<T> => {
    const page = await openFunctions(browser, how);
    // Once to warm up, as a workbook that has been open for a while.
    await page.run([corner(-1), landing(-1)]);
    const result = await measure(page);
    await page.close();
    return result;
  };
  const timed = async (page: FunctionsPage, calls: readonly HostCall[]) => {
    const { result, longest } = await longestTask(browser, page.page, () => page.run(calls));
    if (result.answers.some((answer) => answer === null)) throw new Error('a call was not answered');
    return { longest, time: result.time };
  };
  try {
    const batches: readonly (readonly [string, (round: number) => readonly HostCall[]])[] = [
      [
        `${CORNERS} cells of CORNER`,
        (round) => Array.from({ length: CORNERS }, (_, i) => corner(round * CORNERS + i)),
      ],
      [`${LANDINGS} cells of HALFLANDING`, () => Array.from({ length: LANDINGS }, (_, i) => landing(i))],
      ["the sample's two sheets of verdicts", () => bothSheets(5)],
    ];
    for (const [name, callsOf] of batches.filter(([name]) => name.includes(ONLY))) {
      const calls = callsOf(0);
      const own = await opened('nothing', (page) => timed(page, calls));
      // Light calls a second and a third time, with other values: the engine has seen the code by then.
      const rounds = calls.length === CORNERS ? [0, 1, 2] : [0];
      const eachRound = (how: Answering) =>
        opened(how, async (page) => {
          const all: Awaited<ReturnType<typeof timed>>[] = [];
          for (const round of rounds) all.push(await timed(page, callsOf(round)));
          return all;
        });
      const ours = await eachRound('allowed');
      const longest = Math.max(...ours.map((one) => one.longest));
      add(`longest block, ${name}`, longest, 'ms');
      add(`of it more than the platform's own, ${name}`, Math.max(0, longest - own.longest), 'ms', 50);
      if (rounds.length > 1) {
        const atOnce = await eachRound('at once');
        add(`longest block, ${name}, each at once`, Math.max(...atOnce.map((one) => one.longest)), 'ms');
        for (const round of rounds) {
          const ratio = (ours[round]?.time ?? NaN) / (atOnce[round]?.time ?? NaN);
          const again = ['', ', a second time', ', a third time'][round] ?? '';
          add(`time with workers over time at once, ${name}${again}`, ratio, 'x', 1.2);
        }
      } else add(`time, ${name}`, (ours[0]?.time ?? NaN) / 1000, 's', calls.length === 2 ? 15 : undefined);
      if (calls.length === 2) {
        const again = await opened('allowed', async (page) => {
          await page.run(bothSheets(5));
          return timed(page, withOneChange(bothSheets(5)));
        });
        add(`time, ${name} after a change of one survey`, again.time / 1000, 's');
      }
    }
    const name = 'the sample workbook opened';
    if (name.includes(ONLY)) {
      const sample = await callsOfSample();
      const { time } = await opened('allowed', (page) => timed(page, sample));
      add(`${name}, ${sample.length} calls, until the last value`, time / 1000, 's');
    }
  } finally {
    await browser.close();
  }
  return figures;
}
