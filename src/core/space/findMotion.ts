import { paddedPiece } from '../measures/piece';
import { placeOf, type KeyAttitude, type Motion } from './motion';
import type { SpaceTask } from './spaceTask';
import { motionByMiddle } from './motionByMiddle';
import { seededStream } from './seededStream';
import { alikeTurns, goingOn, likeness, type Quaternion } from './quaternion';
import { SpaceChecker } from './spaceChecker';
import { entryAt } from '../lists/entryAt';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, floor, max, sqrt } = Math;

/** How a search is bounded and seeded. */
export interface SearchLimits {
  /** Most places that may be looked at; about 0.5 to 1 million a second. */
  readonly work: number;
  readonly seed?: number;
  /** Padding [mm a side] that the piece wears. */
  readonly padding?: number;
}

/** What a search found, and how much it looked at. */
export interface SearchResult {
  /** A motion shown free on its whole way; null when none was found, which proves nothing. */
  readonly motion: Motion | null;
  /** Places looked at. */
  readonly work: number;
}

/** Numbers a place takes: centre 3, attitude 4. */
const PLACE = 7;
/** Side of the cells [mm] in which places are counted. */
const CELL = 150;

/**
 * Looks for a motion in space by growing two trees of places, from the start and from the goal, towards
 * where they are thinnest (expansive spaces: Hsu, Latombe & Motwani, Int. J. Comput. Geom. Appl. 9, 1999;
 * choice by cells: Sanchez & Latombe, ISRR 2001). New places are taken near an old one by a turn about the
 * centre or about a point that the piece may rest on (a corner, an edge's middle), pushed out of what they
 * stand in along the shortest way, and kept only when the whole move to them is shown free. A move that
 * succeeds is carried on in the same direction.
 *
 * Bounded in places looked at, never in time; the stream of chances is our own: the same answer everywhere.
 */
export function findMotion(task: SpaceTask, limits: SearchLimits): SearchResult {
  const checker = new SpaceChecker(task.scene);
  checker.hold(paddedPiece(task.piece, limits.padding ?? 0));
  return new TwoTrees(task, checker, limits).run();
}

class TwoTrees {
  private nodes = new Float64Array(PLACE * 1024);
  private parent = new Int32Array(1024);
  private nextInCell = new Int32Array(1024);
  private count = 0;
  private readonly members: [Int32Array, Int32Array] = [new Int32Array(1024), new Int32Array(1024)];
  private readonly size: [number, number] = [0, 0];
  private readonly cellOf: [Map<number, number>, Map<number, number>] = [
    new Map<number, number>(),
    new Map<number, number>(),
  ];
  private readonly cellHead: [number[], number[]] = [[], []];
  private readonly cellCount: [number[], number[]] = [[], []];
  private readonly x = new Float64Array(PLACE);
  private readonly y = new Float64Array(PLACE);
  private readonly next: () => number;
  private readonly half: readonly [number, number, number];
  private readonly spin2: number;

  constructor(
    private readonly task: SpaceTask,
    private readonly checker: SpaceChecker,
    private readonly limits: SearchLimits,
  ) {
    this.next = seededStream(limits.seed ?? 1);
    this.half = [task.piece.length / 2, task.piece.breadth / 2, task.piece.thickness / 2];
    // Radius of gyration: what a turn moves the piece's points in the mean.
    this.spin2 = (this.half[0] ** 2 + this.half[1] ** 2 + this.half[2] ** 2) / 3;
  }

  run(): SearchResult {
    const { checker, limits, task } = this;
    const start = placeOf(task.start);
    const goal = placeOf(task.goal);
    if (!checker.placeFree(start, 0) || !checker.placeFree(goal, 0))
      return { motion: null, work: checker.work };
    this.add(0, start, 0, -1);
    this.add(1, goal, 0, -1);
    let joined = this.tryJoin(0, 0) ?? motionByMiddle(task, checker, this.next, limits.work * 0.8);
    let tree: 0 | 1 = 0;
    while (joined === null && checker.work < limits.work) {
      joined = this.grow(tree);
      tree = tree === 0 ? 1 : 0;
    }
    return { motion: joined && begunAt(task.start, joined), work: checker.work };
  }

