import type { PieceSize } from '../../measures/piece';
import { sizesOfHold, type Hold } from '../../motion/hold';
import {
  IN_FLIGHT_ARM,
  IN_OUTER_CORNER,
  IN_PASSAGE,
  LINKED,
  StairTurnPlaces,
  UPRIGHT,
  type StairTurnPlan,
} from './turnedPlace';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, max, min } = Math;

/** An angle in plan and a tilt [rad], and where it stands there: in the flight's arm or in the outer corner. */
export interface TurnStep {
  readonly yaw: number;
  readonly tilt: number;
  readonly inCorner: boolean;
}

/** How it leaves into the passage: as it was carried, moved off sideways, or stood upright. */
export type LeavesAs = 'lengthwise' | 'sideways' | 'upright' | 'upright sideways';

export interface StairTurnFit {
  /** Padding [mm a side] with which the motion is free. */
  readonly clearance: number;
  /** Angles in plan and tilts from lying on the flight to standing in the passage. */
  readonly path: readonly TurnStep[];
  readonly leaves: LeavesAs;
  readonly limit: 'flight' | 'turn' | 'heights';
}

/** Steps of a quarter turn in plan, and of the tilt from level to the pitch and from there to upright. */
const YAWS = 45;
const BELOW_PITCH = 6;
const ABOVE_PITCH = 14;
const TILTS = BELOW_PITCH + ABOVE_PITCH;
/** A step of the path found is looked at once more at angles no farther apart [rad], and drawn in so many parts. */
const CHECKED = 0.0015;
export const DRAWN_PARTS = 4;
/** Paths looked at for one padding, each without the steps of the last that were not free. */
const MOST_PATHS = 40;
/** How near the greatest padding has to be [mm]. */
const FINENESS = 0.1;
/** The same once steps are looked at between their ends, which takes longer [mm]. */
const THROUGH = 0.4;
/** What is thinner counts as so thick [mm]. */
const THIN = 1;
/** How far beyond the clearance it is asked what stands in the way [mm]. */
const NEAR = 0.5;

/**
 * The widest turn at a stair's end for a piece held so on the flight: a path of angles in plan and tilts on a fixed
 * grid, each neighbour standing in a way that it shares with the last (`StairTurnPlaces`), and looked at between the
 * grid's points too. A larger opening or a smaller piece leaves every place free that was, but for places over a rail.
 *
 * @param atLeast padding [mm a side] below which no answer is wanted
 * @param enough padding [mm a side] above which more is of no interest
 * @returns undefined where no path bears that
 */
export function stairTurnFit(
  plan: StairTurnPlan,
  piece: PieceSize,
  hold: Hold,
  leaves: LeavesAs,
  atLeast = -piece.length / 2,
  enough = Infinity,
): StairTurnFit | undefined {
  const places = new StairTurnPlaces(plan);
  const { along, across, upright } = sizesOfHold(piece, hold);
  const grid = new TurnGrid(places, leaves);
  const holdAt = (c: number): void =>
    places.hold({
      u: max(THIN, along + 2 * c),
      v: max(THIN, upright + 2 * c),
      q: max(THIN, across + 2 * c),
    });
  // What it needs where it leaves: the widths across and the heights there.
  const head = min(plan.ceiling, plan.passageCeiling ?? plan.ceiling);
  const sideways = leaves === 'sideways' || leaves === 'upright sideways';
  const stood = leaves === 'upright' || leaves === 'upright sideways';
  const most = min(
    (plan.flightWidth - across) / 2,
    (places.channel - upright) / 2,
    (plan.passageWidth - (sideways ? (stood ? upright : along) : across)) / 2,
    (head - (stood ? along : upright)) / 2,
    max(enough, atLeast),
  );
  let low = max(atLeast, (THIN - min(along, upright, across)) / 2);
  if (most < low) return undefined;
  const tryAt = (c: number): boolean => {
    holdAt(c);
    return grid.search();
  };
  if (!tryAt(low)) return undefined;
  let high = most;
  if (tryAt(most)) low = most;
  else {
    while (high - low > FINENESS) {
      const middle = (low + high) / 2;
      if (tryAt(middle)) low = middle;
      else high = middle;
    }
  }
  const floor = max(atLeast, (THIN - min(along, upright, across)) / 2);
  // Between the grid's points it may bear a hair less.
  let last = NaN;
  const bears = (c: number): boolean => {
    last = c;
    holdAt(c);
    return grid.searchThrough();
  };
  let clearance = low;
  let step = 0.1;
  let above = low;
  while (!bears(clearance)) {
    if (clearance <= floor) return undefined;
    above = clearance;
    clearance = max(floor, clearance - step);
    step *= 2;
  }
  while (above - clearance > THROUGH) {
    const middle = (clearance + above) / 2;
    if (bears(middle)) clearance = middle;
    else above = middle;
  }
  if (last !== clearance) bears(clearance);
  const path = grid.path();
  const limit =
    clearance >= most - NEAR
      ? 'flight'
      : turnsInPlan(plan, along, across, clearance + NEAR)
        ? 'heights'
        : 'turn';
  return { clearance, path, leaves, limit };
}

