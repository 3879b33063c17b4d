import {
  IN_FLIGHT_ARM,
  IN_OUTER_CORNER,
  IN_PASSAGE,
  LINKED,
  UPRIGHT,
  type StairTurnPlaces,
  type TurningBox,
} from './turnedPlace';
import { TurnedThrough } from './turnedThrough';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, ceil, cos, max, min, sin, tan } = Math;

/** An angle in plan and a tilt [rad], and where it stands there: in the flight's arm or in the outer corner. */
export interface TurnStep {
  readonly yaw: number;
  readonly tilt: number;
  readonly inCorner: boolean;
}

/** How it leaves into the passage: as it was carried, moved off sideways, or stood upright. */
export type LeavesAs = 'lengthwise' | 'sideways' | 'upright' | 'upright sideways';

/** Steps of a quarter turn in plan [count]. */
export const YAWS = 45;
/** Steps of the tilt from level to the pitch [count]. */
const BELOW_PITCH = 6;
/** Steps of the tilt from the pitch to upright [count]. */
const ABOVE_PITCH = 14;
const TILTS = BELOW_PITCH + ABOVE_PITCH;
const COLUMN = TILTS + 1;
const NODES = (YAWS + 1) * COLUMN;
/** A step of the path found is looked at once more at angles no farther apart [rad]. */
const CHECKED = 0.0015;
/** Fewer angles than this are looked at one by one. */
const WORTH_A_RANGE = 3;
/** Paths looked at for one padding, each without the steps of the last that were not free. */
const MOST_PATHS = 40;

/** The tilt with which a path begins, in steps from level. */
const BEGINS = { level: 0, 'half way': BELOW_PITCH >> 1, lying: BELOW_PITCH } as const;

/** A step that was not looked at yet. */
const UNKNOWN = 0;
/** A step that is free all the way. */
const FREE = 1;
/** A step that is not. */
const BLOCKED = 2;

/**
 * Every angle in plan and tilt of a grid at one turn, with the ways of standing there. A state is a point of the grid,
 * in the flight's arm (even) or in the outer corner (odd); neighbours share a way. What was found for a padded piece is
 * kept until another is held, since the ways to leave are mostly asked one after the other.
 */
export class TurnGrid {
  private readonly ways = new Int8Array(NODES);
  private readonly cameFrom = new Int32Array(2 * NODES);
  /** States that some path leads to. */
  private readonly reached = new Uint8Array(2 * NODES);
  private readonly stack = new Int32Array(2 * NODES);
  /** States that are reached and whose neighbours have not been looked at, and how many; -1: nothing has been begun. */
  private readonly open = new Int32Array(2 * NODES);
  private opened = -1;
  /** Of each state the step to the next angle in plan, and to the next tilt, looked at between its ends. */
  private readonly steps = new Uint8Array(4 * NODES);
  private end = -1;
  private box: TurningBox = { u: NaN, v: NaN, q: NaN };

  /** Cosine, sine and tangent of every tilt, and of those between them. */
  private readonly tilts: Float64Array;
  private readonly tiltParts: number;
  /** Where a path begins: lying on the flight, or on a short one as `begins` says. */
  private readonly start: number;
  private readonly through: TurnedThrough;

  constructor(
    readonly places: StairTurnPlaces,
    begins: 'lying' | 'level' | 'half way' = 'lying',
  ) {
    const { pitch } = places;
    this.through = new TurnedThrough(places);
    this.start = 2 * BEGINS[begins];
    this.tiltParts = ceil(max(pitch / BELOW_PITCH, (PI / 2 - pitch) / ABOVE_PITCH) / CHECKED);
    this.tilts = new Float64Array(3 * (TILTS * this.tiltParts + 1));
    for (let k = 0; k <= TILTS * this.tiltParts; k++) {
      const tilt = this.tilt(k / this.tiltParts);
      this.tilts[3 * k] = cos(tilt);
      this.tilts[3 * k + 1] = sin(tilt);
      this.tilts[3 * k + 2] = tan(min(tilt, UPRIGHT));
    }
  }

  /** Takes up a padded piece. */
  hold(box: TurningBox): void {
    const { u, v, q } = this.box;
    if (box.u === u && box.v === v && box.q === q) return;
    this.box = box;
    this.places.hold(box);
    this.through.hold(box);
    this.ways.fill(-1);
    this.steps.fill(UNKNOWN);
    this.opened = -1;
    this.end = -1;
  }

  /** Whether a path of neighbours leads from lying on the flight to where it leaves. */
  leads(leaves: LeavesAs): boolean {
    const end = endOf(leaves);
    return this.leavesFrom(end) && this.reaches(2 * end + 1);
  }