  private grow(tree: 0 | 1): Motion | null {
    const { next, nodes, x } = this;
    const from = this.pick(tree);
    const o = from * PLACE;
    // Mostly short moves in tight places, sometimes long ones.
    const scale = [1, 0.5, 0.25, 0.12][(next() * 4) | 0]!;
    if (!this.stepFrom(nodes, o, x, scale)) return null;
    let last = this.extend(tree, from, x);
    if (last < 0) return null;
    let joined = this.tryJoin(tree, last);
    // Carry on in the same direction while it goes.
    for (let more = 0; joined === null && more < 8; more++) {
      const before = this.parent[last]!;
      this.repeat(before, last, this.y);
      if (!this.inBounds(this.y) || !this.checker.pushOut(this.y, 0, 3, 1)) break;
      const further = this.extend(tree, last, this.y);
      if (further < 0) break;
      last = further;
      joined = this.tryJoin(tree, last);
    }
    return joined;
  }

  /** A place at random: an old node of a cell taken evenly among the cells. */
  private pick(tree: 0 | 1): number {
    const heads = this.cellHead[tree];
    const cell = (this.next() * heads.length) | 0;
    let steps = (this.next() * this.cellCount[tree][cell]!) | 0;
    let node = heads[cell]!;
    while (steps-- > 0) node = this.nextInCell[node]!;
    return node;
  }

  /** A new place near node o, pushed free; false when it stays stuck. */
  private stepFrom(nodes: Float64Array, o: number, x: Float64Array, scale: number): boolean {
    const { next, half } = this;
    const shift = 500 * scale;
    const turn = 0.5 * scale;
    const kind = next();
    const rx = (next() * 2 - 1) * turn;
    const ry = (next() * 2 - 1) * turn;
    const rz = (next() * 2 - 1) * turn;
    const w = nodes[o + 3]!;
    const a = nodes[o + 4]!;
    const b = nodes[o + 5]!;
    const c = nodes[o + 6]!;
    if (kind < 0.25) {
      for (let k = 3; k < 7; k++) x[k] = nodes[o + k]!;
    } else {
      // q (1, r): a small turn about the piece's own axes, for a quarter of the draws about a single one.
      const only = kind > 0.75 ? (next() * 3) | 0 : -1;
      const ux = only > 0 ? 0 : rx;
      const uy = only === 0 || only === 2 ? 0 : ry;
      const uz = only === 0 || only === 1 ? 0 : rz;
      x[3] = w - a * ux - b * uy - c * uz;
      x[4] = a + w * ux + b * uz - c * uy;
      x[5] = b + w * uy + c * ux - a * uz;
      x[6] = c + w * uz + a * uy - b * ux;
      const n = sqrt(x[3] ** 2 + x[4] ** 2 + x[5] ** 2 + x[6] ** 2);
      for (let k = 3; k < 7; k++) x[k]! /= n;
    }
    if (kind >= 0.5) {
      // About a corner, or the middle of an edge or face.
      const px = half[0] * (((next() * 3) | 0) - 1);
      const py = half[1] * (((next() * 3) | 0) - 1);
      const pz = half[2] * (((next() * 3) | 0) - 1);
      turned(nodes, o + 3, px, py, pz, 1, x, nodes, o);
      turned(x, 3, px, py, pz, -1, x, x, 0);
      const small = shift * 0.2;
      for (let k = 0; k < 3; k++) x[k]! += (next() * 2 - 1) * small;
    } else {
      for (let k = 0; k < 3; k++) x[k] = nodes[o + k]! + (next() * 2 - 1) * shift;
    }
    return this.inBounds(x) && this.checker.pushOut(x, 0, 5, 1) && this.inBounds(x);
  }

  private inBounds(x: Float64Array): boolean {
    const { least, most } = this.task;
    return (
      x[0]! >= least[0] &&
      x[1]! >= least[1] &&
      x[2]! >= least[2] &&
      x[0]! <= most[0] &&
      x[1]! <= most[1] &&
      x[2]! <= most[2]
    );
  }

  /** The place as far beyond b as b is from a. */
  private repeat(a: number, b: number, y: Float64Array): void {
    const { nodes } = this;
    const p = a * PLACE;
    const q = b * PLACE;
    for (let k = 0; k < 3; k++) y[k] = 2 * nodes[q + k]! - nodes[p + k]!;
    // q conj(p) q, that is 2 (p.q) q - p for unit quaternions.
    let dot = 0;
    for (let k = 3; k < 7; k++) dot += nodes[p + k]! * nodes[q + k]!;
    for (let k = 3; k < 7; k++) y[k] = 2 * dot * nodes[q + k]! - nodes[p + k]!;
    // Repeated over and over the least error in their length would grow threefold each time.
    const n = sqrt(y[3]! ** 2 + y[4]! ** 2 + y[5]! ** 2 + y[6]! ** 2);
    for (let k = 3; k < 7; k++) y[k]! /= n;
  }

