import { paddedPiece, sortedPiece, type PieceSize } from '../../../../src/core/measures/piece';
import { ALL_HOLDS, type Hold } from '../../../../src/core/motion/hold';
import { SpaceChecker } from '../../../../src/core/space/spaceChecker';
import { drawFamilyMotion } from '../../../../src/core/stages/landing/drawFamilyMotion';
import { halfLandingStage, halfLandingTask } from '../../../../src/core/stages/landing/halfLanding';
import { slidFit } from '../../../../src/core/stages/landing/slidFit';
import { bestFamilyFit } from '../../../../src/core/stages/landing/solveFamilies';
import type { LandingPlan } from '../../../../src/core/stages/landing/landingPlan';
import { quarterLandingStage, quarterLandingTask } from '../../../../src/core/stages/landing/quarterLanding';
import type { SearchTask } from '../../../../src/core/stages/landing/landingSearch';
import { seeded } from '../../../support/parkMiller';
import { replay } from '../../../support/replayMotion';

/** How many seeded landings: `FAMILIES=2000 npx jest tests/core/stages/landing/drawnFree` draws some 25,000 motions. */
const COUNT = Number(process.env['FAMILIES'] ?? 30);
/** What a stage keeps back of a family's figure [mm a side], and what is kept back besides: claim less 0.1. */
const KEPT_BACK = 0.5 + 0.1;

/**
 * Which motions touch, each padded by what a stage claims less 0.1 mm. A move that the product's own checker certifies
 * is not gone over again, but for every tenth; what it does not certify is replayed by another method, finely.
 */
function touching(
  plan: LandingPlan,
  taskOf: (hold: Hold) => SearchTask,
  piece: PieceSize,
  holds: readonly Hold[],
  tenth: () => boolean,
  raises: readonly number[] = [Infinity, 300],
): { readonly drawn: number; readonly touched: string[] } {
  const touched: string[] = [];
  let drawn = 0;
  for (const hold of holds) {
    const task = taskOf(hold);
    const fits = raises.flatMap((mostRaise) => [
      bestFamilyFit(plan, piece, hold, { mostRaise }),
      slidFit(plan, piece, hold, { mostRaise }),
    ]);
    for (const [n, fit] of fits.entries()) {
      if (!fit || fit.clearance === fits[n - 2]?.clearance) continue;
      const { start, goal } = task.ends(fit.clearance);
      const motion = drawFamilyMotion(plan, piece, fit, start, goal);
      const scene = task.obstacles.map(({ box }) => box);
      const padded = paddedPiece(piece, fit.clearance - KEPT_BACK);
      const checker = new SpaceChecker(scene);
      checker.hold(padded);
      const places = motion.map(({ at, turn }) => Float64Array.of(...at, ...turn));
      const certified = places.every((place, i) => {
        const next = places[i + 1];
        return !next || checker.moveFree(place, 0, next, 0);
      });
      drawn++;
      if (certified && !tenth()) continue;
      const seen = replay({ motion, scene }, padded, { step: certified ? 40 : 3 });
      if (seen.collides) touched.push(`${hold} ${fit.as} ${seen.worstPenetration.toFixed(2)}`);
    }
  }
  return { drawn, touched };
}

const half = (
  [flightWidth, well, landingDepth, headroom, rise, going]: readonly number[],
  ceiling: number,
): Parameters<typeof halfLandingStage>[0] => ({
  flightWidth: flightWidth!,
  well: well!,
  landingDepth: landingDepth!,
  headroom: headroom!,
  rise: rise!,
  going: going!,
  overRail: 0,
  landingCeiling: ceiling,
});

test('motions that strayed into something by 0.1 to 2 mm no longer do', () => {
  const halves = [
    [half([996, 25, 1127, 2223, 178, 261], 2289), sortedPiece(1951, 1103, 570)],
    [half([803, 0, 1168, 2151, 219, 275], 2151), sortedPiece(1565, 943, 28)],
    // The height on the way out has a cusp, which is where they touched the ceiling.
    [
      half([915.7668668, 0, 1150.7061459, 2205.9069206, 163.2825948, 248.759295], 2205.9069206),
      sortedPiece(1598.5556, 914.76844, 23.21865),
    ],
    [
      half([903.2133655, 58.0857987, 1035.2411567, 2295.2634712, 165.08160014, 205.6007925], 2239.4065456),
      sortedPiece(1793.11379, 851.2656, 257.172537),
    ],
    // Lifted by less than a rise, a short one stood before the first nosing and was slid up below the line of them.
    [
      half([1009.4768626, 129.745895, 1008.87583, 2106.3407967, 199.522643, 210.7249637], 2134.736658),
      sortedPiece(1388.767, 118.2048, 43.9643),
    ],
  ] as const;
  for (const [measures, piece] of halves) {
    const { plan } = halfLandingStage(measures);
    const taskOf = (hold: Hold): SearchTask => halfLandingTask(measures, piece, hold);
    expect(touching(plan!, taskOf, piece, ALL_HOLDS, () => true, [Infinity, 300, 199.48767]).touched).toEqual(
      [],
    );
  }
  const quarter = { widthIn: 781, widthOut: 743, headroom: 2073, rise: 214, going: 226, overRail: 0 };
  const piece = sortedPiece(1814, 709, 144);
  const { plan } = quarterLandingStage(quarter);
  const taskOf = (hold: Hold): SearchTask => quarterLandingTask(quarter, piece, hold);
  expect(touching(plan!, taskOf, piece, ALL_HOLDS, () => true).touched).toEqual([]);
});

test('no seeded motion touches at what is claimed less 0.1 mm', () => {
  const next = seeded(1234);
  let drawn = 0;
  for (let i = 0; i < COUNT; i++) {
    const width = 700 + 350 * next();
    const other = width - 50 + 300 * next();
    const headroom = 1900 + 450 * next();
    const kind = next();
    const [rise, going] = [150 + 70 * next(), 200 + 100 * next()];
    const ceiling = kind < 0.4 ? headroom : kind < 0.55 ? headroom - 100 * next() : headroom + 600 * next();
    const length = 400 + 2000 * next();
    const breadth = next() < 0.4 ? 60 + 300 * next() : Math.min(length, 300 + 800 * next());
    const thickness = next() < 0.6 ? 15 + 30 * next() : Math.min(breadth, 40 + 300 * next());
    const piece = sortedPiece(length, breadth, thickness);
    const well = next() < 0.5 ? 0 : 200 * next();
    const halved = half([width, well, other, headroom, rise, going], ceiling);
    const quarter = {
      widthIn: width,
      widthOut: other,
      headroom,
      rise,
      going,
      overRail: 0,
      landingCeiling: ceiling,
    };
    for (const [plan, taskOf] of [
      [halfLandingStage(halved).plan!, (hold: Hold) => halfLandingTask(halved, piece, hold)],
      [quarterLandingStage(quarter).plan!, (hold: Hold) => quarterLandingTask(quarter, piece, hold)],
    ] as const) {
      const seen = touching(plan, taskOf, piece, ALL_HOLDS, () => next() < 0.1);
      expect({ i, touched: seen.touched }).toEqual({ i, touched: [] });
      drawn += seen.drawn;
    }
  }
  expect(drawn).toBeGreaterThan(COUNT * 8);
});
