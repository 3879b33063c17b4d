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
import { corner, landing, oneCell } from './hostCalls';

/*
 * The built functions under the platform's own runtime script in a real browser. Of blocks of the main thread the
 * processor time is told, which other programs do not lengthen; of all else what a clock says.
 * CARRY_LANDINGS=1000 makes the landing cells as many.
 */
const LANDINGS = Number(process.env['CARRY_LANDINGS'] ?? 100);
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
  } finally {
    await browser.close();
  }
  return figures;
}
