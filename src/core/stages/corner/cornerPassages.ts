import { rectangleRoundCornerInHold } from '../../geometry/rectangleRoundCorner';
import { turnsRightAngle } from '../../geometry/turnsRightAngle';
import type { PieceSize, Pose } from '../../measures/piece';
import type { CornerMeasures } from './corner';
import { ALL_HOLDS, sizesOfHold, poseOfHold, type Hold } from '../../motion/hold';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import { openingAtMost } from '../opening/openingAtMost';
import type { StagePassage } from '../../motion/stagePassage';
import { turnRadians } from '../../motion/turnRadians';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, abs, asin, atan2, cbrt, cos, hypot, max, min, pow, sin, sqrt } = Math;

// Held crosswise instead of lengthwise, the same size upright.
const CROSSED: Record<Hold, Hold> = { LT: 'BT', BT: 'LT', LB: 'TB', TB: 'LB', BL: 'TL', TL: 'BL' };

/**
 * The ways round a corner, by how the piece is held before and after it: level, turning with the corner or
 * moved sideways without turning; tilted up in the first arm until it just clears the ceiling; leaning about
 * the direction of travel, which needs room to lean before the corner and to stand level after it.
 *
 * Model: two straight arms, longer than the piece, walls full height, the inner corner an upright edge, one
 * flat ceiling. A way that cannot pass and that a better one stands beside is left out.
 * @param roomToLean false: the ways that need room to lean beside the corner are left out; the others are the same
 * @source in plan: rectangleRoundCorner; tilting: trigonometry of the turned rectangle
 */
export function cornerPassages(
  measures: CornerMeasures,
  piece: PieceSize,
  roomToLean = true,
): StagePassage[] {
  const { widthIn, widthOut, ceiling } = measures;
  const turn = turnRadians(measures.turn);
  const proved = cornerAtMost(measures, piece);
  const passages: StagePassage[] = [];
  const cornerWords = `against the inner corner, between ${round(widthIn)} and ${round(widthOut)} mm`;
  let best = -Infinity;

  const add = (
    from: Hold,
    to: Hold,
    clearance: number,
    pose: Pose,
    critical: string,
    turningRoom = false,
  ): void => {
    if (clearance > best) best = clearance;
    const answer = { clearance, atMost: proved.atMost, bound: proved.bound, pose, critical };
    passages.push(turningRoom ? { from, to, answer, needsTurningRoom: true } : { from, to, answer });
  };

  for (const hold of ALL_HOLDS) {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const under = max((ceiling - upright) / 2, -piece.length / 2);
    const level = (crosswise: boolean): void => {
      const most = min(under, (widthIn - across) / 2, (widthOut - (crosswise ? along : across)) / 2);
      if (most < min(0, best)) return;
      const fit = roundInHold(along, across, widthIn, widthOut, turn, crosswise);
      const clearance = min(under, fit.clearance);
      const crab = fit.crabwise && hold[1] !== 'L' && under >= fit.clearance;
      add(
        hold,
        crosswise ? CROSSED[hold] : hold,
        clearance,
        crab ? 'crabwise' : poseOfHold(hold),
        under < fit.clearance ? `under the ceiling of ${round(ceiling)} mm` : cornerWords,
      );
    };
    level(false);
    level(true);
  }

  const tilted = (hold: Hold, u: number, v: number, a: number, leaning: boolean): void => {
    if (!leaning || roomToLean) turnedOver(hold, hold, u, v, a, leaning, false);
    // Moved sideways it leans in one arm or in the other.
    if (turn === PI / 2 && roomToLean) turnedOver(hold, CROSSED[hold], u, v, a, leaning, true);
  };
  const turnedOver = (
    from: Hold,
    to: Hold,
    u: number,
    v: number,
    a: number,
    leaning: boolean,
    crosswise: boolean,
  ): void => {
    const level = firstClearance(passages, from, to);
    const fit = tiltedClearance({ measures, turn, u, v, a, lengthwise: !leaning, crosswise }, level);
    if (!fit) return;
    const words = `turned ${Math.round((fit.tilt * 180) / PI)} degrees out of level, ${cornerWords}`;
    add(from, to, fit.clearance, leaning ? 'leaning' : 'tilted', words, leaning || crosswise);
  };
  const { length, breadth, thickness } = piece;
  tilted('LB', length, breadth, thickness, false);
  tilted('LT', length, thickness, breadth, false);
  tilted('BT', breadth, thickness, length, false);
  tilted('LT', breadth, thickness, length, true);
  tilted('LB', breadth, thickness, length, true);
  tilted('BT', length, thickness, breadth, true);
  tilted('TB', length, breadth, thickness, true);
  return passages;
}

