import { decidePassage } from '../../../../src/core/geometry/planar/decidePassage';
import { edgeFree } from '../../../../src/core/geometry/planar/edgeFree';
import { passageBracket, type PlanarPassage } from '../../../../src/core/geometry/planar/passageBracket';
import { boxPolygon, type ConvexPolygon } from '../../../../src/core/geometry/planar/planarWorld';
import { rectangleRoundCorner } from '../../../../src/core/geometry/rectangleRoundCorner';
import { overlapAlong } from './replayPath';
import { seeded } from '../../../support/parkMiller';

/** Two arms of widths b1 and b2 that turn by `turn`; p starts along the first, or at `startAngle` to it. */
function corner(b1: number, b2: number, turn: number, p: number, q: number, startAngle = 0): PlanarPassage {
  const reach = Math.hypot(p, q);
  const far = 20 * (reach + b1 + b2) + 10000;
  if (turn === Math.PI / 2) {
    const deep = reach + Math.max(b1, b2) + 2;
    return {
      world: {
        obstacles: [
          boxPolygon(-far, -far, 0, far),
          boxPolygon(-far, -far, far, 0),
          boxPolygon(b1, b2, far, far),
        ],
        centre: { xMin: -1, xMax: deep + 20, yMin: -1, yMax: deep + 20 },
      },
      start: { xMin: 0, xMax: b1, yMin: deep, yMax: deep + 20, angle: startAngle + Math.PI / 2 },
      goal: { xMin: deep, xMax: deep + 20, yMin: 0, yMax: b2 },
    };
  }
  // The first arm comes along +x towards the outer corner at the origin and leaves turned left.
  const out: readonly [number, number] = [Math.cos(turn), Math.sin(turn)];
  const left: readonly [number, number] = [-out[1], out[0]];
  const s = Math.sin(turn);
  // Inner corner: y = b1 and at b2 left of the outgoing outer wall.
  const inner: readonly [number, number] = [(b1 * out[0] - b2) / s, b1];
  const outerIn: ConvexPolygon = [
    [-far, -far],
    [far, -far],
    [far, 0],
    [-far, 0],
  ];
  const point = (x: number, y: number): readonly [number, number] => [x, y];
  const outerOut: ConvexPolygon = [
    point(0 - far * out[0], 0 - far * out[1]),
    point(-far * out[0] - far * left[0], -far * out[1] - far * left[1]),
    point(far * out[0] - far * left[0], far * out[1] - far * left[1]),
    point(far * out[0], far * out[1]),
  ];
  const block: ConvexPolygon = [
    inner,
    point(inner[0] + far * out[0], inner[1] + far * out[1]),
    point(inner[0] - far, inner[1] + far),
    point(inner[0] - far, inner[1]),
  ];
  const deep = reach + (2 * (b1 + b2)) / s;
  const square = deep + b1 + b2;
  const end = point(deep * out[0] + (b2 / 2) * left[0], deep * out[1] + (b2 / 2) * left[1]);
  return {
    world: {
      obstacles: [outerIn, outerOut, block],
      centre: { xMin: -square, xMax: square, yMin: -square, yMax: square },
    },
    start: { xMin: -deep - 1, xMax: -deep, yMin: 0, yMax: b1, angle: startAngle },
    goal: { xMin: end[0] - b2, xMax: end[0] + b2, yMin: end[1] - b2, yMax: end[1] + b2 },
  };
}