/** Whether its plan, level, goes round with that padding: then heights stand in the way. */
function turnsInPlan(plan: StairTurnPlan, along: number, across: number, c: number): boolean {
  const p = along + 2 * c;
  const q = max(THIN, across + 2 * c);
  const { flightWidth: w, passageWidth: d } = plan;
  for (let i = 0; i <= YAWS; i++) {
    const a = (PI / 2) * (i / YAWS);
    const [cos, sin] = [Math.cos(a), Math.sin(a)];
    const free =
      w * cos + d * sin - p * sin * cos - q >= 0 || p * sin + q * cos <= w || p * cos + q * sin <= d;
    if (!free) return false;
  }
  return true;
}

/**
 * Every angle in plan and tilt of the grid, with the ways of standing there, looked at once for a padding. A state is a
 * point of the grid, in the flight's arm (even) or in the outer corner (odd).
 */
class TurnGrid {
  private readonly ways = new Int8Array((YAWS + 1) * (TILTS + 1));
  private readonly cameFrom = new Int32Array(2 * (YAWS + 1) * (TILTS + 1));
  private readonly stack: number[] = [];
  /** Steps that are not free between their ends. */
  private readonly blocked = new Set<number>();
  private end = -1;

  /** Cosine, sine and tangent of every tilt. */
  private readonly tilts = new Float64Array(3 * (TILTS + 1));

  constructor(
    private readonly places: StairTurnPlaces,
    private readonly leaves: LeavesAs,
  ) {
    for (let j = 0; j <= TILTS; j++) {
      const tilt = this.tilt(j);
      this.tilts[3 * j] = Math.cos(tilt);
      this.tilts[3 * j + 1] = Math.sin(tilt);
      this.tilts[3 * j + 2] = Math.tan(min(tilt, UPRIGHT));
    }
  }

  /** Whether a path leads from lying on the flight to where it leaves. */
  search(): boolean {
    this.ways.fill(-1);
    this.blocked.clear();
    return this.flood();
  }

  /** The same with a path that is free between the grid's points too. */
  searchThrough(): boolean {
    this.ways.fill(-1);
    this.blocked.clear();
    for (let i = 0; i < MOST_PATHS && this.flood(); i++) {
      if (this.freeThroughout()) return true;
    }
    return false;
  }

  private flood(): boolean {
    const { cameFrom, stack, blocked } = this;
    cameFrom.fill(-1);
    stack.length = 0;
    this.end = -1;
    const start = 2 * node(0, BELOW_PITCH);
    if ((this.waysOf(start >> 1) & IN_FLIGHT_ARM) === 0 || !this.places.comesAlong()) return false;
    cameFrom[start] = start;
    stack.push(start);
    const down = this.leaves === 'lengthwise' || this.leaves === 'sideways';
    for (let state = stack.pop(); state !== undefined; state = stack.pop()) {
      const at = state >> 1;
      const corner = state & 1;
      const here = this.waysOf(at);
      if (this.isEnd(at) && corner === 1) {
        this.end = state;
        return true;
      }
      const visit = (next: number): void => {
        if (cameFrom[next]! >= 0) return;
        cameFrom[next] = state;
        stack.push(next);
      };
      const step = (i: number, j: number): void => {
        if (i < 0 || i > YAWS || j < 0 || j > TILTS) return;
        const next = node(i, j);
        const shared = here & this.waysOf(next) & (corner === 1 ? IN_OUTER_CORNER : IN_FLIGHT_ARM);
        if (shared !== 0 && !blocked.has(edge(state, 2 * next + corner))) visit(2 * next + corner);
      };
      const [i, j] = [yawOf(at), tiltOf(at)];
      // The last pushed is looked at first: on round, and towards the tilt in which it leaves.
      step(i - 1, j);
      step(i, down ? j + 1 : j - 1);
      step(i, down ? j - 1 : j + 1);
      step(i + 1, j);
      if ((here & LINKED) !== 0) visit(state ^ 1);
    }
    return false;
  }

