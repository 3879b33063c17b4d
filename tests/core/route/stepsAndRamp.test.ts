import type { Cell } from '../../../src/core/measures/readQuantity';
import type { PieceSize } from '../../../src/core/measures/piece';
import { prepareRoute } from '../../../src/core/route/preparedRoute';
import { judgeRoute, type RouteJudgement } from '../../../src/core/route/judgeRoute';
import { stageBook } from '../../../src/core/route/stageBook';
import { readRoute } from '../../../src/core/survey/table/readRoute';
import { checkRoute } from '../../../src/core/survey/checks/checkRoute';
import { routeAir } from '../../support/routeAir';
import { strays } from '../../support/routeReplay';
import { surveyTable } from '../../support/surveyTable';
import { walked } from '../../support/walkedRoute';

type Row = Readonly<Record<string, Cell>>;
const table = (rows: readonly Row[]): Cell[][] =>
  surveyTable(rows.map((row, i) => ({ Step: i + 1, ...row })));
const judge = (rows: readonly Row[], size: PieceSize, allowance = 25, tape = 0): RouteJudgement => {
  const book = stageBook(tape);
  return judgeRoute(prepareRoute(readRoute(table(rows)).rows, book), size, book, allowance).judge();
};

const STEPS: Row = { Stage: 'steps', Width: 1000, Risers: 3, Rise: 170, Going: 300, Way: 'up' };
const RAMP: Row = { Stage: 'ramp', Width: 1000, Length: 2400, Rise: 300, Way: 'up' };
const DOOR: Row = { Stage: 'door', Width: 900, Height: 2000 };
const ROOM: Row = { Stage: 'room', Length: 6000, Width: 5000, Height: 2500 };
const SLATE: PieceSize = { length: 1830, breadth: 930, thickness: 26 };
const CABINET: PieceSize = { length: 2480, breadth: 960, thickness: 340 };

describe('steps', () => {
  test('under the sky only the width limits a piece on edge', () => {
    // (1000 - 26) / 2, on open ground at both ends.
    expect(judge([STEPS], SLATE)).toMatchObject({ verdict: 'goes' });
    expect(judge([STEPS], SLATE).clearance).toBeCloseTo((1000 - 26) / 2, 6);
    expect(judge([{ ...STEPS, Height: 'open' }], SLATE).clearance).toBeCloseTo((1000 - 26) / 2, 6);
  });
  test('are the flight that they are', () => {
    const flight: Row = {
      ...STEPS,
      Stage: 'flight',
      Height: 2100,
      'Foot ceiling': 2100,
      'Head ceiling': 2100,
    };
    for (const size of [SLATE, CABINET]) {
      const under = judge([{ ...STEPS, Height: 2100 }, ROOM], size);
      const asFlight = judge([flight, ROOM], size);
      // Over a few steps it may be lifted level too, which a flight without measured spaces does not count.
      expect(under.clearance).toBeGreaterThanOrEqual(asFlight.clearance! - 1e-9);
      expect(under.verdict).toBe(asFlight.verdict);
    }
  });
  test('a door that follows stands at the last riser: the piece goes into it level, over all that the steps rise', () => {
    const low: Row = { ...STEPS, Risers: 2, Rise: 150 };
    const into = (steps: Row): RouteJudgement => judge([steps, { ...DOOR, Width: 1000 }, ROOM], CABINET);
    // Flat through the door: (1000 - 960) / 2 as it lies, (1000 - 340) / 2 on edge; raised by 300 that is by hand.
    expect(into(low)).toMatchObject({ verdict: 'goes', clearance: (1000 - 340) / 2, raise: 300 });
    expect(into({ ...low, Way: null })).toMatchObject({ verdict: 'goes' });
    // 450 is more than by hand.
    expect(into({ ...low, Risers: 3 })).toMatchObject({ verdict: 'tight', tightness: 'trial', raise: 450 });
    // Under a porch roof of 1000 it has to lie flat, and 700 are left above the steps.
    expect(into({ ...low, Height: 1000 }).clearance).toBeCloseTo((1000 - 960) / 2, 9);
    // Level over them 660 - 300 - 340 are left; laid along them, 150 up in 300, 660 cos 26.6 - 340 = 250, so the sides decide.
    expect((660 - 300 - 340) / 2).toBeLessThan(20);
    expect(660 * Math.cos(Math.atan2(150, 300)) - 340).toBeGreaterThan(1000 - 960);
    expect(into({ ...low, Height: 660 }).clearance).toBeCloseTo((1000 - 960) / 2, 4);
  });
  test.each(['step', 'Kerb', 'sill'])('%s is another word for them', (word) => {
    const one = judge([{ ...STEPS, Stage: word, Risers: 1 }], SLATE);
    expect(one.verdict).toBe('goes');
  });
  test('one riser is never easier than none, nor harder than two', () => {
    const clearance = (rows: readonly Row[]): number =>
      judge([...rows, ROOM], CABINET).clearance ?? -Infinity;
    const height = 1100;
    const none = clearance([{ Stage: 'passage', Width: 1000, Height: height, Length: 4000 }]);
    const one = clearance([{ ...STEPS, Risers: 1, Height: height }]);
    const two = clearance([{ ...STEPS, Risers: 2, Height: height }]);
    expect(one).toBeLessThanOrEqual(none + 1e-9);
    expect(two).toBeLessThanOrEqual(one + 1e-9);
  });
  test('a flight straight after steps is missing what lies between', () => {
    const flight: Row = { ...STEPS, Stage: 'flight', Height: 2100 };
    expect(checkRoute(table([STEPS, flight, ROOM]))).toContainEqual(
      expect.objectContaining({ kind: 'route fault' }),
    );
  });
});

