import type { JointBlock, JointRow, RowsAsOne } from '../joint/jointRow';
import { isLanding } from '../joint/place/rowContext';
import { tapedMeasures } from './tapeCase';
import type { RestToRest } from './restToRest';
import { pairs } from '../lists/pairs';
import type { MeasureName } from '../stages/measures';
import { roleOf, turnArms } from '../stages/kinds';

/** Rows solved as one space, in one tape case; no piece longer than `holds` [mm] rests where they begin and end. */
export interface BlockToSolve {
  /** What has to be passed, every one of them: what is not exact may be any. None: it is looked at only as measured. */
  readonly blocks: readonly JointBlock[];
  readonly holds: number;
  /** So much less than in them is left [mm a side]: what stands in them may be moved by so much. */
  readonly less: number;
  /** As measured: where on the way the one block begins and ends. */
  readonly rests?: Pick<RowsAsOne, 'begins' | 'ends'>;
}

/**
 * Rows that stand close, with the tape against the piece: as low and as narrow as they may be, the stair as steep and as
 * gentle, the turns to either hand where that is not said. What is off along the way, and what stands anywhere across a
 * wider part, moves what stands there: seen from the middle, each thing by no more than half of all that may be off.
 *
 * Where the way leads straight on it is as narrow as it is anywhere together, so that nothing moves across. A door stands
 * anywhere in a room's wall: half the room's width is there on the one side or on the other.
 *
 * @param tape how far off a measure may be [mm]
 * @returns undefined where that is not known: a straight that was not measured, more than one flight, a room too small
 */
export function tapedBlock({ block, holds, supposed }: RestToRest, tape: number): BlockToSolve | undefined {
  const { rows } = block;
  const flights = rows.filter(({ stage }) => roleOf(stage) === 'flight');
  if (isRound(block)) return { blocks: [], holds: holds - tape, less: 0 };
  if (flights.length > 1 || supposed) return undefined;
  const straight = rows.every(({ stage }) => turnArms(stage) === undefined);
  const lane = straight ? narrowestLane(rows) - tape : undefined;
  if (lane !== undefined && !(lane > 0)) return undefined;
  const across = straight ? 0 : shiftsAcross(rows, tape);
  const along = rows.reduce((sum, row, k) => sum + lengthsIn(row, k > 0 && k + 1 < rows.length), 0) * tape;
  const [flight] = flights;
  const sets = flight ? tapedMeasures('flight', flight.measures, tape, 'worst') : [{}];
  const blocks = sets.flatMap((set) =>
    inEitherRoom(inEitherHand(rows)).map((taken): JointBlock => ({
      ...block,
      rows: taken.map((row) => tapedRow(row, set, lane, tape)),
    })),
  );
  if (blocks.length > MOST_BLOCKS || blocks.some((one) => one.rows.some(tooSmall))) return undefined;
  return { blocks, holds: holds - tape, less: (along + across) / 2 };
}

/** Whether a stair turns in a block: so it is looked at only as measured, and what passes is at best tight. */
export const isRound = ({ rows }: JointBlock): boolean => rows.some(isLanding);

/** In more blocks it is not looked for: it would take too long. */
const MOST_BLOCKS = 16;
/** Nothing goes into what is narrower [mm]. */
const LEAST = 10;

const tooSmall = ({ measures: { width = Infinity, widthOut = Infinity } }: JointRow): boolean =>
  Math.min(width, widthOut) < LEAST;

/** How many measures along the way place what stands beyond them. */
function lengthsIn({ stage, measures }: JointRow, inside: boolean): number {
  const { wall, run = 0, depth, footSpace = 0, headSpace = 0 } = measures;
  switch (roleOf(stage)) {
    case 'opening':
      // Taken as thick as it may be, it may be thinner by twice the tape.
      return wall === undefined ? 0 : 2;
    case 'straight':
      // Beyond the ends of the block nothing stands whose place matters.
      return inside ? 1 : 0;
    case 'flight':
      return [footSpace, headSpace].filter((space) => space > 0).length;
    case 'turn':
      // What is in the middle of its arms is placed by their widths.
      return 2 + (run > 0 ? 1 : 0) + (wall === undefined ? 0 : 2) + (depth === undefined ? 0 : 1);
    case 'room':
    case 'landing':
    case 'car':
    case undefined:
      return 0;
  }
}

