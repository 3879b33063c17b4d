import { widestClearance } from '../../../src/core/route/chain';
import { jointsByNeed } from '../../../src/core/route/partsByNeed';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { partsAlone, withJoints } from '../../../src/core/route/routeParts';
import { stageBook } from '../../../src/core/route/stageBook';
import { tapeOf } from '../../../src/core/survey/table/stageRow';
import { surveysOf } from '../../../src/worksheet/routeInputs';
import { SAMPLE_PIECES } from '../../../src/sample/pieces';
import { ROUTE_COLUMNS, routeRows } from '../../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../../src/sample/sampleSurveys';

const ALLOWANCE = 25;
/** The first of the sample month. */
const SURVEYS = 12;

/*
 * Solving as little as a chain needs is held to the plain way: all joints solved, and the widest path taken.
 */
test('a route leaves the allowance with its joints solved by need where it does with all of them solved', () => {
  const left = { whole: 0, not: 0 };
  for (const survey of SAMPLE_SURVEYS.slice(0, SURVEYS)) {
    const read = surveysOf('routes', [ROUTE_COLUMNS.map(([header]) => header), ...routeRows([survey])]);
    const rows = read.ok ? (read.value.surveys[0]?.rows ?? []) : [];
    const book = stageBook(tapeOf(rows, 5));
    const route = prepareRoute(rows, book);
    if (route.steps.some(({ problem }) => problem !== undefined)) continue;
    for (const size of SAMPLE_PIECES.filter(({ build }) => build === survey.build).slice(0, 2)) {
      const piece = book.pieceOf(size);
      for (const { worst } of route.readings) {
        const alone = partsAlone(worst, piece, book, 'worst', Infinity);
        const all = withJoints(alone, worst, piece, book, 'worst', { enough: ALLOWANCE });
        const byNeed = jointsByNeed(alone, worst, piece, book, 'worst', ALLOWANCE);
        const leaves = widestClearance(all, 'free') >= ALLOWANCE;
        expect(widestClearance(byNeed, 'free') >= ALLOWANCE).toBe(leaves);
        left[leaves ? 'whole' : 'not']++;
      }
    }
  }
  expect(left.whole).toBeGreaterThan(3);
  expect(left.not).toBeGreaterThan(3);
});
