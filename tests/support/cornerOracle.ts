/**
 * A corner in plan decided by search alone, with none of the core's formulas: for a rectangle of a given size,
 * either a path is laid (places, turns on the spot, straight moves, each checked by separating lines against
 * the two outer walls and the solid inner corner), or every place at every angle that could join the arms is
 * ruled out. Angles are halved until each interval is decided or 0.05 mm fine; places are searched in an
 * adaptive grid that is bounded by the margins' slopes.
 *
 * The first arm runs along +x below its inner wall y = 0; the way turns left by `turn` at the inner corner
 * (0, 0). A place is given by s and t, its distances from the two inner walls, measured into the arms.
 */

// Looked up once: in a test's sandbox every look-up of a global is slow, and these are called millions of times.
const { PI, abs, cos, hypot, max, min, sin } = Math;
const EVERYWHERE = Infinity;
const NOWHERE = -Infinity;

export interface PlanScene {
  readonly widthIn: number;
  readonly widthOut: number;
  readonly turn: number;
}

interface Place {
  readonly s: number;
  readonly t: number;
}

/** A margin that is linear in the place: at + s * ds + t * dt. */
interface Linear {
  readonly at: number;
  readonly ds: number;
  readonly dt: number;
}

/** The rectangle at one angle: margins to the outer walls, and ways to lie clear of the inner corner. */
interface Pose {
  readonly walls: readonly Linear[];
  readonly lines: readonly Linear[];
  readonly reach1: number;
  readonly reach2: number;
  readonly reach: (nx: number, ny: number) => number;
}

const on = (f: Linear, { s, t }: Place): number => f.at + f.ds * s + f.dt * t;

function poseAt(scene: PlanScene, p: number, q: number, angle: number): Pose {
  const { widthIn, widthOut, turn } = scene;
  const sinTurn = sin(turn);
  const cosTurn = cos(turn);
  const ux = cos(angle);
  const uy = sin(angle);
  const reach = (nx: number, ny: number): number =>
    (abs(nx * ux + ny * uy) * p + abs(-nx * uy + ny * ux) * q) / 2;
  const reach1 = reach(0, 1);
  const reach2 = reach(sinTurn, -cosTurn);
  const lines: Linear[] = [
    { at: -reach1, ds: 1, dt: 0 },
    { at: -reach2, ds: 0, dt: 1 },
  ];
  const sides: [number, number, number][] = [
    [ux, uy, p / 2],
    [-ux, -uy, p / 2],
    [-uy, ux, q / 2],
    [uy, -ux, q / 2],
  ];
  for (const [nx, ny, half] of sides) {
    // The whole solid corner lies beyond the side when both its walls run away from it.
    if (-nx < 0 || nx * cosTurn + ny * sinTurn < 0) continue;
    // x = (t - s cos turn)/sin turn, y = -s
    lines.push({ at: -half, ds: (nx * cosTurn) / sinTurn + ny, dt: -nx / sinTurn });
  }
  return {
    walls: [
      { at: widthIn - reach1, ds: -1, dt: 0 },
      { at: widthOut - reach2, ds: 0, dt: -1 },
    ],
    lines,
    reach1,
    reach2,
    reach,
  };
}

function marginAt({ walls, lines }: Pose, place: Place): number {
  let clear = NOWHERE;
  for (const line of lines) clear = max(clear, on(line, place));
  for (const wall of walls) clear = min(clear, on(wall, place));
  return clear;
}

/** What is known of the margins over a range of places. */
interface Found {
  /** A place with this margin. */
  readonly least: number;
  readonly place: Place;
  /** No place has more. */
  readonly most: number;
}

/**
 * Looks for a place with a margin of `slack` or more, or shows that none has as much as -slack; what lies
 * between is left open. The range is halved where that narrows the bound on its margins most.
 */
