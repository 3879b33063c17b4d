import { doorPassageBracket } from '../../support/doorPassageBracket';
import { doorIntoPassage } from '../../../src/core/geometry/doorIntoPassage';
import { rectangleRoundCornerInHold } from '../../../src/core/geometry/rectangleRoundCorner';
import type { JointBlock, JointRow } from '../../../src/core/joint/jointRow';
import * as planar from '../../../src/core/geometry/planar/decidePassage';
import { planJoint } from '../../../src/core/joint/planJoint';
import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { block } from '../../support/jointBlock';
import { seeded } from '../../support/parkMiller';
import { replay } from '../../support/replayMotion';

const SCENES = Number(process.env['SCENES'] ?? 0);

/** The widest of its passages; -Infinity where it shows none. */
const widest = (given: JointBlock, piece: PieceSize, atLeast?: number): number => {
  const passages = planJoint(given, piece, atLeast === undefined ? {} : { atLeast });
  expect(passages).toBeDefined();
  return Math.max(-Infinity, ...(passages ?? []).map((p) => p.answer.clearance));
};

const corner = (
  width: number,
  widthOut: number,
  height: number,
  more: Partial<JointRow> & { run?: number } = {},
): JointRow => ({
  stage: 'corner',
  measures: { width, widthOut, height, run: more.run ?? 0 },
  hand: more.hand ?? 'left',
  place: more.place,
});

