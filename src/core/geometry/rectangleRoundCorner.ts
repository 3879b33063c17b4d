import { leastBetween } from './goldenSection';
import { rectangleThroughOpening } from './rectangleThroughOpening';
import { turnsRightAngle } from './turnsRightAngle';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, abs, atan, cbrt, ceil, cos, floor, max, min, pow, sin, sqrt } = Math;

/** How a rectangle leaves a corner: with the side that came first lengthwise so again, or across the arm. */
export type LeavesArm = 'lengthwise' | 'crosswise';

/** How a rectangle comes round a corner in plan. */
export interface CornerFit {
  /** Even padding [mm a side] with which the rectangle still passes; negative when it does not pass. */
  readonly clearance: number;
  /** Angle [rad] of the long side to the way in, where it is closest. */
  readonly angle: number;
  /** It passes without turning: moved sideways out of one of the two arms. */
  readonly crabwise: boolean;
}

/**
 * The greatest padding with which a rectangle p x q passes round a corner of two straight arms, by any
 * motion in plan. Exact: for each angle of the rectangle the free places are connected, so that a motion is
 * a path of angles from one that the first arm allows to one that the second arm allows.
 *
 * The padding at one angle follows from a separating line between the piece and the inner corner, its normal
 * between those of the two inner walls. At the critical padding that normal is a wall's (the piece fits
 * across an arm) or a side's (the inner corner touches the middle of a side). For a right angle and the long
 * side at angle f this last is
 *   c(f) = (b2 sin f + b1 cos f - p sin f cos f - q) / (2 (sin f cos f + 1)),
 * whose least value over f decides for a long piece (Moretti, College Math. J. 33(3), 2002, 196-200;
 * Codeforces problem 98C gives the same formula with the cases of a short piece). A side that the padding
 * would make negative counts as 0, and then the rule is the ladder's: (b1^(2/3) + b2^(2/3))^(3/2).
 *
 * @param side1 one side of the rectangle [mm], not negative
 * @param side2 the other side [mm], not negative
 * @param widthIn width of the arm it comes from [mm], positive
 * @param widthOut width of the arm it goes to [mm], positive
 * @param turn by how much the way turns [rad], more than 0 and less than pi
 * @example rectangleRoundCorner(1830, 25, 900, 900, Math.PI / 2).clearance // 110.93
 */
export function rectangleRoundCorner(
  side1: number,
  side2: number,
  widthIn: number,
  widthOut: number,
  turn: number,
): CornerFit {
  const p = max(side1, side2);
  const q = min(side1, side2);
  return turn === HALF_PI
    ? roundRightAngle(p, q, widthIn, widthOut)
    : roundAnyAngle(p, q, widthIn, widthOut, turn);
}

/**
 * The clearance of `rectangleRoundCorner` alone [mm a side], which for a right angle takes less work.
 * @param side1 side of the rectangle [mm]
 * @param side2 its other side [mm]
 * @param widthIn width of the first arm [mm]
 * @param widthOut width of the second [mm]
 * @param turn by how much the way turns [rad]
 */
export function clearanceRoundCorner(
  side1: number,
  side2: number,
  widthIn: number,
  widthOut: number,
  turn: number,
): number {
  const p = max(side1, side2);
  const q = min(side1, side2);
  if (turn !== HALF_PI) return roundAnyAngle(p, q, widthIn, widthOut, turn).clearance;
  const arms = (min(widthIn, widthOut) - q) / 2;
  const sideways = rectangleThroughOpening(widthIn, widthOut, p, q).clearance;
  if (sideways >= arms) return sideways;
  const turning = turnRightAngle(p, q, widthIn, widthOut)?.clearance;
  return max(sideways, turning ?? min(arms, turnsRightAngle(p, q, widthIn, widthOut)));
}

/**
 * Whether a rectangle surely does not pass a right-angled corner, by one look: it does not fit sideways, and at
 * the ladder's angle, which every turn goes through, it fits neither arm nor over the corner.
 * @param side1 side of the rectangle [mm]
 * @param side2 its other side [mm]
 * @param b1 width of one arm [mm]
 * @param b2 width of the other [mm]
 * @returns false says nothing
 */
