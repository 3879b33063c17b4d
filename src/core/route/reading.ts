import { floorCeiling, kindOf, turnArms, type StageName } from '../stages/kinds';
import type { StageMeasures } from '../stages/measures';
import type { StageRow } from '../survey/table/stageRow';
import { lengthOf, OPEN_LENGTH, type WayLength } from './wayLength';
import { entryAt } from '../lists/entryAt';

/** The ends of a flight. */
export type StairEnd = 'foot' | 'head';

/** A row as it is read together with its neighbours. What the survey leaves open has been supposed. */
export interface ReadRow {
  readonly row: StageRow;
  readonly stage: StageName | undefined;
  /** As measured, a ceiling as low as the one at the end of a flight over the same floor. */
  readonly measures: StageMeasures;
  /** Stair rows: the way they are walked, in row order. */
  readonly way: 'up' | 'down';
  /** Side door: it leads into its passage; else out of it. */
  readonly into: boolean;
  /** The straight floor between a flight and a corner or side door after this row, where there is one. */
  readonly straightAfter: WayLength | undefined;
}

/** One way to understand what a survey leaves open: which way the stairs go, where a side door leads. */
export type Reading = readonly ReadRow[];

/** A survey can be understood in more ways than this only by being far too open; the rest is taken together. */
const MOST_CHOICES = 4;

const isStairRow = (stage: StageName | undefined): boolean =>
  stage !== undefined && kindOf(stage).stair !== null;
/** Whether a stage is a landing, at which the way turns between two flights. */
export const isLanding = (stage: StageName | undefined): boolean =>
  stage !== undefined && kindOf(stage).stair === 'landing';

/** Whether the way turns there on a stair: a landing, or winding treads. */
const turnsOnStair = (stage: StageName | undefined): boolean =>
  stage !== undefined && kindOf(stage).stair !== null && kindOf(stage).stair !== 'flight';

/** What each choice of a reading is about. */
interface Choice {
  readonly rows: readonly number[];
  readonly about: 'way' | 'into' | 'straight';
}

/**
 * Every way to understand what a survey leaves open. Stair rows that stand together are walked the same way; a landing as
 * the stairs beside it say.
 * @param tape how far off a measure may be [mm]
 */
export function readingsOf(written: readonly StageRow[], tape: number): Reading[] {
  const given = written.map(withWayBeside);
  const rows = given.map(asFlightRow);
  const choices = choicesOf(rows, tape);
  const free = Math.min(choices.length, MOST_CHOICES);
  const readings: Reading[] = [];
  for (let bits = 0; bits < 2 ** free; bits++) {
    const second = (i: number, about: Choice['about']): boolean => {
      const k = choices.findIndex((choice) => choice.about === about && choice.rows.includes(i));
      return k >= 0 && ((bits >> Math.min(k, free - 1)) & 1) === 1;
    };
    const ways = rows.map((row, i) => row.way ?? (second(i, 'way') ? 'down' : 'up'));
    readings.push(
      rows.map((row, i): ReadRow => {
        const into =
          turnArms(row.stage)?.eitherWay === true && (leadsInto(rows, i, tape) ?? !second(i, 'into'));
        return {
          row: given[i] ?? row,
          stage: row.stage,
          measures: { ...underOneCeiling(rows, i, ways, into), ...doorAtEnd(given, i, entryAt(ways, i)) },
          way: entryAt(ways, i),
          into,
          straightAfter: straightBeside(rows, i, ways, second(i, 'straight'), tape)?.length,
        };
      }),
    );
  }
  return readings;
}

/** A landing or winding treads whose way is not said, walked as the stairs beside it are, where all of these say one way. */
function withWayBeside(row: StageRow, i: number, rows: readonly StageRow[]): StageRow {
  if (row.way !== undefined || !turnsOnStair(row.stage)) return row;
  const stairs = [rows[i - 1], rows[i + 1]].filter((beside) => isStairRow(beside?.stage));
  const [way, ...others] = stairs.map((stair) => stair?.way);
  return way === undefined || others.some((other) => other !== way) ? row : { ...row, way };
}

/**
 * The measures of a row whose floor is also that at the end of a flight beside it: over one floor the least of the
 * ceilings given holds.
 */
function underOneCeiling(
  rows: readonly StageRow[],
  i: number,
  ways: readonly ('up' | 'down')[],
  into: boolean,
): StageMeasures {
  const { stage, measures } = entryAt(rows, i);
  let least = Infinity;
  for (const side of ['before', 'after'] as const) {
    const k = side === 'before' ? i - 1 : i + 1;
    const flight = rows[k];
    if (flight?.stage !== 'flight') continue;
    // Beyond the door of a side door it is another floor.
    if (turnArms(stage)?.eitherWay && into !== (side === 'after')) continue;
    const end = endBeside(entryAt(ways, k), side === 'before' ? 'after' : 'before');
    least = Math.min(least, ceilingAt(flight.measures, end) ?? Infinity);
  }
  const ceiling = floorCeiling(stage);
  return ceiling && least < (measures[ceiling] ?? 0) ? { ...measures, [ceiling]: least } : measures;
}

/** Whether a turn is walked from its `in` to its `out`. */
export const walkedForward = ({ stage, into }: ReadRow): boolean => !turnArms(stage)?.eitherWay || into;

/** A stair that is solved as a flight as the flight it is. */
export function asFlightRow(row: StageRow): StageRow {
  const asFlight = row.stage && kindOf(row.stage).solvedAsFlight;
  return asFlight ? { ...row, stage: 'flight', measures: asFlight(row.measures) } : row;
}

