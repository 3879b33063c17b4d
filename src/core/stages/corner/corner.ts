import {
  clearanceRoundCorner,
  rectangleRoundCorner,
  surelyBlocked,
} from '../../geometry/rectangleRoundCorner';
import type { PieceSize, Pose } from '../../measures/piece';
import type { Working } from '../../measures/working';
import { turnRadians } from '../../motion/turnRadians';

export interface CornerMeasures {
  /** Clear width of the arm it comes from [mm]. */
  readonly widthIn: number;
  /** Clear width of the arm it goes to [mm]. */
  readonly widthOut: number;
  /** Height of the ceiling [mm], over both arms. */
  readonly ceiling: number;
  /** By how much the way turns [degrees], 1 to 120. */
  readonly turn: number;
}

/** The best family of motions round a corner, and what it leaves. */
export interface CornerResult {
  /** Clearance [mm a side]. */
  readonly clearance: number;
  readonly pose: Pose;
  /** Tilt [rad] out of level, 0 for a level pose. */
  readonly tilt: number;
  /** Sides in plan [mm] of the padded piece, where it is closest. */
  readonly plan: readonly [number, number];
  readonly limitedBy: 'ceiling' | 'corner';
}

/**
 * Clearance of a piece round a corner, over these families of motion: level in each pose, lengthwise or
 * crabwise; and turned out of level about one horizontal axis by a fixed angle, so that it just clears the
 * ceiling (tilted in the plane of travel, or leaning across it). Within a family the answer is exact.
 *
 * Model: two straight arms, longer than the piece, walls full height, the inner corner an upright edge, one
 * flat ceiling.
 *
 * A piece u x v turned by t about its third side a has the plan rectangle a x (u cos t + v sin t) and the
 * height u sin t + v cos t. Both are arches in t, so under a given ceiling the narrowest plan is at an end:
 * level, upright, or where the height just meets the ceiling.
 *
 * @source in plan: rectangleRoundCorner; tilting: trigonometry of the turned rectangle
 */
export function corner(measures: CornerMeasures, piece: PieceSize): CornerResult {
  const { length, breadth, thickness } = piece;
  const turn = turnRadians(measures.turn);
  const { widthIn: b1, widthOut: b2, ceiling } = measures;
  const arms = Math.min(b1, b2);

  let best: CornerResult = {
    clearance: -Infinity,
    pose: 'on edge',
    tilt: 0,
    plan: [0, 0],
    limitedBy: 'corner',
  };
  const level = (p: number, q: number, upright: number, pose: Pose): void => {
    const under = (ceiling - upright) / 2;
    if (under <= best.clearance || (arms - q) / 2 <= best.clearance) return;
    const plan = rectangleRoundCorner(p, q, b1, b2, turn);
    const clearance = Math.min(plan.clearance, under);
    if (clearance <= best.clearance) return;
    best = {
      clearance,
      pose: plan.crabwise && plan.clearance <= under ? crabName(pose) : pose,
      tilt: 0,
      plan: [p, q],
      limitedBy: under < plan.clearance ? 'ceiling' : 'corner',
    };
  };
  // On end its plan is the least of all, so where the ceiling leaves room nothing else can do better.
  level(breadth, thickness, length, 'on end');
  if (best.limitedBy === 'corner') return best;
  level(length, thickness, breadth, 'on edge');
  level(length, breadth, thickness, 'flat');

  const turned = (u: number, v: number, a: number): void => {
    const better = tiltedClearance(b1, b2, turn, ceiling, u, v, a, best.clearance);
    if (better) best = { ...better, limitedBy: 'corner' };
  };
  turned(length, breadth, thickness);
  turned(length, thickness, breadth);
  turned(breadth, thickness, length);
  return best;
}

// A piece that comes round without turning is named crabwise; one that stands on end turns freely anyway.
const crabName = (pose: Pose): Pose => (pose === 'on end' ? 'on end' : 'crabwise');

/**
 * The clearance with u x v turned about a so that its height meets the ceiling, when that beats `floor`.
 * It is of use only where v fits upright and u does not.
 */
