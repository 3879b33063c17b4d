import { armOf, floorBetween, levelArm, type Arm } from './arms';
import type { LimitCause } from './limitCause';
import { guardsOf } from './guards';
import { ceilingAt, endBeside, spaceAt, type StairEnd } from './reading';
import type { Planning } from './planning';
import type { BookStage } from './stageBook';
import { straightLength, type WayLength } from './wayLength';
import { entryAt } from '../lists/entryAt';
import { roleOf } from '../stages/kinds';
import { WALL_NOT_GIVEN } from '../stages/usualRanges';

/** A door or a turn at one end of a flight, solved together with the bend of the flight there. */
export type JointPlan = {
  readonly end: StairEnd;
  /** The flight stands after the door or the turn, in row order. */
  readonly flightAfter: boolean;
  /** The flight by itself: width, headroom, rise, going, risers. */
  readonly flight: BookStage;
  /** Flat ceiling over the floor between [mm]. */
  readonly ceiling: number;
  /** The floor is no wider than this [mm]. */
  readonly width: number;
  /** On the other side the piece must not reach farther than this [mm]. */
  readonly upTo: number;
  readonly cause: LimitCause | undefined;
  /** The same, wider or higher, holds up to here [mm]: what reaches less far is solved so. */
  readonly roomierUpTo?: number | undefined;
  /** Where it reaches over steps or a ramp outdoors: so much it is raised above what is below it there [mm]. */
  readonly raised?: number | undefined;
} & (
  | {
      readonly kind: 'facing door';
      readonly doorWidth: number;
      readonly doorHeight: number;
      readonly wall: number;
      /** The level floor between is as long as this [mm], or anything from the least to the most. */
      readonly floor: { readonly least: number; readonly most: number };
    }
  | {
      readonly kind: 'stair turn';
      readonly passageWidth: number;
      readonly floor: Floors;
      /** The turn is a door in the floor's side on to open ground. */
      readonly doorOut?: DoorOut;
    }
);

/** A door in the side of the floor at a stair's end, beyond which there is open ground [mm]. */
export interface DoorOut {
  readonly width: number;
  readonly height: number;
  readonly wall: number;
  readonly ceiling: number;
  /** The floor from the stair's end to the facing wall; undefined: it goes on. */
  readonly space: number | undefined;
}

/** Lengths [mm] that stand for every length between. */
export interface Floors {
  readonly at: readonly number[];
  /**
   * So much less than at the nearest of these lengths is left at any other [mm a side]: what is apart from it by twice as
   * much is moved by so much on either side, and no wall by more.
   */
  readonly less: number;
}

/** The joints of flight i with the row beside it on one side, in the order in which they are tried. */
export function stairJoints(
  planning: Planning,
  i: number,
  side: 'before' | 'after',
  flight: BookStage,
): JointPlan[] {
  const { reading, tapeCase } = planning;
  const k = side === 'before' ? i - 1 : i + 1;
  const row = reading[k];
  const own = entryAt(reading, i);
  if (!row || !planning.stageAt(k)) return [];
  const end = endBeside(own.way, side);
  const { width: flightWide = 0, lowWidth = flightWide, height: headroom = 0 } = own.measures;
  const flightWidth = Math.min(flightWide, lowWidth);
  const { measures: m, stage } = row;
  const given = ceilingAt(own.measures, end);
  const worst = tapeCase === 'worst';
  const flightAfter = side === 'before';
  const over = given ?? (worst ? headroom : AMPLE);
  if (roleOf(stage) === 'opening' && m.width !== undefined && m.height !== undefined) {
    const space = spaceAt(own.measures, end);
    const floor = doorFloor(space, planning);
    if (!floor) return [];
    // What is beyond the door is as high as the floor between is taken to be.
    const { width: doorWidth, height: doorHeight } = m;
    return armsBeyond(planning, k, side).map((beyond): JointPlan => {
      const all = beyondDoor(planning, k, beyond);
      return {
        kind: 'facing door',
        end,
        flightAfter,
        flight,
        ceiling: Math.min(over, all.height),
        width: Math.min(flightWidth, all.width),
        doorWidth,
        doorHeight,
        wall: m.wall ?? WALL_NOT_GIVEN,
        floor,
        upTo: all.upTo,
        cause: all.cause,
        raised: raisedIn(beyond),
      };
    });
  }
  const straight = side === 'before' ? floorBetween(row, own) : floorBetween(own, row);
  return turnAt(planning, k, { flight, end, flightAfter, over, width: flightWidth, straight, open: true });
}