describe('level rows that stand close, in plan', () => {
  test('a corner by itself is the rectangle round a corner', () => {
    const next = seeded(12);
    for (let i = 0; i < (SCENES || 5); i++) {
      const [a, b] = [800 + 600 * next(), 800 + 600 * next()];
      const [p, q] = [1200 + 1200 * next(), 30 + 300 * next()];
      const piece = sortedPiece(p, q, q - 1);
      const turn = i % 2 === 0 ? 90 : 30 + 60 * next();
      const { clearance } = rectangleRoundCornerInHold(p, q, a, b, (turn * Math.PI) / 180, 'lengthwise');
      if (clearance < -20 || clearance > 100) continue;
      const rows = [corner(a, b, q + 250)].map((row) => ({ ...row, measures: { ...row.measures, turn } }));
      // Held flat: its breadth across.
      const flat = planJoint(block(rows), piece, { from: ['LT'], atLeast: -25 })!.filter(
        ({ to, answer }) => to === 'LT' && answer.pose === 'flat',
      );
      expect(flat[0]!.answer.clearance).toBeLessThanOrEqual(clearance + 1e-3);
      expect(flat[0]!.answer.clearance).toBeGreaterThan(clearance - 2.1);
    }
  });

  test('an arm too short to be one, into open ground, is a door out of a passage', () => {
    const next = seeded(345);
    for (let i = 0; i < (SCENES || 4); i++) {
      const [width, wide] = [750 + 250 * next(), 850 + 250 * next()];
      const length = 20 + 200 * next();
      const piece = sortedPiece(1800 + 700 * next(), 1000, 100 + 250 * next());
      const rows: JointRow[] = [
        { stage: 'passage', measures: { width: wide, height: 1500, length: 3000 } },
        corner(wide, width, 1500),
        { stage: 'passage', measures: { width, height: 1500, length } },
      ];
      const given = block(rows, { after: 'open' });
      // Walked the other way it comes out of a door as wide as the arm, closed at the nearer jamb, from open ground.
      const plan = { door: width, wall: length, approach: 20000, passage: wide, deadEnd: 0 };
      const { clearance } = doorIntoPassage(piece.length, piece.thickness, plan);
      if (clearance < -20) continue;
      const shown = planJoint(given, piece, { from: ['LB'], atLeast: -25 })!;
      const level = Math.max(
        ...shown.filter(({ answer }) => answer.pose === 'on edge').map((p) => p.answer.clearance),
      );
      const bracket = doorPassageBracket(piece.length, piece.thickness, plan, {
        tolerance: 1,
        guess: clearance,
      });
      expect(level).toBeLessThanOrEqual(bracket.upper + 1e-3);
      expect(level).toBeGreaterThan(clearance - 2.1);
    }
  });

  test('motions are drawn in the frame of the entry plane and are free by the independent replay', () => {
    const next = seeded(2718);
    let drawn = 0;
    for (let i = 0; drawn < (SCENES || 6) && i < 400; i++) {
      const w = () => 750 + 550 * next();
      const [a, b, c] = [w(), w(), w()];
      const hand = () => (next() < 0.5 ? 'left' : 'right');
      const height = 2000 + 300 * next();
      const middle: JointRow =
        next() < 0.5
          ? {
              stage: 'passage',
              measures: { width: b * (0.7 + 0.3 * next()), height, length: 1500 * next() },
              place: next(),
            }
          : {
              stage: 'door',
              measures: { width: b * (0.7 + 0.3 * next()), height: height - 100, wall: 100 },
              place: next(),
            };
      const rows: JointRow[] = [
        { stage: 'passage', measures: { width: a, height, length: 500 } },
        corner(a, b, height, { hand: hand(), run: 400 * next() }),
        middle,
        next() < 0.5
          ? corner(c, w(), height, { hand: hand(), place: next() })
          : {
              stage: 'side door',
              hand: hand(),
              place: next(),
              measures: {
                width: 650 + 200 * next(),
                height: height - 60,
                wall: 110,
                widthOut: c,
                ceiling: height,
                depth: 800 * next(),
              },
            },
      ];
      const piece = sortedPiece(1000 + 1200 * next(), 250 + 600 * next(), 20 + 200 * next());
      const passages = planJoint(block(rows, { after: next() < 0.5 ? 'open' : 'straight' }), piece, {
        atLeast: 0,
      })!;
      const passage = passages[Math.floor(next() * passages.length)];
      const shown = passage?.shown();
      if (!passage || !shown) continue;
      drawn++;
      expect(shown.motionPadding).toBeGreaterThanOrEqual(passage.answer.clearance - 1e-9);
      expect(shown.motion[0]!.at[0]).toBeLessThan(0);
      const { worstPenetration } = replay(shown, piece, { padding: shown.motionPadding - 0.01, step: 20 });
      expect({ i, worstPenetration }).toEqual({ i, worstPenetration: 0 });
    }
    expect(drawn).toBeGreaterThanOrEqual(SCENES || 6);
  });

  test('from open ground a piece held crosswise passes as it does lengthwise, turned before it begins', () => {
    const rows: JointRow[] = [
      { stage: 'door', measures: { width: 780, height: 1981, wall: 100 } },
      { stage: 'passage', measures: { width: 1000, height: 2400, length: 1800 } },
      corner(1000, 900, 2400, { run: 200 }),
    ];
    const given = block(rows, { before: 'open', after: 'straight' });
    const piece = sortedPiece(1900, 700, 40);
    const decided = jest.spyOn(planar, 'decidePassage');
    const [lengthwise] = planJoint(given, piece, { from: ['LB'], atLeast: 0 })!;
    const before = decided.mock.calls.length;
    expect(before).toBeGreaterThan(0);
    const crosswise = planJoint(given, piece, { from: ['TB'], atLeast: 0 })!.find(({ to }) => to === 'LB');
    expect(crosswise?.answer.clearance).toBe(lengthwise?.answer.clearance);
    // Known already: nothing is decided again.
    expect(decided.mock.calls.length).toBe(before);
    const shown = crosswise?.shown();
    const { worstPenetration } = replay(shown!, piece, { padding: shown!.motionPadding - 0.01, step: 20 });
    expect(worstPenetration).toBe(0);
  });

  // The corner 1400/900 in one row is proved impossible for the cabinet, flush with the outer wall it is that corner.
  test('a passage of 900 behind a corner of 1400 stops the cabinet wherever it may stand', () => {
    const rows = (place: number): JointRow[] => [
      corner(1400, 1400, 2400),
      { stage: 'passage', place, measures: { width: 900, height: 2400, length: 4000 } },
    ];
    const through = [0, 0.5, 1].map((place) => widest(block(rows(place)), sortedPiece(2480, 1360, 480), 0));
    expect(Math.min(...through)).toBe(-Infinity);
  });

  // Flush with the inner edge it is a side door whose wall is the arm's 50 mm thicker, out of a closed passage of 1050.
  test('a door 50 mm behind a corner of 1050 is a side door, and the cabinet does not go wherever it stands', () => {
    const at = (place: number): number => {
      const rows: JointRow[] = [
        corner(1050, 1050, 2400, { run: 50 }),
        { stage: 'door', place, measures: { width: 715, height: 1981, wall: 110 } },
      ];
      return widest(block(rows, { after: 'open' }), sortedPiece(2060, 1150, 330), -25);
    };
    const { clearance } = doorIntoPassage(2060, 330, {
      door: 715,
      wall: 160,
      approach: 20000,
      passage: 1050,
      deadEnd: 335,
    });
    expect(clearance).toBeLessThan(0);
    expect(Math.abs(at(0) - clearance)).toBeLessThan(2.1);
    expect(at(1)).toBeGreaterThan(at(0));
  });

  // Flush with the outer wall it is the corner 1000/600: impossible for 2400 x 900 under 2300.
  test('a passage of 600 between two corners of 1000', () => {
    const rows = (place: number, hand: 'left' | 'right'): JointRow[] => [
      corner(1000, 1000, 2300),
      { stage: 'passage', place, measures: { width: 600, height: 2300, length: 2600 } },
      corner(1000, 1000, 2300, { hand, place }),
    ];
    const all = [0, 1].flatMap((place) =>
      (['left', 'right'] as const).map((hand) =>
        widest(block(rows(place, hand)), sortedPiece(2400, 900, 25), 0),
      ),
    );
    expect(Math.min(...all)).toBe(-Infinity);
  });

  // The door-into-passage form gives +11 for an arm of 50 and a height of 2000; a hundred is in between and passes.
  test('an arm of 100 into a room lets the cabinet through that the corner alone stops', () => {
    const rows: JointRow[] = [
      { stage: 'passage', measures: { width: 900, height: 1990, length: 3000 } },
      corner(900, 900, 1990),
      { stage: 'passage', measures: { width: 900, height: 1990, length: 100 } },
      { stage: 'room', measures: { length: 6000, width: 6000, height: 2400 } },
    ];
    expect(widest(block(rows), sortedPiece(2300, 1100, 300), 0)).toBeGreaterThan(-1e-3);
    const { clearance } = doorIntoPassage(2300, 300, {
      door: 900,
      wall: 100,
      approach: 6000,
      passage: 900,
      deadEnd: 0,
    });
    expect(clearance).toBeGreaterThanOrEqual(0);
    expect(widest(block([rows[0]!, rows[1]!]), sortedPiece(2300, 1100, 300), 0)).toBe(-Infinity);
  });

  // About 71 with the door in the middle of the room's wall, 0.3 in its corner (checked outside the project).
  test('a panel out of a passage through a side door into a room 3600 wide', () => {
    const rows = (place: number): JointRow[] => [
      { stage: 'passage', measures: { width: 900, height: 2400, length: 3000 } },
      {
        stage: 'side door',
        hand: 'left',
        measures: { width: 715, height: 1981, wall: 110, widthOut: 900, ceiling: 2400, depth: 0 },
      },
      { stage: 'room', place, measures: { length: 4000, width: 3600, height: 2400 } },
    ];
    const panel = sortedPiece(2640, 320, 40);
    const at = (place: number): number =>
      Math.max(
        ...planJoint(block(rows(place)), panel, { from: ['LB'], atLeast: 0, enough: 72 })!.map(
          (p) => p.answer.clearance,
        ),
      );
    expect(Math.abs(at(0.5) - 71)).toBeLessThan(2.1);
    expect(Math.abs(Math.min(at(0), at(1)) - 0.3)).toBeLessThan(2.1);
  });

  test('rows with a stair are not its business', () => {
    const flight: JointRow = {
      stage: 'flight',
      measures: { width: 900, height: 2000, rise: 190, going: 240, risers: 13 },
    };
    expect(planJoint(block([corner(900, 900, 2400), flight]), sortedPiece(1830, 930, 25))).toBeUndefined();
  });
});
