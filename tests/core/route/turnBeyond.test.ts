import type { JointRow } from '../../../src/core/joint/jointRow';
import { CutClaims } from '../../support/cutClaims';
import { seeded } from '../../support/parkMiller';
import { walked } from '../../support/walkedRoute';
import { judge, piece, route } from './routeFixtures';
import { CELLAR_STAIR } from '../../support/stairs';

// A turn close before a door, or a short passage, that leads on to a stair: the cellar door of many houses. Level, a
// slate may be pushed out over the nosings before it has to tilt, so it is clear of the turn by then.

const slate = piece(1830, 930, 25);

/** How far a level slab may stand out over the nosings below a stair's head [mm]: under the headroom, falling with the pitch. */
const levelOver = (headroom: number, upright: number, rise: number, going: number): number =>
  ((headroom - upright) * going) / rise;

test('round a corner, through the door to the cellar and down, where the head is shorter than the slate', () => {
  const rows = (height: number) =>
    route(
      ['door', { width: 838, height: 1981 }],
      ['corner', { width: 950, widthOut: 900, height: 2300, run: 300 }],
      ['door', { width: 762, height: 1981 }],
      ['flight', { ...CELLAR_STAIR, height }],
      ['room', { length: 6000, width: 4500, height: 2300 }],
    ).map((row) => (row.stage === 'flight' ? { ...row, way: 'down' as const } : row));
  // 300 to the door, its wall of 110, 900 to the top nosing and 1,172 over the stair hold 1,830 on edge, 930 high.
  expect(300 + 110 + 900 + levelOver(1950, 930, 200, 230)).toBeGreaterThan(1830 + 2 * 300);
  expect(judge(rows(1950), slate).verdict).toBe('goes');
  // Under 1,000 of headroom it has to tilt at the nosing, and the corner is 520 too near.
  expect(300 + 110 + 900 + levelOver(1000, 930, 200, 230)).toBeLessThan(1830 - 400);
  expect(judge(rows(1000), slate).verdict).not.toBe('goes');
});

test('what is claimed is walked, and stays in air that knows nothing of the project’s scene', () => {
  const random = seeded(4711);
  const among = (least: number, most: number): number => Math.round(least + (most - least) * random());
  const claims = new CutClaims(15);
  for (let n = 0; n < 24; n++) {
    const down = random() < 0.5;
    const first = random() < 0.6;
    const wide = among(800, 1000);
    const lane = among(750, 900);
    const head = among(900, 1800);
    const foot = among(900, 1800);
    // What the end that leads to the turn has of floor, and the other long.
    const near = down === first ? 'head' : 'foot';
    const flight: JointRow = {
      stage: 'flight',
      way: down ? 'down' : 'up',
      place: random(),
      measures: {
        width: among(750, 950),
        height: among(1900, 2200),
        rise: among(170, 210),
        going: among(220, 280),
        risers: 13,
        footCeiling: among(2300, 2500),
        footSpace: near === 'foot' ? foot : 7000,
        headCeiling: among(2300, 2500),
        headSpace: near === 'head' ? head : 7000,
      },
    };
    const door: JointRow = {
      stage: 'door',
      place: random(),
      measures: { width: among(700, 850), height: among(1950, 2050), wall: 110 },
    };
    const hand = random() < 0.5 ? ('left' as const) : ('right' as const);
    const corner: JointRow = {
      stage: 'corner',
      hand,
      measures: {
        width: first ? wide : lane,
        widthOut: first ? lane : wide,
        height: 2400,
        run: among(0, 900),
      },
    };
    const passage: JointRow = { stage: 'passage', measures: { width: wide, height: 2400, length: 5000 } };
    const rows: JointRow[] = first
      ? [passage, corner, door, flight]
      : [flight, door, corner, { ...passage, place: 0.5 }];
    const size = piece(among(1500, 2300), among(300, 1000), among(20, 120));
    const walk = walked(rows, size, 'measured');
    if (!walk || walk.route.crosses) continue;
    claims.cut(n, rows, size, walk);
  }
  expect(claims.straying).toEqual([]);
  expect(claims.claimed).toBeGreaterThan(12);
  expect(claims.drawn).toBeGreaterThan(0.8 * claims.claimed);
});