describe('a turn behind the door of a few steps', () => {
  const passage = { Stage: 'passage', Width: 910, Height: 2400, Length: 4000 } as const;
  const corner = { Stage: 'corner', Width: 1020, 'Width out': 910, Height: 2400 } as const;
  const door: Row = { ...DOOR, Width: 790, Wall: 110 };
  const panel: PieceSize = { length: 1990, breadth: 300, thickness: 38 };
  const low: Row = { ...STEPS, Risers: 2, Rise: 140 };
  const into = (first: Row): RouteJudgement => judge([first, door, corner, passage, ROOM], panel);

  test('the piece stands level over the steps while it goes round', () => {
    // On edge it is 1990 x 38 in plan, padded by 25, and turns between arms of 790 and 910 (the rectangle round a corner, Moretti,
    // College Math. J. 33(3), 2002, 196-200); between door and steps there are 110.
    let least = Infinity;
    for (let k = 0; k <= 9000; k++) {
      const f = (k * Math.PI) / 18000;
      const [s, c] = [Math.sin(f), Math.cos(f)];
      least = Math.min(least, 790 * c + 910 * s - (1990 + 50) * s * c - (38 + 50));
    }
    expect(least).toBeGreaterThan(0);
    expect(into(low).verdict).toBe('goes');
    expect(into(low).raise).toBe(280);
    expect(into({ ...RAMP, Rise: 150 }).raise).toBeLessThanOrEqual(150 + 1e-9);
    expect(['goes', 'tight']).toContain(into({ ...RAMP, Rise: 150 }).verdict);
  });
  test('but not over more than it is raised by hand, nor where they lead down to the door', () => {
    expect(into({ ...low, Risers: 3, Rise: 150 })).toMatchObject({ verdict: 'tight', tightness: 'trial' });
    // Its end is over the lower ground by all that the ramp rises, however it came up.
    const steep = into({ ...RAMP, Rise: 600 });
    expect(steep.verdict).not.toBe('goes');
    // Down to the door its tail is above the upper ground: level through the door it is as high as the steps rise. Where it is
    // too low to carry it on end, there is no other way.
    const under = (row: Row, Height: number): Row => ({ ...row, Height });
    const down = judge(
      [{ ...low, Way: 'down' }, under(door, 1500), under(corner, 1600), under(passage, 1600), ROOM],
      panel,
    );
    expect(down).toMatchObject({ verdict: 'tight', tightness: 'trial' });
    expect(down.raise).toBeGreaterThanOrEqual(2 * 140);
  });
  test('on end it goes down them and out at the door, raised little: the motion stays in the air of the house', () => {
    const rows = [{ ...low, Way: 'down' }, door, corner, passage, ROOM];
    const judged = judge(rows, panel);
    expect(judged).toMatchObject({ verdict: 'goes', pose: 'on end' });
    const placed = readRoute(table(rows)).rows.flatMap(({ stage, measures, hand, way }) =>
      stage ? [{ stage, measures, hand, way }] : [],
    );
    const walk = walked(placed, panel, 'measured', 25);
    expect(walk?.notDrawn).toBeUndefined();
    expect(walk && strays(walk.keys, panel, walk.padding, routeAir(placed), 12)).toBeUndefined();
    // A porch roof over the steps leaves less than its breadth above their head.
    // A porch roof over the steps leaves less than its breadth above their head.
    expect(into({ ...low, Height: 570 }).verdict).not.toBe('goes');
  });
});

