import { walkRoute, type RouteWalk } from '../../src/core/joint/walk/walkRoute';
import type { JointRow } from '../../src/core/joint/jointRow';
import type { PieceSize } from '../../src/core/measures/piece';
import { bestChain, widestClearance } from '../../src/core/route/chain';
import { judgeRoute } from '../../src/core/route/judgeRoute';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { walkSteps } from '../../src/core/route/routeMotion';
import { routeParts } from '../../src/core/route/routeParts';
import { stageBook } from '../../src/core/route/stageBook';
import type { StageMeasures } from '../../src/core/stages/measures';
import { seededStream } from '../../src/core/space/seededStream';
import type { StageRow } from '../../src/core/survey/table/stageRow';
import { randomRoute } from './randomRoutes';
import { stageRow } from './walkedRoute';

/** A survey as people send them in, and the building that it may have been taken of. */
interface Survey {
  readonly rows: readonly StageRow[];
  /** A building of which every measure is within the tape and everything left out is as it may be. */
  readonly building: () => JointRow[];
  /** The piece as it may be within the tape. */
  readonly larger: () => PieceSize;
  readonly piece: PieceSize;
}

/** A motion that a "goes" stands for, in a building that the survey allows. */
export interface HeldMotion {
  readonly walk: RouteWalk;
  readonly rows: readonly JointRow[];
  readonly piece: PieceSize;
  /** Rows that stand close were solved together. */
  readonly jointly: boolean;
}

const TAPE = 5;
const ALLOWANCE = 25;
const TURNS: readonly string[] = ['corner', 'side door', 'lift'];

/** A random route with hands, ways, runs and spaces left out. */
function survey(seed: number): Survey {
  const { rows: real, piece } = randomRoute(seed);
  const next = seededStream(seed + 100000);
  const noWay = next() < 0.3;
  const open = real.map(() => ({ hand: next() < 0.5, run: next() < 0.5, space: next() < 0.3 }));
  const rows = real.map((row, i): StageRow => {
    const measures: { -readonly [Name in keyof StageMeasures]: StageMeasures[Name] } = { ...row.measures };
    if (open[i]?.run) delete measures.run;
    if (row.stage === 'flight' && open[i]?.space) {
      delete measures.footSpace;
      delete measures.headSpace;
    }
    return stageRow(
      {
        stage: row.stage,
        measures,
        hand: open[i]?.hand ? undefined : row.hand,
        way: noWay ? undefined : row.way,
      },
      i,
    );
  });
  // At an end of the tape as often as not.
  const off = (by: number): number => (next() < 0.5 ? (next() < 0.5 ? -by : by) : (2 * next() - 1) * by);
  const building = (): JointRow[] => {
    const way = next() < 0.5 ? 'up' : 'down';
    return real.map((row, i): JointRow => {
      const { risers = 1 } = row.measures;
      const measured = Object.entries(row.measures).map(([name, value]): [string, number] => {
        if (value === undefined || name === 'risers' || name === 'turn') return [name, value ?? 0];
        if (name === 'rise' || name === 'going')
          return [name, value + off(row.stage === 'flight' ? TAPE / risers : 0)];
        const unknown = open[i]?.space === true && row.stage === 'flight';
        if (unknown && (name === 'footSpace' || name === 'headSpace'))
          return [name, next() < 0.4 ? 10 * next() : 4000 * next()];
        return [name, Math.max(0, value + off(TAPE))];
      });
      const measures: StageMeasures = Object.fromEntries(measured);
      const run = next() < 0.4 ? 0 : 3000 * next();
      return {
        ...row,
        measures: open[i]?.run && TURNS.includes(row.stage) ? { ...measures, run } : measures,
        hand: open[i]?.hand && row.hand ? (next() < 0.5 ? 'left' : 'right') : row.hand,
        place: next() < 0.5 ? Math.round(next()) : next(),
        way: row.way && noWay ? way : row.way,
      };
    });
  };
  const larger = (): PieceSize => ({
    length: piece.length + TAPE * next(),
    breadth: piece.breadth + TAPE * next(),
    thickness: piece.thickness + TAPE * next(),
  });
  return { rows, building, larger, piece };
}

/**
 * The motions that a "goes" of a random survey stands for: the chain of its worst case, in buildings that the survey may
 * have been taken of, for the piece padded by the allowance less a millimetre. None where the survey does not go.
 */
export function heldMotions(seed: number, buildings: number): HeldMotion[] {
  const { rows, building, larger, piece } = survey(seed);
  const book = stageBook(TAPE);
  const route = prepareRoute(rows, book);
  if (judgeRoute(route, piece, book, ALLOWANCE).finding.verdict !== 'goes') return [];
  return Array.from({ length: buildings }, (): HeldMotion => {
    const real = building();
    const alike = route.readings.find(({ reading }) =>
      reading.every(({ way }, i) => real[i]?.way === undefined || way === real[i].way),
    );
    const reading = alike ?? route.readings[0];
    if (!reading) throw new RangeError(`survey ${seed} has no reading`);
    const known = book.pieceOf(piece);
    let parts = routeParts(reading.worst, known, book, 'worst');
    const jointly = widestClearance(parts, 'free') < ALLOWANCE;
    if (jointly) parts = routeParts(reading.worst, known, book, 'worst', { enough: ALLOWANCE });
    const steps = bestChain(parts, 'free', widestClearance(parts, 'free'), ALLOWANCE);
    if (!steps) throw new RangeError(`survey ${seed} goes and has no chain`);
    const size = larger();
    return { walk: walkRoute(real, walkSteps(steps), size, ALLOWANCE - 1), rows: real, piece: size, jointly };
  });
}
