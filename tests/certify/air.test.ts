import { seededStream } from '../../src/core/space/seededStream';
import { randomRoute } from '../support/randomRoutes';
import { boxSolid, outside, routeAir } from '../support/routeAir';
import { airOf, box, inside, type Point, type Row } from './check';

// The checker's air against the tests' own reading of the columns, written apart from it; and winders, which that does not
// know, against treads told by hand.

const level: [Point, Point, Point] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
const turned = (yaw: number, tilt: number): [Point, Point, Point] => {
  const [c, s, p, q] = [Math.cos(yaw), Math.sin(yaw), Math.cos(tilt), Math.sin(tilt)];
  return [
    [c * p, s * p, q],
    [-s, c, 0],
    [-c * q, -s * q, p],
  ];
};

test('boxes in 150 random routes stand in both, or in neither', () => {
  let [both, neither] = [0, 0];
  for (let seed = 1; seed <= 150; seed++) {
    const { rows } = randomRoute(seed);
    const next = seededStream(seed);
    const [one, other] = [routeAir(rows), airOf(rows)];
    for (let n = 0; n < 40; n++) {
      const near = other[Math.floor(next() * other.length)]!;
      const at = middleOf(near.planes, next);
      const half: Point = [30 + 500 * next(), 30 + 200 * next(), 10 + 100 * next()];
      const axes = turned(6.3 * next(), next() - 0.5);
      const grown = (by: number): Point => [half[0] + by, half[1] + by, half[2] + by];
      // Where they differ by less than the two are rounded by, nothing is said.
      const stands = inside(box(at, half, axes), other);
      if (stands !== inside(box(at, grown(stands ? 1 : -1), axes), other)) continue;
      expect([seed, n, stands]).toEqual([seed, n, outside(boxSolid(at, half, axes), one) === undefined]);
      if (stands) both++;
      else neither++;
    }
  }
  expect(both).toBeGreaterThan(500);
  expect(neither).toBeGreaterThan(500);
});

/** A place in or near a cell: between points pushed onto its planes. */
function middleOf(planes: readonly (readonly [number, number, number, number])[], next: () => number): Point {
  const p: [number, number, number] = [8000 * next() - 2000, 8000 * next() - 4000, 4000 * next()];
  for (let round = 0; round < 30; round++) {
    for (const [a, b, c, d] of planes) {
      const over = a * p[0] + b * p[1] + c * p[2] - d + 100 * next();
      if (over > 0) [a, b, c].forEach((n, k) => (p[k as 0 | 1 | 2] -= n * over));
    }
  }
  return p;
}

describe('winders', () => {
  // Three treads of 30 degrees turn left, 200 high each, after a going of 250; both ways 900 wide, 2000 over the nosings.
  const measures = { width: 900, height: 2000, rise: 200, going: 250, turn: 90, treads: 3 };
  const up: Row[] = [{ stage: 'winder', hand: 'left', way: 'up', measures }];
  const small: Point = [20, 20, 20];
  // Before them lies the flight that they suppose: 37 risers of 200 over 36 goings of 250, up or down.
  const free = (rows: readonly Row[], [x, y, z]: Point): boolean => {
    const climb = rows[0]?.way === 'down' ? -7400 : 7400;
    return inside(
      box([9000 + x, y, climb + z], small, level),
      airOf(rows).filter(({ row }) => row === 0),
    );
  };
  /** A place over the middle of tread n (from 1), so far from the inner edge at (250, 450). */
  const over = (n: number, far: number, z: number, side = 1): Point => {
    const angle = ((30 * n - 15 - 90) * Math.PI) / 180;
    return [250 + far * Math.cos(angle), side * (450 + far * Math.sin(angle)), z];
  };

  test.each([1, 2, 3])(
    'tread %d is 200 above the one before, and as far under its ceiling as the stair',
    (n) => {
      expect(free(up, over(n, 450, 200 * n + 25))).toBe(true);
      expect(free(up, over(n, 450, 200 * n + 10))).toBe(false);
      expect(free(up, over(n, 450, 200 * n + 1975))).toBe(true);
      expect(free(up, over(n, 450, 200 * n + 1990))).toBe(false);
    },
  );
  test('they end at the outer walls, which meet in a corner', () => {
    expect(free(up, over(2, 1200, 425))).toBe(true);
    expect(free(up, over(2, 1300, 425))).toBe(false);
    expect(free(up, over(1, 880, 225))).toBe(true);
    expect(free(up, over(1, 960, 225))).toBe(false);
  });
  test('to the right they are seen in a mirror', () => {
    const right: Row[] = [{ ...up[0]!, hand: 'right' }];
    expect(free(right, over(2, 1200, 425, -1))).toBe(true);
    expect(free(right, over(2, 1200, 425))).toBe(false);
  });
  test('down, the last tread comes first: left is then the same stair from above', () => {
    // One comes in over the upper flight's first nosing, 600 above the floor below; the inner edge is 450 to the left.
    const down: Row[] = [{ ...up[0]!, way: 'down' }];
    expect(free(down, [200, 0, 25])).toBe(true);
    expect(free(down, [200, 0, -10])).toBe(false);
    // Round the inner edge at (0, 450): the first tread, 200 below, lies to the left beyond 60 degrees.
    expect(free(down, [450 * Math.cos(Math.PI / 12), 450 - 450 * Math.cos(Math.PI / 12), 25])).toBe(true);
    expect(free(down, [420, 450, -375])).toBe(true);
    expect(free(down, [420, 450, -415])).toBe(false);
  });
});
