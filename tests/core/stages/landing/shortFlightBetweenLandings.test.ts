import { paddedPiece, sortedPiece } from '../../../../src/core/measures/piece';
import { flightPassages } from '../../../../src/core/stages/flight/flightPassages';
import { halfLandingStage, halfLandingTask } from '../../../../src/core/stages/landing/halfLanding';
import { sizesOfHold, type Hold } from '../../../../src/core/motion/hold';
import { bestFamilyFit } from '../../../../src/core/stages/landing/solveFamilies';
import type { RoundAs } from '../../../../src/core/stages/landing/familyFit';
import { drawFamilyMotion } from '../../../../src/core/stages/landing/drawFamilyMotion';
import type { KeyAttitude, SceneBox } from '../../../../src/core/space/motion';
import { block, flightPlates, type NamedBox } from '../../../../src/core/stages/landing/namedBoxes';
import { replay } from '../../../support/replayMotion';
import { seeded } from '../../../support/parkMiller';

/** Half a turn about the upright, then a shift: from the upper landing's coordinates to the lower one's. */
const moved =
  (x: number, y: number, z: number) =>
  ({ at, turn: [w, a, b, c] }: KeyAttitude): KeyAttitude => ({
    at: [x - at[0], y - at[1], z + at[2]],
    turn: [-c, -b, a, w],
  });

interface Stair {
  readonly flightWidth: number;
  readonly well: number;
  readonly landingDepth: number;
  readonly headroom: number;
  readonly landingCeiling: number;
  readonly rise: number;
  readonly going: number;
  readonly overRail: number;
}

/**
 * The lower landing from its middle on, the flight of so many risers, and the upper landing: boxes of this
 * test's own making but for the sloping plates. The flight leads up along -x from x = 0, its first nosing one rise up.
 */
function joinedScene(m: Stair, risers: number): SceneBox[] {
  const { flightWidth: W, well, landingDepth: D, headroom: H, landingCeiling: C, rise, going } = m;
  const across = 2 * W + well;
  const run = (risers - 1) * going;
  const up = risers * rise;
  const boxes: NamedBox[] = [
    block('lower landing', [0, -200, -200], [D + 200, across + 200, 0]),
    block('its ceiling', [0, -200, C], [D + 200, across + 200, C + 4000]),
    block('wall', [-9000, across, -4000], [9000, across + 200, 9000]),
    block('other wall', [-9000, -200, -4000], [9000, 0, 9000]),
    block('wall facing the lower landing', [D, -200, -4000], [D + 200, across + 200, 9000]),
    block('spine', [-run, W, -4000], [0, W + well, 9000]),
    ...flightPlates('flight', [0, across, rise], [-1, 0], rise / going, W, H, run),
    block('upper landing', [-run - D - 200, -200, up - 200], [-run, across + 200, up]),
    block(
      'ceiling of the upper landing',
      [-run - D - 200, -200, up + C],
      [-run, across + 200, up + C + 4000],
    ),
    block('wall facing the upper landing', [-run - D - 200, -200, -4000], [-run - D, across + 200, 9000]),
  ];
  return boxes.map(({ box }) => box);
}

/**
 * What a route supposes: each landing solved with a flight without end, the flight from level to level, and the
 * flight no shorter in plan than what does not stand on a landing; then all three in a row are free.
 */
test('landings on both ends of a flight shorter than the piece: the joined motion is replayed without contact', () => {
  const next = seeded(20);
  const kinds = new Set<RoundAs>();
  let joined = 0;
  for (let i = 0; i < 900 && joined < 70; i++) {
    const rise = 165 + 40 * next();
    const headroom = 1950 + 300 * next();
    const m: Stair = {
      flightWidth: 780 + 200 * next(),
      well: 150 * next(),
      landingDepth: 800 + 300 * next(),
      headroom,
      landingCeiling: headroom + 400 * next(),
      rise,
      going: 220 + 60 * next(),
      overRail: 0,
    };
    const risers = 3 + Math.floor(5 * next());
    const any = sortedPiece(1000 + 1200 * next(), 80 + 700 * next(), 20 + 60 * next());
    // A slate as wide as the landing is deep is the one that is swung up.
    const piece = i % 3 === 0 ? sortedPiece(1600 + 300 * next(), 800 + 120 * next(), 25) : any;
    const hold: Hold = next() < 0.7 ? 'LB' : 'LT';
    const stage = halfLandingStage(m);
    const fit = bestFamilyFit(stage.plan!, piece, hold);
    if (!fit) continue;
    const ends = {
      risers,
      footCeiling: m.landingCeiling,
      footSpace: m.landingDepth,
      headCeiling: m.landingCeiling,
      headSpace: m.landingDepth,
      footOnLanding: true,
      headOnLanding: true,
    };
    const flight = { width: m.flightWidth, headroom, rise, going: m.going };
    const onFlight = Math.max(
      ...flightPassages(flight, piece, ends)
        .filter(({ from, needsTurningRoom }) => from === hold && !needsTurningRoom)
        .map(({ answer }) => answer.clearance),
      -1e4,
    );
    const { along } = sizesOfHold(piece, hold);
    const beside = ((risers - 1) * m.going + m.landingDepth - along) / 2;
    const clearance = Math.min(fit.clearance, onFlight, beside) - 0.5;
    const line = risers * Math.hypot(rise, m.going);
    if (clearance < -10 || along + 2 * clearance < line) continue;

    const drawn = { ...fit, clearance: clearance + 0.5 };
    const { start, goal } = halfLandingTask(m, piece, hold).ends(drawn.clearance);
    const motion = drawFamilyMotion(stage.plan!, piece, drawn, start, goal);
    // From the middle of the lower landing to the pitch; from the pitch to the middle of the upper one.
    const middle = motion.findIndex(({ at }) => at[1] > (2 * m.flightWidth + m.well) / 2 - 1);
    const leaving = motion.slice(middle, -1);
    const arriving = motion
      .slice(1, middle)
      .map(moved(-(risers - 1) * m.going, 2 * m.flightWidth + m.well, risers * rise));
    const both = alikeInARow([...leaving, ...arriving]);
    const seen = replay({ motion: both, scene: joinedScene(m, risers) }, paddedPiece(piece, clearance), {
      step: 30,
    });
    expect({ i, hold, as: fit.as, ...seen }).toMatchObject({ collides: false });
    kinds.add(fit.as);
    joined++;
  }
  expect(joined).toBeGreaterThan(40);
  expect([...kinds].sort()).toEqual(['level', 'swung', 'tilted', 'upright']);
});

/** A box looks the same in four attitudes: each the nearest to the one before. */
function alikeInARow(keys: readonly KeyAttitude[]): KeyAttitude[] {
  const row: KeyAttitude[] = [];
  for (const { at, turn } of keys) {
    const last = row[row.length - 1]?.turn;
    const [w, a, b, c] = turn;
    const alike: KeyAttitude['turn'][] = [turn, [a, -w, -c, b], [b, c, -w, -a], [c, -b, a, -w]];
    const dot = (t: KeyAttitude['turn']): number => (last ? t.reduce((s, v, k) => s + v * last[k]!, 0) : 1);
    const near = alike.reduce((s, t) => (Math.abs(dot(t)) > Math.abs(dot(s)) ? t : s));
    const sign = dot(near) < 0 ? -1 : 1;
    row.push({ at, turn: [sign * near[0], sign * near[1], sign * near[2], sign * near[3]] });
  }
  return row;
}
