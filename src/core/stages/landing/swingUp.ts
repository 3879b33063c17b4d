import { quaternionFromAxes, rotate, slerp, type Quaternion } from '../../space/quaternion';
import type { HalfLandingPlan } from './landingPlan';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { abs, atan2, cos, hypot, max, min, sin } = Math;

/**
 * Swinging a piece up on a half landing: from the pitch of the lower flight it is turned about one axis until
 * its side along the way stands upright and the side that was upright lies across the landing; so it is moved
 * across, and swung down on to the upper flight in the same manner. This is how a wide piece goes where the
 * landing is less deep than the piece is broad.
 *
 * In every attitude on the way it stands against the facing wall and its flight's outer wall. It clears the
 * spine when some line in plan parts it from the quarter behind the landing's edge and beyond its lane; it
 * clears a flight below it when some plane does, between the landing's floor (or its riser) and the line of
 * nosings; each is exact at a handful of directions, because in between the support of a box is linear.
 * Heights left over make the way connected. Sufficient; own derivation, replayed in the tests.
 */
export type Swing = 1 | -1;

/** The flight that a piece swings up from, or down on to. */
export type SwungFlight = 'lower' | 'upper';

/** Attitudes looked at on a swing, some degree apart. */
const SWING_STEPS = 108;
/** What is kept back of a swing's clearance [mm a side] for what the piece strays between two of them. */
export const BETWEEN = 1;

/** The most air left under a piece as it is swung [mm]. */
export const SWUNG_OVER = 10;

/** Directions of the piece's sides along, upright and across as they lay on the flight. */
export type Axes = readonly [Vector, Vector, Vector];
type Vector = readonly [number, number, number];

const UP: Vector = [0, 0, 1];

/**
 * The attitude of a swing's part.
 * @param pitch of the flights [rad]
 * @param part 0 on the flight, 1 upright across the landing
 */
function swingTurn(pitch: number, flight: SwungFlight, swing: Swing, part: number): Quaternion {
  const [c, s] = [cos(pitch), sin(pitch)];
  const onFlight =
    flight === 'upper'
      ? quaternionFromAxes([-c, 0, s], [s, 0, c], [0, 1, 0])
      : quaternionFromAxes([c, 0, s], [-s, 0, c], [0, -1, 0]);
  return slerp(onFlight, quaternionFromAxes(UP, [0, -swing, 0], [swing, 0, 0]), part);
}

/** The attitudes of the four swings at a pitch. */
export interface SwingAxes {
  of(flight: SwungFlight, swing: Swing): readonly [Axes, ...Axes[]];
}

let lastPitch = NaN;
let lastAxes: SwingAxes;

/**
 * The attitudes at a pitch [rad], worked out once while the pitch stays the same.
 */
export function swingAxes(pitch: number): SwingAxes {
  if (pitch === lastPitch) return lastAxes;
  const row = (flight: SwungFlight, swing: Swing): [Axes, ...Axes[]] => [
    axesAt(pitch, flight, swing, 0),
    ...Array.from({ length: SWING_STEPS }, (_, i) => axesAt(pitch, flight, swing, (i + 1) / SWING_STEPS)),
  ];
  const both = (flight: SwungFlight) => ({ right: row(flight, 1), left: row(flight, -1) });
  const rows = { lower: both('lower'), upper: both('upper') };
  lastAxes = { of: (flight, swing) => (swing === 1 ? rows[flight].right : rows[flight].left) };
  lastPitch = pitch;
  return lastAxes;
}

function axesAt(pitch: number, flight: SwungFlight, swing: Swing, part: number): Axes {
  const turn = swingTurn(pitch, flight, swing, part);
  return [rotate(turn, [1, 0, 0]), rotate(turn, [0, 1, 0]), rotate(turn, [0, 0, 1])];
}

/** Sides of the piece along, upright and across as on the flight, halved [mm]. */
export interface HalfSizes {
  readonly along: number;
  readonly upright: number;
  readonly across: number;
}

/** Where the piece stands in one attitude, and how far it is from not standing there. */
export interface SwingPlace {
  /** [mm] */
  readonly spare: number;
  /** Its centre: from the landing's edge, from its flight's outer wall, above the landing [mm]. */
  readonly x: number;
  /** [mm] */
  readonly y: number;
  /** [mm] */
  readonly z: number;
  /** How high its lowest corner is held above the landing [mm]. */
  readonly raise: number;
}

/** Where the piece is [mm] on the lower flight's side: as low as the landing's edge and the nosings let it. */
export function lowerPlace(s: HalfLandingPlan, axes: Axes, half: HalfSizes): SwingPlace {
  const slope = s.rise / s.going;
  const [hx, hy, hz] = [
    support(axes, half, 1, 0, 0),
    support(axes, half, 0, 1, 0),
    support(axes, half, 0, 0, 1),
  ];
  const x = s.depthIn - hx;
  let z = min(hz, support(axes, half, -slope, 0, 1) + slope * x);
  for (const [ex, , ez] of axes) {
    const share = ez / (slope * ex);
    if (share > 0 && share < 1) z = min(z, support(axes, half, -share * slope, 0, 1) + share * slope * x);
  }
  const top = min(s.ceiling - hz, s.headroom + slope * x - support(axes, half, -slope, 0, 1));
  const spare = min(top - z, spineSpare(axes, half, x, hy, s.widthIn, 1), s.across - 2 * hy);
  return { spare, x, y: hy, z: z + airUnder(top - z), raise: 0 };
}

