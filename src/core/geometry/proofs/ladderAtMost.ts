import type { PieceSize } from '../../measures/piece';
import { greatestNotBlocked } from './greatestNotBlocked';

/** Added to every length that a proof must exceed [mm]: above any rounding here. */
const OUTWARD = 1e-6;

/**
 * The length [mm] in plan above which no straight rod goes round a corner, at whatever height and however it
 * starts: at some direction on either way round it would have to stand where it cannot.
 *
 * Turning the right way it passes every direction between the arms, and at phi + phi' = turn it cannot be
 * longer than b2 / sin phi' + b1 / sin phi (the calculus-book ladder; any one phi is a proof). Turning the
 * wrong way its far end is farther from both outer walls than its near end, so it must lie within one arm's
 * width: d sin t1 <= b1 or d sin t2 <= b2, t1 + t2 = 180 - turn.
 */
export function longestRodRoundCorner(widthIn: number, widthOut: number, turn: number): number {
  const turned = (turn * Math.PI) / 180;
  const right = leastBetween(0, turned, (phi) => widthOut / Math.sin(turned - phi) + widthIn / Math.sin(phi));
  const rest = Math.PI - turned;
  const wrong = leastBetween(0, rest, (t) => Math.max(widthIn / Math.sin(t), widthOut / Math.sin(rest - t)));
  return Math.max(right, wrong) + OUTWARD;
}

/**
 * Ladder proof at a corner between full-height walls under a flat ceiling: the box's long diagonal never
 * shows less than sqrt(L^2 + B^2 + T^2 - H^2) in plan, and a rod of that length must go round.
 *
 * @returns largest padding [mm a side] that this does not exclude; Infinity when it excludes nothing.
 */
export function ladderAtMost(
  widthIn: number,
  widthOut: number,
  ceiling: number,
  turn: number,
  piece: PieceSize,
): number {
  const rod = longestRodRoundCorner(widthIn, widthOut, turn);
  const diagonal = Math.sqrt(rod * rod + ceiling * ceiling) + OUTWARD;
  return greatestNotBlocked(
    piece,
    diagonal,
    (p) => Math.sqrt(p.length ** 2 + p.breadth ** 2 + p.thickness ** 2) > diagonal,
  );
}

/** A least value between two ends where the function is infinite; any value of the function would serve. */
function leastBetween(low: number, high: number, f: (x: number) => number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = low;
  let b = high;
  for (let n = 0; n < 60; n++) {
    const x = b - ratio * (b - a);
    const y = a + ratio * (b - a);
    if (f(x) < f(y)) b = y;
    else a = x;
  }
  return f((a + b) / 2);
}
