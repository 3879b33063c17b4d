import { RIGHT_ANGLE } from '../../../../src/core/measures/angle';
import { sortedPiece } from '../../../../src/core/measures/piece';
import {
  halfLandingAnswer,
  halfLandingWithMotion,
  halfLandingStage,
} from '../../../../src/core/stages/landing/halfLanding';
import {
  quarterLandingAnswer,
  quarterLandingStage,
} from '../../../../src/core/stages/landing/quarterLanding';
import {
  routePassages,
  retracedPassages,
  widestMotion,
} from '../../../../src/core/stages/landing/landingPassages';
import { retracedMotion } from '../../../../src/core/stages/landing/landingSearch';
import { winderStage } from '../../../../src/core/stages/winder/winder';
import { paddedPiece } from '../../../../src/core/measures/piece';
import { replay } from '../../../support/replayMotion';

const slab = sortedPiece(1830, 930, 25);
const half = {
  flightWidth: 850,
  well: 100,
  landingDepth: 850,
  headroom: 2100,
  rise: 190,
  going: 240,
  overRail: 0,
};
const quarter = { widthIn: 850, widthOut: 850, headroom: 2100, rise: 190, going: 240, overRail: 0 };

describe('HALFLANDING: a half landing', () => {
  test('passes the slab, as the motion planners recorded for a like scene found; the motion is replayed', () => {
    const shown = halfLandingWithMotion({ ...half, landingCeiling: 2400 }, slab);
    expect(shown.clearance).toBeGreaterThan(0);
    expect(replay(shown, paddedPiece(slab, shown.clearance)).collides).toBe(false);
    expect(replay(shown, slab).leastDistance).toBeGreaterThan(0);
  });

  test('is proved impossible where the piece fits on it in no attitude, with the reason named', () => {
    // A square of 1700 x 1700 does not stand in 600 x 1300 x 1500 (its edges sum to as much as the room's).
    const answer = halfLandingAnswer(
      { ...half, flightWidth: 600, landingDepth: 600, headroom: 1500 },
      sortedPiece(1700, 1700, 25),
    );
    expect(answer.atMost).toBeLessThan(0);
    expect(answer.bound).toContain('landing');
    expect(answer.clearance).toBeLessThan(0);
  });

  test('leaves the spine out of a proof where there is air above a handrail', () => {
    const measures = { ...half, flightWidth: 600, landingDepth: 600, headroom: 1500, overRail: 900 };
    expect(halfLandingAnswer(measures, sortedPiece(1700, 1700, 25)).bound).toContain('flight');
  });

  test('gives a passage for each way of holding, and its best is the answer', () => {
    const passages = routePassages(halfLandingStage(half), slab, 4000).map(({ passage }) => passage);
    const best = Math.max(...passages.map((p) => p.answer.clearance));
    expect(halfLandingAnswer(half, slab).clearance).toBeCloseTo(best, 6);
    for (const hold of ['LB', 'LT']) expect(passages.map((p) => p.from)).toContain(hold);
  });

  test('answers the same twice', () => {
    expect(halfLandingAnswer(half, slab)).toEqual(halfLandingAnswer(half, slab));
  });
});

describe('QUARTERLANDING: a quarter landing', () => {
  test('passes a slab that the flights take with a hand on each side', () => {
    expect(quarterLandingAnswer(quarter, slab).clearance).toBeGreaterThan(0);
  });

  test('never claims more than the flights leave', () => {
    for (const { from, answer } of routePassages(quarterLandingStage(quarter), slab, 4000).map(
      ({ passage }) => passage,
    )) {
      const clear = 2100 * (240 / Math.hypot(190, 240));
      const fits = from === 'LB' ? [850 - 25, clear - 930] : [850 - 930, clear - 25];
      expect(answer.clearance).toBeLessThanOrEqual(Math.min(...fits) / 2);
    }
  });
});

test('a winder claims a motion that is replayed, and never more than the flight’s section leaves', () => {
  const stair = { width: 800, headroom: 2000, turn: RIGHT_ANGLE, rise: 200, going: 220 };
  const panel = sortedPiece(1000, 600, 25);
  const shown = widestMotion(winderStage(stair), panel);
  expect(shown.clearance).toBeGreaterThan(0);
  expect(replay(shown, paddedPiece(panel, shown.clearance)).collides).toBe(false);
  // The flight beyond, by hand: 800 wide, 2000 cos(pitch) between nosings and ceiling; on edge 25 x 600 stand in it.
  const between = 2000 * (220 / Math.hypot(200, 220));
  expect(shown.clearance).toBeLessThanOrEqual(Math.max((800 - 25) / 2, (between - 600) / 2));
  // A box whose least side is more than the width passes no way whatever.
  const crate = widestMotion(winderStage(stair), sortedPiece(1000, 900, 801));
  expect(crate.atMost).toBeLessThan(0);
  expect(crate.clearance).toBeLessThan(0);
});

test('air above a rail takes nothing from what walls allow; a route’s coarser search passes the same piece', () => {
  const walls = { ...half, flightWidth: 800, headroom: 2050, landingCeiling: 2400 };
  const panel = sortedPiece(1000, 900, 25);
  const railed = { ...walls, overRail: 950 };
  const least = halfLandingAnswer(walls, panel).clearance;
  expect(halfLandingAnswer(railed, panel).clearance).toBeGreaterThanOrEqual(least);
  const inRoute = routePassages(halfLandingStage(railed), panel, 30000);
  expect(inRoute.some(({ passage }) => passage.answer.clearance > 0)).toBe(true);
});

test('in the worst case the same motion is gone over again, and never bears more', () => {
  const found = routePassages(halfLandingStage({ ...half, landingCeiling: 2400 }), slab, 30000);
  const less = halfLandingStage({ ...half, flightWidth: 845, landingDepth: 845, landingCeiling: 2395 });
  const worst = retracedPassages(less, sortedPiece(1835, 935, 30), found);
  expect(worst[0]!.answer.clearance).toBeGreaterThan(0);
  worst.forEach(({ answer }, i) =>
    expect(answer.clearance).toBeLessThanOrEqual(found[i]!.passage.answer.clearance),
  );
});

// Replayed by a program of its own in the place with the tape against the piece.
test.each([5, 25, 60])(
  'gone over again for %i mm it bears that where it bears more, and is replayed',
  (enough) => {
    const found = routePassages(halfLandingStage({ ...half, landingCeiling: 2400 }), slab, 30000);
    const less = halfLandingStage({ ...half, flightWidth: 845, landingDepth: 845, landingCeiling: 2395 });
    const larger = sortedPiece(1835, 935, 30);
    const known = found.flatMap((one) => (one.found ? [{ hold: one.hold, motion: one.found }] : []));
    const again = known.flatMap(({ hold, motion }) => {
      const task = less.task(larger, hold);
      const all = retracedMotion(task, larger, motion);
      const asked = retracedMotion(task, larger, motion, enough);
      return all && asked ? [{ all: all.clearance, asked }] : [];
    });
    expect(again.some(({ all }) => all > enough)).toBe(true);
    for (const { all, asked } of again) {
      expect(asked.clearance).toBeGreaterThanOrEqual(Math.min(all, enough));
      expect(replay(asked, paddedPiece(larger, asked.clearance)).collides).toBe(false);
    }
  },
);
