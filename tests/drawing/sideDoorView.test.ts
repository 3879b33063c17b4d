import fc from 'fast-check';
import { passageNeeded } from '../../src/core/geometry/doorIntoPassage';
import { nearestPlaces } from '../../src/drawing/plane';
import { sideDoorView } from '../../src/drawing/sideDoorView';

/** Padding at which the passage is just wide enough, by halving: the formula grows with the piece. */
function paddingFor(p: number, q: number, plan: Parameters<typeof passageNeeded>[2]): number {
  let low = -q / 2;
  let high = 300;
  for (let i = 0; i < 60; i++) {
    const c = (low + high) / 2;
    if (passageNeeded(p + 2 * c, q + 2 * c, plan) <= plan.passage) low = c;
    else high = c;
  }
  return low;
}

test('a piece out of a side door stands where the passage is needed most, clear of all walls', () => {
  fc.assert(
    fc.property(
      fc.record({
        p: fc.integer({ min: 1300, max: 2400 }),
        q: fc.integer({ min: 15, max: 120 }),
        door: fc.integer({ min: 650, max: 1000 }),
        wall: fc.integer({ min: 60, max: 350 }),
        passage: fc.integer({ min: 700, max: 1500 }),
      }),
      ({ p, q, door, wall, passage }) => {
        const c = paddingFor(p, q, { door, wall, approach: door, passage });
        fc.pre(c > 2 && c < 250);
        const { outline, faces } = sideDoorView(
          { doorWidth: door, doorHeight: 2000, wall, passage, ceiling: 2300 },
          {
            size: { length: p, breadth: 600, thickness: q },
            answer: { pose: 'on edge', clearance: c, critical: '' },
          },
        );
        const near = nearestPlaces(outline!, faces);
        // Evenly padded, the piece just touches: so it is about its clearance away, and never farther in.
        expect(near[0]!.distance).toBeGreaterThan(0.9 * c - 1);
        expect(near[0]!.distance).toBeLessThan(1.5 * c + 2);
        // Its head, padded, reaches the passage's far wall.
        const [a, b] = [outline![0]!, outline![3]!];
        const angle = Math.atan2(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1]));
        const head = Math.max(...outline!.map(([, y]) => y)) + c * (Math.sin(angle) + Math.cos(angle));
        expect(Math.abs(head - passage)).toBeLessThan(4);
      },
    ),
    { seed: 11, numRuns: 200 },
  );
});
