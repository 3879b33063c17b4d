import { guardsOf } from '../../../src/core/route/guards';
import type { Arm, ArmSection } from '../../../src/core/route/arms';
import {
  leastLength,
  lengthOf,
  NO_LENGTH,
  OPEN_LENGTH,
  straightLength,
  together,
  type WayLength,
} from '../../../src/core/route/wayLength';
import { diagonalClearance } from '../../../src/core/route/poseChange';
import { advisedInstead } from '../../../src/core/route/advisedInstead';
import { tapedMeasures, tapedPiece } from '../../../src/core/route/tapeCase';

// By hand: a length made of so many measures errs by so many tapes, and what is not measured may be anything.

const measured = (known: number, tapes = 1): WayLength => ({ known, tapes, open: false });

test('a length with the tape against it, as measured, and for it', () => {
  const two = together(lengthOf(1000), lengthOf(300));
  expect(two).toEqual(measured(1300, 2));
  expect(straightLength(two, 'worst', 5)).toBe(1290);
  expect(straightLength(two, 'measured', 5)).toBe(1300);
  expect(straightLength(two, 'best', 5)).toBe(1310);
  expect(leastLength(measured(8), 10)).toBe(0);
  expect(straightLength(NO_LENGTH, 'worst', 5)).toBe(0);
  expect(straightLength(NO_LENGTH, 'best', 5)).toBe(0);
});

test('what is not measured is nothing at worst, and else as long as it may be', () => {
  expect(lengthOf(undefined)).toEqual(OPEN_LENGTH);
  const open = together(lengthOf(1000), OPEN_LENGTH);
  expect(open).toEqual({ known: 1000, tapes: 1, open: true });
  expect(straightLength(open, 'worst', 5)).toBe(995);
  expect(straightLength(open, 'measured', 5)).toBe(Infinity);
  expect(straightLength(open, 'best', 5)).toBe(Infinity);
  const limited: WayLength = { known: 100, tapes: 1, open: true, most: 900 };
  expect(straightLength(limited, 'measured', 5)).toBe(900);
  expect(straightLength(limited, 'best', 5)).toBe(905);
  expect(straightLength(limited, 'worst', 5)).toBe(95);
  // A limit holds of both together only where both have one.
  expect(together(limited, lengthOf(200))).toEqual({ known: 300, tapes: 2, open: true, most: 1100 });
  expect(together(lengthOf(200), limited)).toEqual({ known: 300, tapes: 2, open: true, most: 1100 });
  expect(together(limited, OPEN_LENGTH)).toEqual({ known: 100, tapes: 1, open: true });
  expect(together(limited, limited)).toEqual({ known: 200, tapes: 2, open: true, most: 1800 });
});

describe('an arm of a bend, narrower and lower as it goes on', () => {
  const section = (
    row: number,
    width: number,
    height: number,
    at: WayLength,
    raised?: number,
  ): ArmSection => ({
    ...{ row, width, height, at },
    ...(raised === undefined ? {} : { raised }),
  });
  const guards = (sections: ArmSection[], tapeCase: 'worst' | 'measured' | 'best' = 'measured') => {
    const arm: Arm = { sections, end: { kind: 'open', at: OPEN_LENGTH, row: undefined } };
    return guardsOf(arm, 1000, 2400, tapeCase, 5);
  };
  test('is one way as it is at the bend, where nothing narrows it', () => {
    const whole = [{ width: 1000, height: 2400, upTo: Infinity, next: undefined, by: [] }];
    expect(guards([])).toEqual(whole);
    expect(guards([section(3, 1000, 2400, measured(500)), section(4, 1200, 2500, measured(900))])).toEqual(
      whole,
    );
  });
  test('is taken up to each part that is narrower or lower, or as narrow and low as that all along', () => {
    expect(
      guards([section(3, 900, 2600, measured(500)), section(4, 950, 2300, measured(900))], 'worst'),
    ).toEqual([
      { width: 1000, height: 2400, upTo: 495, next: 3, by: [] },
      { width: 900, height: 2400, upTo: 895, next: 4, by: [3] },
      { width: 900, height: 2300, upTo: Infinity, next: undefined, by: [3, 4] },
    ]);
  });
  test('is not taken wider than a part that may begin at once', () => {
    expect(guards([section(3, 900, 2400, measured(4))], 'worst')).toEqual([
      { width: 900, height: 2400, upTo: Infinity, next: undefined, by: [3] },
    ]);
    expect(guards([section(3, 900, 2400, measured(4))])[0]).toMatchObject({ width: 1000, upTo: 4 });
  });
  test('ends where the narrow part may be as far away as one likes', () => {
    expect(guards([section(3, 900, 2400, OPEN_LENGTH), section(4, 800, 2400, measured(9))])).toEqual([
      { width: 1000, height: 2400, upTo: Infinity, next: 3, by: [] },
    ]);
    expect(guards([section(3, 900, 2400, OPEN_LENGTH)], 'worst')).toEqual([
      { width: 900, height: 2400, upTo: Infinity, next: undefined, by: [3] },
    ]);
  });
  test('keeps what the piece is raised by over a part', () => {
    expect(guards([section(3, 1000, 2400, measured(500), 350)])).toEqual([
      { width: 1000, height: 2400, upTo: 500, next: 3, by: [] },
      { width: 1000, height: 2400, upTo: Infinity, next: undefined, by: [], raised: 350 },
    ]);
  });
});

