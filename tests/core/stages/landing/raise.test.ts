import { paddedPiece, sortedPiece } from '../../../../src/core/measures/piece';
import { ALL_HOLDS } from '../../../../src/core/motion/hold';
import { raiseAt, raiseOfMotion, type Ground } from '../../../../src/core/space/raiseOfMotion';
import { quaternionAbout } from '../../../../src/core/space/quaternion';
import type { KeyAttitude } from '../../../../src/core/space/motion';
import { drawFamilyMotion } from '../../../../src/core/stages/landing/drawFamilyMotion';
import { halfLandingStage, halfLandingTask } from '../../../../src/core/stages/landing/halfLanding';
import { slidFit } from '../../../../src/core/stages/landing/slidFit';
import { bestFamilyFit } from '../../../../src/core/stages/landing/solveFamilies';
import { quarterLandingStage, quarterLandingTask } from '../../../../src/core/stages/landing/quarterLanding';
import { widestMotion } from '../../../../src/core/stages/landing/landingPassages';
import { seeded } from '../../../support/parkMiller';
import { halfOf, seededStair } from '../../../support/seededStair';
import { halfFloor, quarterFloor, sampledRaise } from '../../../support/stairFloor';

/** How many seeded landings: `RAISES=700 npx jest tests/core/stages/landing/raise` is the campaign. */
const COUNT = Number(process.env['RAISES'] ?? 14);

function seededLanding(next: () => number) {
  const drawn = seededStair(next, {
    ...{ width: [700, 350], other: [-50, 300], headroom: [1900, 450] },
    ...{ level: 0.4, notHigher: 0.55, lower: 100, higher: 600 },
  });
  const { width, stair, quarter } = drawn;
  const length = 400 + 2000 * next();
  const breadth = next() < 0.4 ? 60 + 300 * next() : Math.min(length, 300 + 800 * next());
  const thickness = next() < 0.6 ? 15 + 30 * next() : Math.min(breadth, 40 + 300 * next());
  const half = halfOf(drawn, next() < 0.5 ? 0 : 200 * next());
  const { rise, going } = stair;
  return [
    {
      stage: halfLandingStage(half),
      task: halfLandingTask,
      measures: half,
      floor: halfFloor(width + half.well / 2, rise, going),
    },
    {
      stage: quarterLandingStage(quarter),
      task: quarterLandingTask,
      measures: quarter,
      floor: quarterFloor(width, rise, going),
    },
  ].map(({ stage, task, measures, floor }) => ({
    stage,
    plan: stage.plan!,
    floor,
    piece: sortedPiece(length, breadth, thickness),
    taskOf: (hold: (typeof ALL_HOLDS)[number]) =>
      task(measures as typeof half & typeof quarter, sortedPiece(length, breadth, thickness), hold),
  }));
}

test('no family raises the piece farther above floor, treads or line of nosings than it says', () => {
  const next = seeded(771);
  const kinds = new Set<string>();
  let looked = 0;
  for (let i = 0; i < COUNT; i++) {
    for (const { plan, floor, piece, taskOf } of seededLanding(next)) {
      for (const hold of ALL_HOLDS) {
        const { ends } = taskOf(hold);
        for (const mostRaise of [Infinity, 300]) {
          for (const family of [bestFamilyFit, slidFit]) {
            const fit = family(plan, piece, hold, { mostRaise });
            if (!fit) continue;
            expect(fit.raise).toBeLessThanOrEqual(mostRaise);
            const { start, goal } = ends(fit.clearance);
            const motion = drawFamilyMotion(plan, piece, fit, start, goal);
            const seen = sampledRaise(floor, paddedPiece(piece, fit.clearance), motion, 20);
            expect({ i, as: fit.as, over: Math.max(0, seen - fit.raise - 0.1) }).toMatchObject({ over: 0 });
            kinds.add(fit.as);
            looked++;
          }
        }
      }
    }
  }
  expect(looked).toBeGreaterThan(COUNT * 8);
  for (const kind of ['level', 'tilted', 'upright', 'swung', 'slid']) expect(kinds).toContain(kind);
});

