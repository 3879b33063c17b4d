import { rectangleThroughOpening } from '../../geometry/rectangleThroughOpening';
import type { PieceSize, Pose } from '../../measures/piece';
import { paddedPiece } from '../../measures/piece';
import { sizesOfHold, type Hold } from '../../motion/hold';
import { turnedFace } from '../../motion/turnedFace';
import type { TurnedHold } from '../../motion/attitude';
import { movedFrame, type Frame } from '../place/frame';
import { GROUND_AWAY } from './reach';
import { endsOpen, placeRoute, type PlacedRoute, type PlacedRow } from '../place/placedRoute';
import { isStair, kindOf } from '../../stages/kinds';
import { isLanding, turns } from '../place/rowContext';
import type { JointRow } from '../jointRow';
import { LIFT_TRAVEL } from '../place/buildLift';
import type { KeyAttitude } from '../../space/motion';
import { Carrier, type WalkKey, type Stretch } from './carrier';
import {
  carriedSizes,
  holdSeenAlong,
  quarterTurns,
  standsAlike,
  turnOfCarriage,
  type Carriage,
} from './carriage';
import { planeMove } from './planeMove';
import type { PlanarPlace } from '../../geometry/planar/planarWorld';
import { flightMove } from './flightMove';
import { landingKeys } from './landingMove';
import { stairTurnKeys, turnNear } from './stairTurnMove';
import { stationsPastDoors } from './pastDoors';
import { lastOf } from '../../lists/ends';
import { entryAt } from '../../lists/entryAt';

/** What the chain does with the piece at one row. */
export interface WalkStep {
  readonly enters: Hold;
  readonly from: Hold;
  readonly to: Hold;
  readonly leaves: Hold;
  /** The pose in which it passes the row: tilted and leaning ones are drawn so. */
  readonly pose: Pose;
  /** Clearance [mm a side] of that passage by itself: a tilted one is tilted as suits it. */
  readonly clearance?: number | undefined;
  /** How high that passage raises it at most [mm]. */
  readonly raise?: number | undefined;
  /** The row is passed together with others: where it leads straight on the piece is level in it, or as it comes. */
  readonly jointly?: boolean;
}

/** What could not be drawn, and where. */
export interface NotDrawn {
  readonly row: number;
  readonly what:
    'start' | 'pose change' | 'level' | 'flight' | 'landing' | 'winder' | 'into the lift' | 'end';
}

/** One motion of the piece through the scene of its route. */
export interface RouteWalk {
  readonly route: PlacedRoute;
  readonly keys: readonly WalkKey[];
  /** Padding [mm a side] with which every move is shown free. */
  readonly padding: number;
  /** Undefined when the motion leads from before the first row to behind the last. */
  readonly notDrawn: NotDrawn | undefined;
  /** Rows where a search joined what is drawn. */
  readonly searched: readonly number[];
}

/** What may be asked of the walk. */
export interface WalkOptions {
  /** Moves that do not join are searched for; else they are named as not drawn. */
  readonly searches?: boolean;
}

/** The drawn motion is made for so much more than it is shown free for [mm]. */
const DRAWN = 0.4;
/** Kept off the floor [mm]. */
const OFF = 0.3;
/** Kept off planes between rows [mm]. */
const GAP = 1;
/** So far along a straight it is looked for room to change the pose [mm]. */
const OUT = 6000;
/** A turn in plan between two keys is at most so far [rad]: less than a quarter of a round. */
const SMALL_TURN = Math.PI / 4;
/** A station is at most so long [mm]. */
const STATION = 500;

/**
 * Draws the motion of a chain as one: from before the first row to behind the last, each step's own motion (moves in
 * plan among what stands in the layer that the piece fills, moves in a flight's section, families round landings),
 * put into the route's one scene and joined by straight moves, tilted and turned where there is room. Every move is
 * shown free for the piece with the padding before it is kept.
 *
 * @param rows with every length, hand, way and place concrete
 * @param steps what is done at each row
 * @param padding for which the motion is to be free [mm a side]
 */
export function walkRoute(
  rows: readonly JointRow[],
  steps: readonly WalkStep[],
  piece: PieceSize,
  padding: number,
  { searches = true }: WalkOptions = {},
): RouteWalk {
  const walked = rows.map((row) => asWalked(row, piece));
  const route = placeRoute(walked);
  const walker = new Walker(route, walked, steps, piece, padding, searches);
  const notDrawn = walker.walk();
  return {
    route,
    keys: walker.carrier.keys,
    padding,
    notDrawn,
    searched: [...walker.carrier.searched],
  };
}

/** No piece need be carried higher above a floor, whatever its ceiling [mm over its length]. */
const OVERHEAD = 2000;

/** Steps and ramps are walked as the flight that they are, and no higher under the sky than anybody need. */
function asWalked(row: JointRow, { length }: PieceSize): JointRow {
  const measures = kindOf(row.stage).solvedAsFlight?.(row.measures);
  const flight = measures ? { ...row, stage: 'flight' as const, measures, standsAlone: true } : row;
  if (flight.stage !== 'flight') return flight;
  const { height, footCeiling, headCeiling } = flight.measures;
  const most = length + OVERHEAD;
  const under = (told: number | undefined): number | undefined => told && Math.min(told, most);
  if (![height, footCeiling, headCeiling].some((told) => told !== undefined && told > most)) return flight;
  const low = { height: under(height), footCeiling: under(footCeiling), headCeiling: under(headCeiling) };
  const known = Object.entries(low).filter(([, told]) => told !== undefined);
  return { ...flight, measures: { ...flight.measures, ...Object.fromEntries(known) } };
}

class Walker {
  readonly carrier: Carrier;
  private readonly drawn: number;
  /** Undefined while it lies along a flight. */
  private carriage: Carriage;
  /** The placed row that is walked in. */
  private at = 0;
  /** Since this placed row nothing was kept. */
  private since = 0;

