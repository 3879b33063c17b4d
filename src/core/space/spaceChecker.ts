import { fillAxesOfTurn } from '../geometry/boxAxes';
import type { PieceSize } from '../measures/piece';
import type { SceneBox } from './motion';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, ceil, max, min, sqrt } = Math;

/** Numbers an obstacle takes: centre 3, half sizes 3, axes 9 (row by row: axis 0, axis 1, axis 2). */
const STRIDE = 15;
/** Intervals that one move may be cut into before it counts as not shown to be free. */
const MOST_INTERVALS = 768;
/** Numbers an interval takes: position 3 + attitude 4 at both ends. */
const SPAN = 14;
/** The most that one push turns a piece [rad]. */
const MOST_PUSHED = 0.03;
/** What counts as apart [mm]: above any rounding of numbers up to 20 m (20000 * 2^-52 * a few hundred). */
const APART = 1e-7;

/**
 * A piece among box-shaped obstacles: how far apart in one place, and whether a whole move is free.
 *
 * Apart: the separating-axis test of two boxes (15 axes: Gottschalk, Lin & Manocha, SIGGRAPH 1996). Its gap
 * is exact in sign and a lower bound of the distance.
 *
 * A move (position in a line, attitude about one axis at an even rate) is cut in halves until each part is
 * shown free from each obstacle in one of three ways:
 * - at its middle the gap is more than any point of the piece can travel to either end;
 * - along a direction fixed in the room: a corner's height is a sinusoid there, which leaves its chord by at
 *   most r theta^2 / 8, so a gap above that at both ends stays open between them;
 * - along a face's direction, fixed in the piece: the same with the second derivative
 *   theta^2 rho + 2 theta v of an obstacle's corner as the piece sees it.
 * So "free" is shown for every place on the way, not for samples. Halving needs no sine or cosine, only
 * roots, so the answer is the same on every machine.
 *
 * Holds its working numbers; not to be shared between searches that alternate.
 */
export class SpaceChecker {
  /** Places looked at since the start: the unit in which searches are bounded. */
  work = 0;
  readonly count: number;
  private readonly boxes: Float64Array;
  private readonly radii: Float64Array;
  private hx = 0;
  private hy = 0;
  private hz = 0;
  /** Half the piece's diagonal [mm]. */
  reach = 0;
  private readonly m = new Float64Array(9);
  private readonly m0 = new Float64Array(9);
  private readonly m1 = new Float64Array(9);
  private readonly queue = new Float64Array(SPAN * (2 * MOST_INTERVALS + 2));
  private readonly active: Int32Array;
  private readonly words: number;
  /** Best axis of the last gap: 0-2 the piece's, 3-5 the obstacle's, 6.. an edge pair; and its direction. */
  private axisKind = 0;
  private nx = 0;
  private ny = 0;
  private nz = 0;

