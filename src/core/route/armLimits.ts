import { entryAt } from '../lists/entryAt';
import type { Arm } from './arms';
import type { PlannedLimit } from './partPlan';
import type { Planning } from './planning';
import { leastLength, straightLength, type WayLength } from './wayLength';

/** What the end of an arm of row i leaves: the straight up to the next place where the way bends, or a room's depth beyond it. */
export function endLimits(
  { reading, tapeCase, tape }: Planning,
  i: number,
  arm: Arm,
  side: 'before' | 'after',
): PlannedLimit[] {
  const { kind, at, row } = arm.end;
  const rows: [number, number] = side === 'after' ? [i, row ?? i] : [row ?? i, i];
  if (kind === 'turn' || kind === 'stair') {
    return [
      {
        length: straightLength(at, tapeCase, tape),
        cause: { kind: 'straight', length: shownLength(at), rows },
      },
    ];
  }
  if (kind !== 'room' || row === undefined) return [];
  const { length = Infinity, width = Infinity } = entryAt(reading, row).measures;
  const depth = tapeCase === 'worst' ? Math.min(length, width) - tape : Math.max(length, width);
  // A straight that is not measured is nothing at worst.
  const room = leastLength({ ...at, open: false }, tapeCase === 'worst' ? tape : 0) + depth;
  return [
    {
      length: tapeCase !== 'worst' && at.open ? Infinity : room,
      cause: { kind: 'room depth', length: room, rows },
    },
  ];
}

const shownLength = (length: WayLength): number | undefined => (length.open ? undefined : length.known);
