import { walkRoute } from '../../src/core/joint/walk/walkRoute';
import type { PieceSize } from '../../src/core/measures/piece';
import { outermost } from '../../src/core/route/buildVerdict';
import { bestChain } from '../../src/core/route/chain';
import { judgeRoute } from '../../src/core/route/judgeRoute';
import { prepareRoute, type PreparedRoute } from '../../src/core/route/preparedRoute';
import {
  jointRows,
  judgedChain,
  routeMotion,
  walkSteps,
  type JudgedChain,
} from '../../src/core/route/routeMotion';
import { stageBook, type StageBook } from '../../src/core/route/stageBook';
import { tapeOf } from '../../src/core/survey/table/stageRow';
import { readTable } from '../../src/month/readMonth';
import { sampleWorkbook } from '../../src/sample/sampleWorkbook';
import type { Survey } from '../../src/sample/survey';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { buildsOf, surveysOf } from '../../src/worksheet/routeInputs';
import { check, type Certificate, type PassCertificate } from './check';
import { searchedPass } from './searchedPass';
import { shutCertificates, type Named } from './shutCertificate';

/** Allowance and tape of the month [mm]. */
const ALLOWANCE = 25;
const TAPE = 5;

/** What a survey's verdict rests on, or why there is no certificate of it. */
export type Certified =
  | { readonly survey: string; readonly certificates: readonly Certificate[] }
  | { readonly survey: string; readonly none: string };

/**
 * Certificates of the verdicts of the sample month: of a build that passes one for each piece, of one that cannot go one for
 * the piece that is proved not to pass.
 * @param surveys those of the month to look at; all when left out
 */
export async function* certificates(surveys?: readonly Survey[]): AsyncGenerator<Certified> {
  const opened = await openWorkbook(await sampleWorkbook());
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
    if (surveys && !surveys.some(({ id }) => id === survey)) continue;
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
    let shut: readonly Certificate[] | undefined;
    // A piece that lies inside another passes as that one does.
    for (const { name, size } of outermost(build.pieces)) {
      if (!size) continue;
      const named: Named = { survey, build: build.name, piece: { ...size, name } };
      const { verdict, clearance = -Infinity } = judgeRoute(route, size, book, ALLOWANCE).finding;
      if (verdict === 'cannot go') {
        const found = shutCertificates(route, size, book, named);
        if (typeof found !== 'string') shut = found;
        // A build cannot go where one piece cannot.
        none = typeof found === 'string' ? `${name} cannot go: ${found}` : '';
        break;
      }
      const passes =
        verdict === 'goes' || verdict === 'tight' ? passCertificate(route, size, book, named) : undefined;
      if (passes) made.push(verified(passes));
      else
        none ||= `${name}: ${verdict}${clearance > -Infinity ? `, ${clearance.toFixed(1)} mm a side` : ''}`;
    }
    if (shut) yield { survey, certificates: shut };
    else yield none === '' ? { survey, certificates: made } : { survey, none };
  }
}

/** With the motion that is drawn, where the checker follows it; else with one that was searched, where one was found. */
const verified = (drawn: PassCertificate): PassCertificate =>
  check(drawn).faults.length === 0 ? drawn : (searchedPass(drawn) ?? drawn);

/** The motion of a piece that passes: drawn whole with as much padding as it can be. */
function passCertificate(
  route: PreparedRoute,
  size: PieceSize,
  book: StageBook,
  named: Named,
): PassCertificate | undefined {
  const judged = judgedChain(route, size, book, ALLOWANCE);
  if (!judged) return undefined;
  const certificate = (chain: JudgedChain, walk: ReturnType<typeof walkRoute>): PassCertificate => ({
    ...named,
    verdict: 'passes as measured',
    clearance: chain.clearance,
    measured: chain.reading.reading.map(({ stage, measures, row }) => ({
      ...{ stage: stage ?? '', measures },
      ...(row.hand === undefined ? {} : { hand: row.hand }),
      ...(row.way === undefined ? {} : { way: row.way }),
    })),
    rows: jointRows(chain.reading, size),
    padding: walk.padding,
    keys: walk.keys.map(({ at, turn, row, rides }) => ({ at, turn, row, ...(rides ? { rides } : {}) })),
    ...(walk.notDrawn ? { notDrawn: `${walk.notDrawn.what} at row ${walk.notDrawn.row + 1}` } : {}),
  });
  const asJudged = routeMotion(judged, size);
  for (const { chain, padding } of attempts(route, size, book, judged)) {
    const walk = walkRoute(jointRows(chain.reading, size), walkSteps(chain.steps), size, padding);
    if (!walk.notDrawn) return certificate(judged, walk);
  }
  return certificate(judged, asJudged);
}

/** Shares of the clearance with which a motion is drawn, where it is not drawn with nearly all of it. */
const LESS = [0.97, 0.7, 0.5, 0.35, 0.2, 0.1];
/** No motion is drawn with less padding than this [mm a side], or with more. */
const [LEAST, AMPLE] = [3, 300];

/** The judged chain with less and less padding; then chains that leave less and change the pose less often. */
function* attempts(
  route: PreparedRoute,
  size: PieceSize,
  book: StageBook,
  judged: JudgedChain,
): Generator<{ chain: JudgedChain; padding: number }> {
  const { parts } = judgeRoute(route, size, book, ALLOWANCE).measured;
  const seen = new Set<string>();
  for (const floor of [1, 0.6, 0.3, 0.05]) {
    const clearance = Math.min(judged.clearance, AMPLE) * floor;
    const steps = floor === 1 ? judged.steps : bestChain(parts, 'any', clearance, 0);
    const way = JSON.stringify(steps && walkSteps(steps));
    if (!steps || seen.has(way)) continue;
    seen.add(way);
    for (const share of LESS) {
      const padding = Math.max(LEAST, clearance * share);
      yield { chain: { ...judged, steps, clearance }, padding };
      if (padding === LEAST) break;
    }
  }
}
