import { fillAxesOfYawTiltLean } from '../boxAxes';
import type { PieceSize } from '../../measures/piece';
import type { CornerRoom } from './cornerRoom';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, asin, cos, max, min, sin, sqrt } = Math;

/** Cells of tilt and lean that one direction may be cut into. */
const MOST_CELLS = 4000;
/** Added where a proof must exceed [mm]: above any rounding here. */
const OUTWARD = 1e-6;
/** Directions tried in each of the two arcs. */
const DIRECTIONS = 4;

/**
 * Yaw-cut proof at a corner between full-height walls, under a ceiling too low for the length to stand up.
 *
 * Then the long axis always has a direction in plan, a point on a circle of half a turn, and on the way from
 * one arm to the other that point crosses one of the two arcs between the arms' directions. At one direction
 * in each arc it is shown that the piece stands nowhere, whatever its tilt and lean: with n1, n2 the inward
 * normals of the outer walls and h(n) the piece's half-width along n, it stands somewhere only when
 *   max over 0 <= m <= 1 of (1-m) (b1 - h(n1)) + m (b2 - h(n2)) - h((1-m) n1 + m n2) >= 0
 * (a line through the inner corner has to part the piece's plan from the inner walls). The
 * left side is concave and in straight pieces in m, so five values give it exactly. Tilts and leans are cut
 * into cells; over a cell h changes by no more than the piece's corners move along n.
 * It is also shown that in the first arm the axis can only point on the first arm's side of the two cuts,
 * and in the second on the second's.
 *
 * @source own derivation
 * @returns true is a proof that the piece does not pass; false says nothing
 */
export const yawCutBlocks = (corner: CornerRoom, piece: PieceSize): boolean =>
  new YawCut(corner).blocked(piece);

class YawCut {
  /** Stack of cells: tilt, lean, half size of each. */
  private readonly stack = new Float64Array(4 * 256);
  private readonly axes = new Float64Array(9);
  private readonly n1: readonly [number, number];
  private readonly n2: readonly [number, number];
  private readonly between: number;
  private lastRight = -1;
  private readonly b1: number;
  private readonly b2: number;
  private readonly ceiling: number;
  private lastWrong = -1;

  constructor({ widthIn, widthOut, ceiling, turn }: CornerRoom) {
    this.b1 = widthIn;
    this.b2 = widthOut;
    this.ceiling = ceiling;
    // From the outer corner the first arm runs along 0, the second along 180 - turn; each normal points from
    // its arm's outer wall towards the other arm.
    this.between = Math.PI - turn;
    this.n1 = [0, 1];
    this.n2 = [sin(this.between), -cos(this.between)];
  }

  blocked(p: PieceSize): boolean {
    if (p.length <= this.ceiling + OUTWARD || p.thickness > this.ceiling) {
      return p.thickness > this.ceiling + OUTWARD;
    }
    const right = this.cutIn(p, this.between, Math.PI, true);
    if (Number.isNaN(right)) return false;
    const wrong = this.cutIn(p, 0, this.between, false);
    if (Number.isNaN(wrong)) return false;
    return this.sidesHold(p, right, wrong);
  }

  /** A direction between two that is shut for every tilt and lean; NaN when none of those tried is. */
  private cutIn(p: PieceSize, from: number, to: number, right: boolean): number {
    const last = right ? this.lastRight : this.lastWrong;
    if (last >= 0 && this.shut(p, last)) return last;
    // The likeliest first: where the level piece, or the leaned one, is tightest.
    const tried: { yaw: number; f: number }[] = [];
    for (let k = 1; k <= 4 * DIRECTIONS; k++) {
      const yaw = from + ((to - from) * k) / (4 * DIRECTIONS + 1);
      const steep = asin(min(1, this.ceiling / p.length)) * 0.9;
      const f = max(
        this.standing(p, yaw, 0, Math.PI / 2),
        this.standing(p, yaw, 0, 0),
        this.standing(p, yaw, steep, 0),
      );
      tried.push({ yaw, f });
    }
    tried.sort((a, b) => a.f - b.f);
    for (let k = 0; k < DIRECTIONS; k++) {
      const { yaw, f } = tried[k]!;
      if (f >= 0) break;
      if (this.shut(p, yaw)) {
        if (right) this.lastRight = yaw;
        else this.lastWrong = yaw;
        return yaw;
      }
    }
    return NaN;
  }