function tiltedClearance(
  b1: number,
  b2: number,
  turn: number,
  ceiling: number,
  u: number,
  v: number,
  a: number,
  floor: number,
): { clearance: number; pose: Pose; tilt: number; plan: readonly [number, number] } | undefined {
  const planAt = (c: number) => {
    const u1 = Math.max(0, u + 2 * c);
    const v1 = Math.max(0, v + 2 * c);
    const a1 = Math.max(0, a + 2 * c);
    const diagonal2 = u1 * u1 + v1 * v1;
    // Height = D sin(t + d) and plan = D cos(t - d), d = atan(v/u); at height H, t = asin(H/D) - d.
    const plan =
      (Math.sqrt(Math.max(0, diagonal2 - ceiling * ceiling)) * (u1 * u1 - v1 * v1) + 2 * ceiling * u1 * v1) /
      diagonal2;
    return { a1, plan, u1, v1 };
  };
  const spare = (c: number): number => {
    const { a1, plan } = planAt(c);
    return clearanceRoundCorner(a1, plan, b1, b2, turn);
  };
  let low = Math.max(floor, (ceiling - u) / 2);
  let high = Math.min((ceiling - v) / 2, (Math.min(b1, b2) - Math.min(a, v)) / 2);
  if (!(high > low + 1e-9)) return undefined;
  const start = planAt(low + 1e-9);
  if (start.plan >= start.u1) return undefined;
  if (turn === Math.PI / 2 && surelyBlocked(start.a1, start.plan, b1, b2)) return undefined;
  let atLow = spare(low + 1e-9);
  if (!(atLow > 0)) return undefined;
  // Padding takes at least as much of the spare, so the root is nearly always this near.
  const near = low + 1e-9 + atLow;
  let atHigh = near < high ? spare(near) : 0;
  if (atHigh < 0) high = near;
  else atHigh = spare(high);
  if (atHigh >= 0) low = high;
  // Regula falsi with the Illinois rule: the spare falls steadily with the padding.
  for (let i = 0, side = 0; i < 60 && high - low > 1e-6; i++) {
    // A little short of the crossing, so that the last step lands where it passes.
    const crossing = (low * atHigh - high * atLow) / (atHigh - atLow) - 3e-7;
    const middle = i % 6 === 5 || !(crossing > low) ? (low + high) / 2 : crossing;
    const at = spare(middle);
    if (at >= 0) {
      low = middle;
      atLow = at;
      if (side === 1) atHigh /= 2;
      side = 1;
      if (at < 1e-6) break;
    } else {
      high = middle;
      atHigh = at;
      if (side === -1) atLow /= 2;
      side = -1;
    }
  }
  if (low <= floor) return undefined;
  const { a1, plan, u1, v1 } = planAt(low);
  return {
    clearance: low,
    pose: plan >= a1 ? 'tilted' : 'leaning',
    tilt: Math.asin(Math.min(1, ceiling / Math.hypot(u1, v1))) - Math.atan2(v1, u1),
    plan: [plan, a1],
  };
}

/** Clearance round a corner [mm a side], with its working. */
export function cornerClearance(measures: CornerMeasures, piece: PieceSize, working?: Working): number {
  const result = corner(measures, piece);
  if (working) writeCornerWorking(measures, piece, result, working);
  return result.clearance;
}

function writeCornerWorking(
  measures: CornerMeasures,
  piece: PieceSize,
  result: CornerResult,
  working: Working,
): void {
  const degrees = (angle: number): number => (angle * 180) / Math.PI;
  working({
    what: 'Pose in which it passes best',
    formula: 'the best of level in each pose, crabwise, tilted and leaning',
    value: result.pose,
    unit: '',
    source: 'each family solved exactly',
  });
  if (result.tilt > 0) {
    working({
      what: 'Tilt at which it just meets the ceiling',
      formula: 'asin(H/D) - atan(v/u), D the diagonal of the turned face',
      value: degrees(result.tilt),
      unit: 'degrees',
      source: 'trigonometry',
    });
  }
  working({
    what: 'Angle of the long side in plan to the way in, where it is closest',
    formula: 'least over f of the clearance at f',
    value: degrees(
      rectangleRoundCorner(
        result.plan[0],
        result.plan[1],
        measures.widthIn,
        measures.widthOut,
        turnRadians(measures.turn),
      ).angle,
    ),
    unit: 'degrees',
    source: 'Moretti, College Math. J. 33(3), 2002, 196-200',
  });
  working({
    what: 'What decides',
    formula: 'the lesser of the corner and the ceiling',
    value: result.limitedBy,
    unit: '',
    source: `ceiling ${measures.ceiling} mm, longest size ${piece.length} mm`,
  });
  working({
    what: 'Clearance',
    formula:
      'least over f of (b2 sin f + b1 sin f2 - p sin f sin f2 - q sin g) / (2 (sin f sin f2 + sin g)), f + f2 = turn',
    value: result.clearance,
    unit: 'mm a side',
    source: 'rectangle round a corner (Codeforces 98C; Moretti 2002), solved for the padding',
  });
}