/** Clearance of the first passage between two ways of being held; -Infinity where there is none. */
function firstClearance(passages: readonly StagePassage[], from: Hold, to: Hold): number {
  for (const passage of passages) {
    if (passage.from === from && passage.to === to) return passage.answer.clearance;
  }
  return -Infinity;
}

/** As `rectangleRoundCornerInHold`, quickly where the turn is a right angle. */
function roundInHold(
  along: number,
  across: number,
  widthIn: number,
  widthOut: number,
  turn: number,
  leavesCrosswise: boolean,
): { clearance: number; crabwise: boolean } {
  if (turn !== PI / 2 || leavesCrosswise) {
    return rectangleRoundCornerInHold(along, across, widthIn, widthOut, turn, leavesCrosswise);
  }
  // Lengthwise in both arms or crosswise in both: a quarter turn between, whichever side leads.
  const arms = max(min(widthIn, widthOut) - across, -max(along, across)) / 2;
  const p = max(along, across);
  const q = min(along, across);
  const turning = arms <= -q / 2 ? -q / 2 : turnsRightAngle(p, q, widthIn, widthOut);
  return { clearance: min(arms, turning), crabwise: false };
}

/** A way round the corner with u x v turned out of level about its third side a. */
interface TurnedOver {
  readonly measures: CornerMeasures;
  readonly turn: number;
  readonly u: number;
  readonly v: number;
  readonly a: number;
  /** The turned face lies along the way in; else across it. */
  readonly lengthwise: boolean;
  /** It leaves crosswise, moved sideways. */
  readonly crosswise: boolean;
}

/**
 * Clearance with u x v turned about its third side a so that its height just meets the ceiling, when that
 * beats `floor`. The height D sin(t + d) and the plan D cos(t - d), d = atan(v/u), are arches in t, so the
 * plan is least at an end: level, upright, or against the ceiling.
 */
function tiltedClearance(over: TurnedOver, floor: number): { clearance: number; tilt: number } | undefined {
  const { u, v, a, lengthwise } = over;
  const { widthIn, widthOut, ceiling } = over.measures;
  let low = max(floor, (ceiling - u) / 2) + 1e-9;
  // Tilted, the side across stays as it is; leaning, it is never less than the lesser of the two turned.
  const across = lengthwise ? a : min(u, v);
  const arms = over.crosswise ? widthIn : min(widthIn, widthOut);
  let high = min((ceiling - v) / 2, (arms - across) / 2);
  if (!(high > low)) return undefined;
  if (planAt(over, low, tiltAt(over, low)) >= max(0, u + 2 * low)) return undefined;
  let atLow = spareAt(over, low);
  if (atLow < 0) return undefined;
  let atHigh = spareAt(over, high);
  if (atHigh >= 0) low = high;
  // The spare falls steadily with the padding: false position, halving when it is slow.
  for (let i = 0; i < 80 && high - low > 1e-9 * (1 + abs(high)); i++) {
    const guess = (low * atHigh - high * atLow) / (atHigh - atLow);
    const middle = i % 3 === 2 || !(guess > low && guess < high) ? (low + high) / 2 : guess;
    const at = spareAt(over, middle);
    if (at >= 0) {
      low = middle;
      atLow = at;
      if (at < 1e-10) break;
    } else {
      high = middle;
      atHigh = at;
    }
  }
  return { clearance: low, tilt: tiltAt(over, low) };
}

/** The angle [rad] at which its height just meets the ceiling, padded by c; negative when level it does not. */
function tiltAt({ measures, u, v }: TurnedOver, c: number): number {
  const u1 = max(0, u + 2 * c);
  const v1 = max(0, v + 2 * c);
  return asin(min(1, measures.ceiling / hypot(u1, v1))) - atan2(v1, u1);
}