  constructor(
    private readonly route: PlacedRoute,
    private readonly rows: readonly JointRow[],
    private readonly steps: readonly WalkStep[],
    private readonly piece: PieceSize,
    padding: number,
    searches: boolean,
  ) {
    this.carrier = new Carrier(route, piece, padding, searches);
    this.drawn = padding + DRAWN;
    this.carriage = { hold: steps[0]?.enters ?? 'LB', yaw: 0 };
  }

  walk(): NotDrawn | undefined {
    const placed = this.route.rows;
    const first = placed[0];
    if (!first) return { row: 0, what: 'start' };
    const begun = this.begin(first);
    if (begun) return begun;
    for (let i = this.at; i < placed.length; i++) {
      this.at = i;
      const failed = this.pass(i);
      if (failed) return failed;
    }
    return this.finish();
  }

  /** Before the first row, outdoors; or on the flight that a first landing supposes. */
  private begin(first: PlacedRow): NotDrawn | undefined {
    const stretch = this.stretch(0);
    const sizes = carriedSizes(this.piece, this.carriage, this.drawn);
    if (first.joint.stage === 'flight' && first.supposed) {
      const key = flightMove.lying(this.route, 0, this.piece, this.carriage.hold, this.drawn, 'far');
      return this.carrier.stand({ ...key, row: first.row }, stretch) ? undefined : { row: 0, what: 'start' };
    }
    const inside = this.spaceOf(0);
    const half = Math.hypot(sizes.p, sizes.q, sizes.height) / 2;
    const places = inside
      ? [Math.max(sizes.p / 2 + GAP, Math.min(inside / 2, inside - sizes.p / 2 - GAP))]
      : [-GROUND_AWAY - half, -GROUND_AWAY / 5 - half, -sizes.p / 2 - GAP];
    const stands = places.some((x) => {
      const frame = movedFrame(first.entry, x, 0, sizes.height / 2 + OFF);
      return this.carrier.stand({ at: frame.at, turn: turnOfCarriage(this.carriage), row: 0 }, stretch);
    });
    return stands ? undefined : { row: 0, what: 'start' };
  }

  private rowAt(i: number): PlacedRow {
    return entryAt(this.route.rows, i);
  }

  /** Floor before the first riser where the route begins in front of a wall [mm]. */
  private spaceOf(i: number): number | undefined {
    const { joint } = this.rowAt(i);
    if (joint.stage !== 'flight') return undefined;
    return joint.way === 'down' ? joint.measures.headSpace : joint.measures.footSpace;
  }

  private pass(i: number): NotDrawn | undefined {
    const { joint, row, supposed } = this.rowAt(i);
    const step = this.steps[row];
    if (!step) return { row, what: 'start' };
    if (joint.stage === 'flight') return this.passFlight(i, step, supposed);
    if (isLanding(joint)) return this.passLanding(i, step);
    // A turn that was passed with the stair at whose end it is, and what lies between them.
    if (i < this.turned || i < this.onto) return undefined;
    if (i === this.turned)
      return step.leaves === step.to ? undefined : this.changeTo(i, step.leaves, 'after');
    const change = this.changeTo(i, step.from, 'before');
    if (change) return change;
    if (this.turnOnToStair(i, step)) return undefined;
    const tilts = this.tiltsFor(i, step);
    let failed: NotDrawn | undefined;
    for (const wanted of tilts) {
      failed = standsAlike(this.carriage, wanted)
        ? this.passLevel(i, step)
        : // Tilted where it can be and can go on from there.
          this.takeUpIn(i, wanted, 'before', () => this.passFromFarther(i, step));
      if (!failed) break;
    }
    if (failed) return failed;
    return step.leaves === step.to ? undefined : this.changeTo(i, step.leaves, 'after');
  }

  /** The turn that was passed last together with a stair. */
  private turned = -1;
  /** The stair that the piece was taken on to from a turn before it. */
  private onto = -1;
  /** From a turn it has come on to the stair behind it. */
  private onStair = false;

  /** Round a turn and on to the stair behind it, where both are passed together. */
  private turnOnToStair(i: number, step: WalkStep): boolean {
    const k = this.route.rows.findIndex(
      ({ joint }, n) => n > i && joint.stage !== 'door' && joint.stage !== 'passage',
    );
    const flight = this.route.rows[k];
    const next = flight && this.steps[flight.row];
    if (!step.jointly || !next?.jointly || flight?.joint.stage !== 'flight') return false;
    if (turnNear(this.route, k, 'before') !== i) return false;
    const keys = stairTurnKeys(this.route, k, 'before', this.piece, this.drawn, step.from, next.from);
    const mark = this.carrier.keys.length;
    const [first] = keys ?? [];
    if (!keys || !first || !this.goOn(first, i)) return false;
    if (!this.carrier.follow(keys, flight.row, this.stretchOf(k))) {
      this.carrier.keys.length = mark;
      return false;
    }
    this.carriage = { hold: next.from, yaw: flight.entry.heading };
    this.since = i;
    this.onStair = true;
    this.onto = k;
    return true;
  }

  /** Straight on to a place, or by turns in plan on the way. */
  private goOn(key: KeyAttitude, i: number): boolean {
    const { row } = this.rowAt(i);
    return (
      this.carrier.go(key, row, this.stretchOf(i), 'without search') ||
      this.carrier.go(key, row, this.stretchOf(i))
    );
  }

  /** Under its own ceiling, or as low as what stands beside it; level where it is carried so. */
  private tiltsFor(i: number, step: WalkStep): TurnedHold[] {
    const tilts = [this.tiltFor(i, step), this.tiltFor(i, step, this.lowestBeside(i))];
    const turned = tilts.filter((tilt) => tilt.turned !== undefined);
    return turned.length > 0 ? turned : tilts.slice(0, 1);
  }