export function surelyBlocked(side1: number, side2: number, b1: number, b2: number): boolean {
  if (rectangleThroughOpening(b1, b2, side1, side2).clearance >= 0) return false;
  const p = max(side1, side2);
  const q = min(side1, side2);
  const tangent = cbrt(b1 / b2);
  const c = 1 / sqrt(1 + tangent * tangent);
  const s = tangent * c;
  return b1 < p * s + q * c && b2 < p * c + q * s && b1 * c + b2 * s < p * s * c + q;
}

/**
 * As `rectangleRoundCorner`, for a rectangle that comes with its side `along` lengthwise in the first arm and
 * leaves with that same side lengthwise in the second (or crosswise).
 *
 * @param along side along the first arm [mm]; it may be the shorter
 * @param across side across the first arm [mm]
 */
export function rectangleRoundCornerInHold(
  along: number,
  across: number,
  widthIn: number,
  widthOut: number,
  turn: number,
  leaves: LeavesArm,
): CornerFit {
  if (turn === HALF_PI && leaves === 'crosswise') {
    // Moved sideways without turning: nothing can beat the two arms in which it ends.
    const least = max(-across / 2, -along / 2);
    const arms = min((widthIn - across) / 2, (widthOut - along) / 2);
    if (arms >= least) return { clearance: arms, angle: 0, crabwise: true };
  }
  if (turn === HALF_PI && leaves === 'lengthwise' && along >= across) {
    const fit = turnRightAngle(along, across, widthIn, widthOut);
    if (fit) return fit;
  }
  const start = along >= across ? 0 : HALF_PI;
  return widestTurn(
    max(along, across),
    min(along, across),
    widthIn,
    widthOut,
    turn,
    [start],
    [start + turn + (leaves === 'crosswise' ? HALF_PI : 0)],
  );
}

const HALF_PI = PI / 2;

// Fixed angles at which the right-angle formula is first sampled, ends included.
const SAMPLES = 13;
const SAMPLE_SIN = Array.from({ length: SAMPLES }, (_, i) => sin((i * HALF_PI) / (SAMPLES - 1)));
const SAMPLE_COS = Array.from({ length: SAMPLES }, (_, i) => cos((i * HALF_PI) / (SAMPLES - 1)));

function roundRightAngle(p: number, q: number, b1: number, b2: number): CornerFit {
  // No motion beats the two arms themselves, and moving sideways may already reach that.
  const arms = (min(b1, b2) - q) / 2;
  const sideways = rectangleThroughOpening(b1, b2, p, q);
  const crab: CornerFit = {
    clearance: sideways.clearance,
    angle: b1 >= b2 ? HALF_PI - sideways.angle : sideways.angle,
    crabwise: true,
  };
  if (sideways.clearance >= arms) return crab;

  const turning = turnRightAngle(p, q, b1, b2);
  if (turning) return turning.clearance > crab.clearance ? turning : crab;
  // A short piece, for part of the turn free in one arm alone: mostly it does best sideways.
  if (min(arms, turnsRightAngle(p, q, b1, b2)) <= crab.clearance) return crab;
  return roundAnyAngle(p, q, b1, b2, HALF_PI);
}

/**
 * Lengthwise in, lengthwise out, turning with the corner. Undefined when the least value of the formula lies
 * where one arm alone allows the angle, so that it does not bind there.
 */
function turnRightAngle(p: number, q: number, b1: number, b2: number): CornerFit | undefined {
  const turning = leastWhileTurning(p, q, b1, b2);
  if (turning.clearance < -q / 2) {
    // Thinner than nothing is nothing: a segment, the ladder.
    const ladder = pow(cbrt(b1) ** 2 + cbrt(b2) ** 2, 1.5);
    const clearance = max(-p / 2, min((ladder - p) / 2, -q / 2));
    return { clearance, angle: atan(cbrt(b1 / b2)), crabwise: false };
  }
  const s = sin(turning.angle);
  const c = cos(turning.angle);
  const across = 2 * (s + c);
  const freeInOneArm = max((b1 - p * s - q * c) / across, (b2 - p * c - q * s) / across);
  if (freeInOneArm > turning.clearance) return undefined;
  return { ...turning, crabwise: false };
}

