import type { PieceSize } from '../core/measures/piece';

/** The piece to carry, with what it is called. */
export interface ChosenPiece {
  readonly name: string;
  readonly size: PieceSize;
}
