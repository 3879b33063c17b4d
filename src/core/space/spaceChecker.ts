import { fillAxesOfTurn } from '../geometry/boxAxes';
import { BoxGaps, STRIDE } from './boxGaps';
import type { SceneBox } from './motion';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, ceil, max, min, sqrt } = Math;

/** Intervals that one move may be cut into before it counts as not shown to be free. */
const MOST_INTERVALS = 768;
/** Numbers an interval takes: position 3 + attitude 4 at both ends. */
const SPAN = 14;
/** The most that one push turns a piece [rad]. */
const MOST_PUSHED = 0.03;
/** The root of 3, rounded up. */
const DIAGONAL = 1.7320509;
/** A place that a round of pushing moves by less is left where it is [mm]. */
const STILL = 0.02;
/** What counts as apart [mm]: above any rounding of numbers up to 20 m (20000 * 2^-52 * a few hundred). */
const APART = 1e-7;

/**
 * A piece among box-shaped obstacles: whether it is free in a place, and whether a whole move is free.
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
export class SpaceChecker extends BoxGaps {
  /** Places looked at since the start: the unit in which searches are bounded. */
  work = 0;
  private readonly middle = new Float64Array(3);
  private readonly m = new Float64Array(9);
  private readonly m0 = new Float64Array(9);
  private readonly m1 = new Float64Array(9);
  /** Made with the first move that is looked at: many a checker only looks at places. */
  private queue = new Float64Array(0);
  private active = new Int32Array(0);
  private readonly words: number;

  constructor(scene: readonly SceneBox[]) {
    super(scene);
    this.words = max(1, ceil(scene.length / 31));
  }

  /** Whether the piece touches nothing with its centre at x[o..o+2] and attitude x[o+3..o+6]. */
  placeFree(x: Float64Array, o: number): boolean {
    this.work++;
    fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
    for (let i = 0; i < this.count; i++) {
      if (this.farther(i, x, o, this.reach)) continue;
      if (this.gap(i, this.m, x, o, APART) <= APART) return false;
    }
    return true;
  }

  /** The least gap [mm] to any obstacle, negative inside one; gaps above `enough` count as `enough`. */
  placeGap(x: Float64Array, o: number, enough: number): number {
    this.work++;
    fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
    let least = enough;
    for (let i = 0; i < this.count; i++) {
      if (this.farther(i, x, o, this.reach + least)) continue;
      const gap = this.gap(i, this.m, x, o, least);
      if (gap < least) least = gap;
    }
    return least;
  }

  /**
   * So much more padding [mm a side] the place bears, at least; no more than `most`, and 0 or less where it bears none.
   * Padding by e takes e (|n.a1| + |n.a2| + |n.a3|) off a gap along n, a the piece's axes: at most e times the root of 3.
   */
  placeRoom(x: Float64Array, o: number, most: number): number {
    this.work++;
    const { m } = this;
    fillAxesOfTurn(m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
    let room = most;
    for (let i = 0; i < this.count && room > 0; i++) {
      const enough = room * DIAGONAL + 2 * APART;
      if (this.farther(i, x, o, this.reach + enough)) continue;
      const gap = this.gap(i, m, x, o, enough);
      if (gap > enough) continue;
      const { nx, ny, nz } = this;
      const taken =
        abs(m[0]! * nx + m[1]! * ny + m[2]! * nz) +
        abs(m[3]! * nx + m[4]! * ny + m[5]! * nz) +
        abs(m[6]! * nx + m[7]! * ny + m[8]! * nz);
      room = min(room, (gap - 2 * APART) / taken);
    }
    return room;
  }

  /** Which obstacle is nearest to the place. */
  nearest(x: Float64Array, o: number): number {
    fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
    let least = Infinity;
    let nearest = -1;
    for (let i = 0; i < this.count; i++) {
      const gap = this.gap(i, this.m, x, o, Infinity);
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
        if (this.farther(i, x, o, this.reach)) continue;
        const gap = this.gap(i, this.m, x, o, APART);
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
    const { before } = this;
    for (let time = 0; time < times; time++) {
      this.work++;
      fillAxesOfTurn(this.m, x[o + 3]!, x[o + 4]!, x[o + 5]!, x[o + 6]!);
      for (let k = 0; k < 7; k++) before[k] = x[o + k]!;
      let moved = false;
      for (let i = 0; i < this.count; i++) {
        if (this.farther(i, x, o, this.reach + margin)) continue;
        const gap = this.gap(i, this.m, x, o, margin);
        if (gap >= margin) continue;
        moved = true;
        this.pushFrom(i, x, o, margin - gap);
      }
      if (!moved || this.stands(x, o)) return;
    }
  }

  /** Whether what pushes a place has come to a balance: a round moved no point of the piece by more than STILL. */
  private stands(x: Float64Array, o: number): boolean {
    const { before } = this;
    let far = 0;
    let turned = 0;
    for (let k = 0; k < 3; k++) far += (x[o + k]! - before[k]!) ** 2;
    for (let k = 3; k < 7; k++) turned += (x[o + k]! - before[k]!) ** 2;
    return far < STILL * STILL && 4 * turned * this.reach * this.reach < STILL * STILL;
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

  private readonly before = new Float64Array(7);
  private readonly lever = new Float64Array(3);
  private readonly halves = new Float64Array(3);
  private readonly apart = new Float64Array(3);

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
    const { halves: half, apart: d } = this;
    half[0] = this.hx;
    half[1] = this.hy;
    half[2] = this.hz;
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

  /**
   * Whether the whole move from place x[a..] to place y[b..] is free; the shorter way round. Nothing is shown of an
   * attitude that is no unit quaternion: how far it is turned could not be told.
   */
  moveFree(x: Float64Array, a: number, y: Float64Array, b: number): boolean {
    if (!isUnit(x, a + 3) || !isUnit(y, b + 3)) return false;
    if (this.queue.length === 0) {
      this.queue = new Float64Array(SPAN * (2 * MOST_INTERVALS + 2));
      this.active = new Int32Array(this.words * (2 * MOST_INTERVALS + 2));
    }
    const { queue, middle } = this;
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
      middle[0] = px;
      middle[1] = py;
      middle[2] = pz;
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
          if (this.farther(i, middle, 0, this.reach + travel)) {
            mask &= ~bit;
            continue;
          }
          const gap = this.gap(i, m, middle, 0, travel);
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
              this.along(i, this.m0, queue, o, nx, ny, nz) > bow &&
              this.along(i, this.m1, queue, o + 7, nx, ny, nz) > bow
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
                queue,
                o,
                side * this.m0[k]!,
                side * this.m0[k + 1]!,
                side * this.m0[k + 2]!,
              ) > bowSeen &&
              this.along(
                i,
                this.m1,
                queue,
                o + 7,
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
}

/** Far above the rounding of a sum of four squares, far below what a turn or a corner of the piece would show. */
const UNIT = 1e-9;

function isUnit(x: Float64Array, o: number): boolean {
  const square = x[o]! ** 2 + x[o + 1]! ** 2 + x[o + 2]! ** 2 + x[o + 3]! ** 2;
  return square > 1 - UNIT && square < 1 + UNIT;
}
