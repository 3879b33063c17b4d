import type { JointBlock, JointRow } from '../joint/jointRow';
import { tapedMeasures } from './tapeCase';
import type { RestToRest } from './restToRest';
import { pairs } from '../lists/pairs';

/** Rows solved as one space, in one tape case; no piece longer than `holds` [mm] rests where they begin and end. */
export interface BlockToSolve {
  /** What has to be passed, every one of them: what is not exact may be any. */
  readonly blocks: readonly JointBlock[];
  readonly holds: number;
  /** So much less than in them is left [mm a side]: what stands in them may be moved by so much. */
  readonly less: number;
}

/**
 * Rows that lead straight on, with the tape against the piece: as narrow as they are anywhere together, wherever the
 * narrower stand across the wider; as low as they may be; the stair as steep and as gentle as it may be. What is off
 * along the way moves what stands there: seen from the middle, each thing by no more than half of all that is off.
 *
 * @param tape how far off a measure may be [mm]
 * @returns undefined where the way turns, or with more than one flight: their worst is not known
 */
export function tapedBlock({ block, holds }: RestToRest, tape: number): BlockToSolve | undefined {
  const { rows } = block;
  const flights = rows.filter(({ stage }) => stage === 'flight');
  const straight = rows.every(({ stage }) => STRAIGHT.has(stage));
  const [flight] = flights;
  if (!straight || !flight || flights.length > 1) return undefined;
  const lane = narrowestLane(rows) - tape;
  if (!(lane > 0)) return undefined;
  const sets = tapedMeasures('flight', flight.measures, tape, 'worst');
  const { footSpace, headSpace } = flight.measures;
  const own = [footSpace, headSpace].filter((space) => space !== undefined && space > 0).length;
  const lengths = rows.filter(
    ({ stage, measures }, k) =>
      (stage === 'door' && measures.wall !== undefined) ||
      // Beyond the ends of the block nothing stands whose place matters.
      (stage === 'passage' && k > 0 && k + 1 < rows.length),
  ).length;
  const blocks = sets.map((set): JointBlock => {
    const spaces = {
      ...(footSpace === undefined ? {} : { footSpace }),
      ...(headSpace === undefined ? {} : { headSpace }),
    };
    return {
      ...block,
      rows: rows.map((row): JointRow => tapedRow(row, { ...set, ...spaces }, lane, tape)),
    };
  });
  return { blocks, holds: holds - tape, less: ((lengths + own) * tape) / 2 };
}

const STRAIGHT: ReadonlySet<JointRow['stage']> = new Set(['door', 'passage', 'flight', 'room']);

function tapedRow(row: JointRow, flight: JointRow['measures'], width: number, tape: number): JointRow {
  const { measures } = row;
  const height = measures.height === undefined ? undefined : Math.max(1, measures.height - tape);
  const lower = height === undefined ? {} : { height };
  switch (row.stage) {
    case 'flight':
      return { ...row, measures: { ...flight, width } };
    case 'room': {
      // The way may come in by any wall.
      const depth = Math.max(1, Math.min(measures.length ?? 0, measures.width ?? 0) - tape);
      return { ...row, measures: { ...measures, ...lower, length: depth, width: depth } };
    }
    case 'door':
      return {
        ...row,
        measures: {
          ...measures,
          ...lower,
          width,
          ...(measures.wall === undefined ? {} : { wall: measures.wall + tape }),
        },
      };
    default:
      return { ...row, measures: { ...measures, ...lower, width } };
  }
}

/**
 * What straight rows surely leave open across, all together [mm]: two of them overlap by the mean of their widths less
 * all that the way may have shifted between, as the narrower of each pair of neighbours stands anywhere across the wider.
 */
export function narrowestLane(rows: readonly JointRow[]): number {
  const widths = rows.filter(({ stage }) => stage !== 'room').map(({ measures }) => measures.width ?? 0);
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