  /** Adds x when the whole move to it is free, else half way; -1 when neither. */
  private extend(tree: 0 | 1, from: number, x: Float64Array): number {
    const o = from * PLACE;
    if (!this.inBounds(x)) return -1;
    if (this.checker.moveFree(this.nodes, o, x, 0)) return this.add(tree, x, 0, from);
    return -1;
  }

  private add(tree: 0 | 1, x: Float64Array, o: number, from: number): number {
    const node = this.count++;
    if (node >= this.parent.length) this.enlarge();
    for (let k = 0; k < PLACE; k++) this.nodes[node * PLACE + k] = x[o + k]!;
    this.parent[node] = from;
    if (this.size[tree] >= this.members[tree].length) {
      const larger = new Int32Array(2 * this.members[tree].length);
      larger.set(this.members[tree]);
      this.members[tree] = larger;
    }
    this.members[tree][this.size[tree]++] = node;
    const key = this.cellKey(x, o);
    const heads = this.cellHead[tree];
    let cell = this.cellOf[tree].get(key);
    if (cell === undefined) {
      cell = heads.length;
      this.cellOf[tree].set(key, cell);
      heads.push(-1);
      this.cellCount[tree].push(0);
    }
    this.nextInCell[node] = heads[cell]!;
    heads[cell] = node;
    this.cellCount[tree][cell]!++;
    return node;
  }

  private enlarge(): void {
    const nodes = new Float64Array(2 * this.nodes.length);
    nodes.set(this.nodes);
    this.nodes = nodes;
    const parent = new Int32Array(2 * this.parent.length);
    parent.set(this.parent);
    this.parent = parent;
    const nextInCell = new Int32Array(2 * this.nextInCell.length);
    nextInCell.set(this.nextInCell);
    this.nextInCell = nextInCell;
  }

  /** Cells of the position and of the attitude, the same for the four attitudes in which the box looks alike. */
  private cellKey(x: Float64Array, o: number): number {
    const w = x[o + 3]!;
    const a = x[o + 4]!;
    const b = x[o + 5]!;
    const c = x[o + 6]!;
    // Where the length points (l) and how steep the broad face's normal stands (tz).
    const lx = 1 - 2 * (b * b + c * c);
    const ly = 2 * (a * b + w * c);
    const lz = 2 * (a * c - w * b);
    const tz = 1 - 2 * (a * a + b * b);
    const cell = (v: number): number => floor(v / CELL) & 127;
    const attitude =
      ((lx * lx * 3.99) | 0) +
      4 * ((lz * lz * 3.99) | 0) +
      16 * ((abs(tz) * 2.99) | 0) +
      64 * (lx * ly > 0 ? 1 : 0) +
      128 * (lx * lz > 0 ? 1 : 0);
    return ((cell(x[o]!) * 128 + cell(x[o + 1]!)) * 128 + cell(x[o + 2]!)) * 256 + attitude;
  }

  /** Tries to join a node to the nearest of the other tree. */
  private tryJoin(tree: 0 | 1, node: number): Motion | null {
    const { nodes, x } = this;
    const other = tree === 0 ? 1 : 0;
    const members = this.members[other];
    const o = node * PLACE;
    const px = nodes[o]!;
    const py = nodes[o + 1]!;
    const pz = nodes[o + 2]!;
    const w = nodes[o + 3]!;
    const a = nodes[o + 4]!;
    const b = nodes[o + 5]!;
    const c = nodes[o + 6]!;
    let best = -1;
    let least = Infinity;
    for (let i = 0; i < this.size[other]; i++) {
      const m = members[i]! * PLACE;
      const dx = nodes[m]! - px;
      const dy = nodes[m + 1]! - py;
      const dz = nodes[m + 2]! - pz;
      const near = dx * dx + dy * dy + dz * dz;
      if (near >= least) continue;
      const ow = nodes[m + 3]!;
      const oa = nodes[m + 4]!;
      const ob = nodes[m + 5]!;
      const oc = nodes[m + 6]!;
      // conj(q) o: its largest part is the cosine of half the turn to the nearest of the four attitudes.
      const d0 = abs(w * ow + a * oa + b * ob + c * oc);
      const d1 = abs(w * oa - a * ow - b * oc + c * ob);
      const d2 = abs(w * ob + a * oc - b * ow - c * oa);
      const d3 = abs(w * oc - a * ob + b * oa - c * ow);
      const most = max(d0, d1, d2, d3);
      // theta^2 is about 8 (1 - cos(theta/2)).
      const d = near + 8 * (1 - most) * this.spin2;
      if (d < least) {
        least = d;
        best = members[i]!;
      }
    }
    if (best < 0 || least > 1500 * 1500) return null;
    x.set(nodes.subarray(best * PLACE, best * PLACE + PLACE));
    const flip = nearestAlike(nodes, o + 3, x, 3);
    if (!this.checker.moveFree(nodes, o, x, 0)) return null;
    return tree === 0 ? this.motion(node, best, flip) : this.motion(best, node, flip);
  }

