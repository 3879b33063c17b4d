import { sortedPiece } from '../../../../src/core/measures/piece';
import { upend } from '../../../../src/core/stages/upend/upend';

test('a piece far longer than the height has to lose half the difference, whatever its thickness', () => {
  // Padded by -500 its length of 2000 is 1000, the height, and its other sizes are nothing.
  expect(upend({ ceiling: 1000 }, sortedPiece(2000, 400, 10))).toEqual({ clearance: -500, from: 'flat' });
  expect(upend({ ceiling: 1000, width: 100 }, sortedPiece(2000, 400, 10)).clearance).toBe(-500);
});

test('the width counts across what lies on the floor: breadth from flat, thickness from on edge', () => {
  const slab = sortedPiece(1800, 900, 30);
  expect(upend({ ceiling: 1850, width: 920 }, slab)).toEqual({ clearance: 10, from: 'flat' });
  expect(upend({ ceiling: 2400, width: 60 }, slab)).toEqual({ clearance: 15, from: 'on edge' });
});
