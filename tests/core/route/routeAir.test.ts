import { boxSolid, outside, routeAir, type AirRow, type Point } from '../../support/routeAir';

// The oracle of routes is tried itself: boxes whose place in a route can be told by hand.

const upright: readonly [Point, Point, Point] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
const stands = (rows: readonly AirRow[], at: Point, half: Point, axes = upright): boolean =>
  outside(boxSolid(at, half, axes), routeAir(rows)) === undefined;

const door: AirRow = { stage: 'door', measures: { width: 800, height: 2000, wall: 100 } };
const passage: AirRow = { stage: 'passage', measures: { width: 1000, height: 2400, length: 3000 }, place: 0 };

test('a box stands across a door between jambs and under its head', () => {
  expect(stands([door, passage], [50, 0, 500], [600, 399, 499])).toBe(true);
  expect(stands([door, passage], [50, 0, 500], [600, 401, 499])).toBe(false);
  expect(stands([door, passage], [50, 0, 1000], [600, 399, 999])).toBe(true);
  expect(stands([door, passage], [50, 0, 1002], [600, 399, 999])).toBe(false);
  // Flush on the left: the passage goes 200 farther to the right.
  expect(stands([door, passage], [1500, -100, 500], [600, 499, 499])).toBe(true);
  expect(stands([door, passage], [1500, -90, 500], [600, 499, 499])).toBe(false);
});

test('turned 45 degrees it stands in a corner, and not with its end in the inner edge', () => {
  const corner: AirRow = { stage: 'corner', measures: { width: 1000, widthOut: 1000, height: 2400 } };
  const rows = [passage, corner, passage].map((row) => ({ ...row, place: 0.5 }));
  const c = Math.SQRT1_2;
  const across: [Point, Point, Point] = [
    [c, c, 0],
    [-c, c, 0],
    [0, 0, 1],
  ];
  // The outer corner is at (4000, -500), the inner edge at (3000, 500): 1414 apart along the half-way line.
  const middle: Point = [3500, 0, 500];
  // A sheet set across that line reaches as far as twice its distance from the outer corner.
  expect(stands(rows, middle, [690, 10, 499], across)).toBe(true);
  expect(stands(rows, [3200, 300, 500], [690, 10, 499], across)).toBe(true);
  expect(stands(rows, [2900, 600, 500], [690, 10, 499], across)).toBe(false);
});

test('on a stair it rests on the line of nosings and under the parallel line', () => {
  const stair: AirRow = {
    stage: 'flight',
    way: 'up',
    measures: {
      width: 900,
      height: 2000,
      rise: 200,
      going: 250,
      risers: 12,
      footCeiling: 2400,
      headCeiling: 2400,
    },
  };
  const rows = [passage, stair, passage].map((row) => ({ ...row, place: 0.5 }));
  const pitch = Math.atan(0.8);
  const [c, s] = [Math.cos(pitch), Math.sin(pitch)];
  const laid: [Point, Point, Point] = [
    [c, 0, s],
    [0, 1, 0],
    [-s, 0, c],
  ];
  // Half-way up, half the clear height square to the pitch above the line of nosings.
  const channel = 2000 * c;
  const along = 1400;
  const at: Point = [3000 + along - (s * channel) / 2, 0, 200 + 0.8 * along + (c * channel) / 2];
  expect(stands(rows, at, [900, 449, channel / 2 - 1], laid)).toBe(true);
  expect(stands(rows, at, [900, 449, channel / 2 + 1], laid)).toBe(false);
  expect(stands(rows, at, [900, 451, channel / 2 - 1], laid)).toBe(false);
});
