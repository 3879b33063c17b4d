import { entryAt } from '../../lists/entryAt';
import { leadsStraightOn } from '../../stages/kinds';
import type { Frame } from '../place/frame';
import type { PlacedRow } from '../place/placedRoute';
import { runOf } from '../place/rowContext';
import { flightMove } from './flightMove';
import { GROUND_AWAY } from './reach';

/** The straight before row i's exit plane, as far back as the last turn's inner edge, riser or outdoors [mm]. */
export function straightBehind(rows: readonly PlacedRow[], i: number): number {
  let length = 0;
  for (let k = i; k >= 0; k--) {
    const { joint } = entryAt(rows, k);
    if (joint.stage === 'room') return length + (joint.measures.length ?? 0);
    if (joint.stage === 'flight') return length + (k === i ? flightMove.floorAfter(entryAt(rows, k)) : 0);
    if (!leadsStraightOn(joint.stage)) return length + runOf(joint, rows[k + 1]?.joint);
    length += lengthAlong(rows, k);
  }
  return length + 4 * GROUND_AWAY;
}

/** Level floor straight ahead of row i's exit plane, as far as the next turn or riser [mm]. */
export function straightAhead(rows: readonly PlacedRow[], i: number): number {
  let length = 0;
  for (let k = i + 1; ; k++) {
    const next = rows[k];
    if (!next) return length + GROUND_AWAY * 4;
    const { joint } = next;
    if (leadsStraightOn(joint.stage)) {
      length += lengthAlong(rows, k);
    } else if (joint.stage === 'room') return length + (joint.measures.length ?? 0);
    else if (joint.stage === 'flight') return length + flightMove.floorBefore(next);
    else return length;
  }
}

/** The number of the placed row, among those given, in which the floor straight ahead of placed row i ends. */
export function lastAhead(rows: readonly PlacedRow[], i: number): number {
  let k = i;
  while (leadsStraightOn(rows[k + 1]?.joint.stage ?? 'flight')) k++;
  return entryAt(rows, rows[k + 1]?.joint.stage === 'room' ? k + 1 : k).row;
}

/** Length of a row along the way [mm]. */
export function lengthAlong(rows: readonly PlacedRow[], i: number): number {
  const { entry, exit } = entryAt(rows, i);
  return Math.hypot(exit.at[0] - entry.at[0], exit.at[1] - entry.at[1]);
}

/** Height [mm] of the lowest of the row and the doors and passages straight beside it. */
export function lowestBeside(rows: readonly PlacedRow[], i: number): number {
  let lowest = Infinity;
  for (const step of [-1, 1]) {
    for (let k = i + step; Math.abs(k - i) <= 3; k += step) {
      const joint = rows[k]?.joint;
      if (!joint || !leadsStraightOn(joint.stage)) break;
      lowest = Math.min(lowest, joint.measures.height ?? Infinity);
    }
  }
  return lowest;
}

/** Floor [mm] before the first riser of the flight of row i, where the route begins in front of a wall; undefined: it is no flight, or not measured. */
export function floorBeforeStair(rows: readonly PlacedRow[], i: number): number | undefined {
  const { joint } = entryAt(rows, i);
  if (joint.stage !== 'flight') return undefined;
  return joint.way === 'down' ? joint.measures.headSpace : joint.measures.footSpace;
}

/** Between which sides its middle may stand in a straight, as seen along a frame [mm]. */
export function sidesOf(
  rows: readonly PlacedRow[],
  frame: Frame,
  from: number,
  to: number,
): [number, number] {
  const c = Math.cos(frame.heading);
  const s = Math.sin(frame.heading);
  const k = rows.findIndex(({ entry, exit }) => entry === frame || exit === frame);
  const own = rows[k];
  const outdoors = own !== undefined && k === rows.length - 1 && own.exit === frame && to > 0;
  if (outdoors || !own) return [-6000, 6000];
  const seen = ({ at }: Frame): [number, number] => {
    const [dx, dy] = [at[0] - frame.at[0], at[1] - frame.at[1]];
    return [c * dx + s * dy, -s * dx + c * dy];
  };
  const width = own.exit === frame ? own.exitSection?.width : own.entrySection.width;
  const sides: [number, number] = [-(width ?? 0) / 2, (width ?? 0) / 2];
  // Rows that lie straight on from one another, as far as the piece's middle may stand in them.
  for (const step of [-1, 1]) {
    for (let n = step < 0 ? k : k + 1; Math.abs(n - k) <= 3; n += step) {
      const row = rows[n];
      // Nor beyond a half landing, from which the way leads back.
      if (!row || Math.cos(row.entry.heading - row.exit.heading) < 1 - 1e-9) break;
      const [x0, y0] = seen(row.entry);
      const [x1] = seen(row.exit);
      if (Math.max(x0, x1) < from || Math.min(x0, x1) > to) continue;
      sides[0] = Math.min(sides[0], y0 - row.entrySection.width / 2);
      sides[1] = Math.max(sides[1], y0 + row.entrySection.width / 2);
    }
  }
  return sides;
}

/** Number of the first row before row i (step -1) or after it (1) through which the way does not lead straight on. */
export function pastStraights(rows: readonly PlacedRow[], i: number, step: 1 | -1): number {
  let k = i + step;
  while (leadsStraightOn(rows[k]?.joint.stage)) k += step;
  return k;
}
