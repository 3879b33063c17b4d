import type { JointBlock, JointRow } from '../joint/jointRow';
import type { Reading, ReadRow } from './reading';
import { entryAt } from '../lists/entryAt';
import { roleOf } from '../stages/kinds';

/** Level rows from some row on, to be solved in plan as one. */
export interface LevelJoint {
  /** Index of the first row. */
  readonly first: number;
  /** The rows as they are measured, the narrower in the middle of the wider. */
  readonly block: JointBlock;
}

/** A straight so long [mm] holds most pieces: the block ends there, and is asked only for a piece that it holds. */
const LONG = 2600;
/** Rows in a block: more would take too long. */
const MOST_ROWS = 6;

/**
 * The level rows round a turn, from a long straight to a long straight, a room or open ground, where something stands so
 * near that the turn by itself says too little. Only where every length is measured: what passes so passes as
 * measured, wherever the rest stands.
 */
export function levelJoint(reading: Reading, i: number): LevelJoint | undefined {
  const turn = reading[i];
  if (!turn || roleOf(turn.stage) !== 'turn') return undefined;
  const before = reading[i - 1];
  // Open ground on both sides might be gone round outside, where two turns lead back.
  if (before?.stage !== 'passage' || (before.measures.length ?? 0) < LONG) return undefined;
  const first = i - 1;
  const rows: JointRow[] = [jointRow(before)];
  let count = 0;
  let near = false;
  if (narrowBelow(before)) return undefined;
  for (let k = i; k < reading.length && rows.length < MOST_ROWS; k++) {
    const row = entryAt(reading, k);
    if (narrowBelow(row)) return undefined;
    const next = reading[k + 1];
    if (roleOf(row.stage) === 'turn') {
      count++;
      if (next && next.stage !== 'passage' && next.stage !== 'room' && row.measures.run === undefined)
        return undefined;
      near ||= k > i || next?.stage === 'room' || next?.stage === 'door';
    } else if (row.stage === 'room') {
      rows.push(jointRow(row));
      return near ? { first, block: { rows, before: 'straight', after: 'straight' } } : undefined;
    } else if (row.stage === 'passage') {
      const { length } = row.measures;
      if (length === undefined) return undefined;
      if (length >= LONG) {
        rows.push(jointRow(row));
        return near ? { first, block: { rows, before: 'straight', after: 'straight' } } : undefined;
      }
      near = true;
    } else if (row.stage !== 'door') return undefined;
    rows.push(jointRow(row));
    if (!next)
      return near && count === 1 ? { first, block: { rows, before: 'straight', after: 'open' } } : undefined;
  }
  return undefined;
}

/** Narrower near the floor, on a side that is not told: in plan there is no such thing, so the row is left to itself. */
const narrowBelow = ({ measures }: ReadRow): boolean => measures.lowWidth !== undefined;

function jointRow({ row, stage, measures }: ReadRow): JointRow {
  return {
    stage: stage ?? 'passage',
    measures: measures.run === undefined ? { ...measures, run: 0 } : measures,
    hand: row.hand,
  };
}
