import { boxSolid, outside, type Cell, type Point } from './routeAir';

/** A place of the piece: its middle and its attitude as w, x, y, z. */
export interface AirPlace {
  readonly at: Point;
  readonly turn: readonly [number, number, number, number];
}

type Axes = readonly [Point, Point, Point];

/** Cells are taken to meet where they are no farther apart than this [mm]: as in `routeAir`. */
const TOLERANCE = 0.25;

/** The directions of a box's sides (Rodrigues' formula for a unit quaternion). */
function axesOf([a, b, c, d]: AirPlace['turn']): Axes {
  return [
    [a * a + b * b - c * c - d * d, 2 * (b * c + a * d), 2 * (b * d - a * c)],
    [2 * (b * c - a * d), a * a - b * b + c * c - d * d, 2 * (c * d + a * b)],
    [2 * (b * d + a * c), 2 * (c * d - a * b), a * a - b * b - c * c + d * d],
  ];
}

function multiplied(
  [a, b, c, d]: AirPlace['turn'],
  [e, f, g, h]: AirPlace['turn'],
): [number, number, number, number] {
  const q: [number, number, number, number] = [
    a * e - b * f - c * g - d * h,
    a * f + b * e + c * h - d * g,
    a * g - b * h + c * e + d * f,
    a * h + b * g - c * f + d * e,
  ];
  const size = Math.hypot(...q);
  return [q[0] / size, q[1] / size, q[2] / size, q[3] / size];
}

/** Whether a box stands wholly in the air. */
export class BoxInAir {
  readonly radius: number;

  constructor(
    private readonly cells: readonly Cell[],
    private readonly half: Point,
  ) {
    this.radius = Math.hypot(...half);
  }

  free({ at, turn }: AirPlace): boolean {
    const { half } = this;
    const axes = axesOf(turn);
    const near: Cell[] = [];
    for (const cell of this.cells) {
      let [meets, holds] = [true, true];
      for (const [a, b, c, d] of cell.planes) {
        const h =
          half[0] * Math.abs(axes[0][0] * a + axes[0][1] * b + axes[0][2] * c) +
          half[1] * Math.abs(axes[1][0] * a + axes[1][1] * b + axes[1][2] * c) +
          half[2] * Math.abs(axes[2][0] * a + axes[2][1] * b + axes[2][2] * c);
        const v = at[0] * a + at[1] * b + at[2] * c - d;
        if (v >= h) {
          meets = false;
          break;
        }
        if (v + h > TOLERANCE) holds = false;
      }
      if (!meets) continue;
      if (holds) return true;
      near.push(cell);
    }
    if (near.length < 2) return false;
    for (let corner = 0; corner < 8; corner++) {
      const x = corner & 1 ? half[0] : -half[0];
      const y = corner & 2 ? half[1] : -half[1];
      const z = corner & 4 ? half[2] : -half[2];
      const p = [0, 1, 2].map((k) => at[k]! + x * axes[0][k]! + y * axes[1][k]! + z * axes[2][k]!);
      const inside = near.some(({ planes }) =>
        planes.every(([a, b, c, d]) => a * p[0]! + b * p[1]! + c * p[2]! <= d + TOLERANCE),
      );
      if (!inside) return false;
    }
    return outside(boxSolid(at, half, axes), near) === undefined;
  }

  /** Whether it is free from one place to another, looked at so often that no point moves farther than `step` [mm]. */
  freeWay(p: AirPlace, q: AirPlace, step: number): boolean {
    const parts = Math.max(1, Math.ceil(this.farBetween(p, q) / step));
    const seen = new Uint8Array(parts);
    const isFree = (n: number): boolean => {
      if (seen[n]) return true;
      seen[n] = 1;
      return this.free(placeBetween(p, q, n / parts));
    };
    // The ends are known; the middle first, where most fail.
    for (let size = parts; size >= 1; size = Math.floor(size / 2)) {
      for (let n = size; n < parts; n += 2 * size) if (!isFree(n)) return false;
    }
    for (let n = 1; n < parts; n++) if (!isFree(n)) return false;
    return true;
  }