/** A flight's end as a turn near it sees it. */
interface StairBeyond extends Pick<JointPlan, 'flight' | 'end' | 'flightAfter'> {
  /** Flat ceiling over the floor between [mm]. */
  readonly over: number;
  /** All that lies between is as wide as this [mm], or wider. */
  readonly width: number;
  /** From the turn to the stair's end. */
  readonly straight: WayLength;
  /** The turn stands beside the flight, which says how far the floor goes on past it. */
  readonly open: boolean;
}

/** The turn of row k, solved together with the flight beyond a straight. */
function turnAt(
  planning: Planning,
  k: number,
  { flight, end, flightAfter, over, width, straight, open }: StairBeyond,
): JointPlan[] {
  const { reading, tapeCase, tape } = planning;
  const { measures: m, stage, into } = entryAt(reading, k);
  const floor = turnFloors(straight, planning);
  if (!floor) return [];
  const side = flightAfter ? 'before' : 'after';
  return armsBeyond(planning, k, side).flatMap((far): JointPlan[] => {
    /** The way beyond the turn, so wide and high where the two meet; the turn's own floor, so wide along the stair. */
    const turn = (beyond: { width: number; height: number }, along: number, doorOut?: DoorOut): JointPlan[] =>
      guardsOf(far, beyond.width, beyond.height, tapeCase, tape).map((guard, n, guards): JointPlan => ({
        kind: 'stair turn',
        end,
        flightAfter,
        flight,
        ceiling: Math.min(over, guard.height),
        width: Math.min(width, along),
        passageWidth: guard.width,
        floor,
        ...(doorOut ? { doorOut } : {}),
        ...nearer(farEnd(k, far, planning), guard.upTo, guard.next, k),
        roomierUpTo: guards[n - 1]?.upTo,
        raised: guard.raised,
      }));
    if (stage === 'corner' && (m.turn ?? 90) === 90) {
      const [passage, along] = flightAfter ? [m.width, m.widthOut] : [m.widthOut, m.width];
      if (passage === undefined || along === undefined || m.height === undefined) return [];
      return turn({ width: passage, height: m.height }, along);
    }
    if (stage === 'side door' && into === flightAfter) {
      if (m.width === undefined || m.height === undefined || m.widthOut === undefined) return [];
      const { width: door, height, ceiling = height } = m;
      const outdoors = open && far.end.kind === 'open' && far.sections.length === 0;
      const doorOut: DoorOut | undefined = outdoors
        ? {
            width: door,
            height,
            wall: m.wall ?? WALL_NOT_GIVEN,
            ceiling: Math.min(over, ceiling),
            space: spaceOfFlight(planning, k, flightAfter, end),
          }
        : undefined;
      // The door's reveal taken as a passage as wide and high as the door.
      return turn({ width: door, height: Math.min(height, ceiling) }, m.widthOut, doorOut);
    }
    return [];
  });
}

const spaceOfFlight = (
  { reading }: Planning,
  turn: number,
  flightAfter: boolean,
  end: StairEnd,
): number | undefined => spaceAt(entryAt(reading, turn + (flightAfter ? 1 : -1)).measures, end);

/** A turn with doors and passages between it and a flight. */
export interface TurnBeyond {
  /** Index of the turn's row. */
  readonly row: number;
  readonly plans: readonly JointPlan[];
}

/**
 * The turn that the way comes to straight on from flight i, beyond doors and passages: solved together with the bend of
 * the flight, where they stand closer than the piece is long. All between is taken to be as narrow and low as it is
 * anywhere there, which contains the real solid wherever the narrow part stands.
 * @returns undefined where the way leads to no turn so
 */
export function turnBeyond(
  planning: Planning,
  i: number,
  side: 'before' | 'after',
  flight: BookStage,
): TurnBeyond | undefined {
  const { reading, tapeCase } = planning;
  const arm = armOf(reading, i, side);
  const row = arm.end.row;
  if (arm.end.kind !== 'turn' || row === undefined || arm.sections.length === 0) return undefined;
  const { way, measures } = entryAt(reading, i);
  const end = endBeside(way, side);
  const { width = 0, lowWidth = width, height: headroom = 0 } = measures;
  const all = narrowest(arm);
  const plans = turnAt(planning, row, {
    flight,
    end,
    flightAfter: side === 'before',
    over: Math.min(all.height, ceilingAt(measures, end) ?? (tapeCase === 'worst' ? headroom : AMPLE)),
    width: Math.min(width, lowWidth, all.width),
    straight: arm.end.at,
    open: false,
  });
  return plans.length > 0 ? { row, plans } : undefined;
}

