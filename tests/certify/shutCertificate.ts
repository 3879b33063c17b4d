import type { PieceSize } from '../../src/core/measures/piece';
import type { PreparedRoute } from '../../src/core/route/preparedRoute';
import { proofAt } from '../../src/core/route/proofs';
import type { StageBook } from '../../src/core/route/stageBook';
import { shutCells } from './attitudes';
import {
  check,
  cornerOf,
  halfOf,
  nowhereOnLine,
  standsNowhere,
  type AttitudeCell,
  type Point,
  type Proof,
  type Row,
  type ShutCertificate,
} from './check';

/** What names a piece of a build of a survey. */
export type Named = Pick<ShutCertificate, 'survey' | 'build' | 'piece'>;

/**
 * Certificates that a piece cannot go, one for each way to read what the survey leaves open.
 * @returns why there are none, where there are none
 */
export function shutCertificates(
  route: PreparedRoute,
  size: PieceSize,
  book: StageBook,
  named: Named,
): readonly ShutCertificate[] | string {
  let why = 'nothing is proved';
  for (let i = 0; i < route.steps.length; i++) {
    const claimed = proofAt(route, i, book.pieceOf(size), book);
    if (claimed === undefined) continue;
    why = `of this the checker knows no proof: ${claimed}`;
    const made = route.readings.map(({ reading }) => {
      const measured = reading.map(({ stage, measures, way, into, row }): Row => ({
        stage: stage ?? '',
        measures,
        hand: row.hand,
        way,
        into,
      }));
      return proofs(measured[i]!, named.piece, book.tape)
        .map((proof): ShutCertificate => ({
          ...named,
          verdict: 'cannot go',
          measured,
          tape: book.tape,
          row: i,
          proof,
        }))
        .find((certificate) => check(certificate).faults.length === 0);
    });
    const whole = made.filter((one) => one !== undefined);
    if (whole.length > 0 && whole.length === made.length) return whole;
  }
  return why;
}

/** What may be proved of a row, the shortest first; whether it is, the checker says. */
function proofs(row: Row, piece: ShutCertificate['piece'], tape: number): Proof[] {
  const quick: Proof[] = [
    { by: 'section', which: 'way in' },
    { by: 'section', which: 'way out' },
    { by: 'sizes' },
  ];
  const { width, widthOut, height } = row.measures;
  if (row.stage !== 'corner' || width === undefined || widthOut === undefined || height === undefined)
    return [...quick, ...standing(row, piece, tape)];
  const half = halfOf(piece, tape);
  const corner = cornerOf(row, tape);
  return [
    ...quick,
    ...lines(corner).flatMap(([from, to]): Proof[] => {
      const cells = shutCells(half, (cell) => nowhereOnLine(cell, half, corner, from, to));
      return cells ? [{ by: 'line', from, to, cells }] : [];
    }),
  ];
}

/** Every attitude in a car or a last room. */
function standing({ stage, measures: m }: Row, piece: ShutCertificate['piece'], tape: number): Proof[] {
  if (stage !== 'lift' && stage !== 'room') return [];
  const sides =
    stage === 'lift'
      ? [m['widthOut'], m['depth'], m['ceiling'] ?? m['height']]
      : [m['width'], m['length'], m['height']];
  if (sides.some((side) => side === undefined)) return [];
  const space = sides.map((side) => Number(side) + tape) as unknown as Point;
  const half = halfOf(piece, tape);
  const cells = shutCells(half, (cell: AttitudeCell) => standsNowhere(cell, half, space));
  return cells ? [{ by: 'inside', cells }] : [];
}

type Flat = readonly [number, number];

/** Lines from the inner edge, or a little way along an inner wall, to the outer corner or beside it. */
function lines({ widthIn, widthOut, cos, sin }: ReturnType<typeof cornerOf>): (readonly [Flat, Flat])[] {
  const outer: Flat = [(widthOut - cos * widthIn) / sin, -widthIn];
  const beside: Flat[] = [
    [outer[0] / 2, -widthIn],
    [(outer[0] + sin * widthOut) / 2, (outer[1] - cos * widthOut) / 2],
  ];
  const along = widthIn > widthOut ? ([-1, 0] as const) : ([cos, sin] as const);
  const starts = [0, 60, 120, 200, 300].map((d): Flat => [d * along[0], d * along[1]]);
  return starts.flatMap((from) => [outer, ...beside].map((to) => [from, to] as const));
}
