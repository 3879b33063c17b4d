import { stepMotion } from '../../../src/core/joint/walk/stepMotion';
import type { Vec3 } from '../../../src/core/joint/place/frame';
import { rotate } from '../../../src/core/space/quaternion';
import type { SceneBox } from '../../../src/core/space/motion';
import { randomRoute } from '../../support/randomRoutes';
import { gjkDistance } from '../../support/replayMotion';
import { walked } from '../../support/walkedRoute';

/** Held against distances by GJK, which share no code with how the places are looked at. */
function corners({ centre, size, turn }: SceneBox): [number, number, number][] {
  return Array.from({ length: 8 }, (_, i) => {
    const own = [1, 2, 4].map((bit, k) => ((i & bit ? 1 : -1) * size[k]!) / 2) as unknown as Vec3;
    const p = rotate(turn, own);
    return [centre[0] + p[0], centre[1] + p[1], centre[2] + p[2]];
  });
}

const distance = (a: SceneBox, b: SceneBox): number => gjkDistance(corners(a), corners(b));

test("a step's places say how near and how high the piece is", () => {
  let looked = 0;
  for (const seed of [3, 9, 11, 24, 25, 30]) {
    const { rows, piece } = randomRoute(seed);
    const walk = walked(rows, piece);
    if (!walk) continue;
    rows.forEach((_, row) => {
      const step = stepMotion(walk, row, piece);
      expect(step.positions.length).toBeLessThanOrEqual(5);
      const parts = step.positions.map(({ part }) => part);
      expect(parts).toEqual([...parts].sort((a, b) => a - b));
      for (const place of step.positions) {
        const size: Vec3 = [piece.length, piece.breadth, piece.thickness];
        const body = { centre: place.at, size, turn: place.turn };
        const beside = step.solids.filter(
          ({ part }) => !['floor', 'ground', 'nosings', 'tread'].includes(part),
        );
        const least = Math.min(...beside.map(({ box }) => distance(body, box)));
        if (place.closest) {
          looked++;
          // Never nearer than it is; the padding is kept from everything.
          expect(place.closest.distance).toBeGreaterThan(least - 0.01);
          expect(place.closest.distance).toBeLessThan(least + 25);
          expect(least).toBeGreaterThan(walk.padding);
          const [a, b] = [place.closest.onPiece, place.closest.onSolid];
          expect(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])).toBeCloseTo(place.closest.distance, 6);
        }
        const padded = size.map((v) => v + 2 * walk.padding) as unknown as Vec3;
        const lowered = (by: number): number =>
          Math.min(
            ...step.solids.map(({ box }) =>
              distance(
                { centre: [place.at[0], place.at[1], place.at[2] - by], size: padded, turn: place.turn },
                box,
              ),
            ),
          );
        expect(lowered(Math.max(0, place.raise - 2))).toBeGreaterThan(0);
        if (place.raise > 0) expect(lowered(place.raise + 2)).toBe(0);
        expect(place.tilt).toBeGreaterThanOrEqual(0);
        expect(place.tilt).toBeLessThan(Math.PI / 2);
      }
      if (step.tightest) expect(step.positions).toContain(step.tightest);
    });
  }
  expect(looked).toBeGreaterThan(40);
});
