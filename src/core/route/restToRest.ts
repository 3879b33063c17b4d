import type { JointBlock, JointEnd, JointRow } from '../joint/jointRow';
import { floorBetween, ownLength } from './arms';
import { endBeside, isLanding, spaceAt, standsAlone, type Reading, type ReadRow } from './reading';
import { entryAt } from '../lists/entryAt';

/** Rows that stand close from one place where a piece can rest to the next, to be solved as one space. */
export interface RestToRest {
  /** Index of the first row. */
  readonly first: number;
  /** A first row that is a flight is begun from along it: what comes before lies there already. */
  readonly fromAlong: boolean;
  /** A last row that is a flight is ended along it. */
  readonly toAlong: boolean;
  readonly block: JointBlock;
  /** A longer piece does not lie wholly where it begins and ends [mm]. */
  readonly holds: number;
}

/** Rows in a block: more would take too long. */
const MOST_ROWS = 6;

/** A place where a piece can be at rest: wholly on open ground, in a straight, along a flight, or in a room. */
interface Rest {
  /** Index of its row, or of the row before a straight of its own; -1 and the number of rows for open ground. */
  readonly row: number;
  /** A straight behind its row that was not measured: as measured it may be as long as it likes. */
  readonly behind?: boolean;
  /** It holds what is so long [mm]. */
  readonly holds: number;
}

/**
 * The blocks of rows between two places where a piece can rest: straights as long as it, flights along which it lies,
 * a room, open ground at one end. Only blocks in which a flight stands close to something else, or level rows that
 * begin on open ground, and only where every length is measured: what passes so passes as measured, wherever the rest
 * stands.
 */
export function restToRest(reading: Reading): RestToRest[] {
  const rests = restsOf(reading);
  const found: RestToRest[] = [];
  for (const [at, from] of rests.entries()) {
    if (reading[from.row]?.stage === 'room' || from.behind) continue;
    // A longer piece rests in none of the places passed since.
    let passed = 0;
    for (const to of rests.slice(at + 1)) {
      if (to.row - from.row > MOST_ROWS + 1) break;
      const holds = Math.min(from.holds, to.holds);
      const joined = holds > passed ? blockBetween(reading, from, to) : undefined;
      if (joined) found.push({ ...joined, holds });
      passed = Math.max(passed, to.holds);
      if (passed >= from.holds) break;
    }
  }
  return found;
}

/** Where a piece can rest, in row order. */
function restsOf(reading: Reading): Rest[] {
  const rests: Rest[] = [{ row: -1, holds: Infinity }];
  reading.forEach(({ stage, measures }, row) => {
    const { risers, rise = 0, going = 0 } = measures;
    const length = ownLength(reading, row);
    if (stage === 'passage' && !length.open) rests.push({ row, holds: length.known });
    if (stage === 'flight') {
      rests.push({ row, holds: risers === undefined ? Infinity : (risers - 1) * Math.hypot(rise, going) });
    }
    if (stage === 'room') rests.push({ row, holds: Infinity });
    if (turnsInPlan(stage) && openBehind(reading, row)) rests.push({ row, holds: Infinity, behind: true });
  });
  rests.push({ row: reading.length, holds: Infinity });
  return rests;
}

