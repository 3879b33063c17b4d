import { fillAxesOfYawTiltLean } from '../boxAxes';
import type { PieceSize } from '../../measures/piece';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, cos, max, min, sin, sqrt } = Math;

type Point = readonly [number, number];

/** A straight wall in plan: everything lies at n . p <= `at` [mm]; n of length 1, pointing into the wall. */
export interface PlanWall {
  readonly n: Point;
  readonly at: number;
}

/**
 * A convex upright solid with an edge at `edge` that a convex figure in plan stays clear of only when some line
 * through the edge, square to (1 - m) `from` + m `to` for an m of 0 to 1, parts them (both of length 1, pointing into it).
 */
export interface PlanEdge {
  readonly edge: Point;
  readonly from: Point;
  readonly to: Point;
}

/** Where a point may be in height over a level rectangle of the plan: never less than is free [mm]. */
export interface FreeHeight {
  /** Lowest over x0..x1, y0..y1. */
  readonly lowest: (x0: number, x1: number, y0: number, y1: number) => number;
  /** Highest over x0..x1, y0..y1. */
  readonly highest: (x0: number, x1: number, y0: number, y1: number) => number;
}

/** A place between upright walls, with a floor and a ceiling. */
export interface CutScene {
  readonly walls: readonly PlanWall[];
  /** Convex solids by their edges: a figure is clear of a solid where a line through one of its edges parts them. */
  readonly solids: readonly (readonly PlanEdge[])[];
  /** One height all over, or what is free at each place. */
  readonly free: number | FreeHeight;
  /** What is open in the upright plane of the cuts, where all lie in one. */
  readonly section?: OpenSection;
  /** What is open in other upright planes; only where `free` tells of each place. */
  readonly openings?: readonly Opening[];
}

/** An upright plane n . p = at, n of length 1 in plan: what of a piece is in it is nowhere lower and nowhere higher [mm]. */
export interface Opening {
  readonly n: Point;
  readonly at: number;
  readonly lowest: number;
  readonly highest: number;
}

/** An upright plane, square to n of length 1 in plan, and the height that is open in it, the same all along a cut [mm]. */
export interface OpenSection {
  readonly n: Point;
  readonly height: number;
}

/** A segment in plan. */
export type Cut = readonly [Point, Point];

/** Added where a proof must exceed [mm]: above any rounding here. */
const OUTWARD = 1e-6;
/** Cells that may wait at once. */
const STACK = 1024;
/** Numbers that a cell takes. */
const FIELDS = 9;
/** Half a turn, after which a box looks alike. */
const TURN = Math.PI;

/** Leans that are looked at before all [rad]: on edge and flat. */
const LIKELY_LEANS = [TURN / 2, 0] as const;
/** Yaws that are looked at before all, in half a turn [count]. */
const LIKELY_YAWS = 4;
/** Tilts that are looked at before all, up to a right angle [count]. */
const LIKELY_TILTS = 18;
/** Places of the cut that are looked at before all, in its length. */
const LIKELY_PLACES = [1, 0.5] as const;

/** `stands nowhere` is a proof; `stands`: an attitude is known in which it stands; `open`: neither. */
export type CutOutcome = 'stands nowhere' | 'stands' | 'open';

/**
 * Whether a box can have its centre on a cut, in any attitude.
 *
 * Attitudes are yaw, tilt and lean of the box; a cell is a range of each and a part of the cut. Turned from the
 * middle of the cell to anywhere in it, no point of the box moves about the centre by more than `shift` in plan or
 * `lift` in height, so neither does a half-width h(n) of its shadow. It stands nowhere in the cell when, with
 * everything relaxed by that much, no place c of the cut allows it:
 * - the walls leave a part of the cut, n . c + h(n) <= at (the shadow is the same on both sides of c);
 * - on that part a line through an edge has to part the shadow from the solid: for some m,
 *   n(m) . (edge - c) >= h(n(m)). The greatest left side less right side is convex along the cut, so an end of the
 *   part has it; in m it is concave and in straight pieces, so the ends and the kinks have it;
 * - every corner of the box lies above the floor and under the ceiling, the centre at one height for all. This is
 *   looked at over the whole part;
 * - what of the box is in an upright plane s from the centre is above what is below there and under what is above: the
 *   lowest of it lies at the greatest over l of l s - h(l n - up) from the centre;
 * - the section of the box by the cut's own upright plane, which is the same above the centre and below, is no higher
 *   than what is open there: half of it is the least over l of h(up + l n), h the box's half-width in space.
 * The cells are halved until each is shut, one is found in which the box stands, or the work is used up.
 * @source own derivation
 */
