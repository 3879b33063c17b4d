import {
  clearanceRoundCorner,
  rectangleRoundCorner,
  surelyBlocked,
} from '../../geometry/rectangleRoundCorner';
import type { PieceSize, Pose } from '../../measures/piece';
import type { Working } from '../../measures/working';
import { turnedUnderCeiling, type TurnedPlan } from './turnedUnderCeiling';
import { degrees, RIGHT_ANGLE } from '../../measures/angle';

/** A corner between two straight ways. */
export interface CornerMeasures {
  /** Clear width of the arm it comes from [mm]. */
  readonly widthIn: number;
  /** Clear width of the arm it goes to [mm]. */
  readonly widthOut: number;
  /** Height of the ceiling [mm], over both arms. */
  readonly ceiling: number;
  /** By how much the way turns [rad], up to 120 degrees. */
  readonly turn: number;
}

/** Stands for a spare that is surely negative [mm a side]. */
const BLOCKED = -1;

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
 * @source in plan: rectangleRoundCorner; tilting: trigonometry of the turned rectangle
 */
export function corner(measures: CornerMeasures, piece: PieceSize): CornerResult {
  const { length, breadth, thickness } = piece;
  const { widthIn: b1, widthOut: b2, ceiling, turn } = measures;
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
    let looked = false;
    const spare = ({ plan, side }: TurnedPlan): number => {
      // Most faces do not pass with what has to be beaten, which one look tells.
      const first = !looked;
      looked = true;
      if (first && turn === RIGHT_ANGLE && surelyBlocked(side, plan, b1, b2)) return BLOCKED;
      return clearanceRoundCorner(side, plan, b1, b2, turn);
    };
    const most = (arms - Math.min(a, v)) / 2;
    const better = turnedUnderCeiling({ u, v, a }, ceiling, most, spare, best.clearance);
    if (!better) return;
    const { clearance, plan, side, tilt } = better;
    best = {
      clearance,
      pose: plan >= side ? 'tilted' : 'leaning',
      tilt,
      plan: [plan, side],
      limitedBy: 'corner',
    };
  };
  turned(length, breadth, thickness);
  turned(length, thickness, breadth);
  turned(breadth, thickness, length);
  return best;
}

// A piece that comes round without turning is named crabwise; one that stands on end turns freely anyway.
const crabName = (pose: Pose): Pose => (pose === 'on end' ? 'on end' : 'crabwise');

/**
 * Clearance round a corner [mm a side], with its working.
 * @param measures widths and ceiling [mm], turn [rad]
 * @example
 * cornerClearance({ widthIn: 900, widthOut: 900, ceiling: 2400, turn: Math.PI / 2 },
 *   { length: 1830, breadth: 930, thickness: 25 }) // 260.93: on end, Moretti's formula for 930 x 25
 */
export function cornerClearance(measures: CornerMeasures, piece: PieceSize, working?: Working): number {
  const result = corner(measures, piece);
  if (working) writeCornerWorking(measures, result, working);
  return result.clearance;
}

function writeCornerWorking(measures: CornerMeasures, result: CornerResult, working: Working): void {
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
      rectangleRoundCorner(result.plan[0], result.plan[1], measures.widthIn, measures.widthOut, measures.turn)
        .angle,
    ),
    unit: 'degrees',
    source: 'Moretti, College Math. J. 33(3), 2002, 196-200',
  });
  working({
    what: 'What decides',
    formula: 'the lesser of the corner and the ceiling',
    value: result.limitedBy,
    unit: '',
    source: 'own derivation: each is a limit by itself',
  });
  working({
    what: 'Clearance',
    formula:
      'least over f of (b2 sin f + b1 sin f2 - p sin f sin f2 - q sin g) / (2 (sin f sin f2 + sin g)), f + f2 = turn',
    value: result.clearance,
    unit: 'mm a side',
    source:
      'own derivation, a line between piece and inner corner at every angle; Moretti 2002, solved for the padding',
  });
}