  /** Height [mm] of the lowest of the row and the doors and passages straight beside it. */
  private lowestBeside(i: number): number {
    let lowest = Infinity;
    for (const step of [-1, 1]) {
      for (let k = i + step; Math.abs(k - i) <= 3; k += step) {
        const joint = this.route.rows[k]?.joint;
        if (joint?.stage !== 'door' && joint?.stage !== 'passage') break;
        lowest = Math.min(lowest, joint.measures.height ?? Infinity);
      }
    }
    return lowest;
  }

  /** Goes on from where the piece was tilted, or from a little farther on, clear of what its low end stands under. */
  private passFromFarther(i: number, step: WalkStep): boolean {
    const restore = this.state();
    const { row, entry } = this.rowAt(i);
    const { at, turn } = this.carrier.last;
    return [0, 200, 450, 800, 1200].some((by) => {
      restore();
      const there: KeyAttitude = {
        at: [at[0] + Math.cos(entry.heading) * by, at[1] + Math.sin(entry.heading) * by, at[2]],
        turn,
      };
      const on = by === 0 || this.carrier.go(there, row, this.stretchOf(i), 'without search');
      return on && this.passLevel(i, step) === undefined;
    });
  }

  private tiltFor(i: number, step: WalkStep, under = Infinity): TurnedHold {
    const { from, pose, clearance = this.drawn, jointly } = step;
    const { joint } = this.rowAt(i);
    if ((pose !== 'tilted' && pose !== 'leaning') || (jointly && joint.stage === 'door'))
      return { hold: from };
    const own = Math.max(this.drawn, clearance - DRAWN);
    const { along, across, upright } = sizesOfHold(paddedPiece(this.piece, own), from);
    const face = pose === 'tilted' ? along : across;
    const m = joint.measures;
    const height = Math.min(m.height ?? Infinity, m.ceiling ?? Infinity, under) - 2 * OFF;
    const straight = joint.stage === 'door' || joint.stage === 'passage' || joint.stage === 'lift';
    if (straight) {
      const room = joint.stage === 'lift' && pose === 'tilted' ? (m.depth ?? 0) : (m.width ?? 0);
      const fit = rectangleThroughOpening(room - 2 * GAP, height, face, upright);
      const alike = face >= upright === room - 2 * GAP >= height;
      return { hold: from, turned: pose, tilt: alike ? fit.angle : Math.PI / 2 - fit.angle };
    }
    const fit = turnedFace(face, upright, height);
    return fit ? { hold: from, turned: pose, tilt: fit.tilt } : { hold: from };
  }

  /** Moves on level floor until the piece is past row i, or as near as the rows beyond let it. */
  private passLevel(i: number, step: WalkStep): NotDrawn | undefined {
    const { joint, row } = this.rowAt(i);
    const last = i === this.route.rows.length - 1;
    if (joint.stage === 'lift') return this.passLift(i);
    if (last && joint.stage === 'room') return this.intoRoom(i);
    const next = this.route.rows[i + 1];
    if (!turns(joint.stage) && next && !this.mustStandBefore(i + 1)) {
      this.standIn(i, step.to);
      return undefined;
    }
    const station = this.stationAfter(i, step.to);
    if (station && this.levelTo(station.frame, station.from, station.to, step.to, i)) return undefined;
    // No room to stand before the next row: pushed past it, or passed together with it, where that can be.
    return this.pushedPast(i, step) || this.deferred(i) ? undefined : { row, what: 'level' };
  }

  /** Stands in the passage beyond the door of the next turn, or of this one, where both are passed together. */
  private pushedPast(i: number, step: WalkStep): boolean {
    if (!step.jointly) return false;
    const restore = this.state();
    for (const { frame, from, to, upTo } of stationsPastDoors(this.route.rows, i)) {
      const half = this.alongFor(step.to) / 2 + GAP;
      const [least, most] = [from + half, to - half];
      if (most < least) continue;
      // As near to the door as it can be.
      const [near, far] =
        from >= 0 ? [least, Math.min(most, least + STATION)] : [Math.max(least, most - STATION), most];
      if (this.levelTo(frame, near, far, step.to, upTo)) {
        // The row that it comes from stands beside the way back.
        this.since = i;
        return true;
      }
      restore();
    }
    return false;
  }

  /** Whether what could not be drawn up to behind row i may be drawn together with the next row. */
  private deferred(i: number): boolean {
    const next = this.route.rows[i + 1];
    if (!next) return false;
    if (!this.mustStandBefore(i + 1)) return true;
    const step = this.steps[next.row];
    if (!step || this.lying) return false;
    if (this.carriage.turned !== undefined || step.from[1] !== this.carriage.hold[1]) return false;
    // It is tilted or leaned before this row already, where there is room.
    if (!isStair(next.joint.stage)) return true;
    if (next.joint.stage !== 'flight') return false;
    this.behind = true;
    return true;
  }
  /** The piece still stands before a turn at the end of the stair that it is to be taken on to. */
  private behind = false;
  /** It lies along a flight with no room to be level before the next turn. */
  private lying = false;

  /** Stands in a straight that is long enough, so that what is before it and what is behind are moves of their own. */
  private standIn(i: number, hold: Hold): void {
    const { exit } = this.rowAt(i);
    const along = this.alongFor(hold);
    const length = this.lengthOf(i);
    if (length < along + 2 * GAP) return;
    const to = -along / 2 - GAP;
    this.levelTo(exit, Math.max(-length + along / 2 + GAP, to - STATION), to, hold, i);
  }

  private lengthOf(i: number): number {
    const { entry, exit } = this.rowAt(i);
    return Math.hypot(exit.at[0] - entry.at[0], exit.at[1] - entry.at[1]);
  }

  /** Whether the piece has to stand by itself before a row: to be turned over, or taken on to a stair. */
  private mustStandBefore(i: number): boolean {
    const next = this.route.rows[i];
    if (!next) return true;
    if (next.joint.stage === 'flight' || isLanding(next.joint)) return true;
    const step = this.steps[next.row];
    if (!step) return true;
    const turned = this.carriage.turned !== undefined || step.pose === 'tilted' || step.pose === 'leaning';
    if (turned) return !this.tiltsFor(i, step).some((tilt) => standsAlike(this.carriage, tilt));
    return step.from[1] !== this.carriage.hold[1];
  }