function lookForPlace(pose: Pose, from: Place, to: Place, slack: number): Found {
  let least = NOWHERE;
  let place = from;
  let most = NOWHERE;
  const bound = (s: number, t: number, hs: number, ht: number): number => {
    let clear = NOWHERE;
    for (const f of pose.lines) {
      clear = max(clear, f.at + f.ds * s + f.dt * t + abs(f.ds) * hs + abs(f.dt) * ht);
    }
    for (const f of pose.walls) {
      clear = min(clear, f.at + f.ds * s + f.dt * t + abs(f.ds) * hs + abs(f.dt) * ht);
    }
    return clear;
  };
  const search = (s: number, t: number, hs: number, ht: number, upper: number): void => {
    if (least >= slack) return;
    const here = marginAt(pose, { s, t });
    if (here > least) {
      least = here;
      place = { s, t };
    }
    if (upper < (least >= -slack ? slack : -slack) || upper <= least + slack / 8) {
      most = max(most, upper);
      return;
    }
    const s1 = bound(s - hs / 2, t, hs / 2, ht);
    const s2 = bound(s + hs / 2, t, hs / 2, ht);
    const t1 = bound(s, t - ht / 2, hs, ht / 2);
    const t2 = bound(s, t + ht / 2, hs, ht / 2);
    const bySum = s1 + s2 - t1 - t2;
    if (bySum < 0 || (bySum === 0 && hs >= ht)) {
      const first = s1 > s2 ? -1 : 1;
      search(s + (first * hs) / 2, t, hs / 2, ht, max(s1, s2));
      search(s - (first * hs) / 2, t, hs / 2, ht, min(s1, s2));
    } else {
      const first = t1 > t2 ? -1 : 1;
      search(s, t + (first * ht) / 2, hs, ht / 2, max(t1, t2));
      search(s, t - (first * ht) / 2, hs, ht / 2, min(t1, t2));
    }
  };
  const s = (from.s + to.s) / 2;
  const t = (from.t + to.t) / 2;
  const hs = (to.s - from.s) / 2;
  const ht = (to.t - from.t) / 2;
  search(s, t, hs, ht, bound(s, t, hs, ht));
  return { least, place, most: least >= slack ? EVERYWHERE : max(most, least) };
}

/** The rectangle can be slid straight from one place to another at its angle. */
function slides(scene: PlanScene, pose: Pose, from: Place, to: Place): boolean {
  if (pose.walls.some((wall) => on(wall, from) < 0 || on(wall, to) < 0)) return false;
  if (pose.lines.some((line) => on(line, from) >= 0 && on(line, to) >= 0)) return true;
  // The swept shape has two more sides, along the move.
  const sinTurn = sin(scene.turn);
  const cosTurn = cos(scene.turn);
  const xy = ({ s, t }: Place): [number, number] => [(t - s * cosTurn) / sinTurn, -s];
  const [x0, y0] = xy(from);
  const [x1, y1] = xy(to);
  const length = hypot(x1 - x0, y1 - y0);
  if (length === 0) return false;
  for (const sign of [-1, 1]) {
    const nx = (sign * (y0 - y1)) / length;
    const ny = (sign * (x1 - x0)) / length;
    if (-nx < 0 || nx * cosTurn + ny * sinTurn < 0) continue;
    if (-(nx * x0 + ny * y0) - pose.reach(nx, ny) >= 0) return true;
  }
  return false;
}

/** An interval of angles and what is known of all of it. */
interface Leaf {
  readonly from: number;
  readonly to: number;
  /** A place that is clear at every angle of the interval. */
  readonly clear?: Place;
  readonly stuck: boolean;
  readonly clearIn?: Place;
  readonly outsideIn: boolean;
  readonly clearOut?: Place;
  readonly outsideOut: boolean;
}

const FINEST = 0.05;