  /**
   * In an arm the axis points on that arm's side of the cuts: across it, at every direction of the other
   * side, the piece would be wider than the arm. Across n it measures at least L s + T sqrt(1 - s^2), s the
   * share of the long axis along n, which is concave in s: its ends decide. s >= cos(steepest tilt) times the
   * sine of the angle between the axis' direction and the arm.
   */
  private sidesHold(p: PieceSize, right: number, wrong: number): boolean {
    const level = sqrt(max(0, 1 - (this.ceiling / p.length) ** 2));
    const wide = (arm: number, width: number): boolean => {
      const s = level * min(abs(sin(right - arm)), abs(sin(wrong - arm)));
      const across = p.length * s + p.thickness * sqrt(max(0, 1 - s * s));
      return min(across, p.length) > width + OUTWARD;
    };
    return wide(0, this.b1) && wide(this.between, this.b2);
  }

  /** The left side of the condition at one attitude. */
  private standing(p: PieceSize, yaw: number, tilt: number, lean: number): number {
    const { axes } = this;
    fillAxesOfYawTiltLean(axes, yaw, tilt, lean);
    const along = (k: 0 | 3 | 6, n: readonly [number, number]): number =>
      axes[k]! * n[0] + axes[k + 1]! * n[1];
    const [n1, n2] = [this.n1, this.n2];
    const l1 = along(0, n1);
    const l2 = along(0, n2);
    const b1 = along(3, n1);
    const b2 = along(3, n2);
    const t1 = along(6, n1);
    const t2 = along(6, n2);
    const L = p.length / 2;
    const B = p.breadth / 2;
    const T = p.thickness / 2;
    const free1 = this.b1 - (L * abs(l1) + B * abs(b1) + T * abs(t1));
    const free2 = this.b2 - (L * abs(l2) + B * abs(b2) + T * abs(t2));
    const at = (m: number): number =>
      (1 - m) * free1 +
      m * free2 -
      (L * abs((1 - m) * l1 + m * l2) + B * abs((1 - m) * b1 + m * b2) + T * abs((1 - m) * t1 + m * t2));
    let most = max(at(0), at(1));
    if (l1 * l2 < 0) most = max(most, at(l1 / (l1 - l2)));
    if (b1 * b2 < 0) most = max(most, at(b1 / (b1 - b2)));
    if (t1 * t2 < 0) most = max(most, at(t1 / (t1 - t2)));
    return most;
  }

  /** Whether the piece stands nowhere with its axis in this direction, whatever its tilt and lean. */
  private shut(p: PieceSize, yaw: number): boolean {
    const { stack, ceiling } = this;
    const steepest = asin(min(1, ceiling / p.length));
    const reach = sqrt(p.length ** 2 + p.breadth ** 2 + p.thickness ** 2) / 2;
    const round = sqrt(p.breadth ** 2 + p.thickness ** 2) / 2;
    // A tilt and its opposite are mirror images in the plan's horizontal: tilts from 0 up will do.
    stack[0] = steepest / 2;
    stack[1] = Math.PI / 2;
    stack[2] = steepest / 2;
    stack[3] = Math.PI / 2;
    let top = 1;
    for (let cells = 0; top > 0; cells++) {
      if (cells > MOST_CELLS) return false;
      top--;
      const tilt = stack[4 * top]!;
      const lean = stack[4 * top + 1]!;
      const dt = stack[4 * top + 2]!;
      const dl = stack[4 * top + 3]!;
      const height =
        p.length * abs(sin(tilt)) + cos(tilt) * (p.breadth * abs(sin(lean)) + p.thickness * abs(cos(lean)));
      const raise = 2 * (reach * dt + round * dl);
      if (height - raise > ceiling + OUTWARD) continue;
      // Along a level n a tilt moves a corner by no more than its height above the centre; a lean by `round`.
      const along = min(reach, (height + raise) / 2) * dt + round * dl;
      if (this.standing(p, yaw, tilt, lean) + 2 * along + OUTWARD < 0) continue;
      if (4 * (top + 2) > stack.length) return false;
      const first = reach * dt > round * dl;
      for (let side = -1; side <= 1; side += 2) {
        const o = 4 * top++;
        stack[o] = tilt + (first ? (side * dt) / 2 : 0);
        stack[o + 1] = lean + (first ? 0 : (side * dl) / 2);
        stack[o + 2] = first ? dt / 2 : dt;
        stack[o + 3] = first ? dl : dl / 2;
      }
    }
    return true;
  }
}
