import { emptyReport, huntShut, huntStage } from './hunt';
import { BoxInAir, searchAir } from '../support/airSearch';
import { routeAir } from '../support/routeAir';
import { seededStream } from '../../src/core/space/seededStream';

// A seeded share of `npm run hunt`. Of whole routes `tests/core/route/oneMotion` walks and replays its own.
const SHARE = { stages: 60, shut: 80, tries: 300 } as const;

test('stages: functions that mean the same agree, and more room or a smaller piece costs nothing', () => {
  const report = emptyReport();
  for (let seed = 1; seed <= SHARE.stages; seed++) huntStage(seed, report);
  expect(report.findings).toEqual([]);
  expect(report.stages).toBe(SHARE.stages);
  // Where nothing passes the table has no figure.
  expect(report.compared).toBeGreaterThan(SHARE.stages * 0.6);
}, 120_000);

test('a flight by itself leaves as much as one before an ample room, where the piece is leaned over beside it', () => {
  const report = emptyReport();
  huntStage(26021, report);
  expect(report.findings).toEqual([]);
  expect(report.compared).toBe(1);
});

test('what is called impossible is passed by no search of another kind', () => {
  const report = emptyReport();
  for (let seed = 1; seed <= SHARE.shut; seed++) huntShut(seed, SHARE.tries, report);
  expect(report.findings).toEqual([]);
  expect(report.shut).toBeGreaterThan(SHARE.shut / 10);
  expect(report.searched).toBeGreaterThan(SHARE.shut / 60);
}, 120_000);

describe('the search of another kind', () => {
  const R = Math.SQRT1_2;
  /** A passage, a corner to the left and a passage, each as wide; the piece on edge. */
  const found = (width: number, length: number, thickness: number, tries: number): boolean => {
    const rows = [
      { stage: 'passage', measures: { width, height: 2100, length: 3000 } },
      { stage: 'corner', measures: { width, widthOut: width, height: 2100 }, hand: 'left' as const },
      { stage: 'passage', measures: { width, height: 2100, length: 3000 } },
    ];
    const cells = routeAir(rows).filter(({ row }) => row >= 0 && row < 3);
    const half = [length / 2, 450, thickness / 2] as const;
    const start = { at: [1500, 0, 600], turn: [R, R, 0, 0] } as const;
    const goal = { at: [3000 + width / 2, width / 2 + 1500, 600], turn: [0.5, 0.5, 0.5, 0.5] } as const;
    expect(new BoxInAir(cells, half).free(start)).toBe(true);
    expect(new BoxInAir(cells, half).free(goal)).toBe(true);
    const path = searchAir({
      cells,
      half,
      starts: [start],
      goals: [goal],
      next: seededStream(1),
      tries,
    });
    return path !== undefined;
  };
  // The longest rod round a corner of two ways of 900 mm is 900 x 2 sqrt 2 = 2546 mm (the ladder problem).
  test('finds the way of a slate round a corner', () => {
    expect(found(900, 2000, 25, 20000)).toBe(true);
  });
  test('and none for one longer than any rod that passes', () => {
    expect(found(900, 2700, 25, 800)).toBe(false);
  });
});
