import { decidePassage } from '../../../../src/core/geometry/planar/decidePassage';

/** Open space with a post in it, so that the path is not straight. */
const WORLD = {
  obstacles: [
    [
      [1400, -200],
      [1600, -200],
      [1600, 200],
      [1400, 200],
    ] as const,
  ],
  centre: { xMin: -4000, xMax: 8000, yMin: -4000, yMax: 4000 },
};
const at = (x: number, angle: number) => ({ xMin: x - 1, xMax: x + 1, yMin: -1, yMax: 1, angle });
const LIMITS = { from: -0.1, to: 0.5 };

test('within limits a rectangle takes no angle beyond them', () => {
  const found = decidePassage(WORLD, 1200, 300, at(0, 0), at(3500, 0.4), 3000, LIMITS);
  if (found.verdict !== 'passes') throw new Error('open space is passed');
  const angles = found.path().map(({ angle }) => angle);
  expect(Math.min(...angles)).toBeGreaterThanOrEqual(LIMITS.from);
  expect(Math.max(...angles)).toBeLessThanOrEqual(LIMITS.to);
  expect(angles[angles.length - 1]).toBeCloseTo(0.4, 6);
});

test('what has to be turned farther passes without limits, and not within them', () => {
  const goal = at(3500, 1.2);
  expect(decidePassage(WORLD, 1200, 300, at(0, 0), goal, 3000).verdict).toBe('passes');
  expect(decidePassage(WORLD, 1200, 300, at(0, 0), goal, 3000, LIMITS).verdict).not.toBe('passes');
});