describe('a ramp', () => {
  test('under the sky only the width limits a piece on edge', () => {
    expect(judge([RAMP], SLATE).clearance).toBeCloseTo((1000 - 26) / 2, 6);
  });
  test('its pitch is that of its rise in its length along the slope', () => {
    // Laid along the slope the clear height is Height x cos(asin(Rise / Length)): trigonometry.
    const height = 1000;
    const low = { ...RAMP, Height: height, Length: 6000, Rise: 800, Width: 3000 };
    const size: PieceSize = { length: 900, breadth: 900, thickness: 900 };
    const along = (height * Math.sqrt(1 - (800 / 6000) ** 2) - 900) / 2;
    const found = judge([low], size).clearance!;
    expect(found).toBeLessThanOrEqual(along + 1e-6);
    // The bends at the foot and the head take something; the steps that stand for the slope a hundredth of its rise.
    expect(found).toBeGreaterThan(along - 60);
  });
  test('the tape is not divided: its rise errs by the whole of it', () => {
    const low: Row = { ...RAMP, Height: 1500, Length: 2000, Rise: 600 };
    const size: PieceSize = { length: 2200, breadth: 900, thickness: 300 };
    const book = stageBook(5);
    const prepared = prepareRoute(readRoute(table([low])).rows, book);
    const worst = judgeRoute(prepared, size, book, 25).judge();
    expect(worst.verdict).not.toBe('not measured');
  });
  test('a piece that passes a steep ramp passes a flatter one', () => {
    let last = Infinity;
    for (const Rise of [100, 300, 600, 900, 1200]) {
      const { clearance = -Infinity } = judge([{ ...RAMP, Height: 1300, Rise }], CABINET);
      expect(clearance).toBeLessThanOrEqual(last + 1e-6);
      last = clearance;
    }
  });
});

test('"open" is the sky for a passage, steps and a ramp, and for no door', () => {
  const passage: Row = { Stage: 'passage', Width: 1000, Height: 'open', Length: 5000 };
  const onEnd: PieceSize = { length: 5500, breadth: 600, thickness: 500 };
  expect(judge([passage], onEnd).verdict).toBe('goes');
  expect(judge([passage], onEnd).reason).toContain('Height open');
  expect(judge([{ ...DOOR, Height: 'open' }], SLATE).verdict).toBe('not measured');
});

describe('reasons name what the piece is on', () => {
  const because = (row: Row, size: PieceSize): string[] =>
    judge([row, ROOM], size).steps.map((step) => step.because);
  test.each([
    // Too low to be carried level over all that it rises, so that the piece lies along the pitch.
    ['ramp', { ...RAMP, Width: 480, Height: 1180, Rise: 900 }, 'between the sides of the ramp, 480 mm apart'],
    [
      'steps',
      { ...STEPS, Width: 480, Height: 1300, Rise: 200, Risers: 4 },
      'between the sides of the steps, 480 mm apart',
    ],
  ] as const)('a %s is no flight', (_, row, words) => {
    const [reason = ''] = because(row, { length: 1200, breadth: 700, thickness: 300 });
    expect(reason).toContain(words);
    expect(reason).not.toContain('flight');
    expect(reason).not.toContain('passage');
  });
  test('a flight is one', () => {
    const flight: Row = { Stage: 'flight', Width: 480, Height: 2000, Rise: 180, Going: 250, Way: 'up' };
    const [reason = ''] = because(flight, { length: 1200, breadth: 700, thickness: 300 });
    expect(reason).toContain('between the sides of the flight, 480 mm apart');
  });
});
