import { grownAt, prepareObstacle } from '../../../../src/core/geometry/planar/grownObstacle';

// The Minkowski sum of two upright rectangles is the rectangle of the summed sides.
test('a wall turned by a quarter turn, its corners rounded by a few parts in 10^16, is not lost among its grown sides', () => {
  const [length, thick] = [8465.190592112574, 0.4];
  for (const quarter of [0, 1, 2, 3]) {
    const [c, s] = [Math.cos((quarter * Math.PI) / 2), Math.sin((quarter * Math.PI) / 2)];
    const corner = (x: number, y: number) => [49.8 + c * x - s * y, -5987.3 + s * x + c * y] as const;
    const [l, t] = [length / 2, thick / 2];
    const wall = prepareObstacle([corner(-l, -t), corner(l, -t), corner(l, t), corner(-l, t)]);
    for (const angle of [0, Math.PI / 2, Math.PI, -Math.PI / 2, ...wall.turn]) {
      const shape = grownAt(wall, 980, 50, angle, 0);
      const wide = (shape?.lowX[shape.lowX.length - 1] ?? 0) - (shape?.lowX[0] ?? 0);
      const along = Math.abs(Math.cos(angle)) > 0.5 ? 980 : 50;
      const own = quarter % 2 === 0 ? length : thick;
      expect(wide).toBeCloseTo(own + 2 * along, 3);
    }
  }
});
