import { fillAxesOfTurn } from '../geometry/boxAxes';
import type { PieceSize } from '../measures/piece';
import type { SceneBox } from './motion';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, sqrt } = Math;

/** Numbers an obstacle takes: centre 3, half sizes 3, axes 9 (row by row: axis 0, axis 1, axis 2). */
export const STRIDE = 15;

/**
 * A box-shaped piece and box-shaped obstacles in one place: how far apart they are along the axes that can part two
 * boxes (15 axes: Gottschalk, Lin & Manocha, SIGGRAPH 1996). The greatest of these gaps is exact in sign and a lower
 * bound of the distance.
 *
 * Holds its working numbers; not to be shared between searches that alternate.
 */
export class BoxGaps {
  /** How many obstacles there are. */
  readonly count: number;
  protected readonly boxes: Float64Array;
  protected readonly radii: Float64Array;
  protected hx = 0;
  protected hy = 0;
  protected hz = 0;
  /** Half the piece's diagonal [mm]. */
  reach = 0;
  /** Best axis of the last gap: 0-2 the piece's, 3-5 the obstacle's, 6.. an edge pair; and its direction. */
  protected axisKind = 0;
  protected nx = 0;
  protected ny = 0;
  protected nz = 0;

  constructor(scene: readonly SceneBox[]) {
    this.count = scene.length;
    this.boxes = new Float64Array(STRIDE * scene.length);
    this.radii = new Float64Array(scene.length);
    const axes = new Float64Array(9);
    scene.forEach((box, i) => {
      const o = i * STRIDE;
      this.boxes.set(box.centre, o);
      this.boxes.set([box.size[0] / 2, box.size[1] / 2, box.size[2] / 2], o + 3);
      fillAxesOfTurn(axes, box.turn[0], box.turn[1], box.turn[2], box.turn[3]);
      this.boxes.set(axes, o + 6);
      this.radii[i] = sqrt(box.size[0] ** 2 + box.size[1] ** 2 + box.size[2] ** 2) / 2;
    });
  }

  /** Takes up a piece (already padded). */
  hold(piece: PieceSize): void {
    this.hx = piece.length / 2;
    this.hy = piece.breadth / 2;
    this.hz = piece.thickness / 2;
    this.reach = sqrt(this.hx ** 2 + this.hy ** 2 + this.hz ** 2);
  }

  /**
   * Whether the point place[at..] is farther than `d` from obstacle i: a quick look before the fifteen axes. Places are
   * handed on in arrays: numbers with fractions would be made anew at every call.
   */
  protected farther(i: number, place: Float64Array, at: number, d: number): boolean {
    const b = this.boxes;
    const o = i * STRIDE;
    const x = place[at]! - b[o]!;
    const y = place[at + 1]! - b[o + 1]!;
    const z = place[at + 2]! - b[o + 2]!;
    let sum = 0;
    let u = abs(x * b[o + 6]! + y * b[o + 7]! + z * b[o + 8]!) - b[o + 3]!;
    if (u > 0) sum += u * u;
    u = abs(x * b[o + 9]! + y * b[o + 10]! + z * b[o + 11]!) - b[o + 4]!;
    if (u > 0) sum += u * u;
    u = abs(x * b[o + 12]! + y * b[o + 13]! + z * b[o + 14]!) - b[o + 5]!;
    if (u > 0) sum += u * u;
    return sum > d * d;
  }

  /** Gap along the unit direction n (towards obstacle i) for the piece at place[at..] with axes `m`. */
  protected along(
    i: number,
    m: Float64Array,
    place: Float64Array,
    at: number,
    nx: number,
    ny: number,
    nz: number,
  ): number {
    const b = this.boxes;
    const o = i * STRIDE;
    return (
      (b[o]! - place[at]!) * nx +
      (b[o + 1]! - place[at + 1]!) * ny +
      (b[o + 2]! - place[at + 2]!) * nz -
      this.hx * abs(m[0]! * nx + m[1]! * ny + m[2]! * nz) -
      this.hy * abs(m[3]! * nx + m[4]! * ny + m[5]! * nz) -
      this.hz * abs(m[6]! * nx + m[7]! * ny + m[8]! * nz) -
      b[o + 3]! * abs(b[o + 6]! * nx + b[o + 7]! * ny + b[o + 8]! * nz) -
      b[o + 4]! * abs(b[o + 9]! * nx + b[o + 10]! * ny + b[o + 11]! * nz) -
      b[o + 5]! * abs(b[o + 12]! * nx + b[o + 13]! * ny + b[o + 14]! * nz)
    );
  }