export class CentreOnCut {
  private readonly stack = new Float64Array(FIELDS * STACK);
  private readonly axes = new Float64Array(9);
  private readonly px = new Float64Array(3);
  private readonly py = new Float64Array(3);
  private readonly pz = new Float64Array(3);
  /** Part of the cut that the walls leave. */
  private k0 = 0;
  private k1 = 1;
  /** Cells looked at in the last run. */
  looked = 0;
  private readonly level: number | undefined;
  private readonly profile: FreeHeight | undefined;

  constructor(private readonly scene: CutScene) {
    if (typeof scene.free === 'number') this.level = scene.free;
    else this.profile = scene.free;
  }

  /** @param cells how many cells may be looked at: about a third of a microsecond each */
  decide(cut: Cut, piece: PieceSize, cells: number): CutOutcome {
    const { stack, profile } = this;
    const { length: L, breadth: B, thickness: T } = piece;
    const reach = sqrt(L * L + B * B + T * T) / 2;
    const round = sqrt(B * B + T * T) / 2;
    const along = sqrt((cut[1][0] - cut[0][0]) ** 2 + (cut[1][1] - cut[0][1]) ** 2) / 2;
    // Upside down a box shows the same plan: under a level ceiling the half of the directions will do.
    const turn = profile === undefined ? TURN : 2 * TURN;
    // Near upright a yaw and a lean undo each other: from 45 degrees up the first of a cell is their sum instead.
    const eighth = TURN / 8;
    stack.set([turn / 2, eighth, TURN / 2, 0.5, turn / 2, eighth, TURN / 2, 0.5, 0]);
    stack.set([turn / 2, 3 * eighth, TURN / 2, 0.5, turn / 2, eighth, TURN / 2, 0.5, 1], FIELDS);
    let top = 2;
    this.looked = 0;
    while (top > 0) {
      if (++this.looked > cells || top + 2 > STACK) return 'open';
      const o = FIELDS * --top;
      const way = stack[o]!;
      const tilt = stack[o + 1]!;
      const lean = stack[o + 2]!;
      const place = stack[o + 3]!;
      const dy = stack[o + 4]!;
      const dt = stack[o + 5]!;
      const dl = stack[o + 6]!;
      const dk = stack[o + 7]!;
      const steep = stack[o + 8]!;
      this.turnTo(piece, steep === 1 ? way - lean : way, tilt, lean);
      const high = abs(this.pz[0]!) + abs(this.pz[1]!) + abs(this.pz[2]!);
      const flattest = max(0, tilt - dt);
      const aside = min(reach, (L / 2) * cos(flattest) + round);
      // Leaning turns it about its length; where it is steep, back about the plumb line as well.
      const rolled = steep === 1 ? min(round + aside, 2 * sin((TURN / 2 - flattest) / 2) * reach) : round;
      const raise = aside * dt + round * cos(flattest) * dl;
      const shift = aside * dy + min(reach, high + raise) * dt + rolled * dl;
      if (!this.possible(cut, place, dk, shift, raise, high)) continue;
      if (this.possible(cut, place, profile === undefined ? dk : 0, 0, 0, high)) return 'stands';
      // The part that moves it most is halved.
      const byYaw = aside * dy;
      const byTilt = reach * dt;
      const byLean = rolled * dl;
      const byPlace = profile === undefined ? 0 : along * dk;
      const most = max(byYaw, byTilt, byLean, byPlace);
      const which = most === byPlace ? 3 : most === byYaw ? 0 : most === byTilt ? 1 : 2;
      for (let side = -1; side <= 1; side += 2) {
        const n = FIELDS * top++;
        stack[n] = way;
        stack[n + 1] = tilt;
        stack[n + 2] = lean;
        stack[n + 3] = place;
        stack[n + 4] = dy;
        stack[n + 5] = dt;
        stack[n + 6] = dl;
        stack[n + 7] = dk;
        stack[n + 8] = steep;
        stack[n + 4 + which]! /= 2;
        stack[n + which]! += side * stack[n + 4 + which]!;
      }
    }
    return 'stands nowhere';
  }

