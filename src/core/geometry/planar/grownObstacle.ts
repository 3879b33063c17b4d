import { HalfPlanes, type ConvexShape } from './convexShape';
import type { ConvexPolygon } from './planarWorld';

/** An obstacle with its sides' outward normals worked out once. */
export interface PreparedObstacle {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly nx: readonly number[];
  readonly ny: readonly number[];
  readonly offset: readonly number[];
  /** Angles [rad] of the normals. */
  readonly turn: readonly number[];
}

/**
 * Works out once what is asked of an obstacle at every angle.
 * @param polygon its corners [mm], in order
 */
export function prepareObstacle(polygon: ConvexPolygon): PreparedObstacle {
  const n = polygon.length;
  const nx: number[] = [];
  const ny: number[] = [];
  const offset: number[] = [];
  for (let i = 0; i < n; i++) {
    const [ax, ay] = polygon[i]!;
    const [bx, by] = polygon[(i + 1) % n]!;
    const length = Math.hypot(bx - ax, by - ay);
    nx.push((by - ay) / length);
    ny.push((ax - bx) / length);
    offset.push(Math.max(nx[i]! * ax + ny[i]! * ay, nx[i]! * bx + ny[i]! * by));
  }
  return {
    x: polygon.map((v) => v[0]),
    y: polygon.map((v) => v[1]),
    nx,
    ny,
    offset,
    turn: nx.map((x, i) => Math.atan2(ny[i]!, x)),
  };
}

const planes = new HalfPlanes();

/**
 * Where the rectangle's centre must not be: the obstacle grown by a rectangle of half sides hp, hq at one
 * angle (a Minkowski sum), then moved outward by `margin` (inward when negative).
 * @param hp half the side that stands at the angle [mm]
 * @param hq half the other side [mm]
 * @param angle [rad]
 * @param margin [mm]
 * @returns undefined where the margin leaves nothing of it
 */
export function grownAt(
  o: PreparedObstacle,
  hp: number,
  hq: number,
  angle: number,
  margin: number,
): ConvexShape | undefined {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  planes.clear();
  for (let i = 0; i < o.nx.length; i++) {
    const reach = hp * Math.abs(o.nx[i]! * c + o.ny[i]! * s) + hq * Math.abs(o.ny[i]! * c - o.nx[i]! * s);
    planes.add(o.nx[i]!, o.ny[i]!, o.offset[i]! + reach + margin);
  }
  sides(o, c, s, hp + margin);
  sides(o, -s, c, hq + margin);
  return planes.intersection();
}

/** Both half-planes of normal +-(nx, ny) that touch the obstacle, moved outward by `reach`. */
function sides(o: PreparedObstacle, nx: number, ny: number, reach: number): void {
  let most = -Infinity;
  let least = Infinity;
  for (let i = 0; i < o.x.length; i++) {
    const d = nx * o.x[i]! + ny * o.y[i]!;
    if (d > most) most = d;
    if (d < least) least = d;
  }
  planes.add(nx, ny, most + reach);
  planes.add(-nx, -ny, reach - least);
}

/**
 * Contains every centre at which the rectangle meets the obstacle at some angle between `from` and `to`
 * (less than a right angle apart). Outside it the rectangle may turn freely between the two.
 * Half-planes in any direction around the union are sound; those of the middle angle fit best.
 * @param hp half the side that stands at the angle [mm]
 * @param hq half the other side [mm]
 * @param from first angle [rad]
 * @param to last angle [rad]
 * @param margin [mm]
 * @returns undefined where it would be nothing
 */
export function grownBySome(
  o: PreparedObstacle,
  hp: number,
  hq: number,
  from: number,
  to: number,
  margin: number,
): ConvexShape | undefined {
  const radius = Math.hypot(hp, hq);
  const diagonal = Math.atan2(hq, hp);
  planes.clear();
  for (let i = 0; i < o.nx.length; i++) {
    const reach = greatestReach(o.turn[i]!, hp, hq, from, to, radius, diagonal);
    planes.add(o.nx[i]!, o.ny[i]!, o.offset[i]! + reach + margin);
  }
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  const c = Math.cos(middle);
  const s = Math.sin(middle);
  const reachP = half >= diagonal ? radius : hp * Math.cos(half) + hq * Math.sin(half);
  const reachQ = half >= Math.PI / 2 - diagonal ? radius : hq * Math.cos(half) + hp * Math.sin(half);
  sides(o, c, s, reachP + margin);
  sides(o, -s, c, reachQ + margin);
  return planes.intersection();
}

/** Greatest reach of the rectangle along a normal while it turns: at an end, or with a diagonal along it. */
function greatestReach(
  normal: number,
  hp: number,
  hq: number,
  from: number,
  to: number,
  radius: number,
  diagonal: number,
): number {
  if (holds(normal + diagonal, from, to) || holds(normal - diagonal, from, to)) return radius;
  return Math.max(reachAt(normal - from, hp, hq), reachAt(normal - to, hp, hq));
}

const reachAt = (angle: number, hp: number, hq: number): number =>
  hp * Math.abs(Math.cos(angle)) + hq * Math.abs(Math.sin(angle));

/** Whether the range holds the angle, modulo half a turn; a hair wider than it is. */
function holds(angle: number, from: number, to: number): boolean {
  const past = angle - from + 1e-12;
  return past - Math.PI * Math.floor(past / Math.PI) <= to - from + 2e-12;
}

/**
 * Lies within every grown obstacle of the angles between `from` and `to`: a centre inside it meets the
 * obstacle at each of them. Moved inward by `-margin`.
 *
 * On a side of the obstacle the least reach counts: at an end, or with a side of the rectangle along it. On
 * a side of the rectangle one corner w of the obstacle is watched: with n the side's normal, n(angle).(z - w)
 * is a sinusoid of the angle, so that a limit h cos(half the range) at both ends keeps it within h between.
 * Any corner is sound; the foremost at the middle angle is the right one while no side is passed.
 * The arguments are those of `grownBySome`.
 * @returns undefined where nothing is sure to be within
 */
export function grownByAll(
  o: PreparedObstacle,
  hp: number,
  hq: number,
  from: number,
  to: number,
  margin: number,
): ConvexShape | undefined {
  planes.clear();
  for (let i = 0; i < o.nx.length; i++) {
    const turn = o.turn[i]!;
    let reach = Math.min(reachAt(turn - from, hp, hq), reachAt(turn - to, hp, hq));
    if (holds(turn, from, to)) reach = Math.min(reach, hp);
    if (holds(turn + Math.PI / 2, from, to)) reach = Math.min(reach, hq);
    planes.add(o.nx[i]!, o.ny[i]!, o.offset[i]! + reach + margin);
  }
  const shrink = Math.cos((to - from) / 2);
  const middle = (from + to) / 2;
  for (let quarter = 0; quarter < 4; quarter++) {
    const add = quarter * (Math.PI / 2);
    const reach = (quarter % 2 === 0 ? hp : hq) * shrink;
    const mx = Math.cos(middle + add);
    const my = Math.sin(middle + add);
    let foremost = 0;
    let most = -Infinity;
    for (let i = 0; i < o.x.length; i++) {
      const d = mx * o.x[i]! + my * o.y[i]!;
      if (d > most) {
        most = d;
        foremost = i;
      }
    }
    for (const end of [from + add, to + add]) {
      const ex = Math.cos(end);
      const ey = Math.sin(end);
      planes.add(ex, ey, ex * o.x[foremost]! + ey * o.y[foremost]! + reach + margin);
    }
  }
  return planes.intersection();
}