  /**
   * The greatest gap over the separating axes for the piece at place[at..] with axes `m`, leaving off as soon as one is
   * above `enough`. Sets axisKind and the direction n from the piece towards the obstacle.
   */
  protected gap(i: number, m: Float64Array, place: Float64Array, at: number, enough: number): number {
    const b = this.boxes;
    const o = i * STRIDE;
    const { hx, hy, hz } = this;
    const a00 = m[0]!;
    const a01 = m[1]!;
    const a02 = m[2]!;
    const a10 = m[3]!;
    const a11 = m[4]!;
    const a12 = m[5]!;
    const a20 = m[6]!;
    const a21 = m[7]!;
    const a22 = m[8]!;
    const gx = b[o + 3]!;
    const gy = b[o + 4]!;
    const gz = b[o + 5]!;
    const dx = b[o]! - place[at]!;
    const dy = b[o + 1]! - place[at + 1]!;
    const dz = b[o + 2]! - place[at + 2]!;
    let best = -Infinity;
    let s: number;
    // The obstacle's faces; c_ij = piece axis i . obstacle axis j, worked out as far as it gets.
    const b00 = b[o + 6]!;
    const b01 = b[o + 7]!;
    const b02 = b[o + 8]!;
    const c00 = a00 * b00 + a01 * b01 + a02 * b02;
    const c10 = a10 * b00 + a11 * b01 + a12 * b02;
    const c20 = a20 * b00 + a21 * b01 + a22 * b02;
    const d00 = abs(c00);
    const d10 = abs(c10);
    const d20 = abs(c20);
    const v0 = dx * b00 + dy * b01 + dz * b02;
    s = abs(v0) - gx - (hx * d00 + hy * d10 + hz * d20);
    if (s > best) {
      best = s;
      this.axisKind = 3;
      const f = v0 < 0 ? -1 : 1;
      this.nx = f * b00;
      this.ny = f * b01;
      this.nz = f * b02;
      if (s > enough) return s;
    }
    const b10 = b[o + 9]!;
    const b11 = b[o + 10]!;
    const b12 = b[o + 11]!;
    const c01 = a00 * b10 + a01 * b11 + a02 * b12;
    const c11 = a10 * b10 + a11 * b11 + a12 * b12;
    const c21 = a20 * b10 + a21 * b11 + a22 * b12;
    const d01 = abs(c01);
    const d11 = abs(c11);
    const d21 = abs(c21);
    const v1 = dx * b10 + dy * b11 + dz * b12;
    s = abs(v1) - gy - (hx * d01 + hy * d11 + hz * d21);
    if (s > best) {
      best = s;
      this.axisKind = 4;
      const f = v1 < 0 ? -1 : 1;
      this.nx = f * b10;
      this.ny = f * b11;
      this.nz = f * b12;
      if (s > enough) return s;
    }
    const b20 = b[o + 12]!;
    const b21 = b[o + 13]!;
    const b22 = b[o + 14]!;
    const c02 = a00 * b20 + a01 * b21 + a02 * b22;
    const c12 = a10 * b20 + a11 * b21 + a12 * b22;
    const c22 = a20 * b20 + a21 * b21 + a22 * b22;
    const d02 = abs(c02);
    const d12 = abs(c12);
    const d22 = abs(c22);
    const v2 = dx * b20 + dy * b21 + dz * b22;
    s = abs(v2) - gz - (hx * d02 + hy * d12 + hz * d22);
    if (s > best) {
      best = s;
      this.axisKind = 5;
      const f = v2 < 0 ? -1 : 1;
      this.nx = f * b20;
      this.ny = f * b21;
      this.nz = f * b22;
      if (s > enough) return s;
    }
    // The piece's faces, the broad one first.
    const u2 = dx * a20 + dy * a21 + dz * a22;
    s = abs(u2) - hz - (gx * d20 + gy * d21 + gz * d22);
    if (s > best) {
      best = s;
      this.axisKind = 2;
      const f = u2 < 0 ? -1 : 1;
      this.nx = f * a20;
      this.ny = f * a21;
      this.nz = f * a22;
      if (s > enough) return s;
    }
    const u1 = dx * a10 + dy * a11 + dz * a12;
    s = abs(u1) - hy - (gx * d10 + gy * d11 + gz * d12);
    if (s > best) {
      best = s;
      this.axisKind = 1;
      const f = u1 < 0 ? -1 : 1;
      this.nx = f * a10;
      this.ny = f * a11;
      this.nz = f * a12;
      if (s > enough) return s;
    }
    const u0 = dx * a00 + dy * a01 + dz * a02;
    s = abs(u0) - hx - (gx * d00 + gy * d01 + gz * d02);
    if (s > best) {
      best = s;
      this.axisKind = 0;
      const f = u0 < 0 ? -1 : 1;
      this.nx = f * a00;
      this.ny = f * a01;
      this.nz = f * a02;
      if (s > enough) return s;
    }
    // Pairs of edges. t . (a_i x b_j) from the components above (Gottschalk et al., eq. for L = A_i x B_j). The
    // root only makes the number larger in size, so a negative one below the best is left as it is.
    let pair = -1;
    let l: number;
    s = abs(u2 * c10 - u1 * c20) - (hy * d20 + hz * d10 + gy * d02 + gz * d01);
    if (s > best || s > 0) {
      l = 1 - d00 * d00;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 0;
      }
    }
    s = abs(u2 * c11 - u1 * c21) - (hy * d21 + hz * d11 + gx * d02 + gz * d00);
    if (s > best || s > 0) {
      l = 1 - d01 * d01;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 1;
      }
    }
    s = abs(u2 * c12 - u1 * c22) - (hy * d22 + hz * d12 + gx * d01 + gy * d00);
    if (s > best || s > 0) {
      l = 1 - d02 * d02;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 2;
      }
    }
    s = abs(u0 * c20 - u2 * c00) - (hx * d20 + hz * d00 + gy * d12 + gz * d11);
    if (s > best || s > 0) {
      l = 1 - d10 * d10;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 3;
      }
    }
    s = abs(u0 * c21 - u2 * c01) - (hx * d21 + hz * d01 + gx * d12 + gz * d10);
    if (s > best || s > 0) {
      l = 1 - d11 * d11;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 4;
      }
    }
    s = abs(u0 * c22 - u2 * c02) - (hx * d22 + hz * d02 + gx * d11 + gy * d10);
    if (s > best || s > 0) {
      l = 1 - d12 * d12;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 5;
      }
    }
    s = abs(u1 * c00 - u0 * c10) - (hx * d10 + hy * d00 + gy * d22 + gz * d21);
    if (s > best || s > 0) {
      l = 1 - d20 * d20;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 6;
      }
    }
    s = abs(u1 * c01 - u0 * c11) - (hx * d11 + hy * d01 + gx * d22 + gz * d20);
    if (s > best || s > 0) {
      l = 1 - d21 * d21;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 7;
      }
    }
    s = abs(u1 * c02 - u0 * c12) - (hx * d12 + hy * d02 + gx * d21 + gy * d20);
    if (s > best || s > 0) {
      l = 1 - d22 * d22;
      if (l > 1e-10 && (s /= sqrt(l)) > best) {
        best = s;
        pair = 8;
      }
    }
    if (pair >= 0) {
      const ai = ((pair / 3) | 0) * 3;
      const bj = o + 6 + (pair % 3) * 3;
      let x = m[ai + 1]! * b[bj + 2]! - m[ai + 2]! * b[bj + 1]!;
      let y = m[ai + 2]! * b[bj]! - m[ai]! * b[bj + 2]!;
      let z = m[ai]! * b[bj + 1]! - m[ai + 1]! * b[bj]!;
      let f = 1 / sqrt(x * x + y * y + z * z);
      if (x * dx + y * dy + z * dz < 0) f = -f;
      x *= f;
      y *= f;
      z *= f;
      this.axisKind = 6 + pair;
      this.nx = x;
      this.ny = y;
      this.nz = z;
    }
    return best;
  }
}