/** On the upper flight's side: on the landing's floor, or raised over the first nosing, and under the edge above. */
export function upperPlace(s: HalfLandingPlan, axes: Axes, half: HalfSizes): SwingPlace {
  const slope = s.rise / s.going;
  const lip = min(s.ceiling, s.headroom + s.rise);
  const [hx, hy, hz] = [
    support(axes, half, 1, 0, 0),
    support(axes, half, 0, 1, 0),
    support(axes, half, 0, 0, 1),
  ];
  const x = s.depthOut - hx;
  let over = -Infinity;
  if (x < hx) {
    const above = (t: number): number => s.rise + support(axes, half, t + slope, 0, 1) - (t + slope) * x;
    over = above(0);
    for (const [ex, , ez] of axes) {
      const t = -ez / ex - slope;
      if (t > 0 && t < Infinity) over = min(over, above(t));
    }
  }
  const z = max(hz, over);
  const spare = min(lip - hz - z, spineSpare(axes, half, x, hy, s.widthOut, -1), s.across - 2 * hy);
  return { spare, x, y: hy, z: z + airUnder(lip - hz - z), raise: z - hz };
}

/**
 * Where the piece lies as on the upper flight, the height [mm] of its centre at which its lower side is on the line
 * of nosings, run on over the landing.
 */
export const heightOnNosings = (s: HalfLandingPlan, { upright }: HalfSizes, x: number): number =>
  s.rise + upright * hypot(1, s.rise / s.going) - (s.rise / s.going) * x;

/** Off what is below where there is height for it, so that it need not follow every edge it passes over. */
const airUnder = (free: number): number => max(0, min(SWUNG_OVER, free / 2));

/** How far a line in plan can be put between the piece and the spine's corner; `side` mirrors the upper flight. */
function spineSpare(axes: Axes, half: HalfSizes, x: number, y: number, width: number, side: Swing): number {
  const at = (m: number): number =>
    m * x + (1 - m) * (width - y) - support(axes, half, m, -side * (1 - m), 0);
  let best = max(at(0), at(1));
  for (const [ex, ey] of axes) {
    const m = (side * ey) / (ex + side * ey);
    if (m > 0 && m < 1) best = max(best, at(m));
  }
  return best;
}

/** Half the piece's extent along a direction, times the direction's length. */
function support(axes: Axes, half: HalfSizes, nx: number, ny: number, nz: number): number {
  const [a, b, t] = axes;
  return (
    half.along * abs(a[0] * nx + a[1] * ny + a[2] * nz) +
    half.upright * abs(b[0] * nx + b[1] * ny + b[2] * nz) +
    half.across * abs(t[0] * nx + t[1] * ny + t[2] * nz)
  );
}

/** What a swing leaves at its tightest, and how high it lifts the piece. */
function swingSpare(
  plan: HalfLandingPlan,
  axes: readonly Axes[],
  flight: SwungFlight,
  half: HalfSizes,
): { readonly spare: number; readonly raise: number } {
  let spare = (flight === 'upper' ? plan.depthOut : plan.depthIn) - 2 * half.across;
  let raise = 0;
  for (const at of axes) {
    if (spare < 0) break;
    const place = flight === 'upper' ? upperPlace(plan, at, half) : lowerPlace(plan, at, half);
    if (place.spare < spare) spare = place.spare;
    if (place.raise > raise) raise = place.raise;
  }
  const [onFlight] = axes;
  if (flight === 'upper' && onFlight && spare >= 0) {
    // A short piece that stands before the first nosing is raised on to their line, and slid up along that.
    const { x } = upperPlace(plan, onFlight, half);
    const [low, high] = [support(onFlight, half, 0, 0, 1), heightOnNosings(plan, half, x)];
    spare = min(spare, min(plan.ceiling, plan.headroom + plan.rise) - low - high);
    raise = max(raise, high - low);
  }
  return { spare, raise };
}

/** The better way round of the two, on the lower flight's side and on the upper's. */
export interface BestSwing {
  /** [mm] */
  readonly spare: number;
  /** [mm] */
  readonly raise: number;
  readonly swings: readonly [lower: Swing, upper: Swing];
}

/**
 * How far a piece is from not being swung up and down again; negative where it cannot be.
 * @param mostRaise how high it may be raised above the landing [mm]
 */
export function bestSwing(plan: HalfLandingPlan, half: HalfSizes, mostRaise: number): BestSwing {
  const axes = swingAxes(atan2(plan.rise, plan.going));
  let spare = Infinity;
  let raise = 0;
  const swings: { lower: Swing; upper: Swing } = { lower: 1, upper: 1 };
  for (const flight of ['lower', 'upper'] as const) {
    let best = -Infinity;
    let raised = 0;
    let swing: Swing = 1;
    for (const way of [1, -1] as const) {
      const found = swingSpare(plan, axes.of(flight, way), flight, half);
      const left = min(found.spare, mostRaise - found.raise);
      if (left > best) [best, raised, swing] = [left, found.raise, way];
    }
    swings[flight] = swing;
    spare = min(spare, best);
    raise = max(raise, raised);
    if (spare < 0) break;
  }
  return { spare, raise, swings: [swings.lower, swings.upper] };
}
