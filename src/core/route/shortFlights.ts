import { entryAt } from '../lists/entryAt';
import type { DoorAtEnd, FlightToLevel } from '../joint/shortFlightSection';
import { ownLength, type Arm } from './arms';
import { endOf } from './flightEnd';
import { armsBeyond, beyondDoor, raisedIn, stairJoints, type Floors, type JointPlan } from './jointPlan';
import { endBeside, spaceAt } from './reading';
import { bareFlight, type Planning } from './planning';
import type { BookStage } from './stageBook';
import { roleOf, turnArms } from '../stages/kinds';
import { WALL_NOT_GIVEN } from '../stages/usualRanges';

/**
 * How the piece is beyond a flight beside a landing: lying along it, level on the floor at its end, beyond a door there, or
 * beyond a turn.
 */
export type BeyondFlight = 'laid' | 'level' | 'door' | 'turn';

/** A flight beside a landing, as it may have to be solved together with it [mm]. */
export interface FlightBeside {
  /** From its first nosing to its last along the pitch, as measured. */
  readonly line: number;
  /** Undefined where it does not lead to a level floor, or where that is not known enough. */
  readonly toLevel: FlightToLevel | undefined;
  /** The doors that may be at the end of that floor: the same door, with what is beyond it taken one way or another. */
  readonly doors: readonly DoorAtEnd[];
  /** Passages between the flight and that door. */
  readonly passages: number;
  /** The turn at its other end, as wide and high as it is so far on: the widest first. */
  readonly turns: readonly TurnAtEnd[];
}

/** A turn at a flight's end as `JointPlan` has it, and the flight's risers. */
export interface TurnAtEnd extends Pick<JointPlan, 'ceiling' | 'width' | 'upTo' | 'cause' | 'raised'> {
  readonly risers: number;
  /** [mm] */
  readonly passageWidth: number;
  readonly floor: Floors;
}

/** A landing and flights beside it that may be shorter than the piece; absent flights are longer. */
export interface ShortFlightsPlan {
  /** As narrow and low as the flights beside it. */
  readonly landing: BookStage;
  /** In row order. */
  readonly first: FlightBeside | undefined;
  readonly second: FlightBeside | undefined;
  readonly beyondFirst: BeyondFlight;
  readonly beyondSecond: BeyondFlight;
  /** The first flight is the lower one. */
  readonly upward: boolean;
}

/** A joint that begins with some part of a route, and how many parts it takes. */
export interface ShortFlightsJoint {
  readonly parts: number;
  readonly plan: ShortFlightsPlan;
}

/** The part with which a joint begins. */
export type JointBegins =
  'door' | 'door before a passage' | 'turn' | 'first half' | 'second half' | 'landing';

// A flight is the floor at its first end, its two halves, and the floor at its second end.
const PARTS_BEFORE: Readonly<Record<JointBegins, number>> = {
  door: 5,
  'door before a passage': 6,
  turn: 5,
  'first half': 3,
  'second half': 2,
  landing: 0,
};
const PARTS_AFTER: Readonly<Record<BeyondFlight, number>> = { laid: 2, level: 3, door: 5, turn: 5 };

/**
 * The joints of landing i with the flights beside it that begin with a given part: from lying along a long flight, or
 * from level at the far end of a short one, to the same on the other side.
 * @param landing as the route takes it, as narrow and low as the flights beside it
 */
export function shortFlightJoints(
  planning: Planning,
  i: number,
  begins: JointBegins,
  landing: BookStage,
): ShortFlightsJoint[] {
  const { reading } = planning;
  const row = entryAt(reading, i);
  if (row.stage !== 'quarter landing' && row.stage !== 'half landing') return [];
  const [first, second] = [besideOf(planning, i, 'before'), besideOf(planning, i, 'after')];
  if ((first === undefined) !== (begins === 'landing')) return [];
  const beyondFirst = BEYOND[begins];
  if (!leads(first, beyondFirst)) return [];
  if (beyondFirst === 'door' && first?.passages !== PASSAGES[begins]) return [];
  const joints: ShortFlightsJoint[] = [];
  for (const beyondSecond of ['laid', 'level', 'door', 'turn'] as const) {
    if (beyondFirst === 'laid' && beyondSecond === 'laid') continue;
    if (!leads(second, beyondSecond)) continue;
    joints.push({
      parts:
        PARTS_BEFORE[begins] +
        1 +
        (second ? PARTS_AFTER[beyondSecond] + (beyondSecond === 'door' ? second.passages : 0) : 0),
      plan: { landing, first, second, beyondFirst, beyondSecond, upward: row.way === 'up' },
    });
  }
  return joints;
}

/** Passages between the flight and the door with which a joint begins. */
const PASSAGES: Readonly<Partial<Record<JointBegins, number>>> = { door: 0, 'door before a passage': 1 };

const BEYOND: Readonly<Record<JointBegins, BeyondFlight>> = {
  door: 'door',
  'door before a passage': 'door',
  turn: 'turn',
  'first half': 'level',
  'second half': 'laid',
  landing: 'laid',
};

/** Whether a flight leads to what is beyond it so. */
function leads(flight: FlightBeside | undefined, beyond: BeyondFlight): boolean {
  switch (beyond) {
    case 'laid':
      return true;
    case 'level':
      return flight?.toLevel !== undefined;
    case 'door':
      return flight?.toLevel !== undefined && flight.doors.length > 0;
    case 'turn':
      return flight !== undefined && flight.turns.length > 0;
  }
}