  /** Where it can stand in the straight after row i, along that row's exit frame. */
  private stationAfter(
    i: number,
    hold: Hold,
  ): { readonly frame: Frame; readonly from: number; readonly to: number } | undefined {
    const { exit } = this.rowAt(i);
    const behind = this.straightBehind(i);
    const ahead = this.straightAhead(i);
    const along = this.alongFor(hold);
    const from = -behind + along / 2 + GAP;
    const to = ahead - along / 2 - GAP;
    if (to < from) return undefined;
    // Wholly past the row where there is room for it, else as far on as it can be.
    const past = Math.max(from, Math.min(to, along / 2 + GAP));
    // In the row itself where that holds it, not in front of a door before it.
    const inside = -this.lengthOf(i) + along / 2 + GAP;
    const back = turns(this.rowAt(i).joint.stage) || inside > to ? from : Math.max(from, inside);
    return {
      frame: exit,
      from: past === to ? Math.max(back, to - STATION) : past,
      to: Math.min(to, past + STATION),
    };
  }

  private alongFor(hold: Hold): number {
    const { p, q } = carriedSizes(this.piece, this.carriage, this.drawn);
    return this.carriage.turned !== undefined || hold === this.carriage.hold ? p : q;
  }

  /** The straight before row i's exit plane, as far back as the last turn, riser or outdoors [mm]. */
  private straightBehind(i: number): number {
    let length = 0;
    for (let k = i; k >= 0; k--) {
      const { joint, entry, exit } = this.rowAt(k);
      if (joint.stage === 'room') return length + (joint.measures.length ?? 0);
      if (joint.stage === 'flight') return length + (k === i ? flightMove.floorAfter(this.rowAt(k)) : 0);
      if (joint.stage !== 'passage' && joint.stage !== 'door') return length;
      length += Math.hypot(exit.at[0] - entry.at[0], exit.at[1] - entry.at[1]);
    }
    return length + 4 * GROUND_AWAY;
  }

  /** Level floor straight ahead of row i's exit plane, as far as the next turn or riser [mm]. */
  private straightAhead(i: number): number {
    let length = 0;
    for (let k = i + 1; ; k++) {
      const next = this.route.rows[k];
      if (!next) return length + GROUND_AWAY * 4;
      const { joint } = next;
      if (joint.stage === 'passage' || joint.stage === 'door') {
        length += Math.hypot(next.exit.at[0] - next.entry.at[0], next.exit.at[1] - next.entry.at[1]);
      } else if (joint.stage === 'room') return length + (joint.measures.length ?? 0);
      else if (joint.stage === 'flight') return length + flightMove.floorBefore(next);
      else return length;
    }
  }

  /** Moves in plan to stand in a station of a frame, held so as seen along it. */
  private levelTo(
    frame: Frame,
    from: number,
    to: number,
    hold: Hold,
    upTo: number,
    where: 'anywhere' | 'middle' = 'anywhere',
  ): boolean {
    const row = this.rowAt(upTo).row;
    if (this.lying) return this.offStair(frame, (from + to) / 2, hold, upTo);
    const crosswise =
      this.carriage.turned === undefined && holdSeenAlong({ ...this.carriage, yaw: 0 }, 0) !== hold;
    const sides = this.sidesOf(frame, from, to);
    const middle = (sides[0] + sides[1]) / 2;
    const [yMin, yMax] =
      where === 'middle' ? [Math.max(sides[0], middle - 60), Math.min(sides[1], middle + 60)] : sides;
    const path = this.pathTo(frame, { xMin: from, xMax: to, yMin, yMax }, crosswise ? Math.PI / 2 : 0, upTo);
    if (!path || !this.carrier.follow(path.keys, row, this.stretchOf(upTo))) return false;
    this.carriage = { ...this.carriage, hold: crosswise ? hold : this.carriage.hold, yaw: frame.heading };
    this.since = upTo + 1;
    return true;
  }

  /** From lying along a flight to standing level beyond the turn at its end. */
  private offStair(frame: Frame, x: number, hold: Hold, upTo: number): boolean {
    const carriage = { hold, yaw: frame.heading };
    const { height } = carriedSizes(this.piece, carriage, this.drawn);
    const [yMin, yMax] = this.sidesOf(frame, x, x);
    const { at } = movedFrame(frame, x, Math.abs(yMin) > 5000 ? 0 : (yMin + yMax) / 2, height / 2 + 4 * OFF);
    const target = { at, turn: turnOfCarriage(carriage) };
    if (!this.carrier.go(target, this.rowAt(upTo).row, this.stretchOf(upTo))) return false;
    this.carriage = carriage;
    this.lying = false;
    this.since = upTo + 1;
    return true;
  }

  /** Between which sides its middle may stand in a straight, as seen along a frame [mm]. */
  private sidesOf(frame: Frame, from: number, to: number): [number, number] {
    const c = Math.cos(frame.heading);
    const s = Math.sin(frame.heading);
    const { rows } = this.route;
    const k = rows.findIndex(({ entry, exit }) => entry === frame || exit === frame);
    const own = rows[k];
    const outdoors = own !== undefined && k === rows.length - 1 && own.exit === frame && to > 0;
    if (outdoors || !own) return [-6000, 6000];
    const seen = ({ at }: Frame): [number, number] => {
      const [dx, dy] = [at[0] - frame.at[0], at[1] - frame.at[1]];
      return [c * dx + s * dy, -s * dx + c * dy];
    };
    const width = own.exit === frame ? own.exitSection?.width : own.entrySection.width;
    const sides: [number, number] = [-(width ?? 0) / 2, (width ?? 0) / 2];
    // Rows that lie straight on from one another, as far as the piece's middle may stand in them.
    for (const step of [-1, 1]) {
      for (let n = step < 0 ? k : k + 1; Math.abs(n - k) <= 3; n += step) {
        const row = rows[n];
        // Nor beyond a half landing, from which the way leads back.
        if (!row || Math.cos(row.entry.heading - row.exit.heading) < 1 - 1e-9) break;
        const [x0, y0] = seen(row.entry);
        const [x1] = seen(row.exit);
        if (Math.max(x0, x1) < from || Math.min(x0, x1) > to) continue;
        sides[0] = Math.min(sides[0], y0 - row.entrySection.width / 2);
        sides[1] = Math.max(sides[1], y0 + row.entrySection.width / 2);
      }
    }
    return sides;
  }

