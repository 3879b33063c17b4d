import { leastBetween } from './goldenSection';
import { boxPolygon } from './planar/planarWorld';
import { passageBracket, type PlanarPassage } from './planar/passageBracket';
import { rectangleThroughOpening } from './rectangleThroughOpening';

/** A lift car in plan: the door in the middle of one wall, which is thin. */
export interface CarPlan {
  /** [mm] */
  readonly door: number;
  /** Inside, along the door's wall [mm]. */
  readonly width: number;
  /** Inside, square to the door's wall [mm]. */
  readonly depth: number;
}

/** How a rectangle stands slanted in a car. */
export interface SlantedFit {
  /** Padding [mm a side]. */
  readonly clearance: number;
  /** Angle [rad] of side p to the door's wall, 0 to a right angle. */
  readonly angle: number;
}

/**
 * Padding with which a rectangle slides into a car at one angle in plan and stands inside with the door shut.
 * At angle f to the door's wall it passes between the jambs while q <= door sin f; when its tail's inner
 * corner is level with the wall, beside one jamb, its head needs p cos f + q sin f <= (width + door)/2; and
 * inside it needs p sin f + q cos f <= depth, p cos f + q sin f <= width. Each condition is linear in the
 * padding, and the greatest over f of the least of them is looked for. Straight in is f = a right angle.
 * Turning while it goes in may do better: sufficient.
 * @source ours; the same motion checked by the planner
 * @param p side of the rectangle at the angle [mm]
 * @param q its other side [mm]
 * @returns clearance [mm a side] and the angle [rad]
 * @example slantedIntoCar(1300, 500, { door: 800, width: 1100, depth: 1400 }).clearance // 50, straight in
 */
export function slantedIntoCar(p: number, q: number, car: CarPlan): SlantedFit {
  const across = Math.min(car.width, (car.width + car.door) / 2);
  const least = -Math.max(p, q) / 2;
  const at = (f: number): number => {
    const s = Math.sin(f);
    const c = Math.cos(f);
    const padding = Math.min(
      (car.door * s - q) / 2,
      (across - p * c - q * s) / (2 * (c + s)),
      (car.depth - p * s - q * c) / (2 * (c + s)),
    );
    if (padding >= -q / 2) return padding;
    // The side across counts as 0.
    const thin = Math.min(
      c > 0 ? (across / c - p) / 2 : Infinity,
      s > 0 ? (car.depth / s - p) / 2 : Infinity,
    );
    return Math.min(-q / 2, thin);
  };
  // The first two conditions ease as it stands steeper, the last as it lies flatter, each with one dip or
  // peak: sampled, then refined about the best sample.
  const N = 45;
  let angle = Math.PI / 2;
  let best = at(angle);
  let found = N;
  for (let i = 0; i < N; i++) {
    const f = (Math.PI / 2) * (i / N);
    const value = at(f);
    if (value > best) {
      best = value;
      angle = f;
      found = i;
    }
  }
  const low = (Math.PI / 2) * (Math.max(0, found - 1) / N);
  const high = (Math.PI / 2) * (Math.min(N, found + 1) / N);
  const refined = leastBetween((f) => -at(f), low, high, 60);
  if (-refined.value > best) {
    best = -refined.value;
    angle = refined.at;
  }
  return { clearance: Math.max(least, best), angle };
}

/**
 * The same for the planner: the door's middle at the origin, the car above y = 0, the landing open; it ends
 * wholly inside, at any angle.
 * @param p side of the rectangle [mm]
 * @param q its other side [mm]
 */
export function carPassage(p: number, q: number, car: CarPlan): PlanarPassage {
  const reach = Math.hypot(p, q) / 2;
  const { door, width, depth } = car;
  const far = 4 * reach + 2 * (width + depth) + 1000;
  const deep = reach + 2;
  return {
    world: {
      obstacles: [
        boxPolygon(-far, -1e-3, -door / 2, 0),
        boxPolygon(door / 2, -1e-3, far, 0),
        boxPolygon(-far, 0, -width / 2, far),
        boxPolygon(width / 2, 0, far, far),
        boxPolygon(-far, depth, far, far),
      ],
      centre: { xMin: -door / 2 - reach, xMax: door / 2 + reach, yMin: -deep - 1, yMax: depth },
    },
    start: { xMin: -1, xMax: 1, yMin: -deep - 1, yMax: -deep, angle: Math.PI / 2 },
    goal: { xMin: -width / 2, xMax: width / 2, yMin: 0, yMax: depth, wholeAbove: 0 },
  };
}

/** Answers remembered at a time. */
const REMEMBERED = 500;
const memo = new Map<string, number>();

/**
 * Padding with which a rectangle gets into a car, turning as it goes in: the closed form, and where the car
 * itself would hold more, the lower end of the planner's bracket (to half a millimetre). Remembered, with the
 * same answer as without memory.
 * @param p side of the rectangle [mm]
 * @param q its other side [mm]
 * @returns clearance [mm a side] and the angle [rad] at which it goes in
 */
export function turnedIntoCar(p: number, q: number, car: CarPlan): SlantedFit {
  const slid = slantedIntoCar(p, q, car);
  const inside = rectangleThroughOpening(car.width, car.depth, p, q).clearance;
  const most = Math.min(inside, (car.door - q) / 2);
  if (slid.clearance >= most - 1e-6) return slid;
  const key = `${p} ${q} ${car.door} ${car.width} ${car.depth}`;
  let lower = memo.get(key);
  if (lower === undefined) {
    lower = passageBracket((x, y) => carPassage(x, y, car), p, q, most, {
      guess: slid.clearance,
      workLimit: 3000,
    }).lower;
    const [oldest] = memo.size >= REMEMBERED ? memo.keys() : [];
    if (oldest !== undefined) memo.delete(oldest);
    memo.set(key, lower);
  }
  return lower > slid.clearance ? { clearance: lower, angle: slid.angle } : slid;
}
