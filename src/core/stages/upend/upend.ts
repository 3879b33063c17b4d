import type { PieceSize, Pose } from '../../measures/piece';
import type { Working } from '../../measures/working';

/** A place where a piece is stood on end. */
export interface UpendMeasures {
  /** Height of the ceiling [mm]. */
  readonly ceiling: number;
  /** Free floor across the piece [mm]; absent where there is plenty. */
  readonly width?: number | undefined;
}

/** What standing a piece on end leaves. */
export interface UpendAnswer {
  /** Clearance [mm a side]. */
  readonly clearance: number;
  /** The pose it is raised from: flat, its breadth across the floor, or on edge, its thickness across. */
  readonly from: Pose;
}

/**
 * Clearance while a piece is stood on end: raised about an edge, its height rises to the diagonal of the face
 * that turns. From flat that is length and thickness, with the breadth across the floor; from on edge it is
 * length and breadth, with only the thickness across.
 * @source the diagonal of the turning rectangle, solved for the padding
 * @returns clearance [mm a side] and the pose it is raised from
 * @example upend({ ceiling: 2100 }, { length: 1830, breadth: 930, thickness: 25 }).clearance // 125.85
 */
export function upend(measures: UpendMeasures, piece: PieceSize, working?: Working): UpendAnswer {
  const { length, breadth, thickness } = piece;
  const { ceiling, width } = measures;
  const flat = diagonalClearance(ceiling, length, thickness);
  const onEdge = diagonalClearance(ceiling, length, breadth);
  const acrossFlat = width === undefined ? Infinity : (width - breadth) / 2;
  const acrossEdge = width === undefined ? Infinity : (width - thickness) / 2;
  const byFlat = Math.max(Math.min(flat, acrossFlat), -length / 2);
  const byEdge = Math.max(Math.min(onEdge, acrossEdge), -length / 2);
  const answer: UpendAnswer =
    byFlat >= byEdge ? { clearance: byFlat, from: 'flat' } : { clearance: byEdge, from: 'on edge' };
  working?.({
    what: 'Raised from flat: diagonal of length and thickness',
    formula: 'sqrt((L+2c)^2 + (T+2c)^2) <= ceiling, and breadth + 2c <= width where that is given',
    value: byFlat,
    unit: 'mm a side',
    source: 'Pythagoras',
  });
  working?.({
    what: 'Raised from on edge: diagonal of length and breadth',
    formula: 'sqrt((L+2c)^2 + (B+2c)^2) <= ceiling, and thickness + 2c <= width where that is given',
    value: byEdge,
    unit: 'mm a side',
    source: 'Pythagoras',
  });
  working?.({
    what: `Clearance, raised from ${answer.from}`,
    formula: 'the better of the two',
    value: answer.clearance,
    unit: 'mm a side',
    source: 'the better way decides',
  });
  return answer;
}

/** Greatest c with (p+2c)^2 + (q+2c)^2 <= d^2, where a side below 0 counts as 0. */
function diagonalClearance(d: number, p: number, q: number): number {
  const inside = 2 * d * d - (p - q) ** 2;
  if (inside >= 0) {
    const clearance = (Math.sqrt(inside) - (p + q)) / 4;
    if (clearance >= -q / 2) return clearance;
  }
  return Math.min((d - p) / 2, -q / 2);
}
