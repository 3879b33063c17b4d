import fc from 'fast-check';
import { rectangleRoundCorner } from '../../src/core/geometry/rectangleRoundCorner';
import { nearestPlaces, rectangle, type Point, type Points } from '../../src/drawing/plane';
import { bendShape, placeInBend } from '../../src/drawing/placeInBend';

const wide = fc.integer({ min: 500, max: 1600 });
const bends = fc.record({
  p: fc.integer({ min: 600, max: 2600 }),
  q: fc.integer({ min: 15, max: 500 }),
  widthIn: wide,
  widthOut: wide,
  turn: fc.integer({ min: 20, max: 120 }),
});

/** Faces of the two arms, long enough for any piece. */
function facesOf(widthIn: number, widthOut: number, turn: number): Points[] {
  const shape = bendShape(widthIn, widthOut, turn);
  const FAR = 30000;
  return [
    [[0, -FAR], shape.outer, shape.alongOut(FAR, widthOut)],
    [[widthIn, -FAR], shape.inner, shape.alongOut(FAR, 0)],
  ];
}

const placed = (p: number, q: number, centre: Point, angle: number): Points =>
  rectangle(centre, p, q, Math.PI / 2 - angle);

const least = (outline: Points, faces: readonly Points[]): number =>
  nearestPlaces(outline, faces)[0]!.distance;

test('a piece that passes is drawn clear of all walls, and padded by more than its clearance it is not', () => {
  fc.assert(
    fc.property(bends, ({ p, q, widthIn, widthOut, turn: degrees }) => {
      const turn = (degrees * Math.PI) / 180;
      const { clearance } = rectangleRoundCorner(p, q, widthIn, widthOut, turn);
      const place = placeInBend(p, q, widthIn, widthOut, turn);
      fc.pre(clearance > 1);
      const faces = facesOf(widthIn, widthOut, turn);
      const [long, short] = [Math.max(p, q), Math.min(p, q)];
      expect(least(placed(long, short, place.centre, place.angle), faces)).toBeGreaterThan(
        0.9 * clearance - 1,
      );
      const more = 2 * (place.clearance + 1);
      expect(least(placed(long + more, short + more, place.centre, place.angle), faces)).toBe(0);
    }),
    { seed: 5, numRuns: 300 },
  );
});

test('where the corner itself binds, it stands where the corner formula is least', () => {
  // Moretti, College Math. J. 33(3), 2002: corridors 8 and 3, couch 1 wide, length 12.8563: critical.
  const turn = Math.PI / 2;
  const place = placeInBend(12856.3, 1000, 8000, 3000, turn);
  expect(place.clearance).toBeCloseTo(0, 0);
  const faces = facesOf(8000, 3000, turn);
  const near = nearestPlaces(placed(12856.3, 1000, place.centre, place.angle), faces);
  // It touches both outer walls and the inner corner at once.
  expect(near.filter(({ distance }) => distance < 1).length).toBeGreaterThanOrEqual(3);
});

test('nearest places of two squares side by side', () => {
  // By hand: a unit square 3 to the left of a wall.
  const [near] = nearestPlaces(rectangle([0, 0], 2, 2, 0), [
    [
      [4, -5],
      [4, 5],
    ],
  ]);
  expect(near!.distance).toBeCloseTo(3, 12);
  expect(near!.at[0]).toBe(4);
});
