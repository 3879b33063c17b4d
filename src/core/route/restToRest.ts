import type { JointBlock, JointEnd, JointRow, RestOnWay } from '../joint/jointRow';
import { isLanding } from '../joint/place/rowContext';
import { roleOf, turnArms } from '../stages/kinds';
import type { StageRole } from '../stages/stageKind';
import { floorBetween, ownLength, spacesBeside } from './arms';
import { ceilingAt, endBeside, spaceAt, standsAlone, type Reading, type ReadRow } from './reading';
import { lastOf } from '../lists/ends';
import { entryAt } from '../lists/entryAt';

/** Rows that stand close from one place where a piece can rest to the next, to be solved as one space. */
export interface RestToRest {
  readonly from: Rest;
  readonly to: Rest;
  readonly block: JointBlock;
  /** A longer piece does not lie wholly where it begins and ends [mm]. */
  readonly holds: number;
  /** Some straight in it was not measured: it is taken as it suits. */
  readonly supposed: boolean;
}

/** Rows in a block: more would take too long. */
const MOST_ROWS = 6;
/** The same where a stair turns in it. */
const MOST_ROUND = 9;

/** A place where a piece can be at rest: wholly on open ground, in a straight, along a flight, or in a room. */
export interface Rest extends RestOnWay {
  /** It holds what is so long [mm]. */
  readonly holds: number;
}

/**
 * The blocks of rows between two places where a piece can rest: straights as long as it, flights along which it lies,
 * a room, open ground. Only blocks in which a flight or a turn stands close to something else, and only where every
 * length is measured: what passes so passes as measured, wherever the rest stands.
 */
export function restToRest(reading: Reading): RestToRest[] {
  const rests = restsOf(reading);
  const found: RestToRest[] = [];
  for (const [place, from] of rests.entries()) {
    if (roleOf(reading[from.row]?.stage) === 'room' || from.at === 'behind') continue;
    // A longer piece rests in none of the places passed since.
    let passed = 0;
    for (const to of rests.slice(place + 1)) {
      if (to.row - from.row > MOST_ROUND + 1) break;
      const holds = Math.min(from.holds, to.holds);
      const block = holds > passed ? blockBetween(reading, from, to) : undefined;
      if (block) found.push({ from, to, block, holds, supposed: supposes(reading, from, to) });
      passed = Math.max(passed, to.holds);
      if (passed >= from.holds) break;
    }
  }
  return found;
}

/** Whether a straight between the rows of a block was not measured. */
const supposes = (reading: Reading, from: Rest, to: Rest): boolean =>
  to.at === 'behind' ||
  reading.slice(Math.max(0, from.row), to.row).some(({ straightAfter }) => straightAfter?.open === true);

/** Where a piece can rest, in row order. */
function restsOf(reading: Reading): Rest[] {
  const rests: Rest[] = [{ row: -1, at: 'row', holds: Infinity }];
  reading.forEach(({ stage, measures }, row) => {
    const { risers, rise = 0, going = 0 } = measures;
    const role = roleOf(stage);
    const length = ownLength(reading, row);
    if (role === 'straight' && !length.open) rests.push({ row, at: 'row', holds: length.known });
    if (role === 'flight') {
      const line = risers === undefined ? Infinity : (risers - 1) * Math.hypot(rise, going);
      const [before, after] = [ownFloor(reading, row, 'before'), ownFloor(reading, row, 'after')];
      if (before > 0) rests.push({ row, at: 'floor before', holds: before });
      rests.push({ row, at: 'along', holds: line });
      if (after > 0) rests.push({ row, at: 'floor after', holds: after });
    }
    if (role === 'room') rests.push({ row, at: 'row', holds: Infinity });
    if (role === 'turn' && openBehind(reading, row)) rests.push({ row, at: 'behind', holds: Infinity });
  });
  rests.push({ row: reading.length, at: 'row', holds: Infinity });
  return rests;
}

