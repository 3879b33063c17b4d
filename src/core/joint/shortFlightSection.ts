import { Remembered } from '../lists/remembered';
import { decidePassage } from '../geometry/planar/decidePassage';
import {
  boxPolygon,
  type ConvexPolygon,
  type PlanarRegion,
  type PlanarWorld,
} from '../geometry/planar/planarWorld';

/** A door in the wall that faces a stair's end [mm]. */
export interface DoorAtEnd {
  readonly width: number;
  readonly height: number;
  readonly wall: number;
  /** As wide and as high as all is beyond it, and how long that goes straight on. */
  readonly widthBeyond: number;
  readonly heightBeyond: number;
  readonly lengthBeyond: number;
  /** Beyond it the piece reaches over steps or a ramp outdoors, level: so much it is raised above what is below it there. */
  readonly raised?: number | undefined;
}

/** A flight beside a landing with the level floor at its other end [mm]. */
export interface FlightToLevel {
  readonly risers: number;
  /** Flat ceiling over that floor; undefined: it limits nothing. */
  readonly ceiling: number | undefined;
  /** Level floor up to the facing wall; undefined: as long as it takes. */
  readonly space: number | undefined;
  /** A door in that wall, through which it goes; else it stays before the wall. */
  readonly door: DoorAtEnd | undefined;
  /** How wide that floor is, anywhere across the flight; as wide as the flight when absent. */
  readonly floorWidth?: number | undefined;
  /** At the stair's end the way turns, and the floor is too short for the piece to be level on it. */
  readonly turn?: TurnBeyond | undefined;
}

/** A turn at a flight's other end, as `StairTurnPlan` has it [mm]; its floor and ceiling are the flight's own. */
export interface TurnBeyond {
  /** Of flight and floor at most. */
  readonly width: number;
  readonly straight: number;
  readonly passageWidth: number;
  readonly passageCeiling: number;
}

/** Where the piece stands at the flight's other end, in the upright section. */
export interface PlaceBeyond {
  /** Its middle from that end on [mm]. */
  readonly x: number;
  /** Its lowest point above the floor there [mm], at most. */
  readonly lowestAtMost: number;
  /** [mm] */
  readonly height: number;
  /** [rad] */
  readonly tilt: number;
}

/** What the upright section through a landing's flight is made of [mm]. */
export interface FlightSection {
  /** The flight leads down from the landing, or up. */
  readonly side: 'lower' | 'upper';
  readonly flight: FlightToLevel;
  readonly rise: number;
  readonly going: number;
  readonly headroom: number;
  /** From the landing's edge to the wall that faces the flight. */
  readonly depth: number;
  /** Flat ceiling over the landing. */
  readonly ceiling: number;
}

/** Where the piece is as it begins or ends its turn on the landing, and how high it may be there [mm], [rad]. */
export interface TurnEnd {
  /** Its length in plan; it stands against the wall that faces the flight. */
  readonly inPlan: number;
  readonly tilt: number;
  /** Its lowest corner is at most so high above the landing. */
  readonly lowestAtMost: number;
  readonly height: number;
}

/** Deeper and higher than anything here [mm]. */
const FAR = 30000;
/** Slices that one decision may look at. */
const WORK = 700;
/** Decisions remembered at a time. */
const MOST_KNOWN = 4000;
const known = new Remembered<boolean>(MOST_KNOWN);
/** Room around a place where one motion gives over to the next [mm]. */
const AROUND = 0.2;

/** From the landing's edge to the flight's last nosing, or to its first riser [mm]. */
export const runOf = ({ risers }: FlightToLevel, going: number): number => Math.max(0, risers - 1) * going;

/**
 * Whether a piece comes from the place where its turn on a landing begins, or ends, down or up a flight to level on the
 * floor at its other end, or back: decided in the upright section by the certified planar planner. What stands above the
 * piece anywhere there is open below and what is below it closed below, so that at every place of the path it can be
 * let down until it rests: such a motion is raised by nothing, but what it has to be held up over the first treads
 * (`raise`), where the floor is shorter than the piece.
 *
 * Coordinates: x from the landing's edge out along the flight, z up from the landing.
 * @param beyond where it is to be, or comes from, at the flight's other end; level on the floor there when absent
 * @param along the side along the way [mm], padded
 * @param upright the upright side [mm], padded
 * @param turn where the turn on the landing begins or ends
 * @returns how high it is held up there [mm]; undefined where it is not shown
 */
export function comesLevel(
  section: FlightSection,
  along: number,
  upright: number,
  turn: TurnEnd,
  beyond?: PlaceBeyond,
): { readonly raise: number } | undefined {
  const { side, depth } = section;
  const goal = beyond ? turnPlace(section, beyond) : levelPlace(section, along, upright);
  if (!goal) return undefined;
  const x = -depth + turn.inPlan / 2;
  const start: PlanarRegion & { readonly angle: number } = {
    xMin: x - AROUND,
    xMax: x + AROUND,
    yMin: -FAR / 2,
    yMax: turn.lowestAtMost + turn.height / 2 + AROUND,
    angle: side === 'lower' ? -turn.tilt : turn.tilt,
  };
  // A measure that is tried again, or another piece of one section, often asks for the same.
  const key = JSON.stringify([section, along, upright, start, goal]);
  const passes = known.get(key, () => {
    const world = worldOf(section, along);
    return decidePassage(world, along, upright, start, goal.region, WORK).verdict === 'passes';
  });
  return passes ? { raise: goal.raise } : undefined;
}

