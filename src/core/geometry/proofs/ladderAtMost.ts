import type { PieceSize } from '../../measures/piece';
import { RIGHT_ANGLE } from '../../measures/angle';
import type { CornerRoom } from './cornerRoom';
import { leastBetween } from '../goldenSection';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, cbrt, max, pow, sin, sqrt } = Math;

/** Added to every length that a proof must exceed [mm]: above any rounding here. */
const OUTWARD = 1e-6;
/** After so many a least length is known as well as the machine can; any angle would be a proof. */
const STEPS = 60;

/**
 * The length [mm] in plan above which no straight rod goes round a corner, at whatever height and however it
 * starts: at some direction on either way round it would have to stand where it cannot.
 *
 * Turning the right way it passes every direction between the arms, and at phi + phi' = turn it cannot be
 * longer than b2 / sin phi' + b1 / sin phi (the calculus-book ladder; any one phi is a proof). Turning the
 * wrong way its far end is farther from both outer walls than its near end, so it must lie within one arm's
 * width: d sin t1 <= b1 or d sin t2 <= b2, t1 + t2 = 180 degrees - turn.
 *
 * @param turn by how much the way turns [rad]
 * @source the ladder round a corner, calculus textbooks; rounded outward
 * @param widthIn clear width of the first arm [mm]
 * @param widthOut clear width of the second [mm]
 * @returns [mm], rounded outward
 * @example longestRodRoundCorner(1000, 1000, Math.PI / 2) // 2828.43 = 2000 sqrt 2
 */
export function longestRodRoundCorner(widthIn: number, widthOut: number, turn: number): number {
  // Turned the wrong way at a right angle it is no longer than the widths' diagonal, which is less.
  if (turn === RIGHT_ANGLE) return pow(cbrt(widthIn) ** 2 + cbrt(widthOut) ** 2, 1.5) + OUTWARD;
  const right = leastBetween((phi) => widthOut / sin(turn - phi) + widthIn / sin(phi), 0, turn, STEPS);
  const rest = PI - turn;
  const wrong = leastBetween((t) => max(widthIn / sin(t), widthOut / sin(rest - t)), 0, rest, STEPS);
  return max(right.value, wrong.value) + OUTWARD;
}

/**
 * Ladder proof at a corner between full-height walls under a flat ceiling: the box's long diagonal never
 * shows less than sqrt(L^2 + B^2 + T^2 - H^2) in plan, and a rod of that length must go round.
 *
 * @param corner widths of the arms and the ceiling over both [mm], and by how much the way turns [rad]
 * @param piece sorted sizes [mm]
 * @returns padding [mm a side] above which this excludes every motion
 */
export function ladderAtMost({ widthIn, widthOut, ceiling, turn }: CornerRoom, piece: PieceSize): number {
  const rod = longestRodRoundCorner(widthIn, widthOut, turn);
  return paddingToDiagonal(piece, sqrt(rod * rod + ceiling * ceiling)) + OUTWARD;
}

/** The padding [mm a side] with which a box has this space diagonal; a side that it takes away counts as 0. */
function paddingToDiagonal({ length, breadth, thickness }: PieceSize, diagonal: number): number {
  const sides = [length, breadth, thickness];
  for (;;) {
    // The greater root of sum (side + 2c)^2 = diagonal^2.
    const count = sides.length;
    const sum = sides.reduce((total, side) => total + side, 0);
    const squares = sides.reduce((total, side) => total + side * side, 0);
    const inside = sum * sum - count * (squares - diagonal * diagonal);
    const padding = (sqrt(max(0, inside)) - sum) / (2 * count);
    const least = sides[count - 1] ?? 0;
    if (count === 1 || (inside >= 0 && padding >= -least / 2)) return padding;
    sides.pop();
  }
}