  private pathTo(
    frame: Frame,
    region: {
      readonly xMin: number;
      readonly xMax: number;
      readonly yMin: number;
      readonly yMax: number;
      readonly wholeAbove?: number;
    },
    angle: number | undefined,
    upTo: number,
  ):
    | {
        readonly keys: { at: [number, number, number]; turn: ReturnType<typeof turnOfCarriage> }[];
        readonly yaw: number;
      }
    | undefined {
    const { p, q, height } = carriedSizes(this.piece, this.carriage, this.drawn);
    const { last } = this.carrier;
    const c = Math.cos(frame.heading);
    const s = Math.sin(frame.heading);
    const seen = (v: readonly [number, number, number]): [number, number, number] => {
      const [dx, dy] = [v[0] - frame.at[0], v[1] - frame.at[1]];
      return [c * dx + s * dy, -s * dx + c * dy, v[2]];
    };
    const start = seen(last.at);
    const by = this.route.rows
      .slice(Math.max(0, this.since - 1), upTo + 2)
      .flatMap((r) => [seen(r.entry.at), seen(r.exit.at)] as const)
      .filter(([, , z]) => Math.abs(z - last.at[2]) < 3000)
      .map(([x, y]) => [x, y] as const);
    const ys = [start[1], ...by.map((b) => b[1])];
    const span = 3000;
    const goal = {
      ...region,
      yMin: Math.max(region.yMin, Math.min(...ys) - span),
      yMax: Math.min(region.yMax, Math.max(...ys) + span),
      ...(angle === undefined ? {} : { angle }),
    };
    const path = planeMove({
      boxes: this.carrier.solids(this.stretchOf(upTo)).map(({ box }) => box),
      seen,
      low: last.at[2] - height / 2,
      high: last.at[2] + height / 2,
      p,
      q,
      start: { x: start[0], y: start[1], angle: this.carriage.yaw - frame.heading },
      goal,
      margin: Math.hypot(p, q) / 2 + 300,
      by,
    });
    if (!path) return undefined;
    return {
      keys: inSmallTurns(path).map(({ x, y, angle: yaw }) => ({
        at: [frame.at[0] + c * x - s * y, frame.at[1] + s * x + c * y, last.at[2]],
        turn: turnOfCarriage({ ...this.carriage, yaw: yaw + frame.heading }),
      })),
      yaw: lastOf(path).angle + frame.heading,
    };
  }

  /** Changes the pose for row i, or after it. */
  private changeTo(i: number, hold: Hold, when: 'before' | 'after'): NotDrawn | undefined {
    if (this.carriage.turned === undefined && hold[1] === this.carriage.hold[1]) return undefined;
    return this.takeUpIn(i, { hold }, when);
  }

  /**
   * Takes it up where it stands, or where the straight before row i or after it, or the room itself, lets it.
   * @param then what has to succeed from there
   */
  private takeUpIn(
    i: number,
    wanted: TurnedHold,
    when: 'before' | 'after',
    then: () => boolean = () => true,
  ): NotDrawn | undefined {
    const { row, joint, entry, exit } = this.rowAt(i);
    const failed: NotDrawn = { row, what: 'pose change' };
    if (this.lying) return failed;
    const { hold } = wanted;
    const ways: readonly (readonly ['front' | 'back' | 'middle', number])[] =
      wanted.turned !== undefined
        ? // Tilted it may have either end up, leaning either side.
          [
            ['front', 0],
            ['middle', 0],
            ['middle', Math.PI],
          ]
        : this.carriage.turned !== undefined
          ? [
              ['back', 0],
              ['middle', 0],
              ['front', 0],
            ]
          : [['middle', 0]];
    const taken = (): boolean => {
      const restore = this.state();
      return ways.some(([end, by]) => {
        const done = !this.takeUp({ ...wanted, yaw: this.carriage.yaw + by }, row, end) && then();
        if (!done) restore();
        return done;
      });
    };
    if (taken()) return undefined;
    const frame = when === 'before' ? entry : exit;
    const level = joint.stage === 'room' || joint.stage === 'passage';
    const own = level ? (joint.measures.length ?? 0) : 0;
    const behind =
      when === 'before' ? (i === 0 ? GROUND_AWAY : this.straightBehind(i - 1)) : this.straightBehind(i);
    const ahead = when === 'before' ? Math.max(own, this.straightAhead(i - 1)) : this.straightAhead(i);
    const before = this.carriage;
    const half = this.alongFor(before.hold) / 2 + GAP;
    const [low, high] = [-Math.min(behind, OUT) + half, Math.min(ahead, OUT) - half];
    if (high < low) return failed;
    const kept = this.carrier.keys.slice();
    const { since } = this;
    for (const part of wanted.turned === undefined ? [0.5, 0.3, 0.7, 0.1, 0.9] : [1, 0.8, 0.5, 0.3]) {
      const x = low + (high - low) * part;
      this.carrier.keys.splice(0, Infinity, ...kept);
      this.carriage = before;
      this.since = since;
      const near = (by: number): [number, number] => [Math.max(low, x - by), Math.min(high, x + by)];
      if (
        !this.levelTo(frame, ...near(50), before.hold, when === 'before' ? Math.max(0, i - 1) : i, 'middle')
      )
        continue;
      this.since = since;
      if (taken()) return undefined;
      if (wanted.turned !== undefined) continue;
      // Turned over across the way, and then about.
      if (this.takeUp({ hold, yaw: this.carriage.yaw + Math.PI / 2 }, row, 'middle')) continue;
      if (this.levelTo(frame, ...near(600), hold, when === 'before' ? Math.max(0, i - 1) : i)) {
        this.since = since;
        return undefined;
      }
    }
    this.carrier.keys.splice(0, Infinity, ...kept);
    this.carriage = before;
    this.since = since;
    return failed;
  }

