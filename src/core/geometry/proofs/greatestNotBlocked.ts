import { bracket } from '../rootFinding';
import { paddedPiece, type PieceSize } from '../../measures/piece';

/** How near [mm] the padding that a proof excludes is looked for. */
const FINENESS = 0.05;

/**
 * The least padding [mm a side] for which `blocked` holds, looked for by halving between -L/2 and `most`:
 * Infinity when not even `most` is blocked. `known`: a padding that is known to be free. `blocked` must be a proof; then every padding from the result up
 * is impossible, because a larger piece contains the smaller one. The upper end of the bracket is returned,
 * so the result is never below what is proved.
 */
export function greatestNotBlocked(
  piece: PieceSize,
  most: number,
  blocked: (padded: PieceSize) => boolean,
  known = -Infinity,
  fineness = FINENESS,
): number {
  const low = Math.max(known, -piece.length / 2);
  const high = Math.max(most, low);
  if (!blocked(paddedPiece(piece, high))) return Infinity;
  if (blocked(paddedPiece(piece, low))) return low;
  return bracket(high, low, (padding) => blocked(paddedPiece(piece, padding)), fineness).holds;
}
