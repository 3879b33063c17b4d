import { armOf, floorBetween, WALL_NOT_GIVEN, type Arm } from './arms';
import type { LimitCause } from './chain';
import { guardsOf } from './guards';
import { ceilingAt, endBeside, spaceAt, type StairEnd } from './reading';
import type { Planning } from './routePlan';
import type { BookStage } from './stageBook';
import { leastLength, straightLength, type WayLength } from './wayLength';

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
  /** The level floor between: every length that it can have [mm], each of which has to do in the worst case. */
  readonly floor: readonly number[];
  /** On the other side the piece must not reach farther than this [mm]. */
  readonly upTo: number;
  readonly cause: LimitCause | undefined;
} & (
  | {
      readonly kind: 'facing door';
      readonly doorWidth: number;
      readonly doorHeight: number;
      readonly wall: number;
    }
  | { readonly kind: 'stair turn'; readonly passageWidth: number }
);

/** Lengths of floor that are looked at where it is not measured [mm]: more than a piece's length is plenty. */
const FLOORS = [0, 100, 200, 300, 450, 600, 800, 1000, 1300, 1600, 2000, 2500, 3200, 4000];

/** The joints of flight i with the row beside it on one side, in the order in which they are tried. */
export function stairJoints(
  planning: Planning,
  i: number,
  side: 'before' | 'after',
  flight: BookStage,
): JointPlan[] {
  const { reading, tapeCase, tape } = planning;
  const k = side === 'before' ? i - 1 : i + 1;
  const row = reading[k];
  const own = reading[i]!;
  if (!row || !planning.stageAt(k)) return [];
  const end = endBeside(own.way, side);
  const { width: flightWide = 0, lowWidth = flightWide, height: headroom = 0 } = own.measures;
  const flightWidth = Math.min(flightWide, lowWidth);
  const { measures: m, stage } = row;
  const given = ceilingAt(own.measures, end);
  const worst = tapeCase === 'worst';
  const flightAfter = side === 'before';
  const over = given ?? (worst ? headroom : AMPLE);
  if (stage === 'door' && m.width !== undefined && m.height !== undefined) {
    const space = spaceAt(own.measures, end);
    const arm = armOf(reading, k, side);
    const all = narrowest(arm);
    // What is beyond the door is as high as the floor between is taken to be.
    return [
      {
        kind: 'facing door',
        end,
        flightAfter,
        flight,
        ceiling: Math.min(over, all.height),
        width: Math.min(flightWidth, all.width),
        doorWidth: m.width,
        doorHeight: m.height,
        wall: m.wall ?? WALL_NOT_GIVEN,
        floor: space === undefined ? (worst ? FLOORS : []) : around(space, 1, planning),
        ...farEnd(k, arm, planning),
      },
    ];
  }
  const straight = side === 'before' ? floorBetween(row, own) : floorBetween(own, row);
  const floor = turnFloors(straight, planning);
  if (floor.length === 0) return [];
  const far = armOf(reading, k, side);
  if (stage === 'corner' && (m.turn ?? 90) === 90) {
    const [passage, along] = side === 'before' ? [m.width, m.widthOut] : [m.widthOut, m.width];
    if (passage === undefined || along === undefined || m.height === undefined) return [];
    const { height } = m;
    return guardsOf(far, passage, height, tapeCase, tape)
      .slice(-1)
      .map((guard): JointPlan => ({
        kind: 'stair turn',
        end,
        flightAfter,
        flight,
        ceiling: Math.min(over, height, guard.height),
        width: Math.min(flightWidth, along),
        passageWidth: guard.width,
        floor,
        ...nearer(farEnd(k, far, planning), guard.upTo, guard.next, k),
      }));
  }
  if (stage === 'side door' && row.into === (side === 'before')) {
    if (m.width === undefined || m.height === undefined || m.widthOut === undefined) return [];
    const { width: door, height, ceiling = height } = m;
    // The door's reveal taken as a passage as wide and high as the door.
    return guardsOf(far, door, Math.min(height, ceiling), tapeCase, tape)
      .slice(-1)
      .map((guard): JointPlan => ({
        kind: 'stair turn',
        end,
        flightAfter,
        flight,
        ceiling: Math.min(over, guard.height),
        width: Math.min(flightWidth, m.widthOut ?? flightWidth),
        passageWidth: guard.width,
        floor,
        ...nearer(farEnd(k, far, planning), guard.upTo, guard.next, k),
      }));
  }
  return [];
}

/** Above any ceiling [mm]. */
const AMPLE = 20000;

const narrowest = ({ sections }: Arm): { readonly width: number; readonly height: number } => ({
  width: Math.min(Infinity, ...sections.map(({ width }) => width)),
  height: Math.min(Infinity, ...sections.map(({ height }) => height)),
});

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

/** A measured length with the tape for and against it: clearance is not monotone in it. */
function around(value: number, tapes: number, { tapeCase, tape }: Planning): number[] {
  if (tapeCase !== 'worst' || tape === 0) return [value];
  const off = tapes * tape;
  return [Math.max(0, value - off), value, value + off];
}

function turnFloors(straight: WayLength, planning: Planning): number[] {
  const { tapeCase, tape } = planning;
  if (!straight.open) {
    const least = leastLength(straight, tape);
    if (tapeCase !== 'worst' || tape === 0) return [straight.known];
    return [...new Set([least, straight.known + straight.tapes * tape])];
  }
  // A straight that is not measured is asked for: at worst it is not looked at how each of its lengths would do.
  if (tapeCase === 'worst') return [];
  const { most } = straight;
  return most === undefined || most === 0 ? [0] : [0, most];
}