  /** No point of the box moves farther between two places [mm]. */
  farBetween(p: AirPlace, q: AirPlace): number {
    const dot = Math.abs(p.turn.reduce((sum, v, k) => sum + v * q.turn[k]!, 0));
    return (
      Math.hypot(p.at[0] - q.at[0], p.at[1] - q.at[1], p.at[2] - q.at[2]) +
      2 * Math.acos(Math.min(1, dot)) * this.radius
    );
  }
}

function placeBetween(p: AirPlace, q: AirPlace, share: number): AirPlace {
  const at: Point = [
    p.at[0] + (q.at[0] - p.at[0]) * share,
    p.at[1] + (q.at[1] - p.at[1]) * share,
    p.at[2] + (q.at[2] - p.at[2]) * share,
  ];
  const dot = p.turn.reduce((sum, v, k) => sum + v * q.turn[k]!, 0);
  const sign = dot < 0 ? -1 : 1;
  const angle = Math.acos(Math.min(1, Math.abs(dot)));
  if (angle < 1e-9) return { at, turn: q.turn };
  const one = Math.sin((1 - share) * angle) / Math.sin(angle);
  const two = (sign * Math.sin(share * angle)) / Math.sin(angle);
  const turn = p.turn.map((v, k) => v * one + q.turn[k]! * two) as unknown as AirPlace['turn'];
  return { at, turn };
}

/** Of the four attitudes in which a box looks the same, the one nearest to another. */
function alike([a, b, c, d]: AirPlace['turn'], near: AirPlace['turn']): AirPlace['turn'] {
  const four: AirPlace['turn'][] = [
    [a, b, c, d],
    [-b, a, d, -c],
    [-c, -d, a, b],
    [-d, c, -b, a],
  ];
  let best = four[0]!;
  let most = -1;
  for (const q of four) {
    const dot = Math.abs(q.reduce((sum, v, k) => sum + v * near[k]!, 0));
    if (dot > most) [best, most] = [q, dot];
  }
  return best;
}

interface Node extends AirPlace {
  readonly parent: Node | undefined;
  readonly side: 0 | 1;
}

/** What a search is asked. */
interface AirSearch {
  readonly cells: readonly Cell[];
  /** Half the sizes of the piece [mm]. */
  readonly half: Point;
  /** Places to come from, and places to get to: any of them. */
  readonly starts: readonly AirPlace[];
  readonly goals: readonly AirPlace[];
  /** Random numbers from 0 to 1. */
  readonly next: () => number;
  /** Moves that may be tried. */
  readonly tries: number;
}

/** No point moves farther between two places looked at while searching, and when what is found is gone over [mm]. */
const STEP = 25;
const FINE = 6;
/** Trees meet where no point has to move farther than this at once [mm]. */
const REACH = 900;

/** A bin of places that are near each other: the less is known of a neighbourhood, the more it is looked at. */
interface Bin {
  readonly nodes: Node[];
  /** How often it has been looked at from here. */
  looks: number;
}

/**
 * Searches for a motion of a box through air from any of some places to any of others: trees grow from both sides by
 * random moves of every size from places picked evenly over what has been reached, and are joined where they come near
 * (an expansive search from both sides: Hsu, Latombe and Motwani 1999; Sanchez and Latombe 2001). It shares no code
 * with the project.
 * @returns the places of a motion, gone over in fine steps, or undefined: which proves nothing
 */
