/** Sizes of a piece [mm], sorted: length >= breadth >= thickness. */
export interface PieceSize {
  readonly length: number;
  readonly breadth: number;
  readonly thickness: number;
}

/** Sorts three sizes of a piece [mm] given in any order. */
export function sortedPiece(a: number, b: number, c: number): PieceSize {
  const length = Math.max(a, b, c);
  const thickness = Math.min(a, b, c);
  // The middle one, without the rounding of a + b + c - length - thickness.
  const breadth = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  return { length, breadth, thickness };
}

/** The piece with `padding` [mm] on every side; a size that would turn negative counts as 0. */
export function paddedPiece(piece: PieceSize, padding: number): PieceSize {
  return {
    length: Math.max(0, piece.length + 2 * padding),
    breadth: Math.max(0, piece.breadth + 2 * padding),
    thickness: Math.max(0, piece.thickness + 2 * padding),
  };
}

/** What is thinner counts as so thick where a motion is solved [mm]. */
export const THINNEST = 1;

/**
 * How a piece is held, in the trade's words.
 * - flat: the thickness upright; on edge: the breadth upright; on end: the length upright.
 * - tilted: turned in the plane of travel, one end higher; leaning: turned about the direction of travel.
 * - crabwise: moved sideways without turning.
 */
export type Pose = 'flat' | 'on edge' | 'on end' | 'tilted' | 'leaning' | 'crabwise';