  private state(): () => void {
    const kept = this.carrier.keys.slice();
    const { carriage, since, behind, lying } = this;
    return () => {
      this.carrier.keys.splice(0, Infinity, ...kept);
      this.carriage = carriage;
      this.since = since;
      this.behind = behind;
      this.lying = lying;
    };
  }

  /** Turns the piece where it stands into another carriage, by quarter turns one after the other, and sets it down. */
  private takeUp(wanted: Carriage, row: number, end: 'front' | 'back' | 'middle'): NotDrawn | undefined {
    const ways =
      wanted.turned === undefined && this.carriage.turned === undefined
        ? quarterTurns(this.carriage.hold, wanted.hold).map((way) =>
            way.map((hold): Carriage => ({ hold, yaw: wanted.yaw })),
          )
        : [[wanted]];
    const mark = this.carrier.keys.length;
    const stretch = this.stretchOf(this.at);
    const floor = this.floorHere();
    for (const way of ways) {
      const done = way.every((to) => {
        const wantedTurn = turnOfCarriage(to);
        const turned =
          this.carrier.turnOnFloor(
            wantedTurn,
            floor,
            row,
            stretch,
            end === 'middle' ? undefined : { heading: this.carriage.yaw, end },
          ) ||
          (end === 'middle' && this.carrier.turn(wantedTurn, row, stretch));
        if (!turned) return false;
        const { height } = carriedSizes(this.piece, to, this.drawn);
        const { at, turn } = this.carrier.last;
        return this.carrier.go(
          { at: [at[0], at[1], floor + height / 2 + OFF], turn },
          row,
          stretch,
          'without search',
        );
      });
      if (done) {
        this.carrier.standOff(this.drawn, row, stretch);
        this.carriage = way[way.length - 1] ?? wanted;
        return undefined;
      }
      this.carrier.keys.length = mark;
    }
    return { row, what: 'pose change' };
  }

  /** Height of the floor under the piece as it is carried now [mm]. */
  private floorHere(): number {
    const { height } = carriedSizes(this.piece, this.carriage, this.drawn);
    return this.carrier.last.at[2] - height / 2 - OFF;
  }

  private passLift(i: number): NotDrawn | undefined {
    const { row, entry, exit } = this.rowAt(i);
    const m = entryAt(this.rows, row).measures;
    const [width, depth] = [m.widthOut ?? 0, m.depth ?? 0];
    // Seen with y into the car, so that it can be asked to be wholly inside.
    const frame = { at: entry.at, heading: entry.heading - Math.PI / 2 };
    const region = { xMin: -width / 2, xMax: width / 2, yMin: 0, yMax: depth, wholeAbove: 0 };
    const path = this.pathTo(frame, region, undefined, i);
    if (!path || !this.carrier.follow(path.keys, row, this.stretchOf(i)))
      return { row, what: 'into the lift' };
    this.carriage = { ...this.carriage, yaw: path.yaw };
    this.since = i;
    if (i === this.route.rows.length - 1) return undefined;
    const { at, turn } = this.carrier.last;
    const above: WalkKey = { at: [at[0], at[1], at[2] + LIFT_TRAVEL], turn, row, rides: true };
    if (!this.carrier.stand(above, this.stretchOf(i))) return { row, what: 'into the lift' };
    const step = entryAt(this.steps, row);
    const station = this.stationAfter(i, step.to);
    if (!station) return { row, what: 'level' };
    // Seen along the way out it is held as it was seen along the way in.
    const held = this.carriage;
    this.carriage = { ...held, yaw: this.carriage.yaw };
    return this.levelTo({ ...station.frame, heading: exit.heading }, station.from, station.to, step.to, i)
      ? undefined
      : { row, what: 'level' };
  }

  private stationIn(length: number): { readonly from: number; readonly to: number } {
    const half = this.alongFor(this.carriage.hold) / 2 + GAP;
    return { from: half, to: Math.min(length - half, half + STATION) };
  }

  private intoRoom(i: number): NotDrawn | undefined {
    const { row, entry, joint } = this.rowAt(i);
    const [length, width] = [joint.measures.length ?? 0, joint.measures.width ?? 0];
    const { from, to } = this.stationIn(length);
    if (to >= from && this.levelTo(entry, from, to, this.carriage.hold, i)) return undefined;
    const frame = { at: entry.at, heading: entry.heading - Math.PI / 2 };
    const region = { xMin: -width, xMax: width, yMin: 0, yMax: length, wholeAbove: 0 };
    const path = this.pathTo(frame, region, undefined, i);
    if (!path || !this.carrier.follow(path.keys, row, this.stretchOf(i))) return { row, what: 'level' };
    this.carriage = { ...this.carriage, yaw: path.yaw };
    return undefined;
  }

