import { once } from '../../lists/once';
import { sides } from '../../lists/pairs';
import type { ConvexShape } from './convexShape';
import { edgeFree } from './edgeFree';
import { freeSlice, partAt, partsInBox, routeInSlice, type FreeSlice } from './freeSlice';
import { grownAt, grownByAll, grownBySome, prepareObstacle, type PreparedObstacle } from './grownObstacle';
import type { ConvexPolygon, PlanarBox, PlanarPlace, PlanarRegion, PlanarWorld, Point } from './planarWorld';

/** Whether a rectangle passes from one region to another, with what shows it. */
export type PassageDecision = (
  | {
      readonly verdict: 'passes';
      /** Places whose straight connections are free of contact; angles may run past a half turn. */
      readonly path: () => readonly PlanarPlace[];
    }
  | {
      readonly verdict: 'blocked';
      /**
       * The certificate: ranges of the angle [rad] with, for each, the connected parts of a set that holds
       * every free place; no chain of them leads from start to goal.
       */
      readonly ranges: number;
    }
  | { readonly verdict: 'undecided' }
) & {
  /** Slices looked at. */
  readonly work: number;
};

// Margins [mm] that keep rounding on the safe side: coordinates are below 1e5 mm, so arithmetic errs by
// some 1e-10. A set that is to hold more is shrunk by more: at one angle, ...
const SLICE_MARGIN = -1e-6;
// ... and at all angles of a range [mm].
const ALL_MARGIN = -2e-6;
/** What the padding of a shown passage is to be lowered by [mm]. */
export const ROUNDING = 1e-5;

/** Enough for brackets of a millimetre in all scenes tried, some 0.1 to 0.3 s. */
export const DEFAULT_WORK = 3000;

/** One angle; what is free there is worked out once it is asked for: many angles no chain comes near. */
interface Slice {
  readonly angle: number;
  /** A passage may start at this angle. */
  readonly mayStart: boolean;
  readonly cut: () => CutSlice;
  /** Number of its first part among those that a search for a chain has come to; -1: not yet. */
  firstNode: number;
  before: Range | undefined;
  after: Range | undefined;
}

interface CutSlice {
  readonly free: FreeSlice;
  /** Its parts from which the passage starts, and in which it ends, each with a place there. */
  readonly starts: ReadonlyMap<number, Point>;
  readonly goals: ReadonlyMap<number, Point>;
}

/** The angles between two slices, worked out once they are asked for too. */
interface Range {
  readonly from: Slice;
  readonly to: Slice;
  /** Its angle at the far end [rad]; the last range ends half a turn on, where the first begins. */
  readonly end: number;
  readonly held: () => Held;
  /** Parts in which the rectangle turns through the whole range, and the slices' parts they lie in. */
  readonly shown: () => readonly Turn[];
}

interface Turn {
  readonly from: number;
  readonly to: number;
  readonly at: Point;
  readonly goal?: Point;
}

interface Held {
  /** The part of the set that holds every free place of these angles in which a slice's part lies; -1: unknown. */
  readonly holdsFrom: number[];
  readonly holdsTo: number[];
  readonly reachesGoal: readonly boolean[];
}

/**
 * Decides whether a rectangle p x q passes among convex obstacles from a start region to a goal region, by
 * adaptive subdivision of its angle. For each angle the free places of its centre are cut into trapezoids
 * exactly; between two angles they hold the places free at all of them, and lie within those not blocked at
 * all of them. A chain through the former is a path, of straight moves and of turns on the spot; when the
 * latter do not connect, nothing passes. Where neither is so, the ranges on a chain are halved.
 *
 * The rectangle looks the same after half a turn, so the angles form a circle of half a turn. Bounded by a
 * number of slices, never by time; the same answer on every machine of IEEE arithmetic.
 *
 * @param p one side of the rectangle [mm], not negative
 * @param q the other [mm], not negative
 * @param start where it starts; has an angle
 * @param goal where it is to go
 * @param turns angles that it may take; `blocked` then only says that it does not pass at those
 * @source slices of the configuration space of a polygon: Lozano-Perez, IEEE Trans. Computers C-32(2), 1983,
 * 108-120; inner and outer approximations in the manner of subdivision planners
 */
