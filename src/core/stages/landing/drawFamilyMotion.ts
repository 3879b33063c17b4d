import { nearestAlike } from '../../space/quaternion';
import { between, moved, reach, type Vector } from '../../space/vector';
import { bracket } from '../../geometry/rootFinding';
import type { PieceSize } from '../../measures/piece';
import { attitudeInPlan, turnOfAxes } from '../../motion/attitude';
import { sizesOfHold } from '../../motion/hold';
import {
  exitHeight,
  extentOf,
  raisedOverNosing,
  tailBelow,
  YAW_STEP,
  type ShortFlights,
} from './solveFamilies';
import type { FamilyFit } from './familyFit';
import { isHalfLanding, type HalfLandingPlan, type LandingPlan } from './landingPlan';
import { STRAYS } from './slidRound';
import type { SlidPlace } from './familyFit';
import { heightOnNosings, lowerPlace, swingAxes, upperPlace, type Axes, type Swing } from './swingUp';
import type { KeyAttitude } from '../../space/motion';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, abs, acos, asin, atan2, ceil, cos, max, min, sin } = Math;

/** A family's motion, whatever its raise. */
type DrawnFit = Omit<FamilyFit, 'raise'>;

/** Turned at most so far between two key attitudes [rad], so that a straight move strays by far less than 1 mm. */
const STEP = YAW_STEP;
/** How near an angle at which something changes is known [rad]. */
const ANGLE_FINENESS = 1e-14;

/**
 * The motion of a family as key attitudes, for the piece padded by the family's clearance: it touches where it
 * is closest. Coordinates are the stage's own (`halfLandingAnswer`, `quarterLandingAnswer`): x from the lower
 * flight over the landing, y from its outer wall across, z up from the landing.
 *
 * @param start what comes before: on the lower flight, in the same pose
 * @param goal what comes after: on the upper flight, in the same pose
 * @param short flights that end before the piece does: there only the turn on the landing is drawn
 */
export function drawFamilyMotion(
  plan: LandingPlan,
  piece: PieceSize,
  fit: DrawnFit,
  start: KeyAttitude,
  goal: KeyAttitude,
  short: ShortFlights = {},
): KeyAttitude[] {
  const drawn = new Drawn(plan, piece, fit, start);
  if (fit.slid) drawn.slid(fit.slid);
  else if (fit.swings && isHalfLanding(plan)) drawn.swung(plan, fit.swings);
  else {
    if (!short.lower) drawn.wayIn();
    drawn.round();
    if (!short.upper) drawn.wayOut();
  }
  drawn.end(goal);
  return drawn.keys;
}

class Drawn {
  readonly keys: KeyAttitude[];
  private readonly u: number;
  private readonly v: number;
  private readonly q: number;
  private readonly slope: number;
  private readonly pitch: number;
  /** How much farther from the landing than the stage's own ends it begins and ends, in plan. */
  private readonly out: number;
  private last: KeyAttitude;
  /** Height of its lowest corner as it goes round. */
  private z = 0;

  constructor(
    private readonly plan: LandingPlan,
    piece: PieceSize,
    private readonly fit: DrawnFit,
    start: KeyAttitude,
  ) {
    const sizes = sizesOfHold(piece, fit.hold);
    this.u = max(1, sizes.along + 2 * fit.clearance);
    this.v = max(1, sizes.upright + 2 * fit.clearance);
    this.q = max(1, sizes.across + 2 * fit.clearance);
    this.slope = plan.rise / plan.going;
    this.pitch = atan2(plan.rise, plan.going);
    // Farther down the flight by what the padding adds to it, so that it lies wholly on the flight.
    this.out = 4 * max(0, fit.clearance);
    // On the nosings, not off them as the stage's own ends are.
    const aside = start.at[0] - this.out;
    const height = this.slope * aside + (this.v / 2) * Math.hypot(1, this.slope);
    this.last = { at: [aside, start.at[1], height], turn: start.turn };
    this.keys = [this.last];
  }

