import fc from 'fast-check';
import {
  doorIntoPassage,
  doorPassage,
  passageNeeded,
  type DoorPlan,
} from '../../../src/core/geometry/doorIntoPassage';
import { decidePassage } from '../../../src/core/geometry/planar/decidePassage';
import { doorPassageBracket } from '../../support/doorPassageBracket';
import { overlapAlong } from './planar/replayPath';
import { seeded } from '../../support/parkMiller';
import { evenly } from '../../support/evenly';

const randomPlan = (next: () => number): DoorPlan => {
  const door = 500 + 600 * next();
  return {
    door,
    wall: next() < 0.2 ? 0 : 400 * next(),
    approach: next() < 0.4 ? door : door + 800 * next(),
    passage: 300 + 1200 * next(),
    deadEnd: next() < 0.4 ? 1500 * next() : undefined,
  };
};

describe('out of a door into a passage across it', () => {
  // Regression only: our own scene and figure, door 762 in a wall of 120, approach 900, slab 1830 x 25.
  const scene = { door: 762, wall: 120, approach: 900 };

  test('a slab 1830 x 25 out of a 762 door needs 511.7 mm of passage (regression only)', () => {
    expect(passageNeeded(1830, 25, { ...scene, passage: 1000 })).toBeCloseTo(511.67, 1);
  });

  test.each([
    [10, 'passes'],
    [50, 'passes'],
    [-10, 'blocked'],
  ] as const)('%d mm from that width the planner says: %s', (more, verdict) => {
    const c = doorPassage(1830, 25, { ...scene, passage: 511.6 + more });
    expect(decidePassage(c.world, 1830, 25, c.start, c.goal).verdict).toBe(verdict);
  });

  test('the limit for a very thick wall is the ladder round a corner, 3 and 4 ft: 9.8657 ft (Briggs & Cochran)', () => {
    const foot = 304.8;
    const needed = passageNeeded(9.8657 * foot, 0, {
      door: 3 * foot,
      wall: 6000,
      approach: 3 * foot,
      passage: 1,
    });
    expect(needed / foot).toBeCloseTo(4, 3);
  });

  test('out of a door in a very thick wall it turns as round a corner, 300 seeded rectangles', () => {
    // Codeforces Round 78, problem 98C: corridors a and b take a rectangle l x w where w <= a cos t + b sin t - l sin t cos t
    // at every t; solved for b. Past the far jamb, where a sin t < w, a corner has a wall and the passage has none.
    const next = seeded(98);
    let likewise = 0;
    for (let n = 0; n < 300; n++) {
      const door = 500 + 600 * next();
      const long = door * (1.05 + 2 * next());
      const thick = door * (0.02 + 0.9 * next());
      let [corner, within] = [0, false];
      for (let k = 0; k < 4000; k++) {
        const t = (k * Math.PI) / 8000;
        const b = long * Math.sin(t) + (thick - door * Math.sin(t)) / Math.cos(t);
        if (b > corner) [corner, within] = [b, door * Math.sin(t) > thick + 1];
      }
      const needed = passageNeeded(long, thick, { door, wall: 1e6, approach: door, passage: 1 });
      expect(needed).toBeLessThan(corner + 0.01);
      if (!within) continue;
      likewise++;
      expect(needed).toBeGreaterThan(corner - 0.01);
    }
    expect(likewise).toBeGreaterThan(100);
  });

  test("agrees with the planner's bracket on 30 seeded doors, and its paths are free", () => {
    const next = seeded(20250317);
    for (let i = 0; i < 30; i++) {
      const plan = randomPlan(next);
      const a = 300 + 1900 * next();
      const b = 10 + (next() < 0.3 ? 600 : 150) * next();
      const p = Math.max(a, b);
      const q = Math.min(a, b);
      const fit = doorIntoPassage(p, q, plan);
      const bracket = doorPassageBracket(p, q, plan, { guess: fit.clearance });
      expect(fit.clearance).toBeLessThanOrEqual(bracket.upper + 1e-5);
      if (fit.exact) expect(fit.clearance).toBeGreaterThanOrEqual(bracket.lower - 1e-5);
      const path = bracket.path();
      if (i % 4 === 0 && path.length > 0) {
        const pc = Math.max(0, p + 2 * bracket.lower);
        const qc = Math.max(0, q + 2 * bracket.lower);
        const { world } = doorPassage(pc, qc, plan);
        expect(overlapAlong(world.obstacles, pc, qc, path, 4)).toBeLessThan(1e-3);
      }
    }
  });

  test('never grows when a measure shrinks, never shrinks when the piece does', () => {
    const size = evenly(0, 1);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 30 }), size, size, size, size, (seed, a, b, c, d) => {
        const next = seeded(seed);
        const plan = randomPlan(next);
        const p = 700 + 1900 * next();
        const q = 10 + 600 * next();
        const smaller = {
          door: plan.door * (1 - 0.1 * a),
          wall: plan.wall,
          approach: Math.max(plan.approach - 100 * b, plan.door),
          passage: plan.passage * (1 - 0.2 * c),
          deadEnd: plan.deadEnd,
        };
        const most = doorIntoPassage(p, q, plan).clearance;
        expect(doorIntoPassage(p, q, smaller).clearance).toBeLessThanOrEqual(most + 1e-5);
        const shorter = doorIntoPassage(Math.max(q, p * (1 - 0.2 * d)), q * (1 - 0.2 * a), plan).clearance;
        expect(shorter).toBeGreaterThanOrEqual(most - 1e-5);
        expect(most).toBeGreaterThanOrEqual(-Math.max(p, q) / 2);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });
});
