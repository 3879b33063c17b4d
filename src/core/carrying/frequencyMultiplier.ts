import { COLUMN_HEIGHT } from './couplingMultiplier';

/** Longest work duration that the equation covers [h]. */
export const LONGEST_HOURS = 8;

/** One row: lifts a minute at most, then <= 1 h, 1-2 h, 2-8 h, each below 750 mm and at or above it. */
type Row = readonly [
  lifts: number,
  hourBelow: number,
  hourAbove: number,
  twoBelow: number,
  twoAbove: number,
  eightBelow: number,
  eightAbove: number,
];

/**
 * DHHS (NIOSH) 94-110, table 5. The columns up to 1 h at or above 75 cm were read; the zeros and the columns below
 * 75 cm are from memory.
 */
const TABLE: readonly Row[] = [
  [0.2, 1, 1, 0.95, 0.95, 0.85, 0.85],
  [0.5, 0.97, 0.97, 0.92, 0.92, 0.81, 0.81],
  [1, 0.94, 0.94, 0.88, 0.88, 0.75, 0.75],
  [2, 0.91, 0.91, 0.84, 0.84, 0.65, 0.65],
  [3, 0.88, 0.88, 0.79, 0.79, 0.55, 0.55],
  [4, 0.84, 0.84, 0.72, 0.72, 0.45, 0.45],
  [5, 0.8, 0.8, 0.6, 0.6, 0.35, 0.35],
  [6, 0.75, 0.75, 0.5, 0.5, 0.27, 0.27],
  [7, 0.7, 0.7, 0.42, 0.42, 0.22, 0.22],
  [8, 0.6, 0.6, 0.35, 0.35, 0.18, 0.18],
  [9, 0.52, 0.52, 0.3, 0.3, 0, 0.15],
  [10, 0.45, 0.45, 0.26, 0.26, 0, 0.13],
  [11, 0.41, 0.41, 0, 0.23, 0, 0],
  [12, 0.37, 0.37, 0, 0.21, 0, 0],
  [13, 0, 0.34, 0, 0, 0, 0],
  [14, 0, 0.31, 0, 0, 0, 0],
  [15, 0, 0.28, 0, 0, 0, 0],
];

/**
 * Frequency multiplier of the revised lifting equation. Between two rows of the table the next more frequent one
 * counts, which is the careful side.
 *
 * @source DHHS (NIOSH) 94-110, table 5.
 * @param liftsPerMinute more than 0
 * @param hours duration of the work [h], more than 0, at most 8
 * @param height height of the hands above the floor [mm]
 * @returns 0 to 1; 0 where the table ends
 * @example frequencyMultiplier(3, 1, 559) // 0.88
 */
export function frequencyMultiplier(liftsPerMinute: number, hours: number, height: number): number {
  const row = TABLE.find(([lifts]) => liftsPerMinute <= lifts);
  if (!row) return 0;
  const [, hourBelow, hourAbove, twoBelow, twoAbove, eightBelow, eightAbove] = row;
  const below = height < COLUMN_HEIGHT;
  if (hours <= 1) return below ? hourBelow : hourAbove;
  if (hours <= 2) return below ? twoBelow : twoAbove;
  return below ? eightBelow : eightAbove;
}