  /**
   * Whether the box stands in an attitude in which pieces mostly do: square to the walls or turned by parts of a right
   * angle, with two of its sides or on edge, at tilts from level to upright. Far fewer are looked at than cells.
   */
  standsAsMostly(cut: Cut, piece: PieceSize): boolean {
    const yaws = this.profile === undefined ? LIKELY_YAWS : 2 * LIKELY_YAWS;
    for (const lean of LIKELY_LEANS) {
      for (let y = 0; y < yaws; y++) {
        for (let t = 0; t <= LIKELY_TILTS; t++) {
          this.turnTo(piece, (TURN * y) / LIKELY_YAWS, ((TURN / 2) * t) / LIKELY_TILTS, lean);
          const high = abs(this.pz[0]!) + abs(this.pz[1]!) + abs(this.pz[2]!);
          for (const place of LIKELY_PLACES) if (this.possible(cut, place, 0, 0, 0, high)) return true;
        }
      }
    }
    return false;
  }

  /** Half the piece's edges as they lie, in px, py, pz. */
  private turnTo(piece: PieceSize, yaw: number, tilt: number, lean: number): void {
    const { axes, px, py, pz } = this;
    const L = piece.length / 2;
    const B = piece.breadth / 2;
    const T = piece.thickness / 2;
    fillAxesOfYawTiltLean(axes, yaw, tilt, lean);
    px[0] = L * axes[0]!;
    py[0] = L * axes[1]!;
    pz[0] = L * axes[2]!;
    px[1] = B * axes[3]!;
    py[1] = B * axes[4]!;
    pz[1] = B * axes[5]!;
    px[2] = T * axes[6]!;
    py[2] = T * axes[7]!;
    pz[2] = T * axes[8]!;
  }

  private width(nx: number, ny: number): number {
    const { px, py } = this;
    return abs(px[0]! * nx + py[0]! * ny) + abs(px[1]! * nx + py[1]! * ny) + abs(px[2]! * nx + py[2]! * ny);
  }

  /** Whether the conditions, relaxed by `shift` in plan and `lift` in height, leave a place of this part of the cut. */
  private possible(cut: Cut, place: number, dk: number, shift: number, raise: number, high: number): boolean {
    const { level } = this;
    if (level !== undefined && 2 * (high - raise) > level + OUTWARD) return false;
    if (!this.betweenWalls(cut, place - dk, place + dk, shift + OUTWARD)) return false;
    if (!this.clearOfSolids(cut, shift + OUTWARD)) return false;
    if (this.scene.section && !this.inSection(this.scene.section, shift + OUTWARD, raise + OUTWARD))
      return false;
    return level !== undefined || this.underCeiling(cut, shift + OUTWARD, raise + OUTWARD);
  }

  private betweenWalls([from, to]: Cut, low: number, high: number, spare: number): boolean {
    let k0 = low;
    let k1 = high;
    for (const { n, at } of this.scene.walls) {
      const left = at - this.width(n[0], n[1]) + spare - (n[0] * from[0] + n[1] * from[1]);
      const slope = n[0] * (to[0] - from[0]) + n[1] * (to[1] - from[1]);
      if (slope > 1e-9) k1 = min(k1, left / slope);
      else if (slope < -1e-9) k0 = max(k0, left / slope);
      else if (left < min(0, slope)) return false;
      if (k0 > k1) return false;
    }
    this.k0 = k0;
    this.k1 = k1;
    return true;
  }

  private clearOfSolids(cut: Cut, spare: number): boolean {
    for (const solid of this.scene.solids) {
      let clear = false;
      for (const edge of solid) {
        if (!this.parted(edge, cut, spare)) continue;
        clear = true;
        break;
      }
      if (!clear) return false;
    }
    return true;
  }

  /**
   * h(up + l n) is in straight pieces in l, and what it may be less for another attitude of the cell, `raise` and
   * `shift` for each l, too: a kink has the least of it, unless it falls for ever.
   */
  private inSection({ n, height }: OpenSection, shift: number, raise: number): boolean {
    const { px, py, pz } = this;
    const n0 = px[0]! * n[0] + py[0]! * n[1];
    const n1 = px[1]! * n[0] + py[1]! * n[1];
    const n2 = px[2]! * n[0] + py[2]! * n[1];
    if (abs(n0) + abs(n1) + abs(n2) <= shift) return true;
    const [z0, z1, z2] = [pz[0]!, pz[1]!, pz[2]!];
    let least = abs(z0) + abs(z1) + abs(z2);
    for (let k = 0; k < 3; k++) {
      const across = k === 0 ? n0 : k === 1 ? n1 : n2;
      if (abs(across) < 1e-9) continue;
      const l = -pz[k]! / across;
      least = min(least, abs(z0 + l * n0) + abs(z1 + l * n1) + abs(z2 + l * n2) - abs(l) * shift);
    }
    return 2 * (least - raise) <= height;
  }

