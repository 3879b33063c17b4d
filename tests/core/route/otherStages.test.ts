import { otherStages } from '../../support/otherStages';
import { CutClaims } from '../../support/cutClaims';
import { walked } from '../../support/walkedRoute';

/**
 * What a route over steps, a ramp or winding treads claims is walked and cut against its air, which is worked out anew
 * from the rows: treads of winders as sectors of the corner, each a rise above the last, ramps as they slope.
 * `OTHERS=400 npx jest tests/core/route/otherStages` runs the campaign.
 */
const ROUTES = Number(process.env['OTHERS'] ?? 25);
/** Of the motions, so many at least are drawn to the end: regression only. */
const DRAWN_SHARE = 0.9;

test('what is claimed over steps, ramps and winding treads is one motion in their air', () => {
  const claims = new CutClaims(12);
  const stages = new Set<string>();
  for (let seed = 1; seed <= ROUTES; seed++) {
    const { rows, piece } = otherStages(seed);
    const walk = walked(rows, piece);
    if (!walk) continue;
    if (!walk.notDrawn) for (const { stage } of rows) stages.add(stage);
    claims.cut(seed, rows, piece, walk);
  }
  const { claimed, drawn, straying } = claims;
  if (process.env['OTHERS'] !== undefined) console.log({ claimed, drawn });
  expect(straying).toEqual([]);
  expect(claimed).toBeGreaterThan(ROUTES / 3);
  expect(drawn).toBeGreaterThanOrEqual(DRAWN_SHARE * claimed);
  expect([...stages]).toEqual(expect.arrayContaining(['steps', 'ramp', 'winder']));
});