  /** The same with a path that is free between the grid's points too: `path` is that one. */
  leadsThrough(leaves: LeavesAs): boolean {
    if (!this.leads(leaves)) return false;
    for (let i = 0; i < MOST_PATHS && this.pathTo(leaves); i++) {
      if (this.freeThroughout()) return true;
    }
    return false;
  }

  /** The path that was found last. */
  path(): TurnStep[] {
    const steps: TurnStep[] = [];
    for (let state = this.end; state >= 0; state = this.cameFrom[state]!) {
      const at = state >> 1;
      steps.push({ yaw: yawAt(yawOf(at)), tilt: this.tilt(tiltOf(at)), inCorner: (state & 1) === 1 });
      if (this.cameFrom[state] === state) break;
    }
    return steps.reverse();
  }

  private beginsAt(state: number): boolean {
    return (this.waysOf(state >> 1) & IN_FLIGHT_ARM) !== 0 && this.places.comesAlong();
  }

  private leavesFrom(at: number): boolean {
    return (this.waysOf(at) & IN_PASSAGE) !== 0;
  }

  /** Whether some path leads to a state: from where the last question left off, and no farther than to there. */
  private reaches(end: number): boolean {
    const { reached, open } = this;
    if (this.opened < 0) {
      reached.fill(0);
      this.opened = 0;
      if (this.beginsAt(this.start)) {
        reached[this.start] = 1;
        open[this.opened++] = this.start;
      }
    }
    while (this.opened > 0 && reached[end] === 0) {
      const state = open[--this.opened]!;
      const at = state >> 1;
      const corner = state & 1;
      const here = this.waysOf(at);
      const group = here & (corner === 1 ? IN_OUTER_CORNER : IN_FLIGHT_ARM);
      for (let side = 0; side < 4; side++) {
        const next = neighbour(at, side);
        if (next < 0) continue;
        const to = 2 * next + corner;
        if (reached[to] === 1 || (group & this.waysOf(next)) === 0) continue;
        reached[to] = 1;
        open[this.opened++] = to;
      }
      if ((here & LINKED) !== 0 && reached[state ^ 1] === 0) {
        reached[state ^ 1] = 1;
        open[this.opened++] = state ^ 1;
      }
    }
    return reached[end] === 1;
  }

  /** A path to where it leaves, by steps that are not known to be blocked; on round first, then towards its last tilt. */
  private pathTo(leaves: LeavesAs): boolean {
    const { cameFrom, stack, steps } = this;
    cameFrom.fill(-1);
    const down = leaves === 'lengthwise' || leaves === 'sideways';
    const end = 2 * endOf(leaves) + 1;
    let top = 0;
    cameFrom[this.start] = this.start;
    stack[top++] = this.start;
    while (top > 0) {
      const state = stack[--top]!;
      if (state === end) {
        this.end = state;
        return true;
      }
      const at = state >> 1;
      const corner = state & 1;
      const here = this.waysOf(at);
      const group = here & (corner === 1 ? IN_OUTER_CORNER : IN_FLIGHT_ARM);
      // The last put on the stack is looked at first.
      for (let turn = 0; turn < 4; turn++) {
        const side = turn === 0 || turn === 3 ? turn : (turn === 1) === down ? 2 : 1;
        const next = neighbour(at, side);
        if (next < 0) continue;
        const to = 2 * next + corner;
        if (cameFrom[to]! >= 0 || (group & this.waysOf(next)) === 0) continue;
        if (steps[stepBetween(state, to)] === BLOCKED) continue;
        cameFrom[to] = state;
        stack[top++] = to;
      }
      if ((here & LINKED) !== 0 && cameFrom[state ^ 1]! < 0) {
        cameFrom[state ^ 1] = state;
        stack[top++] = state ^ 1;
      }
    }
    return false;
  }

  /** Whether the path found last is free between its points too; a step that is not is taken out. */
  private freeThroughout(): boolean {
    const { cameFrom, steps } = this;
    let free = true;
    for (let state = this.end; cameFrom[state] !== state; state = cameFrom[state]!) {
      const before = cameFrom[state]!;
      if (before >> 1 === state >> 1) continue;
      const step = stepBetween(before, state);
      if (steps[step] === UNKNOWN) steps[step] = this.freeBetween(before, state) ? FREE : BLOCKED;
      if (steps[step] === BLOCKED) free = false;
    }
    return free;
  }

  /**
   * Whether a step is free at angles so near each other that it shares a way with the one before all along. A part of
   * the step in which one way surely holds throughout is not looked at angle by angle.
   */
  private freeBetween(from: number, to: number): boolean {
    const mask = (from & 1) === 1 ? IN_OUTER_CORNER : IN_FLIGHT_ARM;
    const at = min(from, to) >> 1;
    const turns = (max(from, to) >> 1) - at === COLUMN;
    const parts = turns ? YAW_PARTS : this.tiltParts;
    return this.sharesThroughout(mask, turns, YAW_PARTS * yawOf(at), this.tiltParts * tiltOf(at), 0, parts);
  }

