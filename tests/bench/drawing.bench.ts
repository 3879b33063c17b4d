import { carryMoves } from '../../src/core/crew/carryMoves';
import { judgeRoute } from '../../src/core/route/judgeRoute';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { stageBook } from '../../src/core/route/stageBook';
import { tapeOf } from '../../src/core/survey/table/stageRow';
import { carriedRoute } from '../../src/drawing/carriedRoute';
import { SAMPLE_PIECES } from '../../src/sample/pieces';
import { ROUTE_COLUMNS, routeRows } from '../../src/sample/routeRows';
import { SAMPLE_SURVEYS } from '../../src/sample/sampleSurveys';
import { surveysOf } from '../../src/worksheet/routeInputs';
import type { Figure } from './figure';

const ALLOWANCE = 25;
const TAPE = 5;
/** Milliseconds after the verdict of a row is known. */
const GOAL = 100;

/**
 * What a row of the sample month takes to be drawn, and to be told as moves, once its verdict is known: the piece with the
 * largest face of each build ordered. The first row of a route that is drawn pays for the motion of them all.
 */
export async function run(): Promise<Figure[]> {
  const headers = ROUTE_COLUMNS.map(([header]) => header);
  const [first, others, moves]: [number[], number[], number[]] = [[], [], []];
  for (const survey of SAMPLE_SURVEYS) {
    const read = surveysOf('routes', [headers, ...routeRows([survey])]);
    const rows = read.ok ? read.value.surveys[0]?.rows : undefined;
    const [piece] = SAMPLE_PIECES.filter(({ build }) => build === survey.build).sort(
      (a, b) => b.length * b.breadth - a.length * a.breadth,
    );
    if (!rows || !piece) throw new Error(`${survey.id} is not read`);
    const book = stageBook(tapeOf(rows, TAPE));
    const route = prepareRoute(rows, book);
    if (route.steps.some(({ problem }) => problem !== undefined)) continue;
    judgeRoute(route, piece, book, ALLOWANCE).judge('every step');
    const timed = (what: () => unknown): number => {
      const start = performance.now();
      what();
      return performance.now() - start;
    };
    moves.push(timed(() => carryMoves(route, book, { size: piece, allowance: ALLOWANCE, mass: piece.mass })));
    let carried: ReturnType<typeof carriedRoute> | undefined;
    route.steps.forEach((_, row) => {
      const took = timed(() => {
        carried ??= carriedRoute(route, piece, piece.piece, book, ALLOWANCE);
        carried.draw(row, `bench-${row}`);
      });
      (row === 0 ? first : others).push(took);
    });
  }
  return [
    ...figures('positions of the first row of a route, with the motion of all', first),
    ...figures('positions of each row after it', others),
    ...figures('MOVES of a whole route', moves),
  ];
}

function figures(name: string, times: number[]): Figure[] {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return [
    { name: `${name}: median of ${sorted.length}`, figure: at(0.5), unit: 'ms', goal: GOAL },
    { name: `${name}: 90 %`, figure: at(0.9), unit: 'ms', goal: GOAL },
    { name: `${name}: worst`, figure: at(1), unit: 'ms', goal: GOAL },
  ];
}
