import fc from 'fast-check';
import { paddedPiece, sortedPiece } from '../../../../src/core/measures/piece';
import { halfLandingStage, halfLandingTask } from '../../../../src/core/stages/landing/halfLanding';
import { ALL_HOLDS } from '../../../../src/core/motion/hold';
import { bestFamilyFit } from '../../../../src/core/stages/landing/solveFamilies';
import type { LandingPlan } from '../../../../src/core/stages/landing/landingPlan';
import { drawFamilyMotion } from '../../../../src/core/stages/landing/drawFamilyMotion';
import { quarterLandingStage, quarterLandingTask } from '../../../../src/core/stages/landing/quarterLanding';
import { replay } from '../../../support/replayMotion';
import { seeded } from '../../../support/parkMiller';
import { evenly } from '../../../support/evenly';
import { halfOf, seededStair } from '../../../support/seededStair';

/** A seeded stair and piece, from narrow to wide, the landing's ceiling below, at or above the flights'. */
function seededLanding(next: () => number) {
  const drawn = seededStair(next, {
    ...{ width: [700, 300], other: [-50, 250], headroom: [1900, 400] },
    ...{ level: 0.4, notHigher: 0.55, lower: 100, higher: 600 },
  });
  const length = 400 + 2000 * next();
  const breadth = next() < 0.5 ? 60 + 300 * next() : Math.min(length, 300 + 700 * next());
  const thickness = next() < 0.5 ? 25 : Math.min(breadth, 40 + 150 * next());
  return {
    half: halfOf(drawn, next() < 0.5 ? 0 : 200 * next()),
    quarter: drawn.quarter,
    piece: sortedPiece(length, breadth, thickness),
  };
}

test('every family’s motion is replayed without contact on seeded landings, whichever family it is', () => {
  const next = seeded(77);
  const kinds = new Set<string>();
  let replayed = 0;
  for (let i = 0; i < 14; i++) {
    const { half, quarter, piece } = seededLanding(next);
    for (const hold of ALL_HOLDS) {
      for (const [name, stage, task] of [
        ['half', halfLandingStage(half), halfLandingTask(half, piece, hold)],
        ['quarter', quarterLandingStage(quarter), quarterLandingTask(quarter, piece, hold)],
      ] as const) {
        for (const mostRaise of [Infinity, 300]) {
          const fit = bestFamilyFit(stage.plan!, piece, hold, { mostRaise });
          if (!fit) continue;
          expect(fit.raise).toBeLessThanOrEqual(mostRaise);
          const { start, goal } = task.ends(fit.clearance);
          const motion = drawFamilyMotion(stage.plan!, piece, fit, start, goal);
          const scene = task.obstacles.map(({ box }) => box);
          const seen = replay({ motion, scene }, paddedPiece(piece, fit.clearance - 0.5), { step: 40 });
          expect({ i, hold, name, as: fit.as, collides: seen.collides }).toMatchObject({ collides: false });
          kinds.add(`${name} ${fit.as}${fit.sideways ? ' sideways' : ''}`);
          replayed++;
        }
      }
    }
  }
  expect(replayed).toBeGreaterThan(100);
  for (const kind of [
    'half level',
    'half upright',
    'half tilted',
    'half level sideways',
    'half swung sideways',
    'quarter level',
  ])
    expect(kinds).toContain(kind);
  for (const kind of ['quarter upright', 'quarter tilted']) expect(kinds).toContain(kind);
});

describe('monotone', () => {
  const unit = evenly(0, 1);
  const best = (plan: LandingPlan, piece: ReturnType<typeof sortedPiece>, mostRaise = Infinity): number =>
    Math.max(
      -1e4,
      ...ALL_HOLDS.map((hold) => bestFamilyFit(plan, piece, hold, { mostRaise })?.clearance ?? -1e4),
    );

  test('never less where the landing or the stair is larger or the piece smaller', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), unit, fc.boolean(), (seed, part, isHalf) => {
        const { half, quarter, piece } = seededLanding(seeded(seed));
        const plan = isHalf ? halfLandingStage(half).plan! : quarterLandingStage(quarter).plan!;
        const least = best(plan, piece);
        const more = 40 * part;
        const wider: LandingPlan[] = [
          { ...plan, widthIn: plan.widthIn + more, widthOut: plan.widthOut + more },
          { ...plan, depthIn: plan.depthIn + more, depthOut: plan.depthOut + more },
          { ...plan, headroom: plan.headroom + more },
          { ...plan, ceiling: plan.ceiling + more },
          { ...plan, ...(plan.across === undefined ? {} : { across: plan.across + more }) },
        ];
        for (const larger of wider) expect(best(larger, piece)).toBeGreaterThanOrEqual(least - 0.02);
        const smaller = sortedPiece(
          piece.length - more,
          piece.breadth - more / 2,
          piece.thickness - more / 9,
        );
        expect(best(plan, smaller)).toBeGreaterThanOrEqual(least - 0.02);
      }),
      { seed: 11, numRuns: 150 },
    );
  });

  test('never more than what is proved', () => {
    const next = seeded(5);
    for (let i = 0; i < 60; i++) {
      const { half, quarter, piece } = seededLanding(next);
      for (const stage of [halfLandingStage(half), quarterLandingStage(quarter)]) {
        expect(best(stage.plan!, piece)).toBeLessThanOrEqual(stage.proved(piece).atMost + 1e-6);
      }
    }
  });
});

test('level round a quarter landing with no overhang is the corner’s closed form (Codeforces 98C: 2, 2, 3 -> 1.3284271)', () => {
  // A landing so deep that only the turn decides, too low for any tilt; widths 2 m, a piece 3 m long: 1.3284271 m wide at most.
  const plan: LandingPlan = {
    widthIn: 2000,
    widthOut: 2000,
    depthIn: 2000,
    depthOut: 2000,
    across: undefined,
    headroom: 21,
    rise: 0.001,
    going: 300,
    ceiling: 21,
  };
  const fit = bestFamilyFit(plan, sortedPiece(3000, 1328.4271, 20), 'LT')!;
  expect(Math.abs(fit.clearance)).toBeLessThan(0.01);
});
