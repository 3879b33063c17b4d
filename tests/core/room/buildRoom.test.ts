import { buildRoom } from '../../../src/core/room/buildRoom';
import { collectWorking } from '../../../src/core/measures/working';

const TABLE = { tableLength: 2400, tableWidth: 1350, laidLength: 2000, laidBreadth: 1000, strip: 600 };

// Added up by hand: the model is our own, its strip common practice, no source.
describe('buildRoom', () => {
  it('lays a slate along the side of its table: 1350 + 1000 + 3 strips by 2400 + 2 strips', () => {
    expect(buildRoom(TABLE)).toEqual({ length: 4150, width: 3600 });
  });

  it('lays a piece at the end where that takes less floor', () => {
    // A section of 1250 x 800 beside a long table: 3650 + 800 + 1800 by 1350 + 1200 = 15.9 m2 against 4850 x 3950.
    expect(
      buildRoom({ tableLength: 3650, tableWidth: 1350, laidLength: 1250, laidBreadth: 800, strip: 600 }),
    ).toEqual({ length: 6250, width: 2550 });
  });

  it('does not mind which way the piece was measured', () => {
    expect(buildRoom({ ...TABLE, laidLength: 1000, laidBreadth: 2000 })).toEqual(buildRoom(TABLE));
  });

  it('never shrinks as table, piece or strip grow', () => {
    const area = (change: Partial<typeof TABLE>): number => {
      const { length, width } = buildRoom({ ...TABLE, ...change });
      return length * width;
    };
    for (const key of ['tableLength', 'tableWidth', 'laidLength', 'laidBreadth', 'strip'] as const) {
      let before = 0;
      for (let size = TABLE[key] * 0.5; size < TABLE[key] * 2; size += 50) {
        const now = area({ [key]: size });
        expect(now).toBeGreaterThanOrEqual(before);
        before = now;
      }
    }
  });

  it('says in its working where the piece lies', () => {
    const { steps } = collectWorking((w) => buildRoom(TABLE, w));
    expect(steps.map((s) => s.value)).toEqual(['along the side of the table', 4150, 3600]);
  });
});
