import { fillAxesOfTurn } from '../boxAxes';
import type { PieceSize } from '../../measures/piece';
import { greatestNotBlocked } from './greatestNotBlocked';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, max, min, sqrt } = Math;

/** Cells of attitude that one padding may be cut into. */
const MOST_CELLS = 2500;
/** Added where a proof must exceed [mm]: above any rounding here. */
const OUTWARD = 1e-6;

/**
 * Greatest padding at which the piece is not proved to fit in no attitude inside a room of three sizes.
 *
 * All attitudes are unit quaternions; of the four in which a box looks alike one has its first part largest,
 * so (x, y, z)/w in a cube of side 2 holds them all. Cells of that cube are cut until each is too wide for
 * the room one way: a box's width changes by no more than its corners move, at most its diagonal times the
 * turn, and the turn over a cell is at most twice its radius.
 *
 * @param room three sizes [mm] in any order
 * @returns largest padding [mm a side] that this does not exclude
 */
export function boxInBoxAtMost(room: readonly [number, number, number], piece: PieceSize): number {
  const most = max(...room) / 2;
  const [a, b, c] = [...room].sort((x, y) => y - x) as [number, number, number];
  // Set down square it fits with this padding.
  const square = min(a - piece.length, b - piece.breadth, c - piece.thickness) / 2;
  return greatestNotBlocked(piece, most, (p) => fitsNowhere(room, p), square, 0.25);
}

const stack = new Float64Array(4 * 512);
const axes = new Float64Array(9);

/** How wide the box is along one of the room's directions, as its axes lie. */
const widthAlong = (p: PieceSize, k: 0 | 1 | 2): number =>
  p.length * abs(axes[k]!) + p.breadth * abs(axes[3 + k]!) + p.thickness * abs(axes[6 + k]!);

function fitsNowhere(room: readonly [number, number, number], p: PieceSize): boolean {
  const [a, b, c] = [...room].sort((x, y) => y - x) as [number, number, number];
  const diagonal = sqrt(p.length ** 2 + p.breadth ** 2 + p.thickness ** 2);
  // Quick proofs: the edges' sum (Winkler, Mathematical Mind-Benders), the diagonal, the least width.
  if (p.length + p.breadth + p.thickness > a + b + c + OUTWARD) return true;
  if (diagonal > sqrt(a * a + b * b + c * c) + OUTWARD) return true;
  if (p.thickness > c + OUTWARD) return true;
  if (p.length <= a && p.breadth <= b && p.thickness <= c) return false;
  stack[0] = 0;
  stack[1] = 0;
  stack[2] = 0;
  stack[3] = 1;
  let top = 1;
  for (let cells = 0; top > 0; cells++) {
    if (cells > MOST_CELLS) return false;
    top--;
    const x = stack[4 * top]!;
    const y = stack[4 * top + 1]!;
    const z = stack[4 * top + 2]!;
    const h = stack[4 * top + 3]!;
    const w = 1 / sqrt(1 + x * x + y * y + z * z);
    fillAxesOfTurn(axes, w, w * x, w * y, w * z);
    // The central projection of the sphere of quaternions never stretches: half-turn <= distance in the cube.
    const moved = diagonal * min(Math.PI, 2 * sqrt(3) * h) + OUTWARD;
    const w0 = widthAlong(p, 0);
    if (w0 - moved > room[0]) continue;
    const w1 = widthAlong(p, 1);
    if (w1 - moved > room[1]) continue;
    const w2 = widthAlong(p, 2);
    if (w2 - moved > room[2]) continue;
    // It fits here: no proof.
    if (w0 <= room[0] && w1 <= room[1] && w2 <= room[2]) return false;
    if (4 * (top + 8) > stack.length) return false;
    const q = h / 2;
    for (let k = 0; k < 8; k++) {
      const o = 4 * top++;
      stack[o] = x + (k & 1 ? q : -q);
      stack[o + 1] = y + (k & 2 ? q : -q);
      stack[o + 2] = z + (k & 4 ? q : -q);
      stack[o + 3] = q;
    }
  }
  return true;
}
