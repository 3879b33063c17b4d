import { couplingMultiplier } from '../../../src/core/carrying/couplingMultiplier';
import { frequencyMultiplier } from '../../../src/core/carrying/frequencyMultiplier';

// DHHS (NIOSH) 94-110, table 5, as printed: lifts a minute; <= 1 h, 1-2 h, 2-8 h; two figures: V < 75 | V >= 75 cm.
// The <= 1 h and V >= 75 columns were read; the zeros and the V < 75 columns are from memory.
const PRINTED = `
.2  1.00 .95 .85
.5  .97 .92 .81
1   .94 .88 .75
2   .91 .84 .65
3   .88 .79 .55
4   .84 .72 .45
5   .80 .60 .35
6   .75 .50 .27
7   .70 .42 .22
8   .60 .35 .18
9   .52 .30 0|.15
10  .45 .26 0|.13
11  .41 0|.23 0
12  .37 0|.21 0
13  0|.34 0 0
14  0|.31 0 0
15  0|.28 0 0
16  0 0 0`;

const HOURS = [1, 2, 8];
const CELLS = PRINTED.trim()
  .split('\n')
  .flatMap((line) => {
    const [lifts, ...cells] = line.trim().split(/\s+/);
    return cells.flatMap((cell, i) => {
      const [low, high = low] = cell.split('|').map(Number);
      return [
        [Number(lifts), HOURS[i]!, 749, low!],
        [Number(lifts), HOURS[i]!, 750, high!],
      ] as const;
    });
  });

describe('frequencyMultiplier', () => {
  it.each(CELLS)('%f a minute for %i h at %i mm: %f', (lifts, hours, height, printed) => {
    expect(frequencyMultiplier(lifts, hours, height)).toBe(printed);
  });

  it('reads all 108 cells', () => expect(CELLS).toHaveLength(108));

  it('takes the next more frequent row between two rows', () => {
    expect(frequencyMultiplier(0.1, 1, 750)).toBe(1);
    expect(frequencyMultiplier(0.21, 1, 750)).toBe(0.97);
    expect(frequencyMultiplier(8.5, 8, 749)).toBe(0);
    expect(frequencyMultiplier(15.01, 1, 750)).toBe(0);
  });

  it('takes the longer class just past 1 h and 2 h', () => {
    expect(frequencyMultiplier(1, 1.01, 750)).toBe(0.88);
    expect(frequencyMultiplier(1, 2.01, 750)).toBe(0.75);
  });
});

describe('couplingMultiplier', () => {
  // DHHS (NIOSH) 94-110, table 7.
  it.each([
    ['good', 1, 1],
    ['fair', 0.95, 1],
    ['poor', 0.9, 0.9],
  ] as const)('%s: %f below 75 cm, %f from there', (grip, low, high) => {
    expect(couplingMultiplier(grip, 749.9)).toBe(low);
    expect(couplingMultiplier(grip, 750)).toBe(high);
  });
});