/** Floor that a flight has of its own before a door or a lift beside it [mm]; 0 where there is none, or it is not told. */
function ownFloor(reading: Reading, i: number, side: 'before' | 'after'): number {
  const beside = roleOf(reading[side === 'before' ? i - 1 : i + 1]?.stage);
  const { measures, way } = entryAt(reading, i);
  return beside === 'opening' || beside === 'car' ? (spaceAt(measures, endBeside(way, side)) ?? 0) : 0;
}

/** All from one place of rest to another as one block; undefined where it is not to be solved as one. */
function blockBetween(reading: Reading, from: Rest, to: Rest): JointBlock | undefined {
  const [first, last] = [Math.max(0, from.row), Math.min(reading.length - 1, to.row)];
  const rows: JointRow[] = [];
  for (let i = first; i <= last; i++) {
    const own = rowsAt(reading, i, from, to);
    if (!own) return undefined;
    rows.push(...own);
  }
  const [opens, ends] = [from.row < 0, to.row > last];
  // A Hand that is not said is to the left: as measured what is not said is what suits.
  const most = rows.some(isLanding) ? MOST_ROUND : MOST_ROWS;
  if (rows.length > most || !standClose(rows, { outdoors: opens || ends })) return undefined;
  if (most === MOST_ROUND && !fromFlightRound(rows, from, to)) return undefined;
  // Where both ends are open ground a turn could be gone round outside.
  if (opens && ends && rows.some(({ stage }) => roleOf(stage) === 'turn')) return undefined;
  if (opens && !beginsOutdoors(entryAt(reading, first))) return undefined;
  if (ends && !endsOutdoors(entryAt(reading, last))) return undefined;
  return { rows, before: endOf(opens), after: endOf(ends) };
}

/** Row i as it stands in a block between two places of rest, with the floors of a flight that are rows of their own; undefined where it is not known enough. */
function rowsAt(reading: Reading, i: number, from: Rest, to: Rest): JointRow[] | undefined {
  const row = entryAt(reading, i);
  const joint = jointRow(reading, i, to.at === 'behind' && i === to.row);
  if (!joint) return undefined;
  const begins = i === from.row ? from.at : undefined;
  const ends = i === to.row ? to.at : undefined;
  // Nothing of the flight itself is in the block.
  if (begins === 'floor after') return [floorRow(row, 'after')];
  if (ends === 'floor before') return [floorRow(row, 'before')];
  if (roleOf(row.stage) !== 'flight') return [joint];
  const along = begins === 'along' || ends === 'along';
  if (!along && row.measures.risers === undefined) return undefined;
  const [before, after] = [reading[i - 1], reading[i + 1]];
  if (i > from.row && before && !floorKnown(row, before, 'before')) return undefined;
  if (i < to.row && after && !floorKnown(row, after, 'after')) return undefined;
  if (begins === 'floor before') return [floorRow(row, 'before'), withoutSpace(joint, row, 'before')];
  if (ends === 'floor after') return [withoutSpace(joint, row, 'after'), floorRow(row, 'after')];
  return [joint];
}

/**
 * Whether rows stand so close that one says something of another: a turn between two straights is solved by itself, and so
 * is a flight between two, but not where it is open ground beyond a straight that is too short.
 */
function standClose(rows: readonly JointRow[], { outdoors }: { readonly outdoors: boolean }): boolean {
  const count = (role: StageRole): number => rows.filter(({ stage }) => roleOf(stage) === role).length;
  const [flights, turns] = [count('flight'), count('turn')];
  const near = turns + count('opening');
  const landings = count('landing');
  // Between two long flights a turn of the stair is solved by itself.
  if (landings > 0) return landings === 1 && flights >= 2 && flights <= 3 && rows.length > 3;
  if (flights > 0) return flights <= 2 && (near > 0 || (outdoors && rows.length > 1));
  return turns > 0 && (near > 1 || rows.length > 3 || roleOf(lastOf(rows).stage) === 'room');
}

/** Whether from lying along a flight it goes at once round where the stair turns, and so to lying along one. */
const fromFlightRound = (rows: readonly JointRow[], from: Rest, to: Rest): boolean =>
  (from.at !== 'along' || isLanding(rows[1])) && (to.at !== 'along' || isLanding(rows[rows.length - 2]));