  /**
   * From the start to node a, over to node b, and on to the goal. The moves from b on were shown for other attitudes
   * that look alike: all of them are written as those are in which b was joined.
   */
  private motion(a: number, b: number, flip: number): Motion {
    const { nodes } = this;
    const key = (n: number, alike: number): KeyAttitude => {
      const o = n * PLACE;
      const turns = alikeTurns([nodes[o + 3]!, nodes[o + 4]!, nodes[o + 5]!, nodes[o + 6]!]);
      return { at: [nodes[o]!, nodes[o + 1]!, nodes[o + 2]!], turn: entryAt(turns, alike) };
    };
    const keys: KeyAttitude[] = [];
    for (let n = a; n >= 0; n = this.parent[n]!) keys.unshift(key(n, 0));
    for (let n = b; n >= 0; n = this.parent[n]!) keys.push(key(n, flip));
    return keys;
  }
}

/**
 * The same motion with its attitudes written so that it begins in the one asked for, which it may begin alike: every key is
 * written anew in the same way, and so every move stays the one that was shown.
 */
function begunAt(start: KeyAttitude, motion: Motion): Motion {
  const [first] = motion;
  if (!first) return motion;
  const like = alikeTurns(first.turn).map((turn) => abs(likeness(turn, start.turn)));
  const which = like.indexOf(max(...like));
  let last: Quaternion = start.turn;
  return motion.map(({ at, turn }) => {
    last = goingOn(entryAt(alikeTurns(turn), which), last);
    return { at, turn: last };
  });
}

/** out = base + sign * (attitude q turned p). */
function turned(
  q: Float64Array,
  o: number,
  px: number,
  py: number,
  pz: number,
  sign: number,
  out: Float64Array,
  base: Float64Array,
  bo: number,
): void {
  const w = q[o]!;
  const x = q[o + 1]!;
  const y = q[o + 2]!;
  const z = q[o + 3]!;
  const tx = 2 * (y * pz - z * py);
  const ty = 2 * (z * px - x * pz);
  const tz = 2 * (x * py - y * px);
  out[0] = base[bo]! + sign * (px + w * tx + y * tz - z * ty);
  out[1] = base[bo + 1]! + sign * (py + w * ty + z * tx - x * tz);
  out[2] = base[bo + 2]! + sign * (pz + w * tz + x * ty - y * tx);
}

/**
 * Replaces the attitude q[qo..] by whichever of the four alike (a half turn about one of the box's own axes
 * changes nothing) is nearest to p[po..], with the sign of the shorter way. Returns which: 0-3.
 */
function nearestAlike(p: Float64Array, po: number, q: Float64Array, qo: number): number {
  const [w, a, b, c] = [p[po]!, p[po + 1]!, p[po + 2]!, p[po + 3]!];
  const [ow, oa, ob, oc] = [q[qo]!, q[qo + 1]!, q[qo + 2]!, q[qo + 3]!];
  const d = [
    w * ow + a * oa + b * ob + c * oc,
    w * oa - a * ow - b * oc + c * ob,
    w * ob + a * oc - b * ow - c * oa,
    w * oc - a * ob + b * oa - c * ow,
  ];
  let which = 0;
  for (let k = 1; k < 4; k++) if (abs(d[k]!) > abs(d[which]!)) which = k;
  // q * conj(unit k) has the dot product d[k] with p.
  const alike =
    which === 0
      ? [ow, oa, ob, oc]
      : which === 1
        ? [oa, -ow, -oc, ob]
        : which === 2
          ? [ob, oc, -ow, -oa]
          : [oc, -ob, oa, -ow];
  const dot = w * alike[0]! + a * alike[1]! + b * alike[2]! + c * alike[3]!;
  const sign = dot < 0 ? -1 : 1;
  for (let k = 0; k < 4; k++) q[qo + k] = alike[k]! * sign;
  return which;
}