function leavesOf(scene: PlanScene, p: number, q: number, held: Held | undefined): Leaf[] {
  const radius = hypot(p, q) / 2;
  const far = 2 * radius + 1;
  const { widthIn, widthOut } = scene;
  const leaves: Leaf[] = [];
  const decide = (from: number, to: number): void => {
    // Turned by d about its middle no point moves by more than radius * d.
    const slack = (radius * (to - from)) / 2;
    const pose = poseAt(scene, p, q, (from + to) / 2);
    const find = (a: Place, b: Place) => lookForPlace(pose, a, b, slack);
    const way1 = find({ s: 0, t: -far - 1 }, { s: widthIn, t: -far });
    const way2 = find({ s: -far - 1, t: 0 }, { s: -far, t: widthOut });
    const inAWay = way1.least >= slack ? way1 : way2.least >= slack ? way2 : undefined;
    const corner = inAWay ?? find({ s: -far, t: -far }, { s: widthIn, t: widthOut });
    const most = max(corner.most, way1.most, way2.most);
    const decided = (f: Found) => f.least >= slack || f.most < -slack;
    const clear = corner.least >= slack ? corner : undefined;
    // An angle that is asked for by itself is looked at as finely as any.
    const asked = held !== undefined && [held.comes, held.goes].some((a) => holds({ from, to }, a));
    const known = most < -slack || (clear !== undefined && decided(way1) && decided(way2) && !asked);
    if (!known && slack > FINEST) {
      const middle = (from + to) / 2;
      decide(from, middle);
      decide(middle, to);
      return;
    }
    leaves.push({
      from,
      to,
      stuck: most < -slack,
      outsideIn: way1.most < -slack,
      outsideOut: way2.most < -slack,
      ...(clear ? { clear: clear.place } : {}),
      ...(way1.least >= slack ? { clearIn: way1.place } : {}),
      ...(way2.least >= slack ? { clearOut: way2.place } : {}),
    });
  };
  const parts = 16;
  for (let i = 0; i < parts; i++) decide((PI * i) / parts, (PI * (i + 1)) / parts);
  return leaves;
}

/** Floods the circle of angles (half a turn) from the leaves that start to one that ends. */
function floods(
  leaves: readonly Leaf[],
  starts: (leaf: Leaf) => boolean,
  ends: (leaf: Leaf) => boolean,
  joined: (a: Leaf, b: Leaf) => boolean,
): boolean {
  const count = leaves.length;
  const links = leaves.map((leaf, i) => joined(leaf, leaves[(i + 1) % count]!));
  const seen = leaves.map(() => false);
  const open = leaves.flatMap((leaf, i) => (starts(leaf) ? [i] : []));
  for (const i of open) seen[i] = true;
  while (open.length > 0) {
    const i = open.pop()!;
    if (ends(leaves[i]!)) return true;
    const next = (i + 1) % count;
    const before = (i + count - 1) % count;
    for (const [j, linked] of [
      [next, links[i]],
      [before, links[before]],
    ] as const) {
      if (linked && !seen[j]) {
        seen[j] = true;
        open.push(j);
      }
    }
  }
  return false;
}

/** Angles of the long side to the first arm in which it must come and go; any when left out. */
interface Held {
  readonly comes: number;
  readonly goes: number;
}

const holds = (leaf: Pick<Leaf, 'from' | 'to'>, angle: number): boolean => {
  const turned = angle - PI * Math.floor(angle / PI);
  return [turned, turned + PI, turned - PI].some((a) => a >= leaf.from - 1e-9 && a <= leaf.to + 1e-9);
};

/** What the search found for a rectangle p x q: a path, a proof that there is none, or neither. */
export function searchCorner(
  scene: PlanScene,
  p: number,
  q: number,
  held?: Held,
): { path: boolean; none: boolean } {
  const leaves = leavesOf(scene, p, q, held);
  const comes = (leaf: Leaf): boolean => !held || holds(leaf, held.comes);
  const goes = (leaf: Leaf): boolean => !held || holds(leaf, held.goes);
  const slidesAt = (angle: number, from: Place, to: Place): boolean => {
    const pose = poseAt(scene, p, q, angle);
    if (slides(scene, pose, from, to)) return true;
    // By way of the outer corner, where there is often most room.
    const via = { s: scene.widthIn - pose.reach1, t: scene.widthOut - pose.reach2 };
    return slides(scene, pose, from, via) && slides(scene, pose, via, to);
  };
  const path = floods(
    leaves,
    (l) => comes(l) && !!l.clear && !!l.clearIn && slidesAt(l.from, l.clearIn, l.clear),
    (l) => goes(l) && !!l.clear && !!l.clearOut && slidesAt(l.from, l.clear, l.clearOut),
    (a, b) => !!a.clear && !!b.clear && slidesAt(a.to, a.clear, b.clear),
  );
  const none = !floods(
    leaves,
    (l) => comes(l) && !l.stuck && !l.outsideIn,
    (l) => goes(l) && !l.stuck && !l.outsideOut,
    (a, b) => !a.stuck && !b.stuck,
  );
  return { path, none };
}

/** Lengths of a rectangle with padding all round; a side that would be negative counts as 0. */
export const padded = (side: number, padding: number): number => max(0, side + 2 * padding);
