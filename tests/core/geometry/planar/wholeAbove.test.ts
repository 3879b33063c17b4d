import { decidePassage } from '../../../../src/core/geometry/planar/decidePassage';
import { boxPolygon, type PlanarWorld } from '../../../../src/core/geometry/planar/planarWorld';

/** A way 400 wide to a wall across it, so narrow that a rectangle of 1000 x 300 stands in it only along it. */
const deadEnd = (depth: number): PlanarWorld => ({
  obstacles: [
    boxPolygon(-900, -4000, -200, depth + 500),
    boxPolygon(200, -4000, 900, depth + 500),
    boxPolygon(-900, depth, 900, depth + 500),
  ],
  centre: { xMin: -900, xMax: 900, yMin: -3500, yMax: depth },
});

test.each([
  [1000.2, 'passes'],
  [999.8, 'blocked'],
] as const)('a rectangle 1000 long lies wholly beyond a line %d mm before a wall: %s', (depth, verdict) => {
  const start = { xMin: -50, xMax: 50, yMin: -2001, yMax: -1999, angle: Math.PI / 2 };
  const goal = { xMin: -200, xMax: 200, yMin: 0, yMax: depth, wholeAbove: 0 };
  expect(decidePassage(deadEnd(depth), 1000, 300, start, goal).verdict).toBe(verdict);
});
