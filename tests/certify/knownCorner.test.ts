import { shutCells } from './attitudes';
import { cornerOf, crosses, halfOf, nowhereOnLine, standsNowhere } from './check';

// The bounds of a certificate against values known from elsewhere: no cells where it passes, cells where it does not.

const corner = cornerOf(
  { stage: 'corner', measures: { width: 900, widthOut: 1200, height: 40, turn: 90 } },
  0,
);
// Under a ceiling no higher than the rod is thick a rod lies level: the longest ladder round a corner (calculus textbooks).
const ladder = (900 ** (2 / 3) + 1200 ** (2 / 3)) ** 1.5;
// From the inner edge to where the outer walls meet.
const line = [
  [0, 0],
  [1200, -900],
] as const;

const cells = (length: number, most?: number): number | undefined => {
  const half = halfOf({ name: 'rod', length, breadth: 2, thickness: 1 }, 0);
  return shutCells(half, (cell) => nowhereOnLine(cell, half, corner, ...line), most)?.length;
};

test('a rod that passes a corner is shut out in no attitude, and one that is too long in every one', () => {
  for (const less of [1, 5, 100, 1000]) expect([less, cells(ladder - less)]).toEqual([less, undefined]);
  expect(cells(ladder * 1.08)).toBeGreaterThan(50);
});

test('the arms have to be known half the piece beyond the inner edge', () => {
  expect(crosses(corner, [0, 0], [1200, -900], 1500)).toEqual([1500, 1500]);
  // From 300 along the inner wall of the way in it has to be known so much farther.
  expect(crosses(corner, [-300, 0], [1200, -900], 1500)).toEqual([1800, 1500]);
  expect(() => crosses(corner, [-1, -1], [1200, -900], 1500)).toThrow(/inner wall/);
  expect(() => crosses(corner, [0, 0], [1100, -800], 1500)).toThrow(/outer wall/);
});

test('of boxes in a box: what is longer across than the room is shut out, what fits along its diagonal is not', () => {
  const standing = (length: number, breadth: number): number | undefined => {
    const half = halfOf({ name: 'board', length, breadth, thickness: 1 }, 0);
    return shutCells(half, (cell) => standsNowhere(cell, half, [1000, 800, 600]), 20_000)?.length;
  };
  // A needle of up to 1414 = hypot(1000, 800, 600) fits along the diagonal of the room.
  expect(standing(1410, 2)).toBeUndefined();
  expect(standing(1700, 2)).toBeGreaterThan(0);
  // Lying square it fits.
  expect(standing(999, 799)).toBeUndefined();
  // Its own diagonal is 1664.
  expect(standing(1400, 900)).toBeGreaterThan(0);
});
