import fc from 'fast-check';
import { bendWithWall } from '../../../../src/core/geometry/bendWithWall';
import { passageBracket } from '../../../../src/core/geometry/planar/passageBracket';
import {
  flightEndsAtMost,
  flightEndsFit,
  type FlightEndMeasures,
} from '../../../../src/core/stages/flight/flightEnds';
import { flightPassages } from '../../../../src/core/stages/flight/flightPassages';
import { sortedPiece, type PieceSize } from '../../../../src/core/measures/piece';
import { bendPassage } from '../../../support/bendPassage';
import { flightElevation, flightEndsMotion } from '../../../support/flightEndsMotion';
import { replay } from '../../../support/replayMotion';
import { overlapAlong } from '../../geometry/planar/replayPath';
import { seeded } from '../../../support/parkMiller';
import { evenly } from '../../../support/evenly';

const unit = evenly(0, 1);

interface StairDrawn {
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  readonly ends: FlightEndMeasures;
}

describe('on to a flight and off it', () => {
  test('the closed form for a bend with a wall lies in the brackets of 25 seeded bends', () => {
    const next = seeded(777);
    for (let i = 0; i < 25; i++) {
      const pitch = ((25 + 30 * next()) * Math.PI) / 180;
      const slope = (1700 + 500 * next()) * Math.cos(pitch);
      const level = 1800 + 900 * next();
      const along = 800 + 1500 * next();
      const upright = next() < 0.5 ? 20 + 200 * next() : 400 + 700 * next();
      const space = next() < 0.2 ? Infinity : (next() < 0.3 ? -300 : along * 0.5) + next() * along * 0.8;
      const past = i % 3 === 0 ? 400 * next() : 0;
      const bend = { level, slope, pitch, space };
      const fit = bendWithWall(along, upright, bend, past);
      const bracket = passageBracket((u, v) => bendPassage(u, v, bend, past), along, upright, 900, {
        guess: fit,
      });
      expect(fit).toBeLessThanOrEqual(bracket.upper + 1e-6);
      expect(fit).toBeGreaterThanOrEqual(bracket.lower - 1e-3);
      const path = bracket.path();
      if (i % 5 === 0 && path.length > 1) {
        const u = Math.max(0, along + 2 * bracket.lower);
        const v = Math.max(0, upright + 2 * bracket.lower);
        const { world } = bendPassage(u, v, bend, past);
        expect(overlapAlong(world.obstacles, u, v, path, 4)).toBeLessThan(1e-3);
      }
    }
  });

  test('a rod in a bend of 90 degrees less a hair is the ladder: 3 and 4 ft, 9.8657 ft (Briggs & Cochran)', () => {
    const foot = 304.8;
    const fit = bendWithWall(9.8657 * foot, 0, {
      level: 3 * foot,
      slope: 4 * foot,
      pitch: Math.PI / 2 - 1e-7,
      space: Infinity,
    });
    expect(Math.abs(fit)).toBeLessThan(0.1);
  });

  const flight = { width: 800, headroom: 2000, rise: 190, going: 240 };
  const ends = { risers: 13, footCeiling: 2400, footSpace: 2500, headCeiling: 2400, headSpace: 2500 };

  test('what is shown at the two ends passes the whole flight, by the planner', () => {
    const next = seeded(31);
    for (let i = 0; i < 10; i++) {
      const along = 1200 + 900 * next();
      const upright = 25 + 900 * next();
      const measured = { ...ends, footSpace: 1300 + 1200 * next(), headCeiling: 2000 + 500 * next() };
      const fit = flightEndsFit(flight, measured, along, upright);
      const c = fit.clearance - 1;
      const u = along + 2 * c;
      const v = Math.max(0, upright + 2 * c);
      const whole = flightElevation(flight, measured, ends.risers, u, v)!;
      const bracket = passageBracket(
        (x, y) => flightElevation(flight, measured, ends.risers, x, y),
        along,
        upright,
        1000,
        { guess: fit.clearance - 0.3, workLimit: 6000 },
      );
      expect(whole.world.obstacles.length).toBeGreaterThan(3);
      expect(bracket.upper).toBeGreaterThanOrEqual(fit.clearance - 1e-6);
    }
  });

  test('a whole motion, foot to head, is free by the independent replay', () => {
    for (const [measured, hold] of [
      [ends, 'LB'],
      [{ ...ends, footSpace: 1600, headCeiling: 2100 }, 'LB'],
      [{ ...ends, footCeiling: 2050, headSpace: 1400 }, 'LT'],
    ] as const) {
      const piece = sortedPiece(1830, 700, 25);
      const shown = flightEndsMotion(flight, measured, piece, hold);
      expect(shown.motion.length).toBeGreaterThan(3);
      const first = shown.motion[0]!.at;
      const last = shown.motion[shown.motion.length - 1]!.at;
      expect(first[0]).toBeLessThanOrEqual(0);
      expect(last[0]).toBeGreaterThanOrEqual(13 * 240 - 1e-6);
      expect(replay(shown, piece, { padding: shown.motionPadding, step: 10 }).worstPenetration).toBeLessThan(
        0.05,
      );
    }
  });

  test('any subset of the measures is taken, and none leaves the flight alone', () => {
    expect(flightEndsFit(flight, {}, 1830, 930)).toMatchObject({ clearance: Infinity, limitedBy: 'none' });
    const all = flightEndsFit(flight, ends, 1830, 930).clearance;
    for (const name of ['footCeiling', 'footSpace', 'headCeiling', 'headSpace'] as const) {
      expect(flightEndsFit(flight, { [name]: ends[name] }, 1830, 930).clearance).toBeGreaterThanOrEqual(
        all - 1e-6,
      );
    }
  });

  test('a flight shorter than the piece: shown only what the planner does not refuse, and mostly all of it', () => {
    const next = seeded(12345);
    let short = 0;
    let exact = 0;
    for (let i = 0; i < 60; i++) {
      const rise = 170 + 40 * next();
      const going = 220 + 60 * next();
      const risers = 3 + Math.floor(5 * next());
      const stair = { width: 800, headroom: 1950 + 250 * next(), rise, going };
      const ceiling = (): number => (next() < 0.5 ? stair.headroom : stair.headroom + 600 * next());
      const measured = {
        risers,
        footCeiling: ceiling(),
        footSpace: 800 + 1200 * next(),
        headCeiling: ceiling(),
        headSpace: 800 + 1200 * next(),
      };
      const along = 1000 + 1000 * next();
      const upright = next() < 0.4 ? 25 + 100 * next() : 300 + 700 * next();
      const fit = flightEndsFit(stair, measured, along, upright);
      if (fit.keptLevel || along + 2 * fit.clearance <= risers * Math.hypot(rise, going)) continue;
      short++;
      const bracket = passageBracket(
        (u, v) => flightElevation(stair, measured, risers, u, v),
        along,
        upright,
        1000,
        { guess: fit.clearance, workLimit: 6000 },
      );
      expect(fit.clearance).toBeLessThanOrEqual(bracket.upper + 1e-6);
      if (fit.clearance > bracket.lower - 1) exact++;
      if (i % 6 === 0) {
        const piece = sortedPiece(along, upright, 20);
        const shown = flightEndsMotion(stair, measured, piece, along >= upright ? 'LB' : 'BL');
        const replayed = replay(shown, piece, { padding: shown.motionPadding, step: 15 });
        expect(replayed.worstPenetration).toBeLessThan(0.1);
      }
    }
    expect(short).toBeGreaterThan(20);
    expect(exact / short).toBeGreaterThan(0.4);
  });

  test('a wall near the foot asks for a lift over the first treads', () => {
    const near = flightEndsFit(flight, { ...ends, footSpace: 1500 }, 1830, 930);
    expect(near.raise).toBeGreaterThan(0);
    // Half of it has to be over the floor: 1830 / 2 = 915, and 1000 - 240 = 760.
    expect(flightEndsFit(flight, { ...ends, footSpace: 1000 }, 1830, 930).clearance).toBeLessThan(0);
  });

  test('kept level, by hand', () => {
    // 150/300: slope 1/2. Under the foot's ceiling (2000 - 1900)/2 = 50; under the headroom
    // (3000 - 1900 - 400/2) / (2 x 1.5) = 300.
    const gentle = { width: 900, headroom: 3000, rise: 150, going: 300 };
    const tall = { footCeiling: 2000, footSpace: 5000, headCeiling: 2100, headSpace: 5000 };
    expect(flightEndsFit(gentle, tall, 400, 1900)).toMatchObject({
      clearance: 50,
      limitedBy: 'foot',
      keptLevel: true,
      raise: 0,
    });
    const head = { ...tall, footCeiling: 2100, headCeiling: 1960 };
    expect(flightEndsFit(gentle, head, 400, 1900)).toMatchObject({ clearance: 30, limitedBy: 'head' });
    // The floor before the nosings' line is 800 - 300 = 500: its centre over it by 500 - 450 = 50, and 900 - 500
    // of it over the treads, half as high.
    expect(flightEndsFit(gentle, { footCeiling: 2400, footSpace: 800 }, 900, 600)).toMatchObject({
      clearance: 50,
      limitedBy: 'foot',
      raise: 200,
    });
    // On a landing it is the landing's how far it overhangs and is lifted; then the head decides: 450 - 700/2.
    const near = { footCeiling: 2400, footSpace: 700, headCeiling: 2400, headSpace: 450 };
    expect(flightEndsFit(gentle, near, 700, 600)).toMatchObject({ clearance: 50, raise: 150 });
    expect(flightEndsFit(gentle, { ...near, footOnLanding: true }, 700, 600)).toMatchObject({
      clearance: 100,
      limitedBy: 'head',
      raise: 0,
    });
  });

  test('one end alone counts, by its ceiling alone too, and the number of risers says nothing about it', () => {
    const under = flightEndsFit(flight, { footCeiling: 2050 }, 1830, 900);
    expect(under.limitedBy).toBe('foot');
    expect(Number.isFinite(under.clearance)).toBe(true);
    const counted = flightEndsFit(flight, { footCeiling: 2050, risers: 4 }, 1830, 900);
    expect({ ...counted, critical: counted.critical() }).toEqual({ ...under, critical: under.critical() });
    expect(flightEndsFit(flight, { headSpace: 1500 }, 1830, 900).limitedBy).toBe('head');
    // Never shrunk beyond a point, however little floor there is.
    expect(flightEndsFit(flight, { footSpace: 0 }, 1830, 900).clearance).toBe(-915);
  });

  test('monotone in every measure and in the piece, and below the proof', () => {
    const names = ['footCeiling', 'footSpace', 'headCeiling', 'headSpace'] as const;
    fc.assert(
      fc.property(
        fc.array(unit, { minLength: 8, maxLength: 8 }),
        fc.nat({ max: 3 }),
        unit,
        (r, which, by) => {
          const m = {
            footCeiling: 1900 + 800 * r[0]!,
            footSpace: 900 + 2500 * r[1]!,
            headCeiling: 1900 + 800 * r[2]!,
            headSpace: 900 + 2500 * r[3]!,
          };
          const along = 600 + 1800 * r[4]!;
          const upright = 20 + 1100 * r[5]!;
          const fit = flightEndsFit(flight, m, along, upright).clearance;
          expect(fit).toBeGreaterThanOrEqual(-Math.max(along, upright) / 2);
          const name = names[which]!;
          const less = flightEndsFit(flight, { ...m, [name]: m[name] * (1 - 0.2 * by) }, along, upright);
          expect(less.clearance).toBeLessThanOrEqual(fit + 1e-4);
          const lower = flightEndsFit({ ...flight, headroom: 2000 - 300 * by }, m, along, upright);
          expect(lower.clearance).toBeLessThanOrEqual(fit + 1e-4);
          const smaller = flightEndsFit(flight, m, along * (1 - 0.2 * r[6]!), upright * (1 - 0.2 * r[7]!));
          expect(smaller.clearance).toBeGreaterThanOrEqual(Math.min(fit, 0) - 1e-4);
        },
      ),
      { seed: 9, numRuns: 400 },
    );
    const bound = flightEndsAtMost(flight, ends, { length: 1830, breadth: 930, thickness: 25 })!;
    expect(bound.atMost).toBeGreaterThan(0);
  });

  test('a wider flight leaves no less: what is carried in the narrower may be carried so in it', () => {
    const next = seeded(335);
    const drawn = (least: number, most: number): number => least + (most - least) * next();
    const best = (width: number, stair: StairDrawn, piece: PieceSize): number =>
      Math.max(
        ...flightPassages({ ...stair, width }, piece, stair.ends).map(({ answer }) => answer.clearance),
      );
    let leaning = 0;
    for (let n = 0; n < 70; n++) {
      const stair: StairDrawn = {
        ...{ headroom: drawn(1850, 2100), rise: drawn(150, 215), going: drawn(215, 290) },
        ends: {
          ...{ risers: 12, footCeiling: drawn(2000, 2600), footSpace: drawn(900, 3000) },
          ...{ headCeiling: drawn(1900, 2600), headSpace: drawn(900, 5000) },
        },
      };
      const width = drawn(900, 1300);
      const piece = sortedPiece(drawn(1800, 2600), drawn(1200, 1500), drawn(15, 60));
      const narrow = best(width, stair, piece);
      for (const more of [10, 40])
        expect(best(width + more, stair, piece)).toBeGreaterThanOrEqual(narrow - 1e-6);
      const [first] = flightPassages({ ...stair, width }, piece, stair.ends).filter(
        ({ answer }) => answer.clearance === narrow,
      );
      if (first?.answer.pose === 'leaning') leaning++;
    }
    expect(leaning).toBeGreaterThan(8);
  });
});