  /** Swung up on the lower flight's side, across, and swung down on to the upper's. */
  swung(plan: HalfLandingPlan, [first, second]: readonly [Swing, Swing]): void {
    const { u, v, q, pitch, slope } = this;
    const half = { along: u / 2, upright: v / 2, across: q / 2 };
    const axes = swingAxes(pitch);
    const turn = ([along, upright, across]: Axes) => turnOfAxes(this.fit.hold, along, across, upright);
    // A short piece first comes up over the landing's edge.
    const atEdge = (u * cos(pitch) - v * sin(pitch)) / 2;
    if (lowerPlace(plan, axes.of('lower', first)[0], half).x > atEdge) this.inAt(0, 0, pitch);
    for (const at of axes.of('lower', first)) {
      const { x, y, z } = lowerPlace(plan, at, half);
      this.push([x, y, z], turn(at));
    }
    let lowest = this.last.at;
    for (const at of [...axes.of('upper', second)].reverse()) {
      const { x, y, z } = upperPlace(plan, at, half);
      lowest = [x, plan.across - y, z];
      this.push(lowest, turn(at));
    }
    // Along the floor until its lower side is on the nosings, or raised there on to their line.
    const [x, y, z] = lowest;
    const onNosings = (plan.rise + (v / 2) * Math.hypot(slope, 1) - z) / slope;
    if (onNosings < x) this.push([onNosings, y, z], this.last.turn);
    else this.push([x, y, heightOnNosings(plan, half, x)], this.last.turn);
  }

  /** Slid round the inner edge, its inner side on it. */
  slid(places: readonly SlidPlace[]): void {
    const { plan, fit } = this;
    const [u, v, q] = [this.u + 2 * STRAYS, this.v + 2 * STRAYS, this.q + 2 * STRAYS];
    const height = (u * sin(fit.tilt) + v * cos(fit.tilt)) / 2;
    for (const { yaw, past, from, to } of places) {
      const [c, s] = [cos(yaw), sin(yaw)];
      const [x, y] = [past * c + (q / 2) * s, plan.depthOut + past * s - (q / 2) * c];
      const turn = attitudeInPlan(this.hold(fit.tilt), yaw);
      this.push([x, y, from + height], turn);
      if (to !== from) this.push([x, y, to + height], turn);
    }
  }

  /** From the lower flight to the attitude in which it goes round, its side against the outer wall. */
  wayIn(): void {
    const { u, v, plan, slope, pitch, fit } = this;
    const depth = plan.depthIn;
    if (fit.as === 'level') {
      for (const f of steps(pitch, 0)) {
        // Its lower side on the landing's edge, as much of it behind as the wall and the ceiling ask.
        const behind = max(
          0,
          u - depth / cos(f),
          f > 1e-9 ? u - (plan.ceiling - v * cos(f)) / sin(f) : -Infinity,
        );
        this.inAt(-behind * cos(f), -behind * sin(f), f);
      }
      return;
    }
    const back = (f: number): number => depth - u * cos(f);
    if (back(pitch) > 0) this.inAt(0, 0, pitch);
    const onLanding = depth < u ? [acos(depth / u)] : [];
    for (const f of steps(pitch, fit.tilt, onLanding)) this.inAt(back(f), slope * min(0, back(f)), f);
  }

  /** Turned about in the outer corners, or moved across. */
  round(): void {
    const { plan, fit } = this;
    const { raisedTo } = fit;
    if (fit.sideways && isHalfLanding(plan)) {
      // Wholly on the landing, against the facing wall.
      this.flatAt(0, this.z);
      this.flatAt(0, this.z, plan.across - this.q / 2);
      return;
    }
    if (fit.as === 'tilted') {
      this.roundTilted();
      return;
    }
    const levelUp = plan.across === undefined;
    // Upright it may be kept up on the way out without having been over the nosings before.
    const comesOver = levelUp && Math.hypot(this.extent.p, this.q) > plan.depthOut;
    let raised = false;
    const risesAt = comesOver ? this.overhangBegins() : Infinity;
    for (const yaw of steps(0, PI / 2, [risesAt])) {
      if (comesOver) {
        const over = this.extent.p * sin(yaw) + this.q * cos(yaw) - plan.depthOut;
        if (!raised && yaw >= risesAt) {
          this.flatAt(yaw, this.z);
          raised = true;
        }
        if (raised) this.z = plan.rise + this.slope * max(0, over);
      }
      this.flatAt(yaw, this.z);
    }
    if (plan.across === undefined) return;
    this.z = max(this.z, raisedTo);
    this.flatAt(PI / 2, this.z);
    for (const yaw of steps(PI / 2, PI)) this.flatAt(yaw, this.z);
  }