function blockBetween(reading: Reading, from: Rest, to: Rest): Omit<RestToRest, 'holds'> | undefined {
  const first = Math.max(0, from.row);
  const last = Math.min(reading.length - 1, to.row);
  const [opens, ends] = [from.row < 0, to.row > last];
  // Where both ends are open ground the way could be gone round outside.
  if (opens && ends) return undefined;
  const rows: JointRow[] = [];
  let [flights, turns, close] = [0, 0, 0];
  for (let i = first; i <= last; i++) {
    const row = entryAt(reading, i);
    const joint = jointRow(reading, i, to.behind === true && i === to.row);
    if (!joint) return undefined;
    rows.push(joint);
    if (row.stage === 'flight') {
      const along = (i === from.row && !opens) || (i === to.row && !ends);
      if (!along && row.measures.risers === undefined) return undefined;
      if (i > first && !floorKnown(row, entryAt(reading, i - 1), 'before')) return undefined;
      if (i < last && !floorKnown(row, entryAt(reading, i + 1), 'after')) return undefined;
      flights++;
    } else if (row.stage === 'corner' || row.stage === 'side door') turns++;
    else if (row.stage === 'door') close++;
  }
  const [begins, finishes] = [entryAt(reading, first), entryAt(reading, last)];
  if (ends && (finishes.stage === 'flight' || finishes.stage === 'room')) return undefined;
  if (opens && begins.stage === 'room') return undefined;
  if (
    opens &&
    begins.stage === 'flight' &&
    spaceAt(begins.measures, endBeside(begins.way, 'before')) !== undefined
  )
    return undefined;
  const told = turns < 2 || rows.every(({ stage, hand }) => !turnsInPlan(stage) || hand !== undefined);
  if (!told || rows.length > MOST_ROWS || flights > 2) return undefined;
  if (flights === 0 ? !(opens && turns > 0 && turns + close > 1) : turns + close === 0) return undefined;
  return {
    first,
    fromAlong: !opens && begins.stage === 'flight',
    toAlong: !ends && finishes.stage === 'flight',
    block: { rows, before: endOf(opens), after: endOf(ends) },
  };
}

/** Whether the floor between a flight and the row beside it is told. */
function floorKnown({ measures, way }: ReadRow, beside: ReadRow, side: 'before' | 'after'): boolean {
  if (beside.stage === 'flight') return false;
  return beside.stage !== 'door' || spaceAt(measures, endBeside(way, side)) !== undefined;
}

/** Whether the straight behind a turn was not measured, where it does not lead into a passage or a room at once. */
function openBehind(reading: Reading, i: number): boolean {
  const next = reading[i + 1];
  return next !== undefined && floorBetween(entryAt(reading, i), next).open;
}

/** The spaces [mm] that the flights beside a row have on its floor. */
function spacesBeside(reading: Reading, i: number): number[] {
  const [before, after] = [reading[i - 1], reading[i + 1]];
  return [
    before?.stage === 'flight' ? spaceAt(before.measures, endBeside(before.way, 'after')) : undefined,
    after?.stage === 'flight' ? spaceAt(after.measures, endBeside(after.way, 'before')) : undefined,
  ].filter((space) => space !== undefined);
}

const endOf = (open: boolean): JointEnd => (open ? 'open' : 'straight');

const turnsInPlan = (stage: ReadRow['stage']): boolean => stage === 'corner' || stage === 'side door';

/**
 * A row as it is measured; undefined where a length is not, or where it is solved by itself.
 * @param goesOn the block ends with a straight behind it
 */
function jointRow(reading: Reading, i: number, goesOn: boolean): JointRow | undefined {
  const readRow = entryAt(reading, i);
  const { row, stage, measures, way, into, straightAfter } = readRow;
  // Narrower near the floor, on a side that is not told.
  if (stage === undefined || isLanding(stage) || measures.lowWidth !== undefined) return undefined;
  switch (stage) {
    case 'door':
      return { stage, measures };
    case 'room': {
      // The space at a stair's end is measured on the same floor.
      const length = Math.min(measures.length ?? Infinity, ...spacesBeside(reading, i));
      return { stage, measures: { ...measures, length }, hand: row.hand };
    }
    case 'passage': {
      const length = ownLength(reading, i);
      return length.open ? undefined : { stage, measures: { ...measures, length: length.known } };
    }
    case 'flight':
      return { stage, measures, way, standsAlone: standsAlone(readRow) };
    case 'corner':
    case 'side door': {
      const next = reading[i + 1]?.stage;
      const atOnce = next === undefined || next === 'passage' || next === 'room';
      const straight = straightAfter && !straightAfter.open ? straightAfter.known : undefined;
      const run = measures.run ?? straight ?? (atOnce || goesOn ? 0 : undefined);
      if (run === undefined) return undefined;
      return {
        stage,
        measures: { ...measures, run },
        hand: row.hand,
        ...(stage === 'side door' ? { into } : {}),
      };
    }
    default:
      return undefined;
  }
}
