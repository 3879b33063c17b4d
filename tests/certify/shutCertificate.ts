import type { PieceSize } from '../../src/core/measures/piece';
import type { PreparedRoute } from '../../src/core/route/preparedRoute';
import { proofAt } from '../../src/core/route/proofs';
import type { StageBook } from '../../src/core/route/stageBook';
import { placedCells, shutCells } from './attitudes';
import {
  check,
  cornerOf,
  halfOf,
  landingOf,
  nowhereOnLine,
  nowhereOverLanding,
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
      for (const proof of proofs(measured, i, named.piece, book.tape)) {
        const certificate: ShutCertificate = {
          ...named,
          verdict: 'cannot go',
          measured,
          tape: book.tape,
          row: i,
          proof,
        };
        if (check(certificate).faults.length === 0) return certificate;
      }
      return undefined;
    });
    const whole = made.filter((one) => one !== undefined);
    if (whole.length > 0 && whole.length === made.length) return whole;
  }
  return why;
}

/** What may be proved of a row, the shortest first; whether it is, the checker says. */
function* proofs(
  rows: readonly Row[],
  i: number,
  piece: ShutCertificate['piece'],
  tape: number,
): Generator<Proof> {
  const row = rows[i]!;
  for (const which of ['way in', 'way out', 'square to the pitch'] as const) yield { by: 'section', which };
  yield { by: 'sizes' };
  if (row.stage === 'half landing' || row.stage === 'quarter landing')
    return yield* overLanding(rows, i, piece, tape);
  if (row.stage === 'side door')
    for (let depth = 1; depth < piece.length; depth *= 1.02) yield { by: 'rod', depth };
  const { width, widthOut, height } = row.measures;
  if (row.stage !== 'corner' || width === undefined || widthOut === undefined || height === undefined)
    return yield* standing(row, piece, tape);
  const half = halfOf(piece, tape);
  const corner = cornerOf(row, tape);
  for (const [from, to] of lines(corner)) {
    const cells = shutCells(half, (cell) => nowhereOnLine(cell, half, corner, from, to));
    if (cells) yield { by: 'line', from, to, cells };
  }
}

/** Every attitude and place on a line over a landing, for each half of what its stairs may be steep. */
function* overLanding(
  rows: readonly Row[],
  i: number,
  piece: ShutCertificate['piece'],
  tape: number,
): Generator<Proof> {
  const half = halfOf(piece, tape);
  let landing;
  try {
    landing = landingOf(rows, i, half, tape);
  } catch {
    return;
  }
  const [least, most] = landing.slope;
  const [first, last] = landing.inner;
  const depth = Math.min(...landing.walls.filter(([nx]) => nx === 1).map(([, , at]) => at));
  const across = Math.max(...landing.walls.map(([, ny, at]) => (ny === 1 ? at : -Infinity)));
  const steepness = tape === 0 ? [least, most] : [least, (least + most) / 2, most];
  const ends: (readonly [Flat, Flat])[] = [
    [first, [0.3 * depth, 0]],
    [first, [0, 0]],
    [first, [depth, 0]],
    across > 0 ? [last, [depth, across]] : [first, [depth, first[1]]],
  ];
  for (const [from, to] of ends) {
    const along = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const parts = steepness.slice(1).map((high, k) => {
      const slope = [steepness[k]!, high] as const;
      const here = { ...landing, slope };
      const cells = placedCells(half, along, (cell) => nowhereOverLanding(cell, half, here, from, to));
      return { slope, cells };
    });
    if (parts.every(({ cells }) => cells !== undefined))
      yield { by: 'landing', from, to, parts: parts as Extract<Proof, { by: 'landing' }>['parts'] };
  }
}

/** Every attitude in a car or a last room. */
function* standing(
  { stage, measures: m }: Row,
  piece: ShutCertificate['piece'],
  tape: number,
): Generator<Proof> {
  if (stage !== 'lift' && stage !== 'room') return;
  const sides =
    stage === 'lift'
      ? [m['widthOut'], m['depth'], m['ceiling'] ?? m['height']]
      : [m['width'], m['length'], m['height']];
  if (sides.some((side) => side === undefined)) return;
  const space = sides.map((side) => Number(side) + tape) as unknown as Point;
  const half = halfOf(piece, tape);
  const cells = shutCells(half, (cell: AttitudeCell) => standsNowhere(cell, half, space));
  if (cells) yield { by: 'inside', cells };
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