  private passFlight(i: number, step: WalkStep, supposed: boolean): NotDrawn | undefined {
    const { row } = this.rowAt(i);
    const before = this.route.rows[i - 1];
    const after = this.route.rows[i + 1];
    let fromLevel = before === undefined ? !supposed : !isLanding(before.joint);
    if (this.onStair) {
      this.onStair = false;
      fromLevel = false;
    } else if (this.behind) {
      // Round the turn and on to the stair at once.
      this.behind = false;
      fromLevel = false;
      const on = (['near', 'far'] as const).some((where) =>
        this.carrier.go(
          flightMove.lying(this.route, i, this.piece, step.from, this.drawn, where),
          row,
          this.stretchOf(i),
        ),
      );
      if (!on) return { row, what: 'flight' };
    } else if (fromLevel) {
      const change = this.changeTo(i, step.from, 'before');
      if (change) return change;
      if (this.carriage.hold !== step.from && i > 0) {
        // Turned about on the floor before the stair.
        const station = this.stationAfter(i - 1, step.from);
        if (!station || !this.levelTo(station.frame, station.from, station.to, step.from, i - 1)) {
          return { row, what: 'pose change' };
        }
      }
    }
    if (after === undefined && supposed) return undefined;
    const turn = this.turnBehind(i, step);
    const goals: ('level floor' | KeyAttitude)[] =
      after !== undefined && isLanding(after.joint)
        ? this.landingGoals(i + 1)
        : turn
          ? spread(turn.filter((key) => flightMove.inSection(this.route, i, key, step.from, 'upright')))
          : ['level floor'];
    // From where the landing before leaves it, or from a place before, still over that landing; leaning, it lies down first.
    const leans = !fromLevel && this.leavingMarks(i, step).length === 0;
    if (leans) {
      const on = flightMove.lying(this.route, i, this.piece, step.from, this.drawn, 'near');
      this.carrier.go(on, row, this.stretchOf(i));
    }
    const marks = fromLevel ? [this.carrier.keys.length] : this.leavingMarks(i, step);
    const kept = this.carrier.keys.slice();
    for (const mark of marks) {
      for (const goal of goals) {
        this.carrier.keys.splice(0, Infinity, ...kept.slice(0, mark));
        if (goal !== 'level floor' && this.carrier.go(goal, row, this.stretchOf(i), 'without search')) {
          if (!turn) {
            this.since = i + 1;
            return undefined;
          }
          if (this.followTurn(i, turn, goal)) return undefined;
          this.carrier.keys.splice(0, Infinity, ...kept.slice(0, mark));
        }
        const moved = (["goal's", "start's", "way's"] as const).some((side) => {
          if (side === (goal === 'level floor' ? "goal's" : "way's")) return false;
          const keys = flightMove.pass(this.route, i, {
            piece: this.piece,
            hold: step.from,
            drawn: this.drawn,
            start: this.carrier.last,
            solids: this.carrier.solids(this.stretchOf(i)).map(({ box }) => box),
            goal,
            side,
            ahead: after !== undefined ? this.straightAhead(i) : endsOpen(this.rowAt(i).joint) ? Infinity : 0,
          });
          return keys !== undefined && this.carrier.follow(keys, row, this.stretchOf(i));
        });
        if (!moved && (goal === 'level floor' || !this.movedAsideOn(i, step, goal))) continue;
        if (turn && goal !== 'level floor') {
          if (this.followTurn(i, turn, goal)) return undefined;
          continue;
        }
        this.carriage = { hold: step.to, yaw: this.rowAt(i).exit.heading };
        this.since = i + 1;
        if (goal !== 'level floor') return undefined;
        this.settle(i);
        return step.leaves === step.to ? undefined : this.changeTo(i, step.leaves, 'after');
      }
    }
    this.carrier.keys.splice(0, Infinity, ...kept);
    const next = this.route.rows[i + 1];
    if (next && isLanding(next.joint)) {
      // Round the bends at both ends of a short flight at once.
      const on = goals.some(
        (goal) => goal !== 'level floor' && this.carrier.go(goal, row, this.stretchOf(i)),
      );
      if (on) {
        this.since = i + 1;
        return undefined;
      }
    }
    if (next && !isLanding(next.joint)) {
      // No room to be level before the next turn: it stays on the flight.
      const goal = flightMove.lying(this.route, i, this.piece, step.to, this.drawn, 'far');
      const keys = flightMove.pass(this.route, i, {
        piece: this.piece,
        hold: step.from,
        drawn: this.drawn,
        start: this.carrier.last,
        solids: this.carrier.solids(this.stretchOf(i)).map(({ box }) => box),
        goal,
        side: "start's",
        ahead: 0,
      }) ?? [goal];
      if (this.carrier.follow(keys, row, this.stretchOf(i))) {
        this.carriage = { hold: step.to, yaw: this.rowAt(i).exit.heading };
        this.since = i;
        this.lying = true;
        return undefined;
      }
    }
    return { row, what: 'flight' };
  }

  /**
   * To a place in the section of flight i, moved aside while it lies along the middle of it: where a door at its one end and
   * a turn at the other leave it no room on one line.
   */
  private movedAsideOn(i: number, step: WalkStep, goal: KeyAttitude): boolean {
    const { row } = this.rowAt(i);
    const mark = this.carrier.keys.length;
    const beside = (other: KeyAttitude): KeyAttitude =>
      flightMove.lyingBeside(this.route, i, this.piece, step.from, this.drawn, other);
    const pass = (to: KeyAttitude, side: "start's" | "goal's"): boolean => {
      const keys = flightMove.pass(this.route, i, {
        piece: this.piece,
        hold: step.from,
        drawn: this.drawn,
        start: this.carrier.last,
        solids: this.carrier.solids(this.stretchOf(i)).map(({ box }) => box),
        goal: to,
        side,
        ahead: 0,
      });
      return keys !== undefined && this.carrier.follow(keys, row, this.stretchOf(i));
    };
    const on =
      pass(beside(this.carrier.last), "start's") &&
      this.carrier.go(beside(goal), row, this.stretchOf(i), 'without search') &&
      pass(goal, "goal's");
    if (!on) this.carrier.keys.length = mark;
    return on;
  }

  /** The keys of the turn behind flight i, where both are passed together. */
  private turnBehind(i: number, step: WalkStep): KeyAttitude[] | undefined {
    const k = turnNear(this.route, i, 'after');
    const turn = k === undefined ? undefined : this.route.rows[k];
    const next = turn && this.steps[turn.row];
    if (!step.jointly || !next?.jointly) return undefined;
    return stairTurnKeys(this.route, i, 'after', this.piece, this.drawn, step.from, next.to);
  }

