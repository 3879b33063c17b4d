import { shortened } from '../../../src/core/joint/walk/shortened';
import type { KeyAttitude } from '../../../src/core/space/motion';
import type { Quaternion } from '../../../src/core/space/quaternion';

/** Tilted about y by so many degrees. */
const tilted = (slope: number): Quaternion => {
  const half = (slope * Math.PI) / 360;
  return [Math.cos(half), 0, -Math.sin(half), 0];
};
const key = (x: number, slope = 0, y = 0): KeyAttitude => ({ at: [x, y, 500], turn: tilted(slope) });
const REACH = 1000;

/** On to the foot of a stair, back to be tilted, and up: what a crew would not do. */
const BACK = [key(0), key(1000), key(500), key(500, 17), key(800, 19), key(1500, 38)];

test('what leads forward and back again is left out, where it can be left out', () => {
  const asked: [number, number][] = [];
  const short = shortened(BACK, REACH, (from, to) => {
    asked.push([from.at[0], to.at[0]]);
    return true;
  });
  expect(short[0]).toBe(BACK[0]);
  expect(short[short.length - 1]).toBe(BACK[5]);
  expect(short).not.toContain(BACK[1]);
  expect(asked.length).toBeGreaterThan(0);
  // In order, and nothing that was not there.
  expect(short.map((one) => BACK.indexOf(one))).toEqual(
    [...short.map((one) => BACK.indexOf(one))].sort((a, b) => a - b),
  );
  expect(short.every((one) => BACK.includes(one))).toBe(true);
});

test('where no straight move is free it stays as it is', () => {
  expect(shortened(BACK, REACH, () => false)).toEqual(BACK);
});

test('a way that leads on, or but a little round, is not asked about', () => {
  const on = [key(0), key(600), key(1200, 5), key(1800, 20)];
  const little = [key(0), key(500, 0, 60), key(1000)];
  for (const keys of [on, little]) {
    const isFree = jest.fn(() => true);
    expect(shortened(keys, REACH, isFree)).toEqual(keys);
    expect(isFree).not.toHaveBeenCalled();
  }
});

test('every move that is kept was there, or was shown free', () => {
  // Round three sides of a square of 1,000, over and over, far apart; only moves along the fourth are free.
  const keys = Array.from({ length: 60 }, (_, n) =>
    key((n % 4 < 2 ? 0 : 1000) + 7000 * Math.floor(n / 4), 0, n % 4 === 1 || n % 4 === 2 ? 1000 : 0),
  );
  const free = (a: KeyAttitude, b: KeyAttitude): boolean => a.at[1] === 0 && b.at[1] === 0;
  const short = shortened(keys, REACH, free);
  expect(short.length).toBeLessThan(keys.length);
  short.slice(1).forEach((one, n) => {
    const before = short[n]!;
    const next = keys.indexOf(one) === keys.indexOf(before) + 1;
    expect(next || free(before, one)).toBe(true);
  });
});
