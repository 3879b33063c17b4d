import { leastBetween } from './goldenSection';
import { greatestPadding } from './rootFinding';
import type { PlanarPassage } from './planar/passageBracket';
import { boxPolygon } from './planar/planarWorld';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, abs, acos, asin, atan2, cbrt, cos, hypot, max, min, sin, tan } = Math;

/** A door from an approach into a passage across it, in plan; the approach square and centred on the door. */
export interface DoorPlan {
  /** Clear width of the door [mm]. */
  readonly door: number;
  /** Thickness of its wall [mm], 0 allowed. */
  readonly wall: number;
  /** Width of the approach [mm], at least that of the door. */
  readonly approach: number;
  /** Width of the passage [mm]. */
  readonly passage: number;
  /** From the jamb nearer the closed end to that end [mm]; absent: open both ways. */
  readonly deadEnd?: number | undefined;
}

/** How a rectangle comes out of a door. */
export interface DoorFit {
  /** Padding [mm a side] with which a motion is known. */
  readonly clearance: number;
  /** No planar motion does better; else one may. */
  readonly exact: boolean;
}

/**
 * Passage width [mm] needed by a rectangle p x q that comes lengthwise through a door and leaves lengthwise.
 *
 * At an angle f to the passage the head reaches least far when the lower side lies on the near jamb's edge
 * and the tail is as far back as it can be. With s the length behind that edge the head stands
 * (p - s) sin f + q cos f in the passage, and s is limited
 * - while the tail is behind the wall, by the approach's side: (a - q sin f)/cos f, a = (approach + door)/2,
 *   so that the width is p sin f - a tan f + q/cos f. The far jamb allows that while door sin f - wall cos f >= q;
 * - within the wall, by the far jamb's face: the same with a = door;
 * - past the wall (door sin f < q), by the far jamb's edge: s <= door cos f; and by the closed end: the same
 *   form with a = door + dead end.
 * The width is the greatest over all angles. For p > door it is needed by every planar motion: at an angle
 * at which the piece does not fit beside the jamb in the approach it has to straddle the near jamb or stand
 * in the passage altogether, which takes more; and where it does fit, the first form is at most q.
 * For p <= door the door is taken as only p wide, which is sufficient.
 * @source ours; checked against the planner on seeded scenes
 */
export function passageNeeded(p: number, q: number, plan: DoorPlan): number {
  const door = min(plan.door, p);
  if (q > door) return Infinity;
  if (door <= 0) return 0;
  const deadEnd = plan.deadEnd === undefined ? Infinity : plan.deadEnd + (plan.door - door) / 2;
  // door sin f - wall cos f = q
  const hold = min(1, q / hypot(door, plan.wall));
  const pastFarJamb = min(PI / 2, asin(hold) + atan2(plan.wall, door));
  const pastWall = asin(min(1, q / door));
  return max(
    q,
    greatestHead(p, q, (plan.approach + door) / 2, pastFarJamb, PI / 2),
    greatestHead(p, q, door, pastWall, pastFarJamb),
    greatestPastWall(p, q, door, pastWall),
    deadEnd === Infinity ? 0 : greatestHead(p, q, door + deadEnd, 0, pastWall),
  );
}

/**
 * Greatest p sin f - a tan f + q/cos f for f between two angles, a >= q. Its slope has the sign of
 * g = p cos^3 f - a + q sin f, which rises up to sin 2f = 2q/3p, falls up to the other such angle, and then
 * rises to q - a <= 0: so f has one peak, where g falls through 0.
 */
function greatestHead(p: number, q: number, a: number, from: number, to: number): number {
  const ends = max(headAt(p, q, a, from), headAt(p, q, a, to));
  // Falling at the far end, and rising somewhere before it: only then is there a peak inside.
  if (headSlope(p, q, a, to) >= 0) return ends;
  let low = from;
  if (headSlope(p, q, a, low) <= 0) {
    const crest = p > 0 ? (2 * q) / (3 * p) : 2;
    if (crest >= 1) return ends;
    low = asin(crest) / 2;
    if (low <= from || low >= to || headSlope(p, q, a, low) <= 0) return ends;
  }
  let high = to;
  let f = acos(min(1, cbrt(max(0, (a - q) / p))));
  if (!(f > low && f < high)) f = (low + high) / 2;
  // Newton within a bracket.
  for (let i = 0; i < 60; i++) {
    const c = cos(f);
    const s = sin(f);
    const g = p * c * c * c - a + q * s;
    if (g > 0) low = f;
    else high = f;
    let next = f - g / (q * c - 3 * p * c * c * s);
    if (!(next > low && next < high)) next = (low + high) / 2;
    const moved = abs(next - f);
    f = next;
    // The head is flat at its peak: this leaves it well within a nanometre.
    if (moved < 1e-8) break;
  }
  return max(ends, headAt(p, q, a, f));
}