  /** On from one of the keys of the turn behind flight i, round it. */
  private followTurn(i: number, keys: readonly KeyAttitude[], from: KeyAttitude): boolean {
    const k = turnNear(this.route, i, 'after') ?? i + 1;
    const turn = this.rowAt(k);
    if (!this.carrier.follow(keys.slice(keys.indexOf(from) + 1), turn.row, this.stretchOf(k))) return false;
    this.carriage = { hold: entryAt(this.steps, turn.row).to, yaw: turn.exit.heading };
    this.since = k;
    this.turned = k;
    return true;
  }

  /** Sets the piece down on the floor behind row i, where it is held higher than it need be. */
  private settle(i: number): void {
    const { row, exit } = this.rowAt(i);
    const { height } = carriedSizes(this.piece, this.carriage, this.drawn);
    const { at, turn } = this.carrier.last;
    this.carrier.go(
      { at: [at[0], at[1], exit.at[2] + height / 2 + OFF], turn },
      row,
      this.stretchOf(i),
      'without search',
    );
  }

  /** Where the motion round a landing may be joined from the flight before it, from low on the flight to level. */
  private landingGoals(i: number): KeyAttitude[] {
    const { row } = this.rowAt(i);
    const step = entryAt(this.steps, row);
    const inSection = (this.landing(i) ?? []).filter((key) =>
      flightMove.inSection(this.route, i - 1, key, step.from, step.jointly ? 'upright' : 'lying'),
    );
    // One that leans all the way begins where the piece lies along the flight.
    return inSection.length > 0
      ? spread(inSection)
      : [flightMove.lying(this.route, i - 1, this.piece, step.from, this.drawn, 'far')];
  }

  private landing(i: number): KeyAttitude[] | undefined {
    const known = this.landings.get(i);
    if (known) return known;
    const step = entryAt(this.steps, this.rowAt(i).row);
    const keys = landingKeys(this.route, i, this.piece, step, this.drawn);
    if (keys) this.landings.set(i, keys);
    return keys;
  }
  private readonly landings = new Map<number, KeyAttitude[]>();

  /** Numbers of keys to keep of a motion that has come off a landing on to flight i: all, or back to the landing. */
  private leavingMarks(i: number, { from: hold, jointly }: WalkStep): number[] {
    const { keys } = this.carrier;
    const marks: number[] = [];
    for (let n = keys.length; n > 1; n--) {
      if (!flightMove.inSection(this.route, i, entryAt(keys, n - 1), hold, jointly ? 'upright' : 'lying'))
        break;
      marks.push(n);
    }
    return spread(marks);
  }

  private passLanding(i: number, step: WalkStep): NotDrawn | undefined {
    const { row, joint } = this.rowAt(i);
    const what = joint.stage === 'winder' ? 'winder' : 'landing';
    const stretch = this.stretchOf(i);
    const keys = this.landing(i);
    if (keys) {
      const mark = this.carrier.keys.length;
      // What lies before the place where it is now has been left out.
      const { at } = this.carrier.last;
      const far = (k: KeyAttitude): number => Math.hypot(k.at[0] - at[0], k.at[1] - at[1], k.at[2] - at[2]);
      const joined = keys.findIndex((key) => far(key) < 1e-6);
      const round = keys.slice(joined + 1).every((key) => this.carrier.go(key, row, stretch));
      // On a short flight it need not come to lie as far along it as on a long one.
      if (
        round ||
        (this.carrier.keys.length > mark && this.leavingMarks(i + 1, entryAt(this.steps, row)).length > 0)
      ) {
        this.carriage = { hold: step.to, yaw: this.rowAt(i).exit.heading };
        return undefined;
      }
      this.carrier.keys.length = mark;
    }
    const goal = flightMove.lying(this.route, i + 1, this.piece, step.to, this.drawn, 'near');
    if (!this.carrier.go(goal, row, stretch)) return { row, what };
    this.carriage = { hold: step.to, yaw: this.rowAt(i).exit.heading };
    return undefined;
  }

  /** Behind the last row, outdoors. */
  private finish(): NotDrawn | undefined {
    const i = this.route.rows.length - 1;
    const { joint, row, supposed, exitSection } = this.rowAt(i);
    if (joint.stage === 'room' || joint.stage === 'lift' || joint.stage === 'flight' || supposed)
      return undefined;
    if (isLanding(joint) || !exitSection) return undefined;
    const station = this.stationAfter(i, this.carriage.hold);
    if (station && this.since > i) return undefined;
    if (!station) return { row, what: 'end' };
    return this.levelTo(station.frame, station.from, station.to, this.carriage.hold, i)
      ? undefined
      : { row, what: 'end' };
  }

  private stretch(i: number): Stretch {
    const { row } = this.rowAt(i);
    return { from: row, to: row };
  }

  /** The rows that moves from where the piece stands to row i may touch. */
  private stretchOf(i: number): Stretch {
    const first = this.rowAt(Math.min(this.since, i)).row;
    return { from: first, to: this.rowAt(i).row };
  }
}

/**
 * The same path with no turn so far that a tilted piece, which looks the same in four attitudes, would be taken another
 * way than round the plumb line.
 */
function inSmallTurns(path: readonly PlanarPlace[]): PlanarPlace[] {
  return path.flatMap((place, n): PlanarPlace[] => {
    const before = path[n - 1];
    if (!before) return [place];
    const parts = Math.max(1, Math.ceil(Math.abs(place.angle - before.angle) / SMALL_TURN));
    const part = (from: number, to: number, k: number): number => from + ((to - from) * k) / parts;
    return Array.from({ length: parts }, (_, k) => ({
      x: part(before.x, place.x, k + 1),
      y: part(before.y, place.y, k + 1),
      angle: part(before.angle, place.angle, k + 1),
    }));
  });
}

/** The first of a row, the last, and some between. */
function spread<T>(row: readonly T[]): T[] {
  const parts = [0, 1, 0.5, 0.25, 0.75];
  const at = new Set(parts.map((part) => Math.round(part * (row.length - 1))));
  return [...at].flatMap((n) => row.slice(n, n + 1));
}