test('the padding with which a diagonal is as long as a space is wide, put in again', () => {
  for (const [space, p, q] of [
    [500, 300, 400],
    [1000, 300, 400],
    [450, 300, 400],
    [900, 25, 880],
    [700, 600, 600],
  ] as const) {
    const c = diagonalClearance(space, p, q);
    expect(Math.hypot(p + 2 * c, q + 2 * c)).toBeCloseTo(space, 9);
    expect(diagonalClearance(space, q, p)).toBeCloseTo(c, 9);
  }
  // In a space that is no wider than the two sides differ, the shorter is nothing before the longer fits.
  expect(diagonalClearance(100, 800, 25)).toBeCloseTo((100 - 800) / 2, 9);
  expect(diagonalClearance(850, 825, 25)).toBeCloseTo((Math.sqrt(2 * 850 ** 2 - 800 ** 2) - 850) / 4, 9);
  expect(diagonalClearance(815, 840, 20)).toBeCloseTo(-12.5, 1);
  // A side that would be less than nothing counts as nothing: then the other is as long as the space.
  expect(diagonalClearance(500, 25, 880)).toBeCloseTo((500 - 880) / 2, 9);
  expect(diagonalClearance(500, 880, 25)).toBeCloseTo((500 - 880) / 2, 9);
});

describe('the tape', () => {
  const set = (
    stage: 'door' | 'flight' | 'quarter landing',
    measures: object,
    tapeCase: 'worst' | 'best',
    tape = 5,
  ) => tapedMeasures(stage, measures, tape, tapeCase);
  test('makes an opening smaller and a wall thicker, or the reverse', () => {
    const door = { width: 760, height: 1980, wall: 110 };
    expect(set('door', door, 'worst')).toEqual([{ width: 755, height: 1975, wall: 115 }]);
    expect(set('door', door, 'best')).toEqual([{ width: 765, height: 1985, wall: 105 }]);
    expect(set('door', door, 'best', 0)).toEqual([door]);
    expect(tapedMeasures('door', door, 5, 'measured')).toEqual([door]);
    expect(set('door', { ...door, wall: 3 }, 'best')).toEqual([{ width: 765, height: 1985, wall: 0 }]);
  });
  test('errs either way in a rise and a going, a riser at a time where their number is known', () => {
    const flight = { width: 900, height: 2000, rise: 190, going: 240 };
    const steps = (sets: readonly { rise?: number | undefined; going?: number | undefined }[]) =>
      sets.map(({ rise, going }) => [rise, going]).sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!);
    expect(steps(set('flight', flight, 'worst'))).toEqual([
      [185, 235],
      [185, 245],
      [195, 235],
      [195, 245],
    ]);
    expect(steps(set('flight', { ...flight, risers: 10 }, 'worst'))).toEqual([
      [189.5, 239.5],
      [189.5, 240.5],
      [190.5, 239.5],
      [190.5, 240.5],
    ]);
    for (const one of set('flight', { ...flight, risers: 10 }, 'worst')) expect(one.risers).toBe(10);
  });
  test('leaves a wall where there is no rail, and a rail as high as it errs', () => {
    const landing = { width: 900, widthOut: 900, height: 2000, rise: 190, going: 240, overRail: 0 };
    for (const one of set('quarter landing', landing, 'worst')) expect(one.overRail).toBe(0);
    for (const one of set('quarter landing', { ...landing, overRail: 900 }, 'worst'))
      expect(one.overRail).toBe(905);
    for (const one of set('quarter landing', { ...landing, overRail: 900 }, 'best'))
      expect(one.overRail).toBe(895);
  });
  test('of a single millimetre counts, and leaves no space less than nothing', () => {
    expect(set('door', { width: 760, height: 1980, wall: 110 }, 'worst', 1)).toEqual([
      { width: 759, height: 1979, wall: 111 },
    ]);
    expect(tapedPiece({ length: 1830, breadth: 930, thickness: 25 }, 1, 'worst').thickness).toBe(26);
    const flight = {
      width: 900,
      height: 2000,
      rise: 190,
      going: 240,
      risers: 10,
      footSpace: 3,
      headSpace: 0,
    };
    for (const one of set('flight', flight, 'worst')) expect([one.footSpace, one.headSpace]).toEqual([0, 0]);
    const landing = { width: 900, widthOut: 900, height: 2000, rise: 190, going: 240, overRail: 4 };
    for (const one of set('quarter landing', landing, 'best')) expect(one.overRail).toBe(0);
    const tiny = { length: 4, breadth: 3, thickness: 2 };
    expect(tapedPiece(tiny, 5, 'best')).toEqual({ length: 0, breadth: 0, thickness: 0 });
    // Of a step something is left.
    for (const { rise = 0 } of set('flight', { width: 900, height: 2000, rise: 4, going: 240 }, 'worst'))
      expect([1, 9]).toContain(rise);
  });
  test('makes a piece larger or smaller', () => {
    const piece = { length: 1830, breadth: 930, thickness: 3 };
    expect(tapedPiece(piece, 5, 'worst')).toEqual({ length: 1835, breadth: 935, thickness: 8 });
    expect(tapedPiece(piece, 5, 'best')).toEqual({ length: 1825, breadth: 925, thickness: 0 });
    expect(tapedPiece(piece, 5, 'measured')).toEqual(piece);
  });
});

test.each([
  ['', { kind: 'nothing' }],
  ['as asked', { kind: 'as asked' }],
  ['as asked, if what Route marks is right', { kind: 'as asked' }],
  ['as asked, if it passes the trial', { kind: 'as asked' }],
  ['measure first', { kind: 'measure first' }],
  ['none of the next builds', { kind: 'none' }],
  ['8 ft', { kind: 'build', build: '8 ft', fits: 'goes' }],
  ['tight: 8 ft', { kind: 'build', build: '8 ft', fits: 'tight' }],
] as const)('a cell of the month that says "%s"', (cell, advised) => {
  expect(advisedInstead(cell)).toEqual(advised);
});