export function decidePassage(
  world: PlanarWorld,
  p: number,
  q: number,
  start: PlanarRegion & { readonly angle: number },
  goal: PlanarRegion,
  workLimit: number = DEFAULT_WORK,
  turns?: AngleLimits,
): PassageDecision {
  const hp = p / 2;
  const hq = q / 2;
  const obstacles = outermost(world.obstacles).map(prepareObstacle);
  let work = 0;

  const cut = (grow: (o: PreparedObstacle) => ConvexShape | undefined): FreeSlice => {
    const shapes: ConvexShape[] = [];
    for (const o of obstacles) {
      const shape = grow(o);
      if (shape) shapes.push(shape);
    }
    return freeSlice(shapes, world.centre);
  };
  // Looked up once a slice: looking through all of them at each refinement took most of the time.
  const partsWithin = (free: FreeSlice, angle: number, region: PlanarRegion): ReadonlyMap<number, Point> =>
    region.angle !== undefined && !sameAngle(angle, region.angle)
      ? NOWHERE
      : partsInBox(free, boxWithin(region, halfHeight(hp, hq, angle)));
  const sliceAt = (angle: number): Slice => {
    work++;
    return {
      angle,
      mayStart: sameAngle(angle, start.angle),
      cut: once(() => {
        const free = cut((o) => grownAt(o, hp, hq, angle, SLICE_MARGIN));
        return { free, starts: partsWithin(free, angle, start), goals: partsWithin(free, angle, goal) };
      }),
      firstNode: -1,
      before: undefined,
      after: undefined,
    };
  };
  const range = (from: Slice, to: Slice, end: number): Range => {
    const begin = from.angle;
    // Counted whether they are looked at or not, so that the limit does not hang on the order of looking.
    work += 2;
    return {
      from,
      to,
      end,
      held: once(() => {
        const outer = cut((o) => grownByAll(o, hp, hq, begin, end, ALL_MARGIN));
        // Angles with a side upright are ends of ranges, so the least height of the rectangle is at an end.
        const least = Math.min(halfHeight(hp, hq, begin), halfHeight(hp, hq, end));
        const goalParts = goal.angle === undefined ? partsInBox(outer, boxWithin(goal, least)) : undefined;
        return {
          holdsFrom: from.cut().free.witness.map((w) => partAt(outer, w)),
          holdsTo: to.cut().free.witness.map((w) => partAt(outer, w)),
          reachesGoal: Array.from({ length: outer.parts }, (_, i) => goalParts?.has(i) ?? false),
        };
      }),
      shown: once(() => {
        const inner = cut((o) => grownBySome(o, hp, hq, begin, end, 0));
        const goalInner =
          goal.angle === undefined && goal.wholeAbove === undefined ? partsInBox(inner, goal) : undefined;
        return inner.witness
          .map((at, i): Turn => ({
            from: partAt(from.cut().free, at),
            to: partAt(to.cut().free, at),
            at,
            ...(goalInner?.has(i) ? { goal: goalInner.get(i)! } : {}),
          }))
          .filter((turn) => turn.from >= 0 && turn.to >= 0);
      }),
    };
  };

  // Sides parallel to obstacles' sides are angles of their own: often only there a piece slides through.
  const angles = criticalAngles(world, [
    start.angle,
    goal.angle ?? start.angle,
    ...(goal.wholeAbove === undefined ? [] : [0, Math.PI / 2]),
  ]);
  const kept = turns ? anglesWithin(angles, turns) : angles;
  const slices = kept.map(sliceAt);
  const link = (a: Slice, b: Slice, end: number): void => {
    const r = range(a, b, end);
    a.after = r;
    b.before = r;
  };
  slices.forEach((s, i) => {
    const last = i + 1 === slices.length;
    if (last && turns) return;
    link(s, slices[(i + 1) % slices.length]!, last ? kept[0]! + Math.PI : kept[i + 1]!);
  });

  for (;;) {
    const chain = cheapestChain(slices);
    if (chain === undefined) return { verdict: 'blocked', ranges: slices.length, work };
    const doubtful = new Set(chain.steps.filter((s) => s.shown < 0).map((s) => s.range));
    if (doubtful.size === 0) {
      return { verdict: 'passes', path: () => pathOf(world, p, q, chain, start), work };
    }
    if (work >= workLimit) return { verdict: 'undecided', work };
    let widest = 0;
    for (const r of doubtful) widest = Math.max(widest, r.end - r.from.angle);
    if (widest < 1e-9) return { verdict: 'undecided', work };
    for (const r of doubtful) {
      if (r.end - r.from.angle < widest * 0.6) continue;
      const middle = sliceAt((r.from.angle + r.end) / 2);
      slices.push(middle);
      link(r.from, middle, middle.angle);
      link(middle, r.to, r.end);
    }
  }
}

/** Those obstacles that lie within no other: what meets one of these meets the other too. */
const outermost = (obstacles: readonly ConvexPolygon[]): ConvexPolygon[] =>
  obstacles.filter(
    (one, i) =>
      !obstacles.some((other, j) => i !== j && liesIn(one, other) && (j < i || !liesIn(other, one))),
  );