export function searchAir({ cells, half, starts, goals, next, tries }: AirSearch): AirPlace[] | undefined {
  const box = new BoxInAir(cells, half);
  const bins: [Map<string, Bin>, Map<string, Bin>] = [new Map(), new Map()];
  const lists: [Bin[], Bin[]] = [[], []];
  /** For joining: nodes by where they are alone. */
  const places: [Map<string, Node[]>, Map<string, Node[]>] = [new Map(), new Map()];
  const cellOf = (at: Point): string => at.map((v) => Math.floor(v / 250)).join();
  const keep = (node: Node): void => {
    const axes = axesOf(node.turn);
    const way = (axis: Point): string => {
      const sign = axis.find((v) => Math.abs(v) > 0.35)! < 0 ? -1 : 1;
      return axis.map((v) => Math.round(sign * v * 2)).join();
    };
    const key = `${node.at.map((v) => Math.floor(v / 160)).join()}|${way(axes[0])}|${way(axes[2])}`;
    let bin = bins[node.side].get(key);
    if (!bin) {
      bin = { nodes: [], looks: 0 };
      bins[node.side].set(key, bin);
      lists[node.side].push(bin);
    }
    bin.nodes.push(node);
    const where = cellOf(node.at);
    const there = places[node.side].get(where);
    if (there) there.push(node);
    else places[node.side].set(where, [node]);
  };
  const pathOf = (node: Node): AirPlace[] => {
    const path: AirPlace[] = [];
    for (let n: Node | undefined = node; n; n = n.parent) path.unshift({ at: n.at, turn: n.turn });
    return path;
  };
  const joined = (node: Node): AirPlace[] | undefined => {
    const other = node.side === 0 ? 1 : 0;
    const [x, y, z] = node.at.map((v) => Math.floor(v / 250)) as [number, number, number];
    let tried = 0;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (let dz = -1; dz <= 1; dz++) {
          for (const there of places[other].get(`${x + dx},${y + dy},${z + dz}`) ?? []) {
            const turned = { at: there.at, turn: alike(there.turn, node.turn) };
            if (box.farBetween(node, turned) > REACH) continue;
            if (tried++ > 6) return undefined;
            if (!box.freeWay(node, turned, STEP)) continue;
            const [one, two] = node.side === 0 ? [node, there] : [there, node];
            const path = [...pathOf(one), ...pathOf(two).reverse()];
            const whole = path.map((place) => ({ ...place }));
            for (let k = 1; k < whole.length; k++) {
              whole[k] = { at: whole[k]!.at, turn: alike(whole[k]!.turn, whole[k - 1]!.turn) };
            }
            if (whole.every((place, k) => k === 0 || box.freeWay(whole[k - 1]!, place, FINE))) return whole;
          }
        }
      }
    }
    return undefined;
  };
  for (const [side, roots] of [starts, goals].entries()) {
    for (const root of roots) {
      if (!box.free(root)) continue;
      const node: Node = { ...root, parent: undefined, side: side as 0 | 1 };
      keep(node);
      const path = joined(node);
      if (path) return path;
    }
  }
  if (lists.some((list) => list.length === 0)) return undefined;
  const all: [Node[], Node[]] = [[], []];
  for (const side of [0, 1] as const) for (const { nodes } of lists[side]) all[side].push(...nodes);
  const nearest = (side: 0 | 1, to: AirPlace): Node => {
    const nodes = all[side];
    let best = nodes[0]!;
    let least = Infinity;
    const looked = Math.min(nodes.length, NEAREST_OF);
    for (let n = 0; n < looked; n++) {
      const node = looked === nodes.length ? nodes[n]! : nodes[Math.floor(next() * nodes.length)]!;
      const far = box.farBetween(node, { at: to.at, turn: alike(to.turn, node.turn) });
      if (far < least) [best, least] = [node, far];
    }
    return best;
  };
  const add = (place: AirPlace, parent: Node): Node => {
    const node: Node = { at: place.at, turn: place.turn, parent, side: parent.side };
    keep(node);
    all[parent.side].push(node);
    return node;
  };
  /** Goes straight towards a place as far as it is free: the last place kept. */
  const towards = (from: Node, to: AirPlace): Node => {
    const goal = { at: to.at, turn: alike(to.turn, from.turn) };
    const parts = Math.max(1, Math.ceil(box.farBetween(from, goal) / (4 * STEP)));
    let last = from;
    for (let n = 1; n <= parts; n++) {
      const place = placeBetween(from, goal, n / parts);
      if (!box.free(place) || !box.freeWay(last, place, STEP)) break;
      last = add(place, last);
    }
    return last;
  };
  for (let n = 0; n < tries; n++) {
    const side = (n % 2) as 0 | 1;
    let node: Node;
    if (n % 8 < 4) {
      const target = anyPlace(cells, next);
      const from = nearest(side, target);
      node = towards(from, target);
      if (node === from) continue;
      // The other side comes to meet it.
      const met = towards(nearest(side === 0 ? 1 : 0, node), node);
      const path = joined(met);
      if (path) return path;
    } else {
      // Of a few neighbourhoods the one looked at least often, so that the edge of what is known is gone on from.
      const list = lists[side];
      let bin = list[Math.floor(next() * list.length)]!;
      for (let other = 0; other < 4; other++) {
        const rival = list[Math.floor(next() * list.length)]!;
        if (rival.looks < bin.looks) bin = rival;
      }
      bin.looks++;
      const from = bin.nodes[Math.floor(next() * bin.nodes.length)]!;
      const place = movedAtRandom(from, box.radius, next);
      if (!box.free(place) || !box.freeWay(from, place, STEP)) continue;
      node = add(place, from);
    }
    const path = joined(node);
    if (path) return path;
  }
  return undefined;
}