test('tilted on a quarter landing its tail stands over the nosings of the lower flight, and that is said', () => {
  // Before, this one said 0: counted from the landing, though nothing of the piece was lower than its tail.
  const quarter = { widthIn: 1051, widthOut: 793, headroom: 2223, rise: 190, going: 240, overRail: 0 };
  const measures = { ...quarter, landingCeiling: 2400 };
  const { plan } = quarterLandingStage(measures);
  const piece = sortedPiece(2107, 836, 30);
  const floor = quarterFloor(1051, 190, 240);
  for (const mostRaise of [Infinity, 300]) {
    const fit = bestFamilyFit(plan!, piece, 'LB', { mostRaise });
    if (!fit) continue;
    const { start, goal } = quarterLandingTask(measures, piece, 'LB').ends(fit.clearance);
    const motion = drawFamilyMotion(plan!, piece, fit, start, goal);
    expect(sampledRaise(floor, paddedPiece(piece, fit.clearance), motion, 10)).toBeLessThanOrEqual(
      fit.raise + 0.1,
    );
  }
});

test('no widened motion is raised farther than it says, between its attitudes either', () => {
  const next = seeded(19);
  let looked = 0;
  for (let i = 0; i < COUNT; i++) {
    for (const { floor, piece, stage } of seededLanding(next)) {
      const found = widestMotion(stage, piece);
      if (found.nothingFound || found.raise === undefined) continue;
      const seen = sampledRaise(floor, paddedPiece(piece, found.clearance), found.motion, 5);
      expect({ i, over: Math.max(0, seen - found.raise - 0.1) }).toMatchObject({ over: 0 });
      looked++;
    }
  }
  expect(looked).toBeGreaterThan(COUNT / 2);
});

describe('the bound on a motion', () => {
  const level: Ground = { height: 0, alongX: 0, alongY: 0, within: [{ x: -1, y: 0, from: 0 }] };
  const step: Ground = { height: 180, alongX: 0.75, alongY: 0, within: [{ x: 1, y: 0, from: 0 }] };
  const piece = { length: 1000, breadth: 600, thickness: 100 };
  const flat = (x: number, z: number): KeyAttitude => ({ at: [x, 0, z], turn: [1, 0, 0, 0] });

  test('is the height under a piece that is carried level over a floor, and over a step what is left', () => {
    // By hand: 50 of thickness below its middle.
    expect(raiseAt([level, step], piece, flat(-900, 250))).toBeCloseTo(200, 9);
    expect(raiseAt([level, step], piece, flat(-500 + 20, 250))).toBeCloseTo(200 - 180 - 15, 6);
    const raise = raiseOfMotion([level, step], piece, [flat(-900, 250), flat(-480, 250)]);
    expect(raise).toBeGreaterThanOrEqual(200);
    expect(raise).toBeLessThan(200.6);
  });

  test('sees how high a corner swings between two attitudes that both rest on the floor', () => {
    // Turned end over end, the centre at one height: level at both ends, nearest to the floor half-way.
    const high = 800;
    const turned: KeyAttitude = { at: [-900, 0, high], turn: quaternionAbout([0, 1, 0], Math.PI / 2) };
    const raise = raiseOfMotion([{ ...level, within: [] }], piece, [flat(-900, high), turned]);
    // Greatest at the start, 800 - 50: in between a corner hangs lower.
    expect(raise).toBeGreaterThanOrEqual(750);
    expect(raise).toBeLessThan(750.6);
  });

  test('sees a rise between two attitudes that are both low', () => {
    // From one slope to the other over a valley in the shape of a V, level all the way: 400 deep in its middle.
    const valley: Ground[] = [
      { height: 0, alongX: -0.5, alongY: 0, within: [{ x: -1, y: 0, from: 0 }] },
      { height: 0, alongX: 0.5, alongY: 0, within: [{ x: 1, y: 0, from: 0 }] },
    ];
    const cube = { length: 10, breadth: 10, thickness: 10 };
    const raise = raiseOfMotion(valley, cube, [flat(-800, 405), flat(800, 405)]);
    // In the middle its outer corners are 5 out: 400 - 2.5.
    expect(raise).toBeGreaterThanOrEqual(397.5);
    expect(raise).toBeLessThan(398.1);
  });
});