  /** Its lower back corner on the lower flight and the landing, but as its front comes over the upper flight. */
  private roundTilted(): void {
    const { plan, fit, u, v, q } = this;
    const round = { u, v, q, tilt: fit.tilt };
    const over = Math.hypot(this.extent.p, q) > plan.depthOut;
    const height = (yaw: number): number =>
      over ? raisedOverNosing(plan, round, fit.raisedTo, yaw, yaw) : -Infinity;
    const onLanding = Math.acos(min(1, plan.depthIn / (u * cos(fit.tilt))));
    for (const yaw of steps(0, PI / 2, [onLanding])) {
      const resting = -tailBelow(plan, round, yaw);
      this.z = plan.across === undefined ? max(resting, height(yaw)) : resting;
      this.flatAt(yaw, this.z);
    }
    if (plan.across === undefined) return;
    for (const yaw of steps(PI / 2, PI)) {
      this.z = max(0, height(yaw - PI / 2));
      this.flatAt(yaw, this.z);
    }
  }

  /** From there to the upper flight's pitch. */
  wayOut(): void {
    const { u, v, plan, slope, pitch, fit } = this;
    const depth = plan.depthOut;
    if (fit.as === 'level') {
      // Its lower front corner on the line of nosings, run on to the landing's floor.
      const front = (f: number): number =>
        max(u * cos(f) + v * sin(f) - depth, (u * sin(f) - plan.rise) / slope);
      this.outAt(front(0) - u, this.z, 0);
      for (const f of steps(0, pitch, this.kinks(front))) {
        this.outAt(front(f) - u * cos(f), plan.rise + slope * front(f) - u * sin(f), f);
      }
      return;
    }
    const before = (f: number): number => depth - v * sin(f);
    const height = exitHeight(plan, v);
    for (const f of steps(fit.tilt, pitch, this.nosingCleared())) {
      this.outAt(-before(f), height(f), f);
    }
    if (before(pitch) > plan.going) this.outAt(-plan.going, 0, pitch);
  }

  /** Up the flight on its nosings, as far as the goal is. */
  end(goal: KeyAttitude): void {
    const { pitch, plan } = this;
    const quarter = plan.across === undefined;
    const up: Vector = quarter ? [0, -sin(pitch), cos(pitch)] : [sin(pitch), 0, cos(pitch)];
    const on: Vector = quarter ? [0, 1, this.slope] : [-1, 0, this.slope];
    const end = moved(goal.at, on, this.out);
    const above = reach(between(this.last.at, end), up);
    this.push(moved(end, up, -above), goal.turn);
  }

  private get extent(): ReturnType<typeof extentOf> {
    return extentOf(this.fit.as, this.u, this.v, this.fit.tilt);
  }

  /** The angle in plan at which its front comes to stand over the upper flight, the overhang growing. */
  private overhangBegins(): number {
    const p = this.extent.p;
    if (this.q > this.plan.depthOut) return 0;
    const within = (yaw: number): boolean => p * sin(yaw) + this.q * cos(yaw) <= this.plan.depthOut;
    return bracket(0, atan2(p, this.q), within, ANGLE_FINENESS).holds;
  }

  /** Steep, its lower side comes down past the first nosing within a small angle: that angle in small steps. */
  private nosingCleared(): number[] {
    const { plan, v, pitch, fit } = this;
    const from = plan.depthOut < v ? asin(plan.depthOut / v) : fit.tilt;
    const height = exitHeight(plan, v);
    if (height(pitch) > 0) return [from];
    // The angle at which it stands on the floor.
    const floor = bracket(pitch, from, (f) => height(f) <= 0, ANGLE_FINENESS).holds;
    return Array.from({ length: 13 }, (_, i) => floor + ((from - floor) * i) / 12);
  }