/** Of so many places the nearest is gone on from. */
const NEAREST_OF = 600;

/** Somewhere in the air, mostly held level along the building or turned in plan. */
export function anyPlace(cells: readonly Cell[], next: () => number): AirPlace {
  const { planes } = cells[Math.floor(next() * cells.length)]!;
  const at: [number, number, number] = [0, 0, 0];
  // Between the planes that bound it most nearly along each axis; a slope counts where it meets the rest.
  for (const k of [0, 1, 2] as const) {
    let [low, high] = [-Infinity, Infinity];
    for (const plane of planes) {
      if (plane[k] > 0.5) high = Math.min(high, plane[3] / plane[k]);
      if (plane[k] < -0.5) low = Math.max(low, plane[3] / plane[k]);
    }
    if (!Number.isFinite(low)) low = high - 3000;
    if (!Number.isFinite(high)) high = low + 3000;
    at[k] = low + next() * Math.min(4000, Math.max(0, high - low));
  }
  const R = Math.SQRT1_2;
  const holds: AirPlace['turn'][] = [
    [1, 0, 0, 0],
    [R, R, 0, 0],
    [R, 0, R, 0],
    [0.5, 0.5, 0.5, 0.5],
  ];
  const hold = holds[Math.floor(next() * holds.length)]!;
  const yaw = next() < 0.4 ? (Math.floor(next() * 4) * Math.PI) / 4 : next() * Math.PI;
  const tilt = next() < 0.5 ? 0 : (next() - 0.5) * 1.6;
  const turned = multiplied([Math.cos(tilt / 2), 0, Math.sin(tilt / 2), 0], hold);
  return { at, turn: multiplied([Math.cos(yaw), 0, 0, Math.sin(yaw)], turned) };
}

/** A place near another: moved and turned in plan, about one of the piece's own sides, or in any way. */
function movedAtRandom({ at, turn }: AirPlace, radius: number, next: () => number): AirPlace {
  const gauss = (): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  const far = 12 * 50 ** next();
  const kind = next();
  const flat = kind < 0.45;
  const still = next() < 0.15;
  const by = (share: number): number => (still ? 0 : gauss() * far * share);
  const place: Point = [at[0] + by(0.7), at[1] + by(0.7), at[2] + (flat ? 0 : by(0.5))];
  if (!still && next() < 0.25) return { at: place, turn };
  const angle = (gauss() * far * 1.2) / radius;
  const s = Math.sin(angle / 2);
  const c = Math.cos(angle / 2);
  if (flat) return { at: place, turn: multiplied([c, 0, 0, s], turn) };
  if (kind < 0.8) {
    const axis = Math.floor(next() * 3);
    const own: AirPlace['turn'] = [c, axis === 0 ? s : 0, axis === 1 ? s : 0, axis === 2 ? s : 0];
    return { at: place, turn: multiplied(turn, own) };
  }
  const axis = [gauss(), gauss(), gauss()];
  const size = Math.hypot(...axis);
  return {
    at: place,
    turn: multiplied([c, (axis[0]! * s) / size, (axis[1]! * s) / size, (axis[2]! * s) / size], turn),
  };
}
