import { sortedPiece, type PieceSize } from '../core/measures/piece';
import { refused, type Outcome } from '../core/measures/problem';
import { PIECE_LENGTH_RANGE, pieceTooShort } from './arguments';

/** Computes with the piece of three sizes in any order, once its longest is what a piece can have. */
export function withPiece(
  { length, breadth, thickness }: PieceSize,
  compute: (piece: PieceSize) => number | Outcome<number>,
): number | Outcome<number> {
  const piece = sortedPiece(length, breadth, thickness);
  if (piece.length < PIECE_LENGTH_RANGE.least) return refused(pieceTooShort(piece.length));
  return compute(piece);
}

/**
 * As `withPiece`, on a stair: headroom below the piece's least size is no stair that it could ever be on, so
 * it is refused and not computed.
 */
export function withPieceUnder(
  { headroom, ...sizes }: PieceSize & { readonly headroom: number },
  compute: (piece: PieceSize) => number | Outcome<number>,
): number | Outcome<number> {
  return withPiece(sizes, (piece) =>
    headroom < piece.thickness
      ? refused({
          kind: 'impossible',
          argument: 'headroom',
          got: headroom,
          because: `it is less than the piece's least size, ${piece.thickness} mm`,
        })
      : compute(piece),
  );
}