/** The flight beside a landing on one of its sides; undefined where there is none. */
function besideOf(planning: Planning, i: number, side: 'before' | 'after'): FlightBeside | undefined {
  const { reading, stageAt } = planning;
  const k = side === 'before' ? i - 1 : i + 1;
  const flight = reading[k];
  if (flight?.stage !== 'flight') return undefined;
  const { risers, rise = 0, going = 0 } = flight.measures;
  if (risers === undefined || !stageAt(k))
    return { line: Infinity, toLevel: undefined, doors: [], passages: 0, turns: [] };
  // A handrail on one side, which a landing knows nothing of, is left to the flight by itself.
  const alike = sameStair(planning, i, k) && flight.measures.lowWidth === undefined;
  return {
    line: (risers - 1) * Math.hypot(rise, going),
    toLevel: alike ? toLevelOf(planning, k, side, risers) : undefined,
    ...(alike ? doorsOf(planning, k, side) : NO_DOORS),
    turns: alike ? turnsAt(planning, k, side, risers) : [],
  };
}

function turnsAt(planning: Planning, k: number, side: 'before' | 'after', risers: number): TurnAtEnd[] {
  const flight = planning.stageAt(k);
  if (!flight) return [];
  return stairJoints(planning, k, side, bareFlight(planning, flight)).flatMap((joint): TurnAtEnd[] => {
    if (joint.kind !== 'stair turn') return [];
    const { ceiling, width, upTo, cause, raised, passageWidth, floor } = joint;
    return [{ ceiling, width, upTo, cause, raised, passageWidth, floor, risers }];
  });
}

/** The landing's row measures the stair beside it: only where the flight's own row says the same is it solved so. */
function sameStair({ reading, tape }: Planning, i: number, k: number): boolean {
  const { rise = 0, going = 0 } = entryAt(reading, i).measures;
  const own = entryAt(reading, k).measures;
  return Math.abs(rise - (own.rise ?? 0)) <= tape && Math.abs(going - (own.going ?? 0)) <= tape;
}

function toLevelOf(
  planning: Planning,
  k: number,
  side: 'before' | 'after',
  risers: number,
): FlightToLevel | undefined {
  const { reading, tapeCase, stageAt } = planning;
  const far = side === 'before' ? k - 1 : k + 1;
  const beyond = reading[far];
  if (beyond && (roleOf(beyond.stage) === 'landing' || !stageAt(far))) return undefined;
  const { ceiling, space } = endOf(planning, k, side);
  // Not measured, it is at worst no floor at all.
  return space === undefined && tapeCase === 'worst'
    ? undefined
    : { risers, ceiling, space, door: undefined, floorWidth: floorWidth(planning, far, side) };
}

const NO_DOORS: Pick<FlightBeside, 'doors' | 'passages'> = { doors: [], passages: 0 };

/**
 * The door in the wall that faces a flight's end, where the floor before it is measured: that of the flight's own, or a
 * passage, which is the same floor.
 */
function doorsOf(
  planning: Planning,
  k: number,
  side: 'before' | 'after',
): Pick<FlightBeside, 'doors' | 'passages'> {
  const { reading, stageAt } = planning;
  const step = side === 'before' ? -1 : 1;
  const { way, measures } = entryAt(reading, k);
  if (reading[k + step]?.stage === 'door') {
    if (spaceAt(measures, endBeside(way, side)) === undefined) return NO_DOORS;
    return { doors: doorAt(planning, k + step, side), passages: 0 };
  }
  const door = k + 2 * step;
  if (reading[k + step]?.stage !== 'passage' || reading[door]?.stage !== 'door') return NO_DOORS;
  if (!stageAt(k + step) || !stageAt(door) || ownLength(reading, k + step).open) return NO_DOORS;
  return { doors: doorAt(planning, door, side), passages: 1 };
}

/** How wide the floor at a flight's end is [mm]. */
function floorWidth({ reading }: Planning, k: number, side: 'before' | 'after'): number {
  const row = reading[k];
  if (!row) return Infinity;
  const { width = Infinity, lowWidth = Infinity } = row.measures;
  const arms = turnArms(row.stage);
  if (!arms) return roleOf(row.stage) === 'straight' ? Math.min(width, lowWidth) : Infinity;
  const beside = arms.eitherWay || side === 'before' ? arms.out : arms.in;
  return row.measures[beside.width] ?? Infinity;
}

function doorAt(planning: Planning, k: number, side: 'before' | 'after'): DoorAtEnd[] {
  const { reading, tapeCase } = planning;
  const { width, height, wall = WALL_NOT_GIVEN } = entryAt(reading, k).measures;
  if (width === undefined || height === undefined) return [];
  const depth = tapeCase === 'worst' ? Math.min : Math.max;
  return armsBeyond(planning, k, side).flatMap((arm: Arm): DoorAtEnd[] => {
    if (arm.end.kind === 'unread' || arm.end.kind === 'long flight') return [];
    const all = beyondDoor(planning, k, arm);
    const room =
      arm.end.kind === 'room' && arm.end.row !== undefined ? reading[arm.end.row]?.measures : undefined;
    return [
      {
        width,
        height,
        wall,
        widthBeyond: all.width,
        heightBeyond: Math.min(all.height, room?.height ?? HIGH, HIGH),
        lengthBeyond: room ? depth(room.length ?? 0, room.width ?? 0) : all.upTo,
        raised: raisedIn(arm),
      },
    ];
  });
}

/** Higher than any piece is long [mm]. */
const HIGH = 9000;