/** Above any ceiling [mm]. */
const AMPLE = 20000;

/** The least width and the least height [mm] on an arm of the way; Infinity where nothing narrows it. */
const narrowest = ({ sections }: Arm): { readonly width: number; readonly height: number } => ({
  width: Math.min(Infinity, ...sections.map(({ width }) => width)),
  height: Math.min(Infinity, ...sections.map(({ height }) => height)),
});

/** What lies straight beyond a door [mm]: as wide and as high as all of it is, and how far it goes on level. */
interface BeyondDoor {
  readonly width: number;
  readonly height: number;
  readonly upTo: number;
  readonly cause: LimitCause | undefined;
}

/** What lies straight on from row k, up to steps or a ramp outdoors, and over them too. */
export function armsBeyond(
  { reading, tapeCase, tape }: Planning,
  k: number,
  side: 'before' | 'after',
): Arm[] {
  const arm = armOf(reading, k, side);
  const over = levelArm(reading, k, side, tapeCase === 'worst' ? tape : 0);
  return raisedIn(over) === undefined ? [arm] : [arm, over];
}

/** How high the piece is raised over steps or a ramp that an arm reaches over [mm]; undefined where it does not. */
export const raisedIn = ({ sections }: Arm): number | undefined => sections[sections.length - 1]?.raised;

/** What lies beyond the door of row k, where the piece is carried level. */
export function beyondDoor(planning: Planning, k: number, arm: Arm): BeyondDoor {
  return { ...narrowest(arm), ...farEnd(k, arm, planning) };
}

/** Where the straight beyond the door or the turn ends. */
function farEnd(
  k: number,
  { end }: Arm,
  { tapeCase, tape }: Planning,
): { readonly upTo: number; readonly cause: LimitCause | undefined } {
  const { kind, at, row } = end;
  if (kind !== 'turn' && kind !== 'stair') return { upTo: Infinity, cause: undefined };
  const rows: [number, number] = row !== undefined && row < k ? [row, k] : [k, row ?? k];
  return {
    upTo: straightLength(at, tapeCase, tape),
    cause: { kind: 'straight', length: at.open ? undefined : at.known, rows },
  };
}

function nearer(
  end: { readonly upTo: number; readonly cause: LimitCause | undefined },
  upTo: number,
  next: number | undefined,
  k: number,
): { readonly upTo: number; readonly cause: LimitCause | undefined } {
  if (upTo >= end.upTo || next === undefined) return end;
  return { upTo, cause: { kind: 'arm', length: upTo, rows: next < k ? [next, k] : [k, next] } };
}

/** The floor before a door in the facing wall; undefined where it is not measured and may be as long as it likes. */
function doorFloor(
  space: number | undefined,
  { tapeCase, tape }: Planning,
): { readonly least: number; readonly most: number } | undefined {
  if (space === undefined) return tapeCase === 'worst' ? { least: 0, most: AMPLE } : undefined;
  const off = tapeCase === 'worst' ? tape : 0;
  return { least: Math.max(0, space - off), most: space + off };
}

/** A door anywhere in the side of a floor is looked at in places so far apart at most [mm]. */
const APART = 60;
/** In more of them it is not looked at. */
const MOST_PLACES = 6;

/**
 * The straight between a flight and a turn. Clearance is not monotone in it, so in the worst case it is looked at in
 * places so near each other that little is lost between (`Floors`).
 */
function turnFloors(straight: WayLength, { tapeCase, tape }: Planning): Floors | undefined {
  const { known, tapes, open, most } = straight;
  if (tapeCase !== 'worst') {
    if (!open) return { at: [known], less: 0 };
    return { at: most === undefined || most === 0 ? [0] : [0, most], less: 0 };
  }
  const off = tapes * tape;
  if (!open) return between(Math.max(0, known - off), known + off, 2);
  if (most === undefined) return undefined;
  // What is left of a measured space is off by the tape of both measures.
  const to = most + 2 * tape;
  const count = Math.ceil(to / APART);
  return count > MOST_PLACES ? undefined : between(0, to, Math.max(1, count));
}

/** The middles of equal parts of a range. */
function between(least: number, most: number, parts: number): Floors {
  const part = (most - least) / parts;
  if (!(part > 0)) return { at: [least], less: 0 };
  return { at: Array.from({ length: parts }, (_, n) => least + (n + 0.5) * part), less: part / 4 };
}
