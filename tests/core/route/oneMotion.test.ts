import { sceneNear } from '../../../src/core/joint/place/placedRoute';
import type { RouteWalk } from '../../../src/core/joint/walk/walkRoute';
import type { PieceSize } from '../../../src/core/measures/piece';
import { randomRoute } from '../../support/randomRoutes';
import { replay } from '../../support/replayMotion';
import { CutClaims } from '../../support/cutClaims';
import { routeAir } from '../../support/routeAir';
import { strays } from '../../support/routeReplay';
import { walked } from '../../support/walkedRoute';

/**
 * What a route's verdict claims is walked in the one scene of its rows and replayed by a checker of another kind
 * (distances by GJK, attitudes as matrices), for the piece padded by what is claimed less a millimetre. Besides it is
 * cut against the air of the route, which is worked out from the rows anew and knows nothing of that scene.
 * `ROUTES=2000 npx jest tests/core/route/oneMotion` runs the campaign.
 */
const ROUTES = Number(process.env['ROUTES'] ?? 30);
/** Of the motions claimed, so many at least are drawn to the end: regression only. */
const DRAWN_SHARE = 0.9;

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
    const scene = sceneNear(route, row, row).map(({ box }) => box);
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
  const claims = new CutClaims(12);
  const touching: string[] = [];
  const open: Record<string, number> = {};
  for (let seed = 1; seed <= ROUTES; seed++) {
    const { rows, piece } = randomRoute(seed);
    const walk = walked(rows, piece);
    if (!walk) continue;
    const { notDrawn, keys } = walk;
    if (notDrawn) open[notDrawn.what] = (open[notDrawn.what] ?? 0) + 1;
    const deep = deepest(walk, piece);
    if (deep > 0) touching.push(`${seed}: ${deep}`);
    claims.cut(seed, rows, piece, walk);
    for (const { turn } of keys) expect(Math.hypot(...turn)).toBeCloseTo(1, 9);
  }
  const { claimed, drawn, straying } = claims;
  if (process.env['ROUTES'] !== undefined) console.log({ claimed, drawn, open });
  expect(touching).toEqual([]);
  expect(straying).toEqual([]);
  expect(claimed).toBeGreaterThan(ROUTES / 5);
  expect(drawn).toBeGreaterThanOrEqual(DRAWN_SHARE * claimed);
});

/**
 * A tilted piece turned far round in plan, tilted before a door in front of a turn, a stair that winds back under itself,
 * a floor before a wall that is shorter than the piece, a piece turned over close to a wall, a way out whose wall reaches
 * across the house, a landing rounded leaning on a flight hardly longer than the piece, rows so long that the piece was led
 * round the end of the wall in which the way out stands.
 */
test.each([432, 552, 591, 628, 634, 654, 658, 688, 500066])(
  'the claim on route %i is drawn to the end',
  (seed) => {
    const { rows, piece } = randomRoute(seed);
    const walk = walked(rows, piece);
    expect(walk?.notDrawn).toBeUndefined();
    expect(walk && deepest(walk, piece)).toBe(0);
    expect(walk && strays(walk.keys, piece, walk.padding, routeAir(rows), 12)).toBeUndefined();
  },
);