/** Its side in plan [mm] when turned so. */
function planAt({ u, v }: TurnedOver, c: number, tilt: number): number {
  return max(0, u + 2 * c) * cos(tilt) + max(0, v + 2 * c) * sin(tilt);
}

/** What it has to spare [mm a side] beyond the padding c: negative when it does not come round with that. */
function spareAt(over: TurnedOver, c: number): number {
  const { measures, turn, a, lengthwise, crosswise } = over;
  const { widthIn, widthOut } = measures;
  const tilt = tiltAt(over, c);
  if (tilt < 0) return -Infinity;
  const plan = planAt(over, c, tilt);
  const side = max(0, a + 2 * c);
  const along = lengthwise ? plan : side;
  const across = lengthwise ? side : plan;
  // No motion beats the arms in which it comes and goes.
  const between = min(widthIn - across, widthOut - (crosswise ? along : across)) / 2;
  if (between < 0) return between;
  return roundInHold(along, across, widthIn, widthOut, turn, crosswise).clearance;
}

/**
 * Greatest padding with which a box can pass a corner by any motion. Its longest diagonal, of length
 * D = sqrt(L^2 + B^2 + T^2), never shows less than sqrt(D^2 - H^2) in plan under a ceiling H, so a ladder of
 * that length has to come round; and each arm is an opening that it passes.
 * @source the ladder round a corner, calculus textbooks; rounded outward
 */
export function cornerAtMost(measures: CornerMeasures, piece: PieceSize): ProvedBound {
  const { widthIn, widthOut, ceiling } = measures;
  const arm = openingAtMost(
    { width: min(widthIn, widthOut), height: ceiling },
    piece,
    'one of the two passages',
  );
  const ladder = ladderAtMost(measures, piece);
  if (ladder < arm.atMost) {
    return { atMost: ladder, bound: 'its longest diagonal is too long for the corner under this ceiling' };
  }
  return arm;
}

function ladderAtMost({ widthIn, widthOut, ceiling, turn }: CornerMeasures, piece: PieceSize): number {
  const { length, breadth, thickness } = piece;
  const longest = longestLadder(widthIn, widthOut, turnRadians(turn));
  const passes = (c: number): boolean => {
    const d2 = max(0, length + 2 * c) ** 2 + max(0, breadth + 2 * c) ** 2 + max(0, thickness + 2 * c) ** 2;
    const shown = sqrt(max(0, d2 - ceiling * ceiling));
    return shown === 0 || shown <= longest;
  };
  // A bound above this is of no use to anybody: nothing in a house leaves half a metre a side.
  let high = 500;
  if (passes(high)) return Infinity;
  let low = -length / 2;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (passes(middle)) low = middle;
    else high = middle;
  }
  return high + 1e-6;
}

/**
 * Length [mm] of the longest segment that goes round in plan, by any motion. It turns with the corner while it
 * is at most the least of b1 / sin f + b2 / sin(turn - f), a convex sum; or it goes through without turning
 * when one angle suits both arms, which takes asin(b1/p) + asin(b2/p) >= min(turn, 180 - turn).
 * Both are found from above, which is outward for a proof.
 */
function longestLadder(widthIn: number, widthOut: number, turn: number): number {
  if (turn === PI / 2) return pow(cbrt(widthIn) ** 2 + cbrt(widthOut) ** 2, 1.5);
  const atAngle = (f: number): number => widthIn / sin(f) + widthOut / sin(turn - f);
  let low = 0;
  let high = turn;
  for (let i = 0; i < 60; i++) {
    const third = (high - low) / 3;
    if (atAngle(low + third) < atAngle(high - third)) high -= third;
    else low += third;
  }
  const turning = atAngle((low + high) / 2);
  const arc = min(turn, PI - turn);
  const suitsBoth = (p: number): boolean => asin(min(1, widthIn / p)) + asin(min(1, widthOut / p)) >= arc;
  if (!suitsBoth(turning)) return turning;
  let from = turning;
  let to = 2 * turning;
  while (suitsBoth(to)) to *= 2;
  while (to - from > 1e-6) {
    const middle = (from + to) / 2;
    if (suitsBoth(middle)) from = middle;
    else to = middle;
  }
  return to;
}

const round = (value: number): number => Math.round(value);
