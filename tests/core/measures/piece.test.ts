import { weightInKN } from '../../../src/core/measures/gravity';
import { paddedPiece, sortedPiece } from '../../../src/core/measures/piece';

test('a piece is the same in whatever order its sizes are given', () => {
  const sorted = { length: 1830, breadth: 930, thickness: 25 };
  const orders: [number, number, number][] = [
    [1830, 930, 25],
    [1830, 25, 930],
    [930, 1830, 25],
    [930, 25, 1830],
    [25, 1830, 930],
    [25, 930, 1830],
  ];
  for (const sizes of orders) expect(sortedPiece(...sizes)).toEqual(sorted);
});

test('padding stands on both sides of each size, and none of them falls below nothing', () => {
  const piece = { length: 1830, breadth: 930, thickness: 25 };
  expect(paddedPiece(piece, 10)).toEqual({ length: 1850, breadth: 950, thickness: 45 });
  expect(paddedPiece(piece, -10)).toEqual({ length: 1810, breadth: 910, thickness: 5 });
  expect(paddedPiece(piece, -400)).toEqual({ length: 1030, breadth: 130, thickness: 0 });
  expect(paddedPiece(piece, -1000)).toEqual({ length: 0, breadth: 0, thickness: 0 });
});

test('a mass weighs by standard gravity, 9.80665 m/s2 (CGPM 1901)', () => {
  expect(weightInKN(100)).toBeCloseTo(0.980665, 12);
  expect(weightInKN(0)).toBe(0);
});
