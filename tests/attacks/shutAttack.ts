import { sortedPiece, type PieceSize } from '../../src/core/measures/piece';
import { prepareRoute } from '../../src/core/route/preparedRoute';
import { proofAt } from '../../src/core/route/proofs';
import { stageBook } from '../../src/core/route/stageBook';
import { seededStream } from '../../src/core/space/seededStream';
import { anyPlace, BoxInAir, searchAir, type AirPlace } from '../support/airSearch';
import { routeAir, type Cell, type Point } from '../support/routeAir';
import { shutRoute } from '../support/shutRoutes';

/** A claim that a piece cannot pass a row, and what a search made of it. */
export interface ShutAttack {
  readonly claim: string;
  /** The piece stands somewhere on both sides: else there is nothing to search for. */
  readonly stood: boolean;
  /** A motion past the row: the claim is false. */
  readonly path: readonly AirPlace[] | undefined;
}

/** Neighbouring seeds give streams of their own. */
export const ownSeed = (seed: number): number => seed * 2654435 + 97;

/** The piece attacked with is so much larger all round [mm] than the claim needs: more than air and walls are rounded by. */
const OUTSIDE = 0.6;
/** Places tried for a piece to stand in, and kept. */
const STANDS = 3000;
const ROOTS = 12;
/** So far beyond the first and the last row the open ground counts [mm]. */
const GROUND = 2500;
/** Of what is said of a door, a passage or a room, which no motion decides, so little is attacked. */
const PLAIN_SHARE = 0.1;

const PLAIN: readonly string[] = ['door', 'passage', 'room'];

/** The air of some rows, with open ground before the first or behind the last, not both: no way leads round outside. */
function airAbout(air: readonly Cell[], from: number, to: number, rows: number): Cell[] {
  const near = air.filter(({ row }) => row >= Math.max(0, from) && row <= Math.min(to, rows - 1));
  const outdoors = from < 0 ? -1 : to >= rows ? rows : undefined;
  if (outdoors === undefined) return near;
  const beside = air.filter(({ row }) => row === (outdoors < 0 ? 0 : rows - 1));
  const limits = ([0, 1, 2] as const).flatMap((k) => {
    const ends = (sign: 1 | -1): number =>
      Math.max(
        ...beside.flatMap(({ planes }) =>
          planes.filter((plane) => sign * plane[k] > 0.99).map((plane) => plane[3]),
        ),
      );
    const plane = (sign: 1 | -1): [number, number, number, number] => {
      const p: [number, number, number, number] = [0, 0, 0, ends(sign) + GROUND];
      p[k] = sign;
      return p;
    };
    return [plane(1), plane(-1)].filter(([, , , d]) => Number.isFinite(d));
  });
  const ground = air.filter(({ row }) => row === outdoors);
  return [...near, ...ground.map(({ row, planes }) => ({ row, planes: [...planes, ...limits] }))];
}

const holds = ({ planes }: Cell, at: Point): boolean =>
  planes.every(([a, b, c, d]) => a * at[0] + b * at[1] + c * at[2] <= d);

/**
 * Whether the middle goes from each row to the next one: where rows lie across each other, as no building has them, a
 * motion that changes over from one to another there shows nothing.
 */
function rowByRow(
  path: readonly AirPlace[],
  cells: readonly Cell[],
  from: readonly number[],
  to: readonly number[],
): boolean {
  let reached = from;
  const joined = path.every(({ at }) => {
    const rows = cells.filter((cell) => holds(cell, at)).map(({ row }) => row);
    if (rows.length === 0) return true;
    const last = reached;
    reached = rows.filter((row) => last.some((other) => Math.abs(row - other) <= 1));
    return reached.length > 0;
  });
  // Where air of a row behind stands in the open ground before the first, the last place is in both.
  return joined && reached.some((row) => to.includes(row));
}

/**
 * Takes a random survey and, row by row, the smallest piece of its shape that is proved not to pass the row; and
 * searches for a motion of it from the row before to the row behind, in a building that the survey allows.
 * @param tries moves that each search may try
 */
export function attackShut(seed: number, tries: number): ShutAttack[] {
  const { survey, building, piece } = shutRoute(seed);
  const book = stageBook(0, 0);
  const route = prepareRoute(survey, book);
  if (route.steps.some(({ problem }) => problem !== undefined)) return [];
  const next = seededStream(ownSeed(seed));
  const air = routeAir(building);
  return survey.flatMap(({ stage = '' }, i): ShutAttack[] => {
    const lengthAlone = next() < (stage === 'flight' ? 0.4 : 0.85);
    const sized = (s: number): PieceSize =>
      lengthAlone
        ? sortedPiece(piece.length * s, piece.breadth, piece.thickness)
        : sortedPiece(piece.length * s, piece.breadth * s, piece.thickness * s);
    const claimed = (s: number): string | undefined => proofAt(route, i, book.pieceOf(sized(s)), book);
    let high = 0.3;
    while (high < 2.5 && claimed(high) === undefined) high *= 1.08;
    const claim = claimed(high);
    if (claim === undefined || (PLAIN.includes(stage) && next() > PLAIN_SHARE)) return [];
    let low = high / 1.08;
    while (high - low > 0.004) {
      const middle = (low + high) / 2;
      if (claimed(middle) === undefined) low = middle;
      else high = middle;
    }
    const shut = sized(high);
    const half: Point = [shut.length / 2 + OUTSIDE, shut.breadth / 2 + OUTSIDE, shut.thickness / 2 + OUTSIDE];
    const cells = airAbout(air, i - 2, i + 2, building.length);
    const box = new BoxInAir(cells, half);
    const stands = (rows: readonly number[]): AirPlace[] => {
      const own = cells.filter(({ row }) => rows.includes(row));
      const found: AirPlace[] = [];
      for (let n = 0; own.length > 0 && n < STANDS && found.length < ROOTS; n++) {
        const place = anyPlace(own, next);
        if (box.free(place) && own.some((cell) => holds(cell, place.at))) found.push(place);
      }
      return found;
    };
    const [starts, goals] = [stands([i - 2, i - 1]), stands([i + 1, i + 2])];
    const stood = starts.length > 0 && goals.length > 0;
    const found = stood ? searchAir({ cells, half, starts, goals, next, tries }) : undefined;
    const path = found && rowByRow(found, cells, [i - 2, i - 1], [i + 1, i + 2]) ? found : undefined;
    const words = `${stage} in row ${i + 1}: ${claim}; ${Object.values(shut).map(Math.round).join(' x ')}`;
    return [{ claim: words, stood, path }];
  });
}