function headAt(p: number, q: number, a: number, f: number): number {
  const c = cos(f);
  // At a right angle the form tends to minus infinity (a > q) or to p.
  if (c < 1e-9) return a > q + 1e-9 ? -Infinity : p;
  const s = sin(f);
  return p * s + (q - a * s) / c;
}

function headSlope(p: number, q: number, a: number, f: number): number {
  const c = cos(f);
  return p * c * c * c - a + q * sin(f);
}

/** Greatest (p - d cos f) sin f + q cos f for f up to an angle. */
function greatestPastWall(p: number, q: number, d: number, to: number): number {
  const end = pastWallAt(p, q, d, to);
  // Its slope p cos f - d cos 2f - q sin f is at least (p - d) cos f - q sin f: mostly it only rises.
  if (p - d >= q * tan(to)) return end;
  const N = 24;
  let best = end;
  let at = 0;
  for (let i = 0; i < N; i++) {
    const value = pastWallAt(p, q, d, (to * i) / N);
    if (value > best) {
      best = value;
      at = i;
    }
  }
  if (best === end) return end;
  const low = (to * max(0, at - 1)) / N;
  const high = (to * min(N, at + 1)) / N;
  return max(best, -leastBetween((f) => -pastWallAt(p, q, d, f), low, high, 60).value);
}

function pastWallAt(p: number, q: number, d: number, f: number): number {
  const c = cos(f);
  return (p - d * c) * sin(f) + q * c;
}

/**
 * Padding with which a rectangle passes lengthwise out of a door and away lengthwise. Exact when the padded
 * rectangle is longer than the door is wide, or when nothing but the door's or the passage's width limits it;
 * otherwise sufficient (a short piece may also turn in the approach and come out sideways).
 * @param p side along the approach and along the passage [mm]
 * @param q side across [mm]
 * @example doorIntoPassage(1830, 25, { door: 762, wall: 110, approach: 762, passage: 1000 }).clearance // 100.297
 */
export function doorIntoPassage(p: number, q: number, plan: DoorPlan): DoorFit {
  const most = min((plan.door - q) / 2, (plan.passage - q) / 2);
  const spare = (c: number): number =>
    plan.passage - passageNeeded(max(0, p + 2 * c), max(0, q + 2 * c), plan);
  const least = -max(p, q) / 2;
  if (most <= least) return { clearance: least, exact: true };
  // Wider than long never arises at the top: the door's width is for the side across.
  const top = most - 1e-9 * (1 + abs(most));
  if (spare(top) >= 0) return { clearance: top, exact: true };
  let low = max(least, most - 64);
  while (low > least && spare(low) < 0) low = max(least, most - 4 * (most - low));
  const clearance = greatestPadding(low, top, spare);
  if (clearance === undefined) return { clearance: least, exact: false };
  return { clearance, exact: p + 2 * clearance > plan.door };
}

/**
 * The same as `doorIntoPassage` for the planner: jambs at x = +-door/2, the passage above y = 0, the closed end, if any,
 * to the left; it is left to the right.
 * @param p side that comes lengthwise [mm]
 * @param q the other side [mm]
 * @param startAngle angle [rad] of side p to the passage when it comes: a right angle lengthwise, 0 crosswise
 * @param goalAngle the same when it leaves: 0 lengthwise
 */
export function doorPassage(
  p: number,
  q: number,
  plan: DoorPlan,
  startAngle = PI / 2,
  goalAngle = 0,
): PlanarPassage {
  const { door, wall, approach, passage, deadEnd } = plan;
  const reach = hypot(p, q) / 2;
  // Beyond these the piece touches nothing but one pair of walls, so nothing is gained by going farther.
  const deep = reach + 1;
  const far = 2 * deep + reach + door + approach + passage + wall + 1000;
  const left = deadEnd === undefined ? -far : -door / 2 - deadEnd;
  const obstacles = [
    boxPolygon(-far, -far, -approach / 2, -wall),
    boxPolygon(approach / 2, -far, far, -wall),
    boxPolygon(-far, passage, far, far),
  ];
  if (wall > 0) {
    obstacles.push(boxPolygon(-far, -wall, -door / 2, 0), boxPolygon(door / 2, -wall, far, 0));
  } else if (approach > door) {
    // A wall without thickness: a thin sliver keeps the jambs' edges.
    obstacles.push(boxPolygon(-far, -1e-3, -door / 2, 0), boxPolygon(door / 2, -1e-3, far, 0));
  }
  if (deadEnd !== undefined) obstacles.push(boxPolygon(-far, -wall, left, far));
  const out = door / 2 + deep;
  return {
    world: {
      obstacles,
      centre: {
        xMin: max(-out, left),
        xMax: out + 1,
        yMin: -wall - deep - 1,
        yMax: passage,
      },
    },
    start: {
      xMin: -approach / 2,
      xMax: approach / 2,
      yMin: -wall - deep - 1,
      yMax: -wall - deep,
      angle: startAngle,
    },
    goal: { xMin: out, xMax: out + 1, yMin: 0, yMax: passage, angle: goalAngle },
  };
}
