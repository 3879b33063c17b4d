import { area, drawnFigures, shared, textsThatOverlap } from '../support/drawnFigures';
import { drawnMonth as DRAWN } from '../support/drawnMonth';

test('every step of the month is drawn, or has a measure missing', () => {
  expect(DRAWN.length).toBeGreaterThan(20);
  expect(DRAWN.filter(({ drawn }) => drawn).length).toBeGreaterThan(0.8 * DRAWN.length);
});

test('a piece stands in nothing that is cut, and none is drawn heavy where none passes', () => {
  for (const { name, drawn, passes } of DRAWN) {
    for (const { svg } of drawn?.pictures ?? []) {
      const { walls, pieces } = drawnFigures(svg);
      if (!passes && drawn?.clearance !== undefined && drawn.clearance < 0)
        expect([name, pieces]).toEqual([name, []]);
      for (const piece of pieces) {
        for (const wall of walls.filter((one) => area(one) > 1)) {
          // A tenth of a pixel of rounding along the longest side.
          expect([name, shared(piece, wall) <= 0.15 * Math.hypot(296, 296)]).toEqual([name, true]);
        }
      }
    }
  }
});

/** Without what the verdict says of where it is closest. */
const ownWords = (text: string): string => text.replace(/Closest .*? a side/, '');

test('no two words overlap, and the unit is said once', () => {
  const overlaps: string[] = [];
  for (const { name, drawn } of DRAWN) {
    if (drawn?.clearance !== undefined)
      expect([name, ownWords(drawn.text).match(/\bmm\b/g)?.length]).toEqual([name, 1]);
    for (const { svg } of drawn?.pictures ?? []) {
      overlaps.push(...textsThatOverlap(svg).map((two) => `${name}: ${two}`));
    }
  }
  expect(overlaps).toEqual([]);
});

test('a carry on a flight is tilted no farther than a place in its picture', () => {
  let looked = 0;
  for (const { name, drawn, moves } of DRAWN) {
    for (const { kind, stage, pose, tilt } of moves) {
      const carried = kind === 'pass' && stage === 'flight' && (pose === 'on edge' || pose === 'tilted');
      if (!carried || tilt === undefined || tilt < 0.05 || drawn?.clearance === undefined) continue;
      const shown = [...drawn.text.matchAll(/tilted (\d+)°/g)].map(([, angle]) => Number(angle));
      if (shown.length === 0) continue;
      looked++;
      // Both are the slope of the long side; the picture gives whole degrees.
      expect([name, (tilt * 180) / Math.PI <= Math.max(...shown) + 0.6]).toEqual([name, true]);
    }
  }
  expect(looked).toBeGreaterThan(2);
});