const liesIn = (one: ConvexPolygon, other: ConvexPolygon): boolean =>
  sides(other).every(([[ax, ay], [bx, by]]) =>
    one.every(([x, y]) => (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0),
  );

/** Angles [rad] between which a rectangle may be turned: `from` to `to`, less than half a turn. */
export interface AngleLimits {
  readonly from: number;
  readonly to: number;
}

/** Those of the angles that lie within limits, counted on from the first. */
const anglesWithin = (angles: readonly number[], { from, to }: AngleLimits): number[] =>
  angles
    .map((angle) => from + mod(angle - from, Math.PI))
    .filter((angle) => angle <= to)
    .sort((a, b) => a - b);

const NOWHERE: ReadonlyMap<number, Point> = new Map();

const halfHeight = (hp: number, hq: number, angle: number): number =>
  hp * Math.abs(Math.sin(angle)) + hq * Math.abs(Math.cos(angle));

/** Where the centre may be so that the rectangle keeps within its region. */
const boxWithin = (region: PlanarRegion, half: number): PlanarBox =>
  region.wholeAbove === undefined
    ? region
    : { ...region, yMin: Math.max(region.yMin, region.wholeAbove + half - 1e-7) };

const mod = (value: number, by: number): number => value - by * Math.floor(value / by);

/** Angles in [first, first + half a turn) to start from: at most 30 degrees apart. */
function criticalAngles(world: PlanarWorld, extra: readonly number[]): number[] {
  const angles = extra.map((a) => mod(a, Math.PI));
  for (const polygon of world.obstacles) {
    polygon.forEach(([ax, ay], i) => {
      const [bx, by] = polygon[(i + 1) % polygon.length]!;
      const side = Math.atan2(by - ay, bx - ax);
      angles.push(mod(side, Math.PI), mod(side + Math.PI / 2, Math.PI));
    });
  }
  angles.sort((a, b) => a - b);
  const kept: number[] = [];
  for (const a of angles) {
    if (kept.length > 0 && a - kept[kept.length - 1]! < 1e-9) continue;
    if (kept.length > 0 && kept[0]! + Math.PI - a < 1e-9) continue;
    kept.push(a);
  }
  const filled: number[] = [];
  kept.forEach((a, i) => {
    const next = i + 1 < kept.length ? kept[i + 1]! : kept[0]! + Math.PI;
    const pieces = Math.ceil((next - a) / (Math.PI / 6) - 1e-9);
    for (let k = 0; k < pieces; k++) filled.push(a + ((next - a) * k) / pieces);
  });
  return filled;
}

interface Step {
  readonly range: Range;
  /** The slice and its part that the step leads to; the slice is absent when it ends in the goal. */
  readonly slice: Slice | undefined;
  readonly part: number;
  /** Which of the range's shown parts takes it there; -1: not shown. */
  readonly shown: number;
}

interface Chain {
  readonly start: Slice;
  readonly startPart: number;
  readonly startAt: Point;
  readonly steps: readonly Step[];
  /** Where it arrives within the last slice; absent when the last step ends in the goal. */
  readonly goalAt: Point | undefined;
}

const sameAngle = (a: number, b: number): boolean => {
  const d = mod(a - b, Math.PI);
  return d < 2e-9 || Math.PI - d < 2e-9;
};

/** The chain from start to goal with the fewest ranges that are not shown; undefined when there is none. */
function cheapestChain(slices: Slice[]): Chain | undefined {
  for (const s of slices) s.firstNode = -1;
  // Of each part that the search has come to.
  const sliceOf: Slice[] = [];
  const cost: number[] = [];
  const cameFrom: number[] = [];
  const done: boolean[] = [];
  const by: (Step | undefined)[] = [];
  const firstNodeOf = (slice: Slice): number => {
    if (slice.firstNode >= 0) return slice.firstNode;
    slice.firstNode = sliceOf.length;
    for (let k = slice.cut().free.parts; k > 0; k--) {
      sliceOf.push(slice);
      cost.push(0x7fffffff);
      cameFrom.push(-1);
      done.push(false);
    }
    return slice.firstNode;
  };
  // Buckets by cost; within a bucket last in, first out.
  const buckets: number[][] = [[]];
  for (const slice of slices) {
    if (!slice.mayStart) continue;
    for (const part of slice.cut().starts.keys()) {
      const n = firstNodeOf(slice) + part;
      cost[n] = 0;
      buckets[0]!.push(n);
    }
  }
  let end: { node: number; last: Step | undefined; cost: number } | undefined;
  for (let c = 0; c < buckets.length; c++) {
    const bucket = (buckets[c] ??= []);
    if (end && end.cost <= c) break;
    while (bucket.length > 0) {
      const node = bucket.pop()!;
      if (done[node] || cost[node] !== c) continue;
      done[node] = true;
      const slice = sliceOf[node]!;
      const part = node - slice.firstNode;
      if ((!end || c < end.cost) && slice.cut().goals.has(part)) {
        end = { node, last: undefined, cost: c };
        break;
      }
      const relax = (range: Range, forward: boolean): void => {
        const { holdsFrom, holdsTo, reachesGoal } = range.held();
        const mine = forward ? holdsFrom[part]! : holdsTo[part]!;
        if ((!end || c < end.cost) && (mine >= 0 ? reachesGoal[mine]! : reachesGoal.some((g) => g))) {
          const shown = range
            .shown()
            .findIndex((s) => s.goal !== undefined && (forward ? s.from : s.to) === part);
          const total = c + (shown < 0 ? 1 : 0);
          if (!end || total < end.cost) {
            end = { node, last: { range, slice: undefined, part: -1, shown }, cost: total };
          }
        }
        const visit = (other: Slice, otherPart: number, across: boolean): void => {
          const n = firstNodeOf(other) + otherPart;
          if (n === node || done[n] || c >= cost[n]!) return;
          const shown = across
            ? range
                .shown()
                .findIndex(
                  (s) => (forward ? s.from : s.to) === part && (forward ? s.to : s.from) === otherPart,
                )
            : -1;
          const total = c + (shown < 0 ? 1 : 0);
          if (total >= cost[n]!) return;
          cost[n] = total;
          cameFrom[n] = node;
          by[n] = { range, slice: other, part: otherPart, shown };
          (buckets[total] ??= []).push(n);
        };
        const same = (held: number): boolean => held === mine || held < 0 || mine < 0;
        const near = forward ? holdsFrom : holdsTo;
        const far = forward ? holdsTo : holdsFrom;
        const other = forward ? range.to : range.from;
        far.forEach((held, k) => same(held) && visit(other, k, true));
        near.forEach((held, k) => k !== part && same(held) && visit(slice, k, false));
      };
      // Where the turn is limited the first and the last slice have nothing beyond them.
      if (slice.after) relax(slice.after, true);
      if (slice.before) relax(slice.before, false);
    }
  }
  if (!end) return undefined;
  const steps: Step[] = end.last ? [end.last] : [];
  let node = end.node;
  while (cameFrom[node]! >= 0) {
    steps.push(by[node]!);
    node = cameFrom[node]!;
  }
  steps.reverse();
  const first = sliceOf[node]!;
  const last = sliceOf[end.node]!;
  return {
    start: first,
    startPart: node - first.firstNode,
    startAt: first.cut().starts.get(node - first.firstNode)!,
    steps,
    goalAt: end.last ? undefined : last.cut().goals.get(end.node - last.firstNode)!,
  };
}

/** The path of a chain that is shown throughout, shortened where a straight move is free. */
function pathOf(world: PlanarWorld, p: number, q: number, chain: Chain, start: PlanarRegion): PlanarPlace[] {
  const places: PlanarPlace[] = [];
  let at = chain.startAt;
  let slice = chain.start;
  // The angle as it is turned, not brought back into half a turn.
  let angle = start.angle!;
  const moveTo = (to: Point): void => {
    for (const [x, y] of routeInSlice(slice.cut().free, at, to) ?? [to]) places.push({ x, y, angle });
    at = to;
  };
  moveTo(at);
  for (const step of chain.steps) {
    const turn = step.range.shown()[step.shown]!;
    moveTo(turn.at);
    if (step.slice === undefined) {
      moveTo(turn.goal!);
      break;
    }
    const forward = step.range.from === slice;
    angle += (forward ? 1 : -1) * (step.range.end - step.range.from.angle);
    slice = step.slice;
    places.push({ x: at[0], y: at[1], angle });
  }
  if (chain.goalAt) moveTo(chain.goalAt);
  return shorten(world, p - 2 * ROUNDING, q - 2 * ROUNDING, places);
}

/** Leaves out places that a free straight move makes needless: doubling strides forward, halving back. */
function shorten(world: PlanarWorld, p: number, q: number, places: PlanarPlace[]): PlanarPlace[] {
  const kept: PlanarPlace[] = [places[0]!];
  let i = 0;
  let stride = 1;
  while (i + 1 < places.length) {
    stride = Math.min(2 * stride, places.length - 1 - i);
    while (
      stride > 1 &&
      !edgeFree(world, Math.max(0, p), Math.max(0, q), places[i]!, places[i + stride]!, 8)
    ) {
      stride = Math.floor(stride / 2);
    }
    i += stride;
    kept.push(places[i]!);
  }
  return kept;
}