  private parted({ edge, from, to }: PlanEdge, [start, end]: Cut, spare: number): boolean {
    const { px, py, k0, k1 } = this;
    const x0 = edge[0] - (start[0] + k0 * (end[0] - start[0]));
    const y0 = edge[1] - (start[1] + k0 * (end[1] - start[1]));
    const x1 = edge[0] - (start[0] + k1 * (end[0] - start[0]));
    const y1 = edge[1] - (start[1] + k1 * (end[1] - start[1]));
    for (let part = -2; part < 3; part++) {
      let m = part + 2;
      if (part >= 0) {
        const p = px[part]! * from[0] + py[part]! * from[1];
        const q = px[part]! * to[0] + py[part]! * to[1];
        if (p * q >= 0) continue;
        m = p / (p - q);
      }
      const nx = (1 - m) * from[0] + m * to[0];
      const ny = (1 - m) * from[1] + m * to[1];
      const left = spare - this.width(nx, ny);
      if (max(nx * x0 + ny * y0, nx * x1 + ny * y1) + left >= 0) return true;
    }
    return false;
  }

  /** All corners of the box find room above the floor and under the ceiling with the centre at one height. */
  private underCeiling([start, end]: Cut, shift: number, raise: number): boolean {
    const { px, py, pz, k0, k1 } = this;
    const free = this.profile!;
    const [ax, bx] = [start[0] + k0 * (end[0] - start[0]), start[0] + k1 * (end[0] - start[0])];
    const [ay, by] = [start[1] + k0 * (end[1] - start[1]), start[1] + k1 * (end[1] - start[1])];
    const x0 = min(ax, bx) - shift;
    const x1 = max(ax, bx) + shift;
    const y0 = min(ay, by) - shift;
    const y1 = max(ay, by) + shift;
    let low = -Infinity;
    let high = Infinity;
    for (let corner = 0; corner < 8; corner++) {
      const a = corner & 1 ? 1 : -1;
      const b = corner & 2 ? 1 : -1;
      const c = corner & 4 ? 1 : -1;
      const x = a * px[0]! + b * px[1]! + c * px[2]!;
      const y = a * py[0]! + b * py[1]! + c * py[2]!;
      const z = a * pz[0]! + b * pz[1]! + c * pz[2]!;
      low = max(low, free.lowest(x + x0, x + x1, y + y0, y + y1) - z - raise);
      high = min(high, free.highest(x + x0, x + x1, y + y0, y + y1) - z + raise);
      if (low > high) return false;
    }
    for (const { n, at, lowest, highest } of this.scene.openings ?? []) {
      const here = [n[0] * ax + n[1] * ay, n[0] * bx + n[1] * by] as const;
      const [near, far] = [at - max(here[0], here[1]), at - min(here[0], here[1])];
      if (!this.meets(n, near, far, shift)) continue;
      low = max(low, lowest - this.lowestIn(n, near, far, shift, raise));
      high = min(high, highest + this.lowestIn(n, -far, -near, shift, raise));
      if (low > high) return false;
    }
    return true;
  }

  /** Whether the box meets the plane so far from its centre in every attitude of the cell. */
  private meets(n: Point, near: number, far: number, shift: number): boolean {
    return max(abs(near), abs(far)) + shift <= this.width(n[0], n[1]);
  }

  /** How high above the centre the lowest of the box in such a plane is at most; l s - h(l n - up) is in straight pieces. */
  private lowestIn(n: Point, near: number, far: number, shift: number, raise: number): number {
    const { px, py, pz } = this;
    const n0 = px[0]! * n[0] + py[0]! * n[1];
    const n1 = px[1]! * n[0] + py[1]! * n[1];
    const n2 = px[2]! * n[0] + py[2]! * n[1];
    const [z0, z1, z2] = [pz[0]!, pz[1]!, pz[2]!];
    let most = -(abs(z0) + abs(z1) + abs(z2));
    for (let k = 0; k < 3; k++) {
      const across = k === 0 ? n0 : k === 1 ? n1 : n2;
      if (abs(across) < 1e-9) continue;
      const l = pz[k]! / across;
      const width = abs(l * n0 - z0) + abs(l * n1 - z1) + abs(l * n2 - z2);
      most = max(most, l * (l > 0 ? far : near) - width + abs(l) * shift);
    }
    return most + raise;
  }
}