/** Least value of the right-angle formula over all angles, by sampling and Newton's method on its slope. */
function leastWhileTurning(
  p: number,
  q: number,
  b1: number,
  b2: number,
): { clearance: number; angle: number } {
  let least = Infinity;
  let at = 0;
  for (let i = 0; i < SAMPLES; i++) {
    const s = SAMPLE_SIN[i]!;
    const c = SAMPLE_COS[i]!;
    const value = (b2 * s + b1 * c - p * s * c - q) / (s * c + 1);
    if (value < least) {
      least = value;
      at = i;
    }
  }
  const step = HALF_PI / (SAMPLES - 1);
  let low = max(0, (at - 1) * step);
  let high = min(HALF_PI, (at + 1) * step);
  let angle = at * step;
  for (let i = 0; i < 60; i++) {
    const s = sin(angle);
    const c = cos(angle);
    // value = N/D; the sign of its slope is that of N'D - ND', and D = sc + 1 is positive.
    const n = b2 * s + b1 * c - p * s * c - q;
    const d = s * c + 1;
    const n1 = b2 * c - b1 * s - p * (c * c - s * s);
    const d1 = c * c - s * s;
    const slope = n1 * d - n * d1;
    least = min(least, n / d);
    if (slope > 0) high = angle;
    else low = angle;
    const n2 = -b2 * s - b1 * c + 4 * p * s * c;
    const d2 = -4 * s * c;
    const curve = n2 * d - n * d2;
    let next = curve > 0 ? angle - slope / curve : (low + high) / 2;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (abs(next - angle) < 1e-9) break;
    angle = next;
  }
  return { clearance: least / 2, angle };
}

/** Padding at one angle: in the first arm, in the second, and anywhere at the corner. */
interface AtAngle {
  first: number;
  second: number;
  corner: number;
}

function atAngle(p: number, q: number, b1: number, b2: number, turn: number, angle: number): AtAngle {
  const s1 = abs(sin(angle));
  const c1 = abs(cos(angle));
  const s2 = abs(sin(angle - turn));
  const c2 = abs(cos(angle - turn));
  const first = floored(p, q, b1 - p * s1 - q * c1, s1 + c1, b1 - p * s1, s1);
  const second = floored(p, q, b2 - p * s2 - q * c2, s2 + c2, b2 - p * s2, s2);
  let corner = max(first, second);
  // Long side against the inner corner, then the short side.
  for (const side of [0, 1]) {
    const normal = mod(angle + side * HALF_PI, PI);
    if (normal <= 0 || normal >= turn) continue;
    const k1 = sin(turn - normal) / sin(turn);
    const k2 = sin(normal) / sin(turn);
    const alongP = (k1 * s1 + k2 * s2) / 2;
    const alongQ = (k1 * c1 + k2 * c2) / 2;
    const room = k1 * b1 + k2 * b2;
    const reachP = alongP + (side === 1 ? 0.5 : 0);
    const reachQ = alongQ + (side === 0 ? 0.5 : 0);
    const value = floored(p, q, room - p * reachP - q * reachQ, reachP + reachQ, room - p * reachP, reachP);
    if (value > corner) corner = value;
  }
  return { first, second, corner };
}

/** Solves for the padding, with the short side counting as 0 once the padding would make it negative. */
function floored(
  p: number,
  q: number,
  spare: number,
  rate: number,
  spareThin: number,
  rateThin: number,
): number {
  const padding = spare / (2 * rate);
  if (padding >= -q / 2) return padding;
  const thin = rateThin > 0 ? spareThin / (2 * rateThin) : Infinity;
  return max(-p / 2, min(thin, -q / 2));
}

const mod = (value: number, by: number): number => value - by * floor(value / by);

// Between samples of the circle of angles at most [rad].
const CIRCLE_STEP = PI / 60;
// Never fewer samples between two kinks.
const LEAST_SAMPLES = 4;
// How far [rad] the slope at a sample is looked for.
const SLOPE_STEP = 1e-7;
/** After so many a dip is known to a hundred-millionth of the way between two samples. */
const DIP_STEPS = 40;

/** Any turn, entering and leaving at whatever angle is best. */
function roundAnyAngle(p: number, q: number, b1: number, b2: number, turn: number): CornerFit {
  return widestTurn(p, q, b1, b2, turn, undefined, undefined);
}

/**
 * The widest path on the circle of angles, from a starting angle (any, when undefined) to a final one. The
 * dips of the padding cut the circle into arcs within which it rises and falls once; arcs are joined over the
 * highest dips first, until one joined stretch holds an angle good for each arm.
 */