/** How far the narrower of each pair of neighbours may stand from the middle of the wider, all together [mm]. */
function shiftsAcross(rows: readonly JointRow[], tape: number): number {
  return pairs(rows)
    .filter(([one, next]) => roleOf(one.stage) !== 'room' && roleOf(next.stage) !== 'room')
    .reduce(
      (sum, [one, next]) => sum + Math.abs(widthAt(one, 'exit') - widthAt(next, 'entry')) / 2 + tape,
      0,
    );
}

/** Clear width of a row where the way enters or leaves it [mm]. */
function widthAt({ stage, measures, into }: JointRow, plane: 'entry' | 'exit'): number {
  const { width = 0 } = measures;
  const arms = turnArms(stage);
  if (!arms) return width;
  const forward = !arms.eitherWay || into === true;
  return measures[((plane === 'entry') === forward ? arms.in : arms.out).width] ?? width;
}

/** The rows with every combination of what hands are not said; the first turn may always be to the left. */
function inEitherHand(rows: readonly JointRow[]): JointRow[][] {
  const turning = rows.flatMap(({ stage, hand }, k) => (turnArms(stage) ? [{ k, hand }] : []));
  const unsaid = turning.filter(({ hand }) => hand === undefined).map(({ k }) => k);
  const free = turning.every(({ hand }) => hand === undefined) ? unsaid.slice(1) : unsaid;
  return Array.from({ length: 2 ** free.length }, (_, bits) =>
    rows.map((row, k): JointRow => {
      const place = free.indexOf(k);
      return place >= 0 && ((bits >> place) & 1) === 1 ? { ...row, hand: 'right' } : row;
    }),
  );
}

/** The rows with half the width of a last room on the one side of its door, and on the other. */
function inEitherRoom(all: JointRow[][]): JointRow[][] {
  return all.flatMap((rows) => {
    const room = rows[rows.length - 1];
    if (!room || roleOf(room.stage) !== 'room') return [rows];
    const { length = 0, width = 0 } = room.measures;
    // The way may come in by any wall.
    const depth = Math.min(length, width);
    const half = { ...room, measures: { ...room.measures, length: depth, width: depth / 2 } };
    return [0, 1].map((place): JointRow[] => [...rows.slice(0, -1), { ...half, place }]);
  });
}

function tapedRow(
  row: JointRow,
  flight: JointRow['measures'],
  lane: number | undefined,
  tape: number,
): JointRow {
  const { width, widthOut, height, ceiling, wall, depth, length } = row.measures;
  const less = (value: number): number => Math.max(1, value - tape);
  const changed = (name: MeasureName, value: number | undefined): Partial<JointRow['measures']> =>
    value === undefined ? {} : { [name]: value };
  if (roleOf(row.stage) === 'flight') {
    const { footSpace, headSpace } = row.measures;
    const spaces = { ...changed('footSpace', footSpace), ...changed('headSpace', headSpace) };
    return { ...row, measures: { ...flight, ...spaces, ...changed('width', lane) } };
  }
  const room = roleOf(row.stage) === 'room';
  const measures = {
    ...row.measures,
    ...changed('width', room ? width && less(width) : (lane ?? (width && less(width)))),
    ...changed('widthOut', widthOut && less(widthOut)),
    ...changed('height', height && less(height)),
    ...changed('ceiling', ceiling && less(ceiling)),
    ...changed('wall', wall === undefined ? undefined : wall + tape),
    // A passage that is not said to go on past its door may end there.
    ...(turnArms(row.stage)?.eitherWay ? { depth: Math.max(0, (depth ?? 0) - tape) } : {}),
    ...(room ? changed('length', length && less(length)) : {}),
  };
  return { ...row, measures };
}

/**
 * What straight rows surely leave open across, all together [mm]: two of them overlap by the mean of their widths less
 * all that the way may have shifted between, as the narrower of each pair of neighbours stands anywhere across the wider.
 */
export function narrowestLane(rows: readonly JointRow[]): number {
  const widths = rows
    .filter(({ stage }) => roleOf(stage) !== 'room')
    .map(({ measures }) => measures.width ?? 0);
  const shifts = pairs(widths).map(([one, next]) => Math.abs(next - one) / 2);
  let lane = Infinity;
  widths.forEach((one, p) => {
    let drift = 0;
    lane = Math.min(lane, one);
    widths.slice(p + 1).forEach((other, k) => {
      drift += shifts[p + k] ?? 0;
      lane = Math.min(lane, (one + other) / 2 - drift);
    });
  });
  return lane;
}