/** Whether a row is no flight of a stair, but is solved as one. */
export const standsAlone = ({ row }: ReadRow): boolean =>
  row.stage !== undefined && kindOf(row.stage).solvedAsFlight !== undefined;

/** The space before a door that stands at the last riser of a few steps: none. */
function doorAtEnd(given: readonly StageRow[], i: number, way: 'up' | 'down'): StageMeasures {
  const [row, next] = [given[i], given[i + 1]];
  if (!row?.stage || !kindOf(row.stage).doorAtItsEnd) return {};
  if (!next?.stage || !kindOf(next.stage).doorLeaf) return {};
  return endBeside(way, 'after') === 'head' ? { headSpace: 0 } : { footSpace: 0 };
}

function choicesOf(rows: readonly StageRow[], tape: number): Choice[] {
  const choices: Choice[] = [];
  let group: number[] = [];
  const close = (): void => {
    if (group.length > 0 && wayMatters(rows, group)) choices.push({ rows: group, about: 'way' });
    group = [];
  };
  rows.forEach((row, i) => {
    if (!isStairRow(row.stage)) return close();
    group.push(i);
  });
  close();
  rows.forEach((row, i) => {
    if (turnArms(row.stage)?.eitherWay && leadsInto(rows, i, tape) === undefined) {
      choices.push({ rows: [i], about: 'into' });
    }
    const disputed = (['up', 'down'] as const).some(
      (way) => straightBeside(rows, i, [], true, tape, way)?.disputed === true,
    );
    if (disputed) choices.push({ rows: [i], about: 'straight' });
  });
  return choices;
}

/** Whether it changes anything which way stair rows are walked that do not say so. */
const wayMatters = (rows: readonly StageRow[], group: readonly number[]): boolean =>
  group.some((i) => entryAt(rows, i).way === undefined);

/**
 * Whether a side door leads into its passage (true), out of it (false), or either may be (undefined).
 * @param tape how far off a measure may be [mm]: the row before is as wide as the passage if the tape can say so
 */
export function leadsInto(rows: readonly StageRow[], i: number, tape: number): boolean | undefined {
  const before = rows[i - 1];
  if (before === undefined || before.stage === 'door' || before.stage === 'side door') return true;
  const { widthOut } = entryAt(rows, i).measures;
  const width = widthLeaving(before);
  if (width !== undefined && widthOut !== undefined && Math.abs(width - widthOut) <= tape) return false;
  return undefined;
}

/** Clear width of the way that leaves a row [mm]; undefined where it says none: a room's is no passage's. */
export function widthLeaving({ stage, measures }: StageRow): number | undefined {
  const arms = turnArms(stage);
  if (arms && !arms.eitherWay) return measures[arms.out.width];
  if (stage === 'quarter landing') return undefined;
  if (stage === 'room' || stage === 'lift') return undefined;
  return measures.width;
}

/** The end of a flight that is beside the row before it, or after it. */
export const endBeside = (way: 'up' | 'down', side: 'before' | 'after'): StairEnd =>
  (way === 'up') === (side === 'before') ? 'foot' : 'head';

/** Floor before an end of a flight up to the facing wall [mm]; undefined where it is not measured. */
export const spaceAt = (measures: StageMeasures, end: StairEnd): number | undefined =>
  end === 'foot' ? measures.footSpace : measures.headSpace;

/** Height of the ceiling over the floor at an end of a flight [mm]; undefined where it is not measured. */
export const ceilingAt = (measures: StageMeasures, end: StairEnd): number | undefined =>
  end === 'foot' ? measures.footCeiling : measures.headCeiling;

/**
 * The straight floor between row i and the row after it, where one is a flight and the other turns: what the run
 * says, or what the space at the stair's end leaves beside the turn. Where both are given and do not agree, one or
 * the other (`second`).
 */
function straightBeside(
  rows: readonly StageRow[],
  i: number,
  ways: readonly ('up' | 'down')[],
  second: boolean,
  tape: number,
  unsaid: 'up' | 'down' = 'up',
): { readonly length: WayLength; readonly disputed: boolean } | undefined {
  const [one, other] = [rows[i], rows[i + 1]];
  if (!one || !other) return undefined;
  const flight = one.stage === 'flight' ? one : other.stage === 'flight' ? other : undefined;
  const turn = flight === one ? other : one;
  const arms = turnArms(turn.stage);
  if (!flight || !arms) return undefined;
  const way = flight.way ?? ways[flight === one ? i : i + 1] ?? unsaid;
  const end = endBeside(way, flight === one ? 'after' : 'before');
  const space = spaceAt(flight.measures, end);
  if (arms.eitherWay) {
    const told = flight === one ? undefined : turn.measures.run;
    if (told !== undefined) return { length: lengthOf(told), disputed: false };
    // The door stands anywhere in the side of the floor that goes on to the facing wall.
    const most = space === undefined ? undefined : Math.max(0, space - (turn.measures[arms.in.width] ?? 0));
    return { length: { ...OPEN_LENGTH, most }, disputed: false };
  }
  const width = turn.measures[(flight === one ? arms.out : arms.in).width];
  const run = flight === one ? undefined : turn.measures.run;
  const left = space === undefined || width === undefined ? undefined : Math.max(0, space - width);
  if (left === undefined) return { length: lengthOf(run), disputed: false };
  const bySpace: WayLength = { known: left, tapes: 2, open: false };
  if (run === undefined) return { length: bySpace, disputed: false };
  const disputed = Math.abs(run - left) > 2 * tape;
  return { length: disputed && second ? bySpace : lengthOf(run), disputed };
}
