import fc from 'fast-check';
import { paddedPiece, sortedPiece, type PieceSize } from '../../../../src/core/measures/piece';
import { openingClearance } from '../../../../src/core/stages/opening/opening';
import { openingAtMost } from '../../../../src/core/stages/opening/openingAtMost';
import { evenly } from '../../../support/evenly';

const { PI, abs, cos, hypot, max, min, sin, sqrt } = Math;
type Point = readonly [number, number];

/**
 * The section of a box by the plane through its middle square to a direction, in that plane's own axes: every
 * edge of the box that crosses the plane gives a corner. Nothing but the twelve edges is used.
 */
function centralSection({ length, breadth, thickness }: PieceSize, normal: readonly number[]): Point[] {
  const half = [length / 2, breadth / 2, thickness / 2] as const;
  const [nx, ny, nz] = normal as [number, number, number];
  const size = hypot(nx, ny);
  const u = size > 1e-12 ? [-ny / size, nx / size, 0] : [1, 0, 0];
  const v = [ny * u[2]! - nz * u[1]!, nz * u[0]! - nx * u[2]!, nx * u[1]! - ny * u[0]!];
  const points: Point[] = [];
  for (let axis = 0; axis < 3; axis++) {
    const [j, k] = [(axis + 1) % 3, (axis + 2) % 3] as [number, number];
    if (abs(normal[axis]!) < 1e-12) continue;
    for (const sj of [-1, 1]) {
      for (const sk of [-1, 1]) {
        const corner = [0, 0, 0];
        corner[j] = sj * half[j]!;
        corner[k] = sk * half[k]!;
        corner[axis] = -(normal[j]! * corner[j] + normal[k]! * corner[k]) / normal[axis]!;
        if (abs(corner[axis]!) > half[axis]!) continue;
        points.push([
          corner[0]! * u[0]! + corner[1]! * u[1]! + corner[2]! * u[2]!,
          corner[0]! * v[0]! + corner[1]! * v[1]! + corner[2]! * v[2]!,
        ]);
      }
    }
  }
  return points;
}

const widthAt = (points: readonly Point[], angle: number): number => {
  const c = cos(angle);
  const s = sin(angle);
  let most = -Infinity;
  let least = Infinity;
  for (const [x, y] of points) {
    const along = x * c + y * s;
    if (along > most) most = along;
    if (along < least) least = along;
  }
  return most - least;
};

/** Most by which some turn of the section in its plane leaves room on both sides of the opening; negative: none. */
const bestSpare = (points: readonly Point[], width: number, height: number): number => {
  let best = -Infinity;
  for (let i = 0; i < 360; i++) {
    const angle = (i * PI) / 360;
    const spare = min(width - widthAt(points, angle), height - widthAt(points, angle + PI / 2));
    if (spare > best) best = spare;
  }
  return best;
};

const scenes = fc.record({
  width: evenly(200, 2500),
  height: evenly(200, 2500),
  sizes: fc.tuple(evenly(300, 3000), evenly(5, 2000), evenly(1, 1500)),
});
const direction = fc
  .tuple(evenly(-1, 1), evenly(0, 2 * PI))
  .map(([z, a]) => [sqrt(1 - z * z) * cos(a), sqrt(1 - z * z) * sin(a), z]);

describe('the bound on every motion through an opening', () => {
  test('is never below the clearance that is shown', () => {
    fc.assert(
      fc.property(scenes, ({ width, height, sizes }) => {
        const piece = sortedPiece(...sizes);
        const { atMost, bound } = openingAtMost({ width, height }, piece);
        expect(atMost).toBeGreaterThanOrEqual(openingClearance({ width, height }, piece));
        expect(atMost).toBeGreaterThanOrEqual(-piece.length / 2);
        expect(bound).not.toBe('');
      }),
      { seed: 201, numRuns: 3000 },
    );
  });

  test('rests on what every central section of a box has: its area, its least width, its longest chord', () => {
    fc.assert(
      fc.property(scenes, direction, ({ sizes }, normal) => {
        const piece = sortedPiece(...sizes);
        const points = centralSection(piece, normal);
        // The corners in order round the middle, which lies inside.
        const round = [...points].sort((a, b) => Math.atan2(a[1], a[0]) - Math.atan2(b[1], b[0]));
        let area = 0;
        let longest = 0;
        round.forEach(([x, y], i) => {
          const [x2, y2] = round[(i + 1) % round.length]!;
          area += (x * y2 - x2 * y) / 2;
          longest = max(longest, 2 * hypot(x, y));
        });
        let least = Infinity;
        for (let i = 0; i < 180; i++) least = min(least, widthAt(points, (i * PI) / 180));
        const { breadth, thickness } = piece;
        expect(area).toBeGreaterThanOrEqual(breadth * thickness * (1 - 1e-9));
        expect(longest).toBeGreaterThanOrEqual(breadth * (1 - 1e-9));
        expect(least).toBeGreaterThanOrEqual(thickness * (1 - 1e-9));
      }),
      { seed: 202, numRuns: 2000 },
    );
  });

  test('padded beyond it, no attitude has a central section that fits the opening at any turn', () => {
    fc.assert(
      fc.property(
        scenes,
        fc.array(direction, { minLength: 12, maxLength: 12 }),
        ({ width, height, sizes }, normals) => {
          const piece = sortedPiece(...sizes);
          const { atMost } = openingAtMost({ width, height }, piece);
          const padded = paddedPiece(piece, atMost + 0.001);
          // The least section is the one square to the length; look at it and around it as well.
          for (const normal of [...normals, [1, 0, 0], [0.999, 0.02, 0.0399624]]) {
            expect(bestSpare(centralSection(padded, normal), width, height)).toBeLessThan(0);
          }
        },
      ),
      { seed: 203, numRuns: 150 },
    );
  });

  test('where the section square to the length fits square on, the bound by the thinner side is met', () => {
    const piece = sortedPiece(1800, 900, 30);
    expect(openingAtMost({ width: 100, height: 2000 }, piece).atMost).toBeCloseTo(35, 6);
    expect(openingClearance({ width: 100, height: 2000 }, piece)).toBe(35);
    expect(openingAtMost({ width: 100, height: 2000 }, piece).bound).toContain('least thickness');
    expect(openingAtMost({ width: 600, height: 600 }, sortedPiece(1800, 900, 30)).bound).toContain(
      'diagonal',
    );
    expect(openingAtMost({ width: 600, height: 600 }, sortedPiece(1800, 700, 540)).bound).toContain('area');
  });
});
