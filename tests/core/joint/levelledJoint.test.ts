import type { JointRow } from '../../../src/core/joint/jointRow';
import { levelledJoint } from '../../../src/core/joint/levelledJoint';
import { planJoint } from '../../../src/core/joint/planJoint';
import { planBetween } from '../../../src/core/joint/sideOf';
import { sortedPiece } from '../../../src/core/measures/piece';
import { block } from '../../support/jointBlock';
import { seeded } from '../../support/parkMiller';
import { replay } from '../../support/replayMotion';
import { TURN_AT_HEAD } from '../../support/stairs';

const SCENES = Number(process.env['SCENES'] ?? 0);

describe("level at a stair's end, then round the turns", () => {
  test('seeded blocks, the stair first or last, up or down: every motion is free by the independent replay', () => {
    const next = seeded(60221);
    let [first, last] = [0, 0];
    for (let i = 0; Math.min(first, last) < (SCENES || 3) && i < 400; i++) {
      const w = () => 750 + 400 * next();
      const hand = () => (next() < 0.5 ? 'left' : 'right');
      const ceiling = 2200 + 300 * next();
      const width = w();
      const flight: JointRow = {
        stage: 'flight',
        way: next() < 0.5 ? 'up' : 'down',
        place: next(),
        measures: {
          width,
          height: 1950 + 200 * next(),
          rise: 160 + 50 * next(),
          going: 210 + 80 * next(),
          risers: 3 + Math.floor(12 * next()),
          footCeiling: ceiling,
          headCeiling: ceiling,
        },
      };
      const corner = (run: number): JointRow => ({
        stage: 'corner',
        hand: hand(),
        place: next(),
        measures: { width: w(), widthOut: w(), height: ceiling, run },
      });
      const door: JointRow = {
        stage: 'side door',
        hand: hand(),
        place: next(),
        measures: {
          width: 650 + 250 * next(),
          height: 2000,
          wall: 110,
          widthOut: width,
          ceiling,
          depth: 400 * next(),
        },
      };
      const passage: JointRow = {
        stage: 'passage',
        place: next(),
        measures: { width: w(), height: ceiling, length: 1500 * next() },
      };
      const stairFirst = next() < 0.5;
      const rows = stairFirst
        ? [flight, next() < 0.5 ? corner(0) : door, ...(next() < 0.4 ? [passage] : [])]
        : [...(next() < 0.4 ? [passage] : []), corner(600 * next()), flight];
      const given = block(rows, { [stairFirst ? 'after' : 'before']: next() < 0.5 ? 'open' : 'straight' });
      const piece = sortedPiece(1200 + 1300 * next(), 250 + 350 * next(), 25 + 100 * next());
      const passages = levelledJoint(given, piece, { atLeast: 0, enough: 40 }) ?? [];
      for (const passage of passages.slice(0, 2)) {
        const shown = passage.shown()!;
        expect(shown.motionPadding).toBeGreaterThanOrEqual(passage.answer.clearance - 1e-9);
        const { worstPenetration } = replay(shown, piece, { padding: shown.motionPadding - 0.01, step: 25 });
        expect({ i, worstPenetration }).toEqual({ i, worstPenetration: 0 });
        if (stairFirst) first++;
        else last++;
      }
    }
    expect(Math.min(first, last)).toBeGreaterThanOrEqual(SCENES || 3);
  });

  // An independent planner takes this panel through with 25 mm of padding (checked outside the project).
  test('a panel goes off the stair through a door in the side of the floor at its head', () => {
    const flight: JointRow = {
      stage: 'flight',
      way: 'up',
      measures: {
        ...TURN_AT_HEAD,
        headSpace: 1000,
      },
    };
    const door = (depth: number): JointRow => ({
      stage: 'side door',
      hand: 'left',
      measures: { width: 760, height: 1981, wall: 110, widthOut: 860, ceiling: 2400, depth },
    });
    for (const depth of [0, 240]) {
      const passages = levelledJoint(
        block([flight, door(depth)], { after: 'open' }),
        sortedPiece(2640, 320, 40),
        {
          from: ['LB'],
          atLeast: 25,
          enough: 30,
        },
      )!;
      expect(passages.length).toBeGreaterThan(0);
    }
  });

  test('with a floor longer than the piece before the turn it is the turn alone', () => {
    const corner: JointRow = {
      stage: 'corner',
      hand: 'left',
      measures: { width: 900, widthOut: 950, height: 2400 },
    };
    const flight: JointRow = {
      stage: 'flight',
      way: 'up',
      measures: {
        width: 900,
        height: 2300,
        rise: 170,
        going: 280,
        risers: 13,
        headCeiling: 2400,
        headSpace: 4950,
      },
    };
    const piece = sortedPiece(1900, 300, 60);
    const at = (given: typeof planJoint, rows: JointRow[]): number =>
      given(block(rows), piece, { from: ['LB'], tolerance: 4 })!.filter(
        ({ to, answer }) => to === 'LB' && answer.pose === 'on edge',
      )[0]!.answer.clearance;
    const alone = at(planJoint, [corner]);
    expect(Math.abs(at(levelledJoint, [flight, corner]) - alone)).toBeLessThan(4.1);
  });

  test('a sloping slab between two heights is what of it lies there', () => {
    // A plate rising one in one along x, 10 thick, seen between 100 and 200: 100 long and what its thickness adds.
    const turn = [Math.cos(Math.PI / 8), 0, -Math.sin(Math.PI / 8), 0] as const;
    const plan = planBetween({ centre: [0, 0, 0], size: [2000, 500, 10], turn }, 100, 200)!;
    const xs = plan.map((p) => p[0]);
    expect(Math.max(...xs)).toBeCloseTo(200 + 10 / Math.SQRT2, 6);
    expect(Math.min(...xs)).toBeCloseTo(100 - 10 / Math.SQRT2, 6);
    expect(
      planBetween({ centre: [0, 0, 0], size: [2000, 500, 10], turn: [1, 0, 0, 0] }, 100, 200),
    ).toBeUndefined();
  });

  test('rows without a stair, or with a stair between turns, are not its business', () => {
    const corner: JointRow = {
      stage: 'corner',
      hand: 'left',
      measures: { width: 900, widthOut: 900, height: 2400 },
    };
    const flight: JointRow = {
      stage: 'flight',
      way: 'up',
      measures: { width: 900, height: 2000, rise: 190, going: 240, risers: 13 },
    };
    const piece = sortedPiece(1800, 300, 60);
    expect(levelledJoint(block([corner, corner]), piece)).toBeUndefined();
    expect(levelledJoint(block([corner, flight, corner]), piece)).toBeUndefined();
    expect(levelledJoint(block([flight]), piece)).toBeUndefined();
  });
});
