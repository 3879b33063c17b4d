import { sortedPiece } from '../../../../src/core/measures/piece';
import { turnsRightAngle } from '../../../../src/core/geometry/turnsRightAngle';
import { stairTurnAnswer } from '../../../../src/core/stages/stairTurn/stairTurn';
import type { StairTurnPlan } from '../../../../src/core/stages/stairTurn/turnedPlace';
import { stairTurnWithMotion } from '../../../support/stairTurnWithMotion';
import { seeded } from '../../../support/parkMiller';
import { replay } from '../../../support/replayMotion';

const SCENES = Number(process.env['SCENES'] ?? 0);

function seededTurn(next: () => number, rails: boolean): StairTurnPlan {
  const headroom = 1850 + 500 * next();
  return {
    end: next() < 0.5 ? 'head' : 'foot',
    flightWidth: 650 + 450 * next(),
    headroom,
    rise: 150 + 90 * next(),
    going: 190 + 130 * next(),
    straight: next() < 0.6 ? 0 : 600 * next(),
    passageWidth: 650 + 700 * next(),
    ceiling: next() < 0.2 ? headroom - 150 * next() : headroom + 700 * next(),
    overRail: rails ? 800 + 250 * next() : 0,
  };
}

const seededPiece = (next: () => number) =>
  sortedPiece(900 + 1900 * next(), 250 + 800 * next(), next() < 0.6 ? 20 + 40 * next() : 100 + 400 * next());

describe('a turn at the end of a stair', () => {
  test.each([false, true])('drawn motions are free by the independent replay (rails: %s)', (rails) => {
    const next = seeded(rails ? 77 : 4242);
    const count = SCENES || 12;
    let tilted = 0;
    let deepest = 0;
    for (let i = 0; i < count; i++) {
      const plan = seededTurn(next, rails);
      const piece = seededPiece(next);
      const shown = stairTurnWithMotion(plan, piece);
      if (shown.motion.length === 0) continue;
      if (shown.pose === 'tilted') tilted++;
      const first = shown.motion[0]!.at;
      const last = shown.motion[shown.motion.length - 1]!.at;
      expect(first[0]).toBeLessThan(0);
      expect(last[1]).toBeGreaterThan(plan.flightWidth);
      const { worstPenetration, at } = replay(shown, piece, {
        padding: shown.motionPadding,
        step: SCENES ? 12 : 25,
      });
      deepest = Math.max(deepest, worstPenetration);
      if (SCENES && worstPenetration > 0.1)
        console.log(i, worstPenetration, at, plan, piece, shown.clearance);
    }
    if (SCENES) console.log({ rails, tilted, deepest });
    expect(deepest).toBeLessThan(0.11);
  });

  // Over a rail at the foot it stands against the facing wall though it need not: there a wider passage can cost a little.
  test.each([
    [false, 1],
    [true, 6],
  ])('a larger opening or a smaller piece loses nothing to speak of (rails: %s)', (rails, most) => {
    const next = seeded(31337);
    let lost = 0;
    for (let i = 0; i < (SCENES || 8); i++) {
      const plan = seededTurn(next, rails);
      const piece = seededPiece(next);
      const more = 1 + 100 * next();
      const before = stairTurnAnswer(plan, piece).clearance;
      if (before < 0) continue;
      for (const name of ['flightWidth', 'headroom', 'passageWidth', 'ceiling'] as const) {
        const after = stairTurnAnswer({ ...plan, [name]: plan[name] + more }, piece).clearance;
        lost = Math.max(lost, before - after);
      }
      const less = { ...piece, length: piece.length - Math.min(more, piece.length - piece.breadth) };
      lost = Math.max(lost, before - stairTurnAnswer(plan, less).clearance);
    }
    expect(lost).toBeLessThan(most);
  });

  test('never above what is proved, and at a flat stair with a high ceiling the corner in plan', () => {
    const next = seeded(5);
    for (let i = 0; i < 20; i++) {
      const plan = seededTurn(next, false);
      const piece = seededPiece(next);
      const { clearance, atMost } = stairTurnAnswer(plan, piece);
      expect(clearance).toBeLessThanOrEqual(atMost);
    }
    // On edge, 40 mm thin, nothing above it in the way: the rectangle round a corner (Moretti 2002) and no more, since
    // tilting a low bar shortens its plan only when steep, and the ceiling forbids that.
    const plan: StairTurnPlan = {
      end: 'head',
      flightWidth: 900,
      headroom: 6000,
      rise: 50,
      going: 1000,
      straight: 0,
      passageWidth: 900,
      ceiling: 500,
      overRail: 0,
    };
    const inPlan = turnsRightAngle(2200, 40, 900, 900);
    const { clearance } = stairTurnAnswer(plan, sortedPiece(2200, 200, 40));
    expect(clearance).toBeLessThan(inPlan + 20);
    expect(clearance).toBeGreaterThan(inPlan - 3);
  });

  // An independent planner in space takes this panel round with 25 mm of padding (checked outside the project).
  test('a panel 2640 x 320 x 40 turns at the head of a flight 860 wide into a passage of 1000', () => {
    const plan: StairTurnPlan = {
      end: 'head',
      flightWidth: 860,
      headroom: 2050,
      rise: 195,
      going: 240,
      straight: 0,
      passageWidth: 1000,
      ceiling: 2400,
      overRail: 0,
    };
    expect(stairTurnAnswer(plan, sortedPiece(2640, 320, 40)).clearance).toBeGreaterThanOrEqual(25);
  });
});
