import { routeAir } from '../../support/routeAir';
import { strays } from '../../support/routeReplay';
import { heldMotions } from '../../support/openRoute';

/**
 * What "goes" promises holds in every building that the survey allows: hands, places across, runs and spaces that it
 * leaves out, and every measure off by the tape. The worst case's chain is walked in such a building, drawn at random,
 * and cut against its air, which knows nothing of the project's own scene.
 * `ROUTES=2000 npx jest tests/core/route/openRoutes` runs the campaign.
 */
const ROUTES = Number(process.env['ROUTES'] ?? 24);
const BUILDINGS = 2;
/** Of the motions, so many at least are drawn to the end: regression only. */
const DRAWN_SHARE = 0.9;

test('a route that goes does so in every building that its survey allows', () => {
  let [held, drawn, jointly] = [0, 0, 0];
  const straying: string[] = [];
  for (let seed = 1; seed <= ROUTES; seed++) {
    for (const motion of heldMotions(seed, BUILDINGS)) {
      const { keys, padding, notDrawn } = motion.walk;
      held++;
      if (!notDrawn) drawn++;
      if (motion.jointly) jointly++;
      // What is drawn is free even where the whole is not drawn.
      const stray = strays(keys, motion.piece, padding, routeAir(motion.rows), 15);
      if (stray) straying.push(`${seed}: row ${stray.row}, at ${stray.point.map(Math.round).join(', ')}`);
    }
  }
  if (process.env['ROUTES'] !== undefined) console.log({ held, drawn, jointly });
  expect(straying).toEqual([]);
  expect(held).toBeGreaterThan(ROUTES / 3);
  expect(drawn).toBeGreaterThanOrEqual(DRAWN_SHARE * held);
});