describe('a rectangle among convex polygons', () => {
  test('round a right-angle corner: Codeforces 98C samples (a, b, l -> w), in metres taken as 1000 mm', () => {
    for (const [a, b, l, w] of [
      [2000, 2000, 2000, 2000],
      [2000, 2000, 3000, 1328.4271],
    ] as const) {
      const passes = (width: number): string => {
        const c = corner(a, b, Math.PI / 2, l, width);
        return decidePassage(c.world, l, width, c.start, c.goal).verdict;
      };
      expect(passes(w - 2)).toBe('passes');
      expect(passes(w + 2)).toBe('blocked');
    }
  });

  // Regression only: the widths of our recorded corner scenes, slab 1830 x 25 in plan, critical at 664.68.
  test.each([
    [2, 'passes'],
    [20, 'passes'],
    [-2, 'blocked'],
    [-20, 'blocked'],
  ] as const)('a slab in a corner %d mm from its critical width: %s', (more, verdict) => {
    const width = 664.68 + more;
    const c = corner(width, width, Math.PI / 2, 1830, 25);
    expect(decidePassage(c.world, 1830, 25, c.start, { ...c.goal, angle: 0 }).verdict).toBe(verdict);
  });

  test('a ladder in corridors of 3 and 4 ft: 9.8657 ft (Briggs & Cochran, Calculus)', () => {
    const foot = 304.8;
    const ladder = (feet: number): string => {
      const c = corner(3 * foot, 4 * foot, Math.PI / 2, feet * foot, 0);
      return decidePassage(c.world, feet * foot, 0, c.start, c.goal).verdict;
    };
    expect(ladder(9.86)).toBe('passes');
    expect(ladder(9.875)).toBe('blocked');
  });

  test('brackets of 16 seeded corners of any turn hold the exact clearance, and their paths are free', () => {
    const next = seeded(20240611);
    for (let i = 0; i < 16; i++) {
      const b1 = 400 + 900 * next();
      const b2 = 400 + 900 * next();
      const p = 800 + 1600 * next();
      const q = 10 + 300 * next();
      const turn = i % 2 === 0 ? Math.PI / 2 : ((25 + 90 * next()) * Math.PI) / 180;
      const exact = rectangleRoundCorner(p, q, b1, b2, turn).clearance;
      const brackets = [0, Math.PI / 2].map((startAngle) =>
        passageBracket((x, y) => corner(b1, b2, turn, x, y, startAngle), p, q, 700),
      );
      const bracket = brackets[brackets[0]!.lower >= brackets[1]!.lower ? 0 : 1]!;
      expect(bracket.lower).toBeLessThanOrEqual(exact + 1e-3);
      expect(bracket.upper).toBeGreaterThanOrEqual(exact - 1e-3);
      expect(bracket.upper - bracket.lower).toBeLessThanOrEqual(1.001);
      const c = bracket.lower;
      const px = Math.max(0, p + 2 * c);
      const qx = Math.max(0, q + 2 * c);
      const { world } = corner(b1, b2, turn, px, qx);
      const path = bracket.path();
      expect(path.length).toBeGreaterThan(1);
      expect(overlapAlong(world.obstacles, px, qx, path, 3)).toBeLessThan(1e-3);
    }
  });

  test('the replay itself finds a contact where there is one', () => {
    const c = corner(700, 700, Math.PI / 2, 1830, 25);
    const path = [
      { x: 350, y: 1900, angle: Math.PI / 2 },
      { x: 1900, y: 350, angle: 0 },
    ];
    expect(overlapAlong(c.world.obstacles, 1830, 25, path)).toBeGreaterThan(1);
    expect(edgeFree(c.world, 1830, 25, path[0]!, path[1]!)).toBe(false);
  });

  test('at the work limit it says so, and the bracket known so far stays sound', () => {
    const c = corner(664.69, 664.69, Math.PI / 2, 1830, 25);
    expect(decidePassage(c.world, 1830, 25, c.start, c.goal, 60).verdict).toBe('undecided');
    const exact = rectangleRoundCorner(1830, 25, 664.69, 664.69, Math.PI / 2).clearance;
    const bracket = passageBracket((x, y) => corner(664.69, 664.69, Math.PI / 2, x, y), 1830, 25, 300, {
      workLimit: 200,
    });
    expect(bracket.lower).toBeLessThanOrEqual(exact);
    expect(bracket.upper).toBeGreaterThanOrEqual(exact);
  });
});