  constructor(scene: readonly SceneBox[]) {
    this.count = scene.length;
    this.boxes = new Float64Array(STRIDE * scene.length);
    this.radii = new Float64Array(scene.length);
    this.words = max(1, ceil(scene.length / 31));
    this.active = new Int32Array(this.words * (2 * MOST_INTERVALS + 2));
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

  /** Whether the piece touches nothing with its centre at x[o..o+2] and attitude x[o+3..o+6]. */
  placeFree(x: Float64Array, o: number): boolean {
    this.work++;
    fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
    for (let i = 0; i < this.count; i++) {
      if (this.farther(i, x[o]!, x[o + 1]!, x[o + 2]!, this.reach)) continue;
      if (this.gap(i, this.m, x[o]!, x[o + 1]!, x[o + 2]!, APART) <= APART) return false;
    }
    return true;
  }

  /** The least gap [mm] to any obstacle, negative inside one; gaps above `enough` count as `enough`. */
  placeGap(x: Float64Array, o: number, enough: number): number {
    this.work++;
    fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
    let least = enough;
    for (let i = 0; i < this.count; i++) {
      if (this.farther(i, x[o]!, x[o + 1]!, x[o + 2]!, this.reach + least)) continue;
      const gap = this.gap(i, this.m, x[o]!, x[o + 1]!, x[o + 2]!, least);
      if (gap < least) least = gap;
    }
    return least;
  }

  /** Which obstacle is nearest to the place. */
  nearest(x: Float64Array, o: number): number {
    fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
    let least = Infinity;
    let nearest = -1;
    for (let i = 0; i < this.count; i++) {
      const gap = this.gap(i, this.m, x[o]!, x[o + 1]!, x[o + 2]!, Infinity);
      if (gap < least) {
        least = gap;
        nearest = i;
      }
    }
    return nearest;
  }

  /**
   * Pushes the place x[o..] out of what it stands in, the shortest way out of each obstacle in turn, at most
   * `times` rounds; true when it is then free.
   */
  pushOut(x: Float64Array, o: number, times: number, over: number): boolean {
    fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
    for (let time = 0; time <= times; time++) {
      this.work++;
      let stuck = false;
      for (let i = 0; i < this.count; i++) {
        if (this.farther(i, x[o]!, x[o + 1]!, x[o + 2]!, this.reach)) continue;
        const gap = this.gap(i, this.m, x[o]!, x[o + 1]!, x[o + 2]!, APART);
        if (gap > APART) continue;
        stuck = true;
        const push = over - gap;
        x[o]! -= this.nx * push;
        x[o + 1]! -= this.ny * push;
        x[o + 2]! -= this.nz * push;
      }
      if (!stuck) return true;
    }
    return false;
  }

  /**
   * Moves and turns the place x[o..] away from what is nearer than `margin` [mm], at most `times` rounds. Each
   * obstacle pushes where it is nearest: the piece moves against the direction n towards it, and turns about its
   * centre as that push, on the lever r, asks: by lambda n and lambda (r x n)/rho^2 with
   * lambda = (margin - gap)/(1 + |r x n|^2/rho^2), rho half the piece's diagonal. Depends on nothing but the place.
   */
  pushApart(x: Float64Array, o: number, times: number, margin: number): void {
    for (let time = 0; time < times; time++) {
      this.work++;
      fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
      let moved = false;
      for (let i = 0; i < this.count; i++) {
        if (this.farther(i, x[o]!, x[o + 1]!, x[o + 2]!, this.reach + margin)) continue;
        const gap = this.gap(i, this.m, x[o]!, x[o + 1]!, x[o + 2]!, margin);
        if (gap >= margin) continue;
        moved = true;
        this.pushFrom(i, x, o, margin - gap);
      }
      if (!moved) return;
    }
  }

  /** One push away from obstacle i, whose gap was looked at last. */
  private pushFrom(i: number, x: Float64Array, o: number, push: number): void {
    const { m, nx, ny, nz, axisKind: kind, reach } = this;
    this.fillLever(i, x, o, kind);
    const r = this.lever;
    const tx = r[1]! * nz - r[2]! * ny;
    const ty = r[2]! * nx - r[0]! * nz;
    const tz = r[0]! * ny - r[1]! * nx;
    const reach2 = reach * reach;
    const torque2 = tx * tx + ty * ty + tz * tz;
    const lambda = push / (1 + torque2 / reach2);
    x[o]! -= nx * lambda;
    x[o + 1]! -= ny * lambda;
    x[o + 2]! -= nz * lambda;
    let turn = lambda / reach2;
    const angle = turn * sqrt(torque2);
    if (angle < 1e-12) return;
    if (angle > MOST_PUSHED) turn *= MOST_PUSHED / angle;
    // (1, -w/2) q: a small turn in the room.
    const a = (-tx * turn) / 2;
    const b = (-ty * turn) / 2;
    const c = (-tz * turn) / 2;
    const w = x[o + 3]!;
    const p = x[o + 4]!;
    const q = x[o + 5]!;
    const s = x[o + 6]!;
    const w1 = w - a * p - b * q - c * s;
    const p1 = p + a * w + b * s - c * q;
    const q1 = q + b * w + c * p - a * s;
    const s1 = s + c * w + a * q - b * p;
    const n = sqrt(w1 * w1 + p1 * p1 + q1 * q1 + s1 * s1);
    x[o + 3] = w1 / n;
    x[o + 4] = p1 / n;
    x[o + 5] = q1 / n;
    x[o + 6] = s1 / n;
    fillAxesOfTurn(m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
  }

  private readonly lever = new Float64Array(3);

  /** Where the piece is nearest to obstacle i, from its centre, by the axis that parts them. */
  private fillLever(i: number, x: Float64Array, o: number, kind: number): void {
    const { m, nx, ny, nz, lever: r, boxes: b } = this;
    const bo = i * STRIDE;
    if (kind >= 0 && kind < 3) {
      // A face of the piece: the obstacle's corner before it, no farther off than the piece reaches.
      for (let k = 0; k < 3; k++) r[k] = b[bo + k]! - x[o + k]!;
      for (let k = 0; k < 3; k++) {
        const at = bo + 6 + 3 * k;
        const towards = nx * b[at]! + ny * b[at + 1]! + nz * b[at + 2]!;
        const half = towards > 0 ? -b[bo + 3 + k]! : b[bo + 3 + k]!;
        for (let j = 0; j < 3; j++) r[j]! += half * b[at + j]!;
      }
      const far = sqrt(r[0]! ** 2 + r[1]! ** 2 + r[2]! ** 2);
      if (far > this.reach) for (let j = 0; j < 3; j++) r[j]! *= this.reach / far;
      return;
    }
    // The piece's corner before the obstacle.
    const half = [this.hx, this.hy, this.hz] as const;
    r[0] = r[1] = r[2] = 0;
    for (let k = 0; k < 3; k++) {
      const towards = nx * m[3 * k]! + ny * m[3 * k + 1]! + nz * m[3 * k + 2]!;
      const h = towards < 0 ? -half[k]! : half[k]!;
      for (let j = 0; j < 3; j++) r[j]! += h * m[3 * k + j]!;
    }
    if (kind < 6) return;
    // An edge of each: the point of the piece's edge nearest to the line of the obstacle's.
    const e = ((kind - 6) / 3) | 0;
    const f = (kind - 6) % 3;
    const towards = nx * m[3 * e]! + ny * m[3 * e + 1]! + nz * m[3 * e + 2]!;
    const own = towards < 0 ? -half[e]! : half[e]!;
    for (let j = 0; j < 3; j++) r[j]! -= own * m[3 * e + j]!;
    const d = [0, 0, 0];
    for (let j = 0; j < 3; j++) d[j] = b[bo + j]! - x[o + j]! - r[j]!;
    for (let k = 0; k < 3; k++) {
      if (k === f) continue;
      const at = bo + 6 + 3 * k;
      const side = nx * b[at]! + ny * b[at + 1]! + nz * b[at + 2]! > 0 ? -b[bo + 3 + k]! : b[bo + 3 + k]!;
      for (let j = 0; j < 3; j++) d[j]! += side * b[at + j]!;
    }
    const bf = bo + 6 + 3 * f;
    const along = m[3 * e]! * b[bf]! + m[3 * e + 1]! * b[bf + 1]! + m[3 * e + 2]! * b[bf + 2]!;
    const byOwn = d[0]! * m[3 * e]! + d[1]! * m[3 * e + 1]! + d[2]! * m[3 * e + 2]!;
    const byOther = d[0]! * b[bf]! + d[1]! * b[bf + 1]! + d[2]! * b[bf + 2]!;
    const square = 1 - along * along;
    const s = square < 1e-10 ? 0 : (byOwn - along * byOther) / square;
    const kept = max(-half[e]!, min(half[e]!, s));
    for (let j = 0; j < 3; j++) r[j]! += kept * m[3 * e + j]!;
  }

  /** Whether the whole move from place x[a..] to place y[b..] is free; the shorter way round. */
  moveFree(x: Float64Array, a: number, y: Float64Array, b: number): boolean {
    const queue = this.queue;
    const dot = x[a + 3]! * y[b + 3]! + x[a + 4]! * y[b + 4]! + x[a + 5]! * y[b + 5]! + x[a + 6]! * y[b + 6]!;
    const sign = dot < 0 ? -1 : 1;
    for (let k = 0; k < 7; k++) {
      queue[k] = x[a + k]!;
      queue[7 + k] = k < 3 ? y[b + k]! : y[b + k]! * sign;
    }
    const words = this.words;
    for (let w = 0; w < words; w++) this.active[w] = 0x7fffffff;
    let head = 0;
    let tail = 1;
    while (head < tail) {
      if (head >= MOST_INTERVALS) return false;
      const o = head * SPAN;
      const aw = head * words;
      head++;
      this.work++;
      const dx = (queue[o + 7]! - queue[o]!) / 2;
      const dy = (queue[o + 8]! - queue[o + 1]!) / 2;
      const dz = (queue[o + 9]! - queue[o + 2]!) / 2;
      const px = queue[o]! + dx;
      const py = queue[o + 1]! + dy;
      const pz = queue[o + 2]! + dz;
      let qw = queue[o + 3]! + queue[o + 10]!;
      let qx = queue[o + 4]! + queue[o + 11]!;
      let qy = queue[o + 5]! + queue[o + 12]!;
      let qz = queue[o + 6]! + queue[o + 13]!;
      const norm = sqrt(qw * qw + qx * qx + qy * qy + qz * qz);
      qw /= norm;
      qx /= norm;
      qy /= norm;
      qz /= norm;
      // Angle: |q0 + q1| = 2 cos(theta/4), so tan(theta/4) >= theta/4 gives a bound from above without trigonometry.
      const cosine = min(1, norm / 2);
      const theta = cosine >= 1 ? 0 : (4 * sqrt(1 - cosine * cosine)) / cosine + 1e-7; // 1e-7: 1 - c^2 has lost its digits below that
      const half = sqrt(dx * dx + dy * dy + dz * dz);
      const travel = half + (this.reach * theta) / 2 + APART;
      const bow = (this.reach * theta * theta) / 8 + APART;
      const m = this.m;
      fillAxesOfTurn(m, qw, qx, qy, qz);
      let endsFilled = false;
      let open = false;
      for (let w = 0; w < words; w++) {
        let mask = this.active[aw + w]!;
        const first = w * 31;
        const last = min(this.count, first + 31);
        for (let i = first; i < last; i++) {
          const bit = 1 << (i - first);
          if ((mask & bit) === 0) continue;
          if (this.farther(i, px, py, pz, this.reach + travel)) {
            mask &= ~bit;
            continue;
          }
          const gap = this.gap(i, m, px, py, pz, travel);
          if (gap > travel) {
            mask &= ~bit;
            continue;
          }
          if (gap <= APART) return false;
          if (!endsFilled) {
            fillAxesOfTurn(this.m0, queue[o + 3]!, queue[o + 4]!, queue[o + 5]!, queue[o + 6]!);
            fillAxesOfTurn(this.m1, queue[o + 10]!, queue[o + 11]!, queue[o + 12]!, queue[o + 13]!);
            endsFilled = true;
          }
          const kind = this.axisKind;
          if (kind >= 3) {
            const nx = this.nx;
            const ny = this.ny;
            const nz = this.nz;
            if (
              this.along(i, this.m0, queue[o]!, queue[o + 1]!, queue[o + 2]!, nx, ny, nz) > bow &&
              this.along(i, this.m1, queue[o + 7]!, queue[o + 8]!, queue[o + 9]!, nx, ny, nz) > bow
            ) {
              mask &= ~bit;
              continue;
            }
          } else {
            const k = kind * 3;
            // The side is that of the middle: sign of n against the piece's own axis there.
            const side = this.nx * m[k]! + this.ny * m[k + 1]! + this.nz * m[k + 2]! < 0 ? -1 : 1;
            const bo = i * STRIDE;
            const rho =
              sqrt(
                (this.boxes[bo]! - px) ** 2 +
                  (this.boxes[bo + 1]! - py) ** 2 +
                  (this.boxes[bo + 2]! - pz) ** 2,
              ) +
              this.radii[i]! +
              half;
            const bowSeen = (theta * theta * rho + 4 * theta * half) / 8 + APART;
            if (
              gap > bowSeen / 4 &&
              this.along(
                i,
                this.m0,
                queue[o]!,
                queue[o + 1]!,
                queue[o + 2]!,
                side * this.m0[k]!,
                side * this.m0[k + 1]!,
                side * this.m0[k + 2]!,
              ) > bowSeen &&
              this.along(
                i,
                this.m1,
                queue[o + 7]!,
                queue[o + 8]!,
                queue[o + 9]!,
                side * this.m1[k]!,
                side * this.m1[k + 1]!,
                side * this.m1[k + 2]!,
              ) > bowSeen
            ) {
              mask &= ~bit;
              continue;
            }
          }
          open = true;
        }
        this.active[aw + w] = mask;
      }
      if (!open) continue;
      if (tail + 2 > 2 * MOST_INTERVALS) return false;
      for (let child = 0; child < 2; child++) {
        const c = (tail + child) * SPAN;
        for (let k = 0; k < SPAN; k++) queue[c + k] = queue[o + k]!;
        const e = child === 0 ? c + 7 : c;
        queue[e] = px;
        queue[e + 1] = py;
        queue[e + 2] = pz;
        queue[e + 3] = qw;
        queue[e + 4] = qx;
        queue[e + 5] = qy;
        queue[e + 6] = qz;
        for (let w = 0; w < words; w++) this.active[(tail + child) * words + w] = this.active[aw + w]!;
      }
      tail += 2;
    }
    return true;
  }

  /** Whether a point is farther than `d` from obstacle i: a quick look before the fifteen axes. */
  private farther(i: number, px: number, py: number, pz: number, d: number): boolean {
    const b = this.boxes;
    const o = i * STRIDE;
    const x = px - b[o]!;
    const y = py - b[o + 1]!;
    const z = pz - b[o + 2]!;
    let sum = 0;
    let u = abs(x * b[o + 6]! + y * b[o + 7]! + z * b[o + 8]!) - b[o + 3]!;
    if (u > 0) sum += u * u;
    u = abs(x * b[o + 9]! + y * b[o + 10]! + z * b[o + 11]!) - b[o + 4]!;
    if (u > 0) sum += u * u;
    u = abs(x * b[o + 12]! + y * b[o + 13]! + z * b[o + 14]!) - b[o + 5]!;
    if (u > 0) sum += u * u;
    return sum > d * d;
  }

  /** Gap along the unit direction n (towards obstacle i) for the piece at p with axes `m`. */
  private along(
    i: number,
    m: Float64Array,
    px: number,
    py: number,
    pz: number,
    nx: number,
    ny: number,
    nz: number,
  ): number {
    const b = this.boxes;
    const o = i * STRIDE;
    return (
      (b[o]! - px) * nx +
      (b[o + 1]! - py) * ny +
      (b[o + 2]! - pz) * nz -
      this.hx * abs(m[0]! * nx + m[1]! * ny + m[2]! * nz) -
      this.hy * abs(m[3]! * nx + m[4]! * ny + m[5]! * nz) -
      this.hz * abs(m[6]! * nx + m[7]! * ny + m[8]! * nz) -
      b[o + 3]! * abs(b[o + 6]! * nx + b[o + 7]! * ny + b[o + 8]! * nz) -
      b[o + 4]! * abs(b[o + 9]! * nx + b[o + 10]! * ny + b[o + 11]! * nz) -
      b[o + 5]! * abs(b[o + 12]! * nx + b[o + 13]! * ny + b[o + 14]! * nz)
    );
  }

  /**
   * The greatest gap over the separating axes, leaving off as soon as one is above `enough`. Sets axisKind and
   * the direction n from the piece towards the obstacle.
   */
  private gap(i: number, m: Float64Array, px: number, py: number, pz: number, enough: number): number {
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
    const b00 = b[o + 6]!;
    const b01 = b[o + 7]!;
    const b02 = b[o + 8]!;
    const b10 = b[o + 9]!;
    const b11 = b[o + 10]!;
    const b12 = b[o + 11]!;
    const b20 = b[o + 12]!;
    const b21 = b[o + 13]!;
    const b22 = b[o + 14]!;
    const dx = b[o]! - px;
    const dy = b[o + 1]! - py;
    const dz = b[o + 2]! - pz;
    // c_ij = piece axis i . obstacle axis j
    const c00 = a00 * b00 + a01 * b01 + a02 * b02;
    const c01 = a00 * b10 + a01 * b11 + a02 * b12;
    const c02 = a00 * b20 + a01 * b21 + a02 * b22;
    const c10 = a10 * b00 + a11 * b01 + a12 * b02;
    const c11 = a10 * b10 + a11 * b11 + a12 * b12;
    const c12 = a10 * b20 + a11 * b21 + a12 * b22;
    const c20 = a20 * b00 + a21 * b01 + a22 * b02;
    const c21 = a20 * b10 + a21 * b11 + a22 * b12;
    const c22 = a20 * b20 + a21 * b21 + a22 * b22;
    const d00 = abs(c00);
    const d01 = abs(c01);
    const d02 = abs(c02);
    const d10 = abs(c10);
    const d11 = abs(c11);
    const d12 = abs(c12);
    const d20 = abs(c20);
    const d21 = abs(c21);
    const d22 = abs(c22);
    let best = -Infinity;
    let s: number;
    // The obstacle's faces.
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
