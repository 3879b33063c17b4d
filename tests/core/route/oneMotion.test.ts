import { sceneNear } from '../../../src/core/joint/place/placedRoute';
import { walkRoute, type RouteWalk } from '../../../src/core/joint/walk/walkRoute';
import type { JointRow } from '../../../src/core/joint/jointRow';
import type { PieceSize } from '../../../src/core/measures/piece';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { DRAWN_LESS, judgedChain, walkSteps } from '../../../src/core/route/routeMotion';
import { stageBook } from '../../../src/core/route/stageBook';
import type { StageRow } from '../../../src/core/survey/table/stageRow';
import { randomRoute } from '../../support/randomRoutes';
import { replay } from '../../support/replayMotion';

/**
 * What a route's verdict claims is walked in the one scene of its rows and replayed by a checker of another kind
 * (distances by GJK, attitudes as matrices), for the piece padded by what is claimed less a millimetre.
 * `ROUTES=2000 npx jest tests/core/route/oneMotion` runs the campaign.
 */
const ROUTES = Number(process.env['ROUTES'] ?? 60);
/** Of the motions claimed, so many at least are drawn to the end: regression only. */
const DRAWN_SHARE = 0.7;
/** Beyond this [mm a side] more padding shows nobody more. */
const AMPLE = 300;

const stageRow = (row: JointRow, i: number): StageRow => ({
  survey: 'A',
  step: i + 1,
  stage: row.stage,
  stageText: row.stage,
  measures: row.measures,
  refused: [],
  note: '',
  rowIndex: i,
  hand: row.hand,
  way: row.way,
});

function walked(rows: readonly JointRow[], piece: PieceSize): RouteWalk | undefined {
  const book = stageBook(0);
  const chain = judgedChain(prepareRoute(rows.map(stageRow), book), piece, book, 0, 'worst');
  if (!chain || chain.clearance < DRAWN_LESS) return undefined;
  return walkRoute(rows, walkSteps(chain.steps), piece, Math.min(chain.clearance, AMPLE) - DRAWN_LESS);
}

/** How deep the padded piece stands in anything on its way [mm]; in a lift car that moves nothing is looked at. */
function deepest({ keys, route, padding }: RouteWalk, piece: PieceSize): number {
  let worst = 0;
  let from = 0;
  while (from + 1 < keys.length) {
    let to = from + 1;
    const { row, rides } = keys[to]!;
    if (rides) {
      from = to;
      continue;
    }
    while (to + 1 < keys.length && keys[to + 1]!.row === row && !keys[to + 1]!.rides) to++;
    const scene = sceneNear(route, row - 2, row + 2).map(({ box }) => box);
    const { collides, worstPenetration } = replay({ motion: keys.slice(from, to + 1), scene }, piece, {
      padding,
      step: 12,
    });
    if (collides) worst = Math.max(worst, worstPenetration, 1e-6);
    from = to;
  }
  return worst;
}

test('what a route claims is one motion through the one scene of its rows', () => {
  let claimed = 0;
  let drawn = 0;
  const touching: string[] = [];
  const open: Record<string, number> = {};
  for (let seed = 1; seed <= ROUTES; seed++) {
    const { rows, piece } = randomRoute(seed);
    const walk = walked(rows, piece);
    if (!walk) continue;
    claimed++;
    const { notDrawn, keys } = walk;
    if (notDrawn) open[notDrawn.what] = (open[notDrawn.what] ?? 0) + 1;
    else drawn++;
    // What is drawn is free even where the whole is not drawn.
    const deep = deepest(walk, piece);
    if (deep > 0) touching.push(`${seed}: ${deep}`);
    for (const { turn } of keys) expect(Math.hypot(...turn)).toBeCloseTo(1, 9);
  }
  if (process.env['ROUTES'] !== undefined) console.log({ claimed, drawn, open });
  expect(touching).toEqual([]);
  expect(claimed).toBeGreaterThan(ROUTES / 5);
  expect(drawn).toBeGreaterThanOrEqual(DRAWN_SHARE * claimed);
});
