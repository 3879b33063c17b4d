import type { JointBlock, JointRow } from '../../../src/core/joint/jointRow';
import { levelledJoint } from '../../../src/core/joint/levelledJoint';
import { sortedPiece } from '../../../src/core/measures/piece';
import { seeded } from '../../support/parkMiller';
import { routeAir } from '../../support/routeAir';
import { strays } from '../../support/routeReplay';

/** Steps that the flight of a block goes on by, so that the piece lies on it wholly. */
const MORE = 30;
/** `SCENES=200 npx jest tests/core/joint/jointAir` runs the campaign. */
const SCENES = Number(process.env['SCENES'] ?? 3);

test('off a stair and round a turn at its end: every motion lies in the air of its rows, worked out anew', () => {
  const next = seeded(77);
  let shown = 0;
  for (let i = 0; shown < SCENES && i < 40 * SCENES; i++) {
    const width = 800 + 350 * next();
    const ceiling = 2150 + 350 * next();
    const way = next() < 0.5 ? 'up' : 'down';
    const [rise, going, risers] = [160 + 50 * next(), 210 + 80 * next(), 3 + Math.floor(12 * next())];
    const floor = 750 + 700 * next();
    const headroom = 1950 + 200 * next();
    const flight = (count: number): JointRow => ({
      stage: 'flight',
      way,
      measures: {
        width,
        height: headroom,
        rise,
        going,
        risers: count,
        footCeiling: ceiling,
        headCeiling: ceiling,
        [way === 'up' ? 'headSpace' : 'footSpace']: floor,
      },
    });
    const out: JointRow = {
      stage: 'side door',
      into: false,
      hand: next() < 0.5 ? 'left' : 'right',
      measures: {
        width: 650 + 250 * next(),
        height: 1950 + 100 * next(),
        wall: 110,
        widthOut: width,
        ceiling,
        depth: 300 * next(),
      },
    };
    const piece = sortedPiece(1200 + 1500 * next(), 250 + 250 * next(), 25 + 100 * next());
    const block: JointBlock = { rows: [flight(risers), out], before: 'straight', after: 'open' };
    const [first] = levelledJoint(block, piece, { atLeast: 0, enough: 40 }) ?? [];
    const motion = first?.shown();
    if (!first || !motion) continue;
    shown++;
    const up = way === 'up' ? 1 : -1;
    const keys = motion.motion.map(({ at, turn }) => ({
      at: [at[0] + MORE * going, at[1], at[2] + up * MORE * rise],
      turn,
      row: 1,
    }));
    const air = routeAir([flight(risers + MORE), out]);
    expect(strays(keys, piece, motion.motionPadding - 0.5, air, 15)).toBeUndefined();
  }
  expect(shown).toBe(SCENES);
});