/** As it begins its turn at the flight's other end, or ends it. */
function turnPlace(
  { side, flight, rise, going }: FlightSection,
  { x, lowestAtMost, height, tilt }: PlaceBeyond,
): { readonly region: PlanarRegion; readonly raise: number } {
  const at = runOf(flight, going) + x;
  const floor = floorOf(side, flight, rise);
  const region = {
    xMin: at - AROUND,
    xMax: at + AROUND,
    yMin: -FAR / 2,
    yMax: floor + lowestAtMost + height / 2 + AROUND,
    angle: side === 'lower' ? -tilt : tilt,
  };
  return { region, raise: 0 };
}

/** Level on the floor at the flight's other end. */
function levelPlace(
  { side, flight, rise, going }: FlightSection,
  along: number,
  upright: number,
): { readonly region: PlanarRegion; readonly raise: number } | undefined {
  const end = runOf(flight, going);
  const z = floorOf(side, flight, rise) + upright / 2;
  const { space = Infinity, door } = flight;
  const at = (xMin: number, xMax: number, up = 2): PlanarRegion => ({
    xMin,
    xMax,
    yMin: z,
    yMax: z + up,
    angle: 0,
  });
  if (door) {
    const from = end + space + door.wall + along / 2 + 1;
    const to = end + space + door.wall + door.lengthBeyond - along / 2;
    return to < from ? undefined : { region: at(from, Math.min(to, from + along)), raise: 0 };
  }
  const from = end + along / 2 + 1;
  const to = end + space - along / 2;
  if (to >= from) return { region: at(from, Math.min(to, from + along)), raise: 0 };
  // With its middle over the floor: held up over the first treads, or its back over the flight.
  if (to < end) return undefined;
  const over = end + along / 2 - to;
  const raise = side === 'lower' ? rise + (rise / going) * over : 0;
  return { region: at(to - 1, to, raise + 2), raise };
}

const floorOf = (side: 'lower' | 'upper', { risers }: FlightToLevel, rise: number): number =>
  (side === 'lower' ? -1 : 1) * risers * rise;

function worldOf(
  { side, flight, rise, going, headroom, depth, ceiling }: FlightSection,
  along: number,
): PlanarWorld {
  const end = runOf(flight, going);
  const floor = floorOf(side, flight, rise);
  const { space, door } = flight;
  const room = 2 * along + 1000;
  const wall = end + (space ?? room);
  const first = side === 'lower' ? 0 : rise;
  const last = side === 'lower' ? floor + rise : floor;
  const slope = end > 0 ? (last - first) / end : 0;
  const below = (x1: number, z1: number, x2: number, z2: number): ConvexPolygon => [
    [x1, -FAR],
    [x2, -FAR],
    [x2, z2],
    [x1, z1],
  ];
  const above = (x1: number, z1: number, x2: number, z2: number): ConvexPolygon => [
    [x1, z1],
    [x2, z2],
    [x2, FAR],
    [x1, FAR],
  ];
  const beyond = door ? wall + door.wall + Math.min(door.lengthBeyond, room) : wall;
  const obstacles: ConvexPolygon[] = [
    below(-depth, 0, 0, 0),
    below(end, floor, beyond, floor),
    above(-depth, ceiling, 0, ceiling),
    boxPolygon(-depth - 100, -FAR, -depth, FAR),
    boxPolygon(beyond, -FAR, beyond + 100, FAR),
  ];
  if (end > 0) obstacles.push(below(0, first, end, last));
  const line = (x: number): number => first + headroom + slope * x;
  const flat = flight.ceiling === undefined ? Infinity : floor + flight.ceiling;
  if (side === 'upper') {
    if (end > 0) obstacles.push(above(0, line(0), end, line(end)));
    if (flat < FAR) obstacles.push(above(end, flat, wall, flat));
  } else {
    // The foot's ceiling holds up to where the flight's line comes up to it; that line may run on over the floor.
    const trimmer = flat === Infinity ? end : slope === 0 ? 0 : (flat - first - headroom) / slope;
    const meets = Math.min(wall, Math.max(0, trimmer));
    if (meets > 0) obstacles.push(above(0, line(0), meets, line(meets)));
    if (flat < FAR && meets < wall) obstacles.push(above(meets, flat, wall, flat));
  }
  if (door) {
    obstacles.push(
      above(wall, floor + door.height, wall + door.wall, floor + door.height),
      above(wall + door.wall, floor + door.heightBeyond, beyond, floor + door.heightBeyond),
    );
  }
  const high = Math.max(ceiling, floor + (flight.ceiling ?? 4000), first + headroom) + along;
  return {
    obstacles,
    centre: { xMin: -depth, xMax: beyond, yMin: Math.min(0, floor), yMax: high },
  };
}