/** Whether a block may begin on open ground before this row: not where what is before it is a room, or is measured. */
const beginsOutdoors = ({ stage, measures, way }: ReadRow): boolean =>
  roleOf(stage) !== 'room' &&
  (roleOf(stage) !== 'flight' || spaceAt(measures, endBeside(way, 'before')) === undefined);

/** Whether a block may end on open ground behind this row. */
const endsOutdoors = ({ stage }: ReadRow): boolean => roleOf(stage) !== 'flight' && roleOf(stage) !== 'room';

/** The floor of its own that a flight has on one of its sides, as the passage that it is. */
function floorRow({ measures, way }: ReadRow, side: 'before' | 'after'): JointRow {
  const end = endBeside(way, side);
  const { width = 0, height = 0 } = measures;
  return {
    stage: 'passage',
    measures: { width, height: ceilingAt(measures, end) ?? height, length: spaceAt(measures, end) ?? 0 },
  };
}

/** A flight without the space on one of its sides, which is a row of its own. */
function withoutSpace(joint: JointRow, { way }: ReadRow, side: 'before' | 'after'): JointRow {
  const { footSpace, headSpace, ...measures } = joint.measures;
  const foot = endBeside(way, side) === 'foot';
  const kept = foot ? { headSpace } : { footSpace };
  const known = Object.entries(kept).filter(([, space]) => space !== undefined);
  return { ...joint, measures: { ...measures, ...Object.fromEntries(known) } };
}

/** Whether the floor between a flight and the row beside it is told. */
function floorKnown({ measures, way }: ReadRow, beside: ReadRow, side: 'before' | 'after'): boolean {
  const role = roleOf(beside.stage);
  if (role === 'flight') return false;
  return role !== 'opening' || spaceAt(measures, endBeside(way, side)) !== undefined;
}

/** Whether the straight behind a turn was not measured, where it does not lead into a passage or a room at once. */
function openBehind(reading: Reading, i: number): boolean {
  const next = reading[i + 1];
  return next !== undefined && floorBetween(entryAt(reading, i), next).open;
}

const endOf = (open: boolean): JointEnd => (open ? 'open' : 'straight');

/**
 * A row as it is measured; undefined where a length is not, or where it is solved by itself.
 * @param goesOn the block ends with a straight behind it
 */
function jointRow(reading: Reading, i: number, goesOn: boolean): JointRow | undefined {
  const readRow = entryAt(reading, i);
  const { row, stage, measures, way, into, straightAfter } = readRow;
  // Narrower near the floor, on a side that is not told.
  if (stage === undefined || measures.lowWidth !== undefined) return undefined;
  switch (roleOf(stage)) {
    case 'opening':
      return { stage, measures };
    case 'room': {
      // The space at a stair's end is measured on the same floor.
      const length = Math.min(measures.length ?? Infinity, ...spacesBeside(reading, i));
      return { stage, measures: { ...measures, length }, hand: row.hand };
    }
    case 'straight': {
      const length = ownLength(reading, i);
      return length.open ? undefined : { stage, measures: { ...measures, length: length.known } };
    }
    case 'flight':
      return { stage, measures, way, standsAlone: standsAlone(readRow) };
    case 'turn': {
      const next = reading[i + 1]?.stage;
      const atOnce = next === undefined || roleOf(next) === 'straight' || roleOf(next) === 'room';
      const straight = straightAfter && !straightAfter.open ? straightAfter.known : undefined;
      const run = measures.run ?? straight ?? (atOnce || goesOn ? 0 : undefined);
      if (run === undefined) return undefined;
      return {
        stage,
        measures: { ...measures, run },
        hand: row.hand,
        ...(turnArms(stage)?.eitherWay ? { into } : {}),
      };
    }
    case 'landing':
      // What goes over a handrail is looked for at the landing alone.
      return (measures.overRail ?? 0) > 0 ? undefined : { stage, measures, way, hand: row.hand };
    case 'car':
    case undefined:
      return undefined;
  }
}
