import { jointRows, judgedChain, routeMotion } from '../../src/core/route/routeMotion';
import { outermost } from '../../src/core/route/buildVerdict';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { stageBook } from '../../src/core/route/stageBook';
import { tapeOf } from '../../src/core/survey/table/stageRow';
import { readTable } from '../../src/month/readMonth';
import { sampleWorkbook } from '../../src/sample/sampleWorkbook';
import type { Survey } from '../../src/sample/survey';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { buildsOf, surveysOf } from '../../src/worksheet/routeInputs';
import type { Certificate } from './check';

/** Allowance and tape of the month [mm]. */
const ALLOWANCE = 25;
const TAPE = 5;

/** What a survey's verdict rests on, or why there is no certificate of it. */
export type Certified =
  | { readonly survey: string; readonly certificates: readonly Certificate[] }
  | { readonly survey: string; readonly none: string };

/**
 * A certificate for each piece of each build ordered in the sample month that is said to pass. What is called impossible
 * rests on a proof, for which there is no certificate yet.
 * @param surveys those of the month to look at; all when left out
 */
export async function* certificates(surveys?: readonly Survey[]): AsyncGenerator<Certified> {
  const opened = await openWorkbook(await sampleWorkbook(surveys));
  if (!opened.ok) throw new Error(opened.reason);
  const table = (...headings: string[]) => readTable(opened.host, headings) ?? [];
  const routes = surveysOf('routes', table('Survey', 'Step', 'Stage'));
  const builds = buildsOf(table('Build', 'Piece', 'Length'));
  const orders = table('Survey', 'Build', 'Customer');
  if (!routes.ok || !builds.ok) throw new Error('the sample month cannot be read');
  const [headings = [], ...ordered] = orders;
  const [surveyAt, buildAt] = ['Survey', 'Build'].map((name) => headings.indexOf(name)) as [number, number];
  for (const order of ordered) {
    const survey = String(order[surveyAt]);
    const rows = routes.value.surveys.find(({ name }) => name === survey)?.rows;
    const build = builds.value.find(({ name }) => name === order[buildAt]);
    if (!rows || !build) {
      yield { survey, none: 'its rows or its build are not known' };
      continue;
    }
    const book = stageBook(tapeOf(rows, TAPE));
    const route = prepareRoute(rows, book);
    const made: Certificate[] = [];
    let none = '';
    // A piece that lies inside another passes as that one does.
    for (const { name, size } of outermost(build.pieces)) {
      const chain = size && judgedChain(route, size, book, ALLOWANCE);
      if (!size || !chain) none = `${name} is not shown to pass`;
      else if (chain.clearance < 0) none = `${name} lacks ${(-chain.clearance).toFixed(1)} mm a side`;
      else {
        const walk = routeMotion(chain, size);
        if (!walk) continue;
        const used = jointRows(chain.reading, size);
        made.push({
          survey,
          build: build.name,
          piece: { name, length: size.length, breadth: size.breadth, thickness: size.thickness },
          verdict: 'passes as measured',
          clearance: chain.clearance,
          measured: chain.reading.reading.map(({ stage, measures }) => ({ stage: stage ?? '', measures })),
          rows: used,
          padding: walk.padding,
          keys: walk.keys.map(({ at, turn, row, rides }) => ({ at, turn, row, ...(rides ? { rides } : {}) })),
          ...(walk.notDrawn ? { notDrawn: `${walk.notDrawn.what} at row ${walk.notDrawn.row + 1}` } : {}),
        });
      }
    }
    // A build passes with all its pieces.
    yield none === '' ? { survey, certificates: made } : { survey, none };
  }
}
