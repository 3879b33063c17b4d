import fc from 'fast-check';
import { carPassage, slantedIntoCar } from '../../../../src/core/geometry/slantedIntoCar';
import { decidePassage } from '../../../../src/core/geometry/planar/decidePassage';
import { sortedPiece } from '../../../../src/core/measures/piece';
import { liftCarAnswer, liftCarMotion, liftCarPassages } from '../../../../src/core/stages/lift/liftCar';
import type { LiftCarMeasures } from '../../../../src/core/stages/lift/liftCarMeasures';
import { liftCarAtMost } from '../../../../src/core/stages/lift/liftCarAtMost';
import type { SceneBox } from '../../../../src/core/space/motion';
import { seeded } from '../../../support/parkMiller';
import { replay } from '../../../support/replayMotion';
import { evenly } from '../../../support/evenly';

type Span = readonly [number, number];
const unit = evenly(0, 1);

// 630 kg car, 1100 x 1400: ISO 4190-1 (seen); door 800 x 2000 and height 2200: from memory of the same.
const car630: LiftCarMeasures = {
  doorWidth: 800,
  doorHeight: 2000,
  carWidth: 1100,
  carDepth: 1400,
  carHeight: 2200,
};

describe('lift car', () => {
  test('a slab longer than the car is deep goes in on end, or leaning a little for more', () => {
    const slab = sortedPiece(1830, 780, 25);
    const onEnd = liftCarPassages(car630, slab).filter((w) => w.answer.pose === 'on end');
    // Under the head of the door: (2000 - 1830) / 2.
    expect(Math.max(...onEnd.map((w) => w.answer.clearance))).toBeCloseTo(85, 9);
    expect(liftCarAnswer(car630, slab).clearance).toBeGreaterThanOrEqual(85);
  });

  test('long ones: 3000 mm fits in no attitude (diagonal 2830 mm, Pythagoras), and the proof names it', () => {
    expect(Math.hypot(1100, 1400, 2200)).toBeCloseTo(2830.2, 1);
    const proved = liftCarAtMost(car630, sortedPiece(3000, 100, 20));
    expect(proved.atMost).toBeLessThan(0);
    expect(proved.bound).toMatch(/diagonal/);
  });

  test('published misfit: 650 x 220 x 55 does not fit in 590 x 290 x 160 (textbook: longer diagonal)', () => {
    const box = { doorWidth: 290, doorHeight: 160, carWidth: 290, carDepth: 590, carHeight: 160 };
    const answer = liftCarAnswer(box, sortedPiece(650, 220, 55));
    expect(answer.clearance).toBeLessThan(0);
    expect(answer.atMost).toBeLessThan(0);
  });

  test('turning in beats sliding in, and the motion is free by the independent replay', () => {
    for (const [measures, piece] of [
      [{ ...car630, doorHeight: 1000, carHeight: 1000 }, sortedPiece(1600, 800, 30)],
      [{ ...car630, carHeight: 2100, doorHeight: 1900 }, sortedPiece(2050, 500, 40)],
      [car630, sortedPiece(1700, 790, 60)],
    ] as const) {
      const shown = liftCarMotion(measures, piece);
      expect(shown.motion.length).toBeGreaterThan(1);
      const seen = replay(shown, piece, { padding: shown.motionPadding, step: 8 });
      expect(seen.worstPenetration).toBeLessThan(0.05);
      // Wholly inside at the end: nothing of it lies before the door's wall.
      const end = shown.motion[shown.motion.length - 1]!;
      const shut = {
        scene: [
          { centre: [0, -500, 1000], size: [9000, 1000, 9000], turn: [1, 0, 0, 0] } as const,
          ...shown.scene,
        ],
        motion: [end, end],
      };
      expect(replay(shut, piece, { padding: shown.motionPadding }).worstPenetration).toBeLessThan(0.05);
    }
  });

  test('a piece longer than the car is deep is raised past the door as it goes in, free by the independent replay', () => {
    // Its diagonal in the side view of the car has room (Pythagoras), under the door's head it has not.
    const tall = { doorWidth: 757, doorHeight: 1987, carWidth: 1153, carDepth: 1629, carHeight: 2379 };
    const deep = { doorWidth: 959, doorHeight: 1961, carWidth: 998, carDepth: 1275, carHeight: 2223 };
    for (const [measures, piece, least] of [
      [tall, sortedPiece(2069, 718, 35), 60],
      [deep, sortedPiece(2019, 724, 41), 100],
    ] as const) {
      const shown = liftCarMotion(measures, piece);
      expect(shown.clearance).toBeGreaterThan(least);
      expect(shown.pose).toBe('tilted');
      expect(shown.motion.length).toBeGreaterThan(2);
      const seen = replay(shown, piece, { padding: shown.motionPadding, step: 4 });
      expect(seen.worstPenetration).toBeLessThan(0.05);
    }
  });

  test('what turns in is free of a car built here from its measures, and ends behind its door', () => {
    // Wider than the door by much, and not as deep as the piece is long: it has to turn as it goes in.
    const next = seeded(71);
    let turned = 0;
    for (let n = 0; n < 8; n++) {
      const doorWidth = 700 + 250 * next();
      const carWidth = doorWidth + 150 + 500 * next();
      const car = { doorWidth, doorHeight: 1000, carWidth, carDepth: 1150 + 350 * next(), carHeight: 1000 };
      const piece = sortedPiece(car.carDepth + 60 + 250 * next(), 600 + 300 * next(), 20 + 350 * next());
      const shown = liftCarMotion(car, piece);
      if (shown.motion.length < 3) continue;
      turned++;
      const solid = ([x0, x1]: Span, [y0, y1]: Span, [z0, z1]: Span): SceneBox => ({
        centre: [(x0 + x1) / 2, (y0 + y1) / 2, (z0 + z1) / 2],
        size: [x1 - x0, y1 - y0, z1 - z0],
        turn: [1, 0, 0, 0],
      });
      const [far, high] = [6000, [-100, 3000]] as const;
      const half = car.carWidth / 2;
      const scene = [
        solid([-far, -doorWidth / 2], [-1e-3, 0], high),
        solid([doorWidth / 2, far], [-1e-3, 0], high),
        solid([-far, -half], [0, far], high),
        solid([half, far], [0, far], high),
        solid([-far, far], [car.carDepth, far], high),
        solid([-far, far], [-far, far], [-500, 0]),
        solid([-far, far], [0, far], [car.carHeight, 3000]),
      ];
      const seen = replay({ motion: shown.motion, scene }, piece, {
        padding: Math.min(shown.motionPadding, shown.clearance),
        step: 20,
      });
      expect([n, Math.max(0.05, seen.worstPenetration)]).toEqual([n, 0.05]);
      const end = shown.motion[shown.motion.length - 1]!;
      const shut = { motion: [end, end], scene: [solid([-far, far], [-far, 0], high), ...scene] };
      expect(replay(shut, piece, { padding: shown.motionPadding }).worstPenetration).toBeLessThan(0.05);
    }
    expect(turned).toBeGreaterThan(3);
  });

  test('sliding in at one angle is never refused by the planner', () => {
    fc.assert(
      fc.property(unit, unit, unit, unit, unit, (a, b, c, d, e) => {
        const door = 700 + 400 * a;
        const plan = { door, width: door + 600 * b, depth: 900 + 1300 * c };
        const p = 900 + 1400 * d;
        const q = 15 + 400 * e;
        const fit = slantedIntoCar(p, q, plan);
        const pc = Math.max(0, p + 2 * fit.clearance - 0.2);
        const qc = Math.max(0, q + 2 * fit.clearance - 0.2);
        const passage = carPassage(pc, qc, plan);
        const decision = decidePassage(passage.world, pc, qc, passage.start, passage.goal, 800);
        expect(decision.verdict).not.toBe('blocked');
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  test('monotone in the measures and the piece, at least -L/2, never above what is proved', () => {
    const names = ['doorWidth', 'doorHeight', 'carWidth', 'carDepth', 'carHeight'] as const;
    fc.assert(
      fc.property(
        fc.array(unit, { minLength: 9, maxLength: 9 }),
        fc.nat({ max: 4 }),
        unit,
        (r, which, by) => {
          const measures: LiftCarMeasures = {
            doorWidth: 700 + 400 * r[0]!,
            doorHeight: 1900 + 300 * r[1]!,
            carWidth: 1000 + 700 * r[2]!,
            carDepth: 1000 + 1200 * r[3]!,
            carHeight: 2000 + 400 * r[4]!,
          };
          const piece = sortedPiece(900 + 1500 * r[5]!, 300 + 700 * r[6]!, 20 + 200 * r[7]!);
          const answer = liftCarAnswer(measures, piece);
          expect(answer.clearance).toBeGreaterThanOrEqual(-piece.length / 2);
          expect(answer.clearance).toBeLessThanOrEqual(answer.atMost + 1e-6);
          const less = { ...measures, [names[which]!]: measures[names[which]!] * (1 - 0.15 * by) };
          const shrunk = liftCarAnswer(less, piece);
          expect(shrunk.clearance).toBeLessThanOrEqual(answer.clearance + 1e-3);
          const smaller = sortedPiece(piece.length * (1 - 0.2 * r[8]!), piece.breadth, piece.thickness * 0.9);
          expect(liftCarAnswer(measures, smaller).clearance).toBeGreaterThanOrEqual(
            Math.max(answer.clearance, -smaller.length / 2) - 1e-3,
          );
        },
      ),
      { seed: 13, numRuns: 40 },
    );
  });

  test('every way of holding is listed, leaning ones with the room they need', () => {
    const ways = liftCarPassages({ ...car630, doorHeight: 1000 }, sortedPiece(1200, 1050, 40));
    expect(new Set(ways.map((w) => w.from)).size).toBe(6);
    expect(ways.filter((w) => w.answer.pose === 'leaning').every((w) => w.needsTurningRoom)).toBe(true);
  });
});