function widestTurn(
  p: number,
  q: number,
  b1: number,
  b2: number,
  turn: number,
  starts: readonly number[] | undefined,
  ends: readonly number[] | undefined,
): CornerFit {
  const corner = (angle: number): number => atAngle(p, q, b1, b2, turn, angle).corner;
  const dips = dipsOf(corner, [0, HALF_PI, mod(turn, PI), mod(turn + HALF_PI, PI)]);

  // Where each arm is at its best: lengthwise and crosswise. Dips can be good places too.
  const anywhere = [0, HALF_PI, turn, turn + HALF_PI, ...dips.map((d) => d.angle)];
  const arcs = dips.map((dip, i) => {
    const from = dip.angle;
    const next = dips[(i + 1) % dips.length]!.angle;
    const span = dips.length === 1 ? PI : mod(next - from, PI);
    const best = (places: readonly number[] | undefined, arm: 'first' | 'second') => {
      let found = { value: -Infinity, angle: from };
      for (const place of places ?? [...anywhere, next]) {
        if (mod(place - from, PI) > span + 1e-9) continue;
        const value = atAngle(p, q, b1, b2, turn, place)[arm];
        if (value > found.value) found = { value, angle: place };
      }
      return found;
    };
    const first = best(starts, 'first');
    const second = best(ends, 'second');
    return { first, second };
  });

  let best: CornerFit = { clearance: -Infinity, angle: 0, crabwise: false };
  const consider = (value: number, angle: number, crabwise: boolean): void => {
    if (value > best.clearance) best = { clearance: value, angle: mod(angle, PI), crabwise };
  };
  for (const arc of arcs) {
    const value = min(arc.first.value, arc.second.value);
    const angle = arc.first.value < arc.second.value ? arc.first.angle : arc.second.angle;
    consider(value, angle, true);
  }
  const owner = arcs.map((_, i) => i);
  const rootOf = (i: number): number => (owner[i] === i ? i : rootOf(owner[i]!));
  const order = dips.map((_, i) => i).sort((i, j) => dips[j]!.value - dips[i]!.value);
  for (const i of order) {
    const left = rootOf((i + arcs.length - 1) % arcs.length);
    const right = rootOf(i);
    if (left === right) continue;
    owner[right] = left;
    const kept = arcs[left]!;
    const gone = arcs[right]!;
    if (gone.first.value > kept.first.value) kept.first = gone.first;
    if (gone.second.value > kept.second.value) kept.second = gone.second;
    const value = min(dips[i]!.value, kept.first.value, kept.second.value);
    consider(value, dips[i]!.angle, false);
  }
  return best;
}

/**
 * The dips of a function on the circle of angles (half a turn). It may have peaks as sharp as you like at
 * `kinks` and a dip close by, so that samples alone would miss it: the slope on either side of each sample
 * tells between which two it stops falling.
 */
function dipsOf(f: (angle: number) => number, kinks: readonly number[]): { angle: number; value: number }[] {
  const sorted = [...kinks].sort((x, y) => x - y);
  const angles: number[] = [];
  for (let i = 0; i < sorted.length; i++) {
    const from = sorted[i]!;
    const to = i + 1 < sorted.length ? sorted[i + 1]! : sorted[0]! + PI;
    if (to - from < 1e-6) continue;
    const count = max(LEAST_SAMPLES, ceil((to - from) / CIRCLE_STEP));
    for (let k = 0; k < count; k++) angles.push(from + ((to - from) * k) / count);
  }
  const values = angles.map(f);
  const fallsTo = angles.map((angle, i) => f(angle - SLOPE_STEP) > values[i]!);
  const fallsFrom = angles.map((angle, i) => f(angle + SLOPE_STEP) < values[i]!);

  const dips: { angle: number; value: number }[] = [];
  for (let i = 0; i < angles.length; i++) {
    if (fallsTo[i] && !fallsFrom[i]) dips.push({ angle: angles[i]!, value: values[i]! });
    const next = (i + 1) % angles.length;
    if (fallsFrom[i] && !fallsTo[next]) {
      const { at, value } = leastBetween(
        f,
        angles[i]!,
        next === 0 ? angles[0]! + PI : angles[next]!,
        DIP_STEPS,
      );
      dips.push({ angle: at, value });
    }
  }
  if (dips.length === 0) dips.push({ angle: angles[0]!, value: values[0]! });
  return dips;
}