  /** The path that was found last. */
  path(): TurnStep[] {
    const steps: TurnStep[] = [];
    for (let state = this.end; state >= 0; state = this.cameFrom[state]!) {
      steps.push({ yaw: this.yaw(state >> 1), tilt: this.tilt(state >> 1), inCorner: (state & 1) === 1 });
      if (this.cameFrom[state] === state) break;
    }
    return steps.reverse();
  }

  /** Whether the path found last is free between its points too; a step that is not is taken out. */
  private freeThroughout(): boolean {
    let free = true;
    for (let state = this.end; this.cameFrom[state] !== state; state = this.cameFrom[state]!) {
      const before = this.cameFrom[state]!;
      if (before >> 1 === state >> 1 || this.freeBetween(before >> 1, state >> 1, (state & 1) === 1))
        continue;
      this.blocked.add(edge(before, state));
      this.blocked.add(edge(state, before));
      free = false;
    }
    return free;
  }

  private freeBetween(from: number, to: number, inCorner: boolean): boolean {
    const { places } = this;
    const [yaw, tilt] = [this.yaw(from), this.tilt(from)];
    const [turn, raise] = [this.yaw(to) - yaw, this.tilt(to) - tilt];
    let were = this.waysOf(from) & (inCorner ? IN_OUTER_CORNER : IN_FLIGHT_ARM);
    const parts = Math.ceil((Math.abs(turn) + Math.abs(raise)) / CHECKED);
    for (let n = 1; n <= parts; n++) {
      const here =
        n === CHECKED ? this.waysOf(to) : places.waysAt(yaw + (turn * n) / parts, tilt + (raise * n) / parts);
      const group = here & (inCorner ? IN_OUTER_CORNER : IN_FLIGHT_ARM);
      if ((were & group) === 0) return false;
      were = group;
    }
    return true;
  }

  private isEnd(at: number): boolean {
    const sideways = this.leaves === 'sideways' || this.leaves === 'upright sideways';
    const upright = this.leaves === 'upright' || this.leaves === 'upright sideways';
    return (
      yawOf(at) === (sideways ? 0 : YAWS) &&
      tiltOf(at) === (upright ? TILTS : 0) &&
      (this.waysOf(at) & IN_PASSAGE) !== 0
    );
  }

  private waysOf(at: number): number {
    const known = this.ways[at]!;
    if (known >= 0) return known;
    const i = 2 * yawOf(at);
    const j = 3 * tiltOf(at);
    const { tilts } = this;
    return (this.ways[at] = this.places.waysOf(
      YAW_TABLE[i]!,
      YAW_TABLE[i + 1]!,
      tilts[j]!,
      tilts[j + 1]!,
      tilts[j + 2]!,
    ));
  }

  private yaw(at: number): number {
    return (PI / 2) * (yawOf(at) / YAWS);
  }

  private tilt(at: number): number {
    const j = tiltOf(at);
    const { pitch } = this.places;
    return j <= BELOW_PITCH
      ? (pitch * j) / BELOW_PITCH
      : pitch + ((PI / 2 - pitch) * (j - BELOW_PITCH)) / ABOVE_PITCH;
  }
}

/** Cosine and sine of every angle in plan. */
const YAW_TABLE = Float64Array.from({ length: 2 * (YAWS + 1) }, (_, k) => {
  const yaw = (PI / 2) * ((k >> 1) / YAWS);
  return k % 2 === 0 ? max(Math.cos(yaw), 1e-12) : Math.sin(yaw);
});
const edge = (from: number, to: number): number => from * 65536 + to;
const node = (i: number, j: number): number => i * (TILTS + 1) + j;
const yawOf = (at: number): number => Math.floor(at / (TILTS + 1));
const tiltOf = (at: number): number => at % (TILTS + 1);

/** The same path in small steps, its own points among them. */
export function finer(path: readonly TurnStep[], parts: number): TurnStep[] {
  return path.flatMap((to, k) => {
    const from = path[k - 1];
    if (!from || (from.yaw === to.yaw && from.tilt === to.tilt)) return [to];
    return Array.from({ length: parts }, (_, n) => {
      const share = (n + 1) / parts;
      return {
        ...to,
        yaw: from.yaw + (to.yaw - from.yaw) * share,
        tilt: from.tilt + (to.tilt - from.tilt) * share,
      };
    });
  });
}