  /** The same from the `first` to the `last` of the angles of a step that begins at a fine yaw and tilt. */
  private sharesThroughout(
    mask: number,
    turns: boolean,
    yaw: number,
    tilt: number,
    first: number,
    last: number,
  ): boolean {
    if (last - first < WORTH_A_RANGE) {
      let were = this.fineWays(mask, turns, yaw, tilt, first);
      for (let n = first + 1; n <= last; n++) {
        const here = this.fineWays(mask, turns, yaw, tilt, n);
        if ((were & here) === 0) return false;
        were = here;
      }
      return true;
    }
    const { tilts } = this;
    const i = 2 * (turns ? yaw + first : yaw);
    const i1 = 2 * (turns ? yaw + last : yaw);
    const j = 3 * (turns ? tilt : tilt + first);
    const j1 = 3 * (turns ? tilt : tilt + last);
    const sure = this.through.standsThroughout(
      mask,
      FINE_YAWS[i]!,
      FINE_YAWS[i + 1]!,
      FINE_YAWS[i1]!,
      FINE_YAWS[i1 + 1]!,
      tilts[j]!,
      tilts[j + 1]!,
      tilts[j + 2]!,
      tilts[j1]!,
      tilts[j1 + 1]!,
      tilts[j1 + 2]!,
    );
    if (sure) return true;
    const middle = (first + last) >> 1;
    return (
      this.sharesThroughout(mask, turns, yaw, tilt, first, middle) &&
      this.sharesThroughout(mask, turns, yaw, tilt, middle, last)
    );
  }

  private fineWays(mask: number, turns: boolean, yaw: number, tilt: number, n: number): number {
    const { tilts } = this;
    const i = 2 * (turns ? yaw + n : yaw);
    const j = 3 * (turns ? tilt : tilt + n);
    const ways = this.places.waysOf(
      FINE_YAWS[i]!,
      FINE_YAWS[i + 1]!,
      tilts[j]!,
      tilts[j + 1]!,
      tilts[j + 2]!,
      mask,
    );
    return ways & mask;
  }

  private waysOf(at: number): number {
    const known = this.ways[at]!;
    if (known >= 0) return known;
    const { tilts } = this;
    const i = 2 * YAW_PARTS * yawOf(at);
    const j = 3 * this.tiltParts * tiltOf(at);
    return (this.ways[at] = this.places.waysOf(
      FINE_YAWS[i]!,
      FINE_YAWS[i + 1]!,
      tilts[j]!,
      tilts[j + 1]!,
      tilts[j + 2]!,
    ));
  }

  /** The tilt [rad] at a number of steps from level. */
  private tilt(j: number): number {
    const { pitch } = this.places;
    return j <= BELOW_PITCH
      ? (pitch * j) / BELOW_PITCH
      : pitch + ((PI / 2 - pitch) * (j - BELOW_PITCH)) / ABOVE_PITCH;
  }
}

const YAW_PARTS = ceil(PI / 2 / YAWS / CHECKED);
const yawAt = (i: number): number => (PI / 2) * (i / YAWS);
/** Cosine and sine of every angle in plan, and of those between them. */
const FINE_YAWS = Float64Array.from({ length: 2 * (YAWS * YAW_PARTS + 1) }, (_, k) => {
  const yaw = yawAt((k >> 1) / YAW_PARTS);
  return k % 2 === 0 ? max(cos(yaw), 1e-12) : sin(yaw);
});

const yawOf = (at: number): number => (at / COLUMN) | 0;
const tiltOf = (at: number): number => at % COLUMN;
/** The point beside one of the grid: at the last angle in plan (0), last tilt (1), next tilt (2), next angle (3); or -1. */
function neighbour(at: number, side: number): number {
  if (side === 0) return at - COLUMN;
  if (side === 3) return at + COLUMN < NODES ? at + COLUMN : -1;
  const tilt = at % COLUMN;
  if (side === 1) return tilt === 0 ? -1 : at - 1;
  return tilt === TILTS ? -1 : at + 1;
}

/** The step between neighbours, by the lower of them: to the next angle in plan even, to the next tilt odd. */
const stepBetween = (one: number, other: number): number =>
  2 * min(one, other) + (Math.abs(one - other) === 2 ? 1 : 0);

/** The point of the grid where it leaves. */
function endOf(leaves: LeavesAs): number {
  const sideways = leaves === 'sideways' || leaves === 'upright sideways';
  const upright = leaves === 'upright' || leaves === 'upright sideways';
  return (sideways ? 0 : YAWS) * COLUMN + (upright ? TILTS : 0);
}