  private kinks(front: (f: number) => number): number[] {
    // Where the wall gives over to the floor; found by halving on a fine row.
    const { u, v, plan, slope, pitch } = this;
    const by = (f: number): number =>
      u * cos(f) + v * sin(f) - plan.depthOut - (u * sin(f) - plan.rise) / slope;
    const found: number[] = [];
    for (let i = 0; i < 40; i++) {
      const low = (pitch * i) / 40;
      const high = (pitch * (i + 1)) / 40;
      if (by(low) * by(high) >= 0) continue;
      const sign = Math.sign(by(low));
      const kink = bracket(low, high, (f) => sign * by(f) > 0, ANGLE_FINENESS);
      found.push((kink.holds + kink.fails) / 2);
    }
    return front(0) > -Infinity ? found : [];
  }

  /** In the lower flight's upright plane: its lower back corner at x, z; its front raised by f. */
  private inAt(x: number, z: number, f: number): void {
    const [dx, dz] = this.centreFrom(f);
    this.push([x + dx, this.q / 2, z + dz], attitudeInPlan(this.hold(f), 0));
  }

  /** In the upper flight's: its lower back corner at x beyond the landing's edge, z above the landing. */
  private outAt(x: number, z: number, f: number): void {
    const { plan, q } = this;
    const [dx, dz] = this.centreFrom(f);
    const along = x + dx;
    if (plan.across === undefined) {
      this.push([plan.depthIn - q / 2, plan.depthOut + along, z + dz], attitudeInPlan(this.hold(f), PI / 2));
    } else this.push([-along, plan.across - q / 2, z + dz], attitudeInPlan(this.hold(f), PI));
  }

  /** On the landing in the outer corner, turned by `yaw`; the second corner of a half landing past 90 degrees. */
  private flatAt(yaw: number, z: number, y?: number): void {
    const { plan, q, fit } = this;
    const p = this.extent.p;
    const c = abs(cos(yaw));
    const s = sin(yaw);
    const x = plan.depthIn - (p * c + q * s) / 2;
    const half = (p * s + q * c) / 2;
    const second = yaw > PI / 2 + 1e-12 ? plan.across : undefined;
    const across = y ?? (second === undefined ? half : second - half);
    // On the way across a half landing the first corner's wall gives over to the second's.
    if (second !== undefined && !this.crossed) {
      this.crossed = true;
      const middle = second - this.extent.p / 2;
      this.push(
        [plan.depthIn - q / 2, middle, z + this.extent.height / 2],
        attitudeInPlan(this.hold(fit.tilt), PI / 2),
      );
    }
    this.push([x, across, z + this.extent.height / 2], attitudeInPlan(this.hold(fit.tilt), yaw));
  }
  private crossed = false;

  private hold(tilt: number) {
    return { hold: this.fit.hold, turned: 'tilted', tilt } as const;
  }

  private centreFrom(f: number): [number, number] {
    const { u, v } = this;
    return [(u * cos(f) - v * sin(f)) / 2, (u * sin(f) + v * cos(f)) / 2];
  }

  /** A box looks the same in four attitudes; the one nearest to the last is meant. */
  private push(at: KeyAttitude['at'], turn: KeyAttitude['turn']): void {
    this.last = { at, turn: nearestAlike(turn, this.last.turn) };
    this.keys.push(this.last);
  }
}

/** Angles from one to another by no more than STEP, both ends and the given ones between included. */
function steps(from: number, to: number, also: readonly number[] = []): number[] {
  const count = max(1, ceil(abs(to - from) / STEP));
  const row = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  const [low, high] = [min(from, to), max(from, to)];
  row.push(...also.filter((a) => a > low && a < high));
  return row.sort((a, b) => (from <= to ? a - b : b - a));
}
