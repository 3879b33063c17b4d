import type { PieceSize } from '../../measures/piece';
import { paddedPiece } from '../../measures/piece';
import { attitudeInPlan } from '../../motion/attitude';
import { sizesOfHold, type Hold } from '../../motion/hold';
import type { KeyAttitude, SceneBox } from '../../space/motion';
import { ceilingBeforeRiser } from '../place/buildFlight';
import { placedKey, type Placing, type Vec3 } from '../place/frame';
import type { PlacedRoute, PlacedRow } from '../place/placedRoute';
import { endsOf } from '../place/rowContext';
import { multiply, quaternionAbout, type Quaternion } from '../../space/quaternion';
import { leadsStraightOn } from '../../stages/kinds';
import { angleInSection } from './landingKeys';
import { planeMove } from './planeMove';
import { entryAt } from '../../lists/entryAt';

/** What is asked of a flight's motion. */
export interface FlightAsk {
  readonly piece: PieceSize;
  readonly hold: Hold;
  /** Padding for which it is drawn [mm a side]. */
  readonly drawn: number;
  readonly start: KeyAttitude;
  readonly solids: readonly SceneBox[];
  /** Where it is to go: level floor beyond the flight, or a place in its section. */
  readonly goal: 'level floor' | KeyAttitude;
  /**
   * Where across the flight it is walked: where the piece is, moved aside at the end; where it is to be; or moved aside
   * first, to where the doors and passages straight ahead leave it room.
   */
  readonly side: "start's" | "goal's" | "way's";
  /** Level floor ahead of the flight's exit plane [mm]. */
  readonly ahead: number;
}

interface FlightSizes {
  readonly rise: number;
  readonly going: number;
  readonly risers: number;
  readonly headroom: number;
  readonly width: number;
  readonly pitch: number;
  /** The last nosing, from the first riser's foot. */
  readonly X: number;
  readonly Z: number;
}

function sizesOf({ joint }: PlacedRow): FlightSizes {
  const { rise = 1, going = 1, risers = 1, height = 0, width = 0 } = joint.measures;
  return {
    rise,
    going,
    risers,
    headroom: height,
    width,
    pitch: Math.atan2(rise, going),
    X: (risers - 1) * going,
    Z: risers * rise,
  };
}

/** From the scene to the coordinates of a row. */
function unplaced({ mirrored, turn, shift }: Placing, p: Vec3): Vec3 {
  const [dx, dy] = [p[0] - shift[0], p[1] - shift[1]];
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const y = -s * dx + c * dy;
  return [c * dx + s * dy, mirrored ? -y : y, p[2] - shift[2]];
}

const unplacedTurn = ({ mirrored, turn }: Placing, q: Quaternion): Quaternion => {
  const own = multiply(quaternionAbout([0, 0, 1], -turn), q);
  return mirrored ? [own[0], -own[1], own[2], -own[3]] : own;
};

/** The piece lying along a flight, its middle so far up it in plan from the first riser, its side clear of the nosings. */
function lyingAt(
  flight: PlacedRow,
  piece: PieceSize,
  hold: Hold,
  drawn: number,
  x: number,
  y = 0,
): KeyAttitude {
  const { rise, going, pitch, headroom } = sizesOf(flight);
  const { upright } = sizesOfHold(paddedPiece(piece, drawn), hold);
  const free = headroom * Math.cos(pitch) - upright;
  const off = upright / 2 + Math.min(20, Math.max(0, free) / 2);
  const c = Math.cos(pitch);
  const s = Math.sin(pitch);
  const key: KeyAttitude = {
    at: [x - off * s, y, rise + (x * rise) / going + off * c],
    turn: attitudeInPlan({ hold, turned: 'tilted', tilt: pitch }, 0),
  };
  return placedKey(flight.placing, key);
}

/** Where it can lie along a flight: next to the landing before it, or far from the one after it. */
function lying(
  route: PlacedRoute,
  i: number,
  piece: PieceSize,
  hold: Hold,
  drawn: number,
  where: 'near' | 'far',
): KeyAttitude {
  const flight = entryAt(route.rows, i);
  const { X, pitch } = sizesOf(flight);
  const half = (sizesOfHold(paddedPiece(piece, drawn), hold).along / 2) * Math.cos(pitch) + 60;
  const down = flight.joint.way === 'down';
  // Next to its entry: low on a flight that is walked up.
  const near = down ? X - half : half;
  // On a flight hardly longer than the piece there is no farther from the landing than its other end.
  const far = down
    ? Math.min(half + 600, Math.max(half, X - half))
    : Math.max(X - half - 600, Math.min(half, X - half));
  return lyingAt(flight, piece, hold, drawn, where === 'near' ? near : far);
}

/** Lying along the middle of a flight, as far across it as another place is. */
function lyingBeside(
  route: PlacedRoute,
  i: number,
  piece: PieceSize,
  hold: Hold,
  drawn: number,
  other: KeyAttitude,
): KeyAttitude {
  const flight = entryAt(route.rows, i);
  const [, across] = unplaced(flight.placing, other.at);
  return lyingAt(flight, piece, hold, drawn, sizesOf(flight).X / 2, across);
}

/** Level floor between the entry plane and the first riser or the last nosing [mm]. */
function floorBefore(flight: PlacedRow): number {
  const { X } = sizesOf(flight);
  const end = endsOf(flight.joint).before;
  const entry = unplaced(flight.placing, flight.entry.at);
  return end === 'foot' ? Math.max(0, -entry[0]) : Math.max(0, entry[0] - X);
}

/** The same between the last nosing or the first riser and the exit plane [mm]. */
function floorAfter(flight: PlacedRow): number {
  const { X } = sizesOf(flight);
  const exit = unplaced(flight.placing, flight.exit.at);
  return endsOf(flight.joint).after === 'foot' ? Math.max(0, -exit[0]) : Math.max(0, exit[0] - X);
}

/** Beyond its start, its goal, the level and the pitch it is turned by no more than so [rad], where that will do. */
const TURNS_BEYOND = 0.01;

/** Moves from one end of the flight to the other in its upright section; undefined where none is shown. */
function pass(route: PlacedRoute, i: number, ask: FlightAsk): KeyAttitude[] | undefined {
  const flight = entryAt(route.rows, i);
  const { placing, joint } = flight;
  const f = sizesOf(flight);
  const { along: u, across: q, upright: v } = sizesOfHold(paddedPiece(ask.piece, ask.drawn), ask.hold);
  const from = unplaced(placing, ask.start.at);
  const down = joint.way === 'down';
  const across =
    ask.goal === 'level floor' || ask.side === "start's" ? from[1] : unplaced(placing, ask.goal.at)[1];
  const lane = ask.side === "way's" ? laneAhead(route, i, q) : { low: -Infinity, high: Infinity };
  const [lowest, highest] = [Math.max(-(f.width - q) / 2, lane.low), Math.min((f.width - q) / 2, lane.high)];
  if (lowest > highest) return undefined;
  const y = Math.max(lowest, Math.min(highest, across));
  const angle = angleInSection(unplacedTurn(placing, ask.start.turn), ask.hold);
  if (angle === undefined) return undefined;
  const start = { x: from[0], y: from[2], angle };
  const high = f.Z + v / 2;
  const own = unplaced(placing, flight.exit.at)[0];
  let goal: { xMin: number; xMax: number; yMin: number; yMax: number; angle: number };
  if (ask.goal !== 'level floor') {
    const at = unplaced(placing, ask.goal.at);
    const to = angleInSection(unplacedTurn(placing, ask.goal.turn), ask.hold);
    if (to === undefined) return undefined;
    goal = { xMin: at[0] - 1, xMax: at[0] + 1, yMin: at[2] - 1, yMax: at[2] + 1, angle: to };
  } else if (down) {
    // Level before the foot, or held up over the lowest treads where the floor is short.
    const limit = own - ask.ahead + u / 2 + 1;
    const clear = -u / 2 - 1;
    goal = {
      xMin: Math.max(limit, clear - 400),
      xMax: Math.max(limit, clear),
      yMin: v / 2,
      yMax: v / 2 + (limit > clear ? (limit - clear) * (f.rise / f.going) + f.rise + 30 : 10),
      angle: 0,
    };
  } else {
    const limit = own + ask.ahead - u / 2 - 1;
    const clear = f.X + u / 2 + 1;
    goal = {
      xMin: Math.min(limit, clear),
      xMax: Math.min(limit, clear + 400),
      yMin: high,
      yMax: high + 10,
      angle: 0,
    };
  }
  const seen = (p: Vec3): Vec3 => {
    const [a, b, c] = unplaced(placing, p);
    return [a, c, b];
  };
  const back = ceilingBeforeRiser({
    headroom: f.headroom,
    rise: f.rise,
    going: f.going,
    footCeiling: joint.measures.footCeiling,
  });
  const task = {
    boxes: ask.solids,
    seen,
    low: y - q / 2,
    high: y + q / 2,
    p: u,
    q: v,
    start,
    goal,
    margin: u / 2 + v / 2 + back,
    by: [
      [0, 0],
      [f.X, f.Z],
    ] as const,
  };
  // Nobody stands it up, or turns it over, who need not.
  const along = [0, f.pitch, start.angle, goal.angle];
  const turns = { from: Math.min(...along) - TURNS_BEYOND, to: Math.max(...along) + TURNS_BEYOND };
  const path = planeMove({ ...task, turns }) ?? planeMove(task);
  if (!path) return undefined;
  const keys = path.map(({ x, y: z, angle: tilt }) =>
    placedKey(placing, {
      at: [x, y, z],
      turn: attitudeInPlan({ hold: ask.hold, turned: 'tilted', tilt }, 0),
    }),
  );
  return ask.goal === 'level floor' ? keys : [...keys, ask.goal];
}

/** Where the middle of what is so wide can be in the doors and passages straight behind a flight, in its coordinates. */
function laneAhead(
  route: PlacedRoute,
  i: number,
  wide: number,
): { readonly low: number; readonly high: number } {
  const { placing } = entryAt(route.rows, i);
  let lane = { low: -Infinity, high: Infinity };
  for (const { joint, entry, entrySection } of route.rows.slice(i + 1)) {
    if (!leadsStraightOn(joint.stage)) break;
    const middle = unplaced(placing, entry.at)[1];
    const off = (entrySection.width - wide) / 2;
    lane = { low: Math.max(lane.low, middle - off), high: Math.min(lane.high, middle + off) };
  }
  return lane;
}

/** Whether the piece lies in the flight's upright section, lengthwise along it or level; or `upright`, too. */
function inSection(
  route: PlacedRoute,
  i: number,
  key: KeyAttitude,
  hold: Hold,
  most: 'lying' | 'upright' = 'lying',
): boolean {
  const { placing } = entryAt(route.rows, i);
  const angle = angleInSection(unplacedTurn(placing, key.turn), hold);
  if (angle === undefined) return false;
  const steep = Math.abs(Math.PI / 2 - Math.abs(angle));
  return steep < 1e-6 ? most === 'upright' : angle > -1e-6 && angle < Math.PI / 2 - 0.05;
}

/** What a walk asks of a flight: where the piece lies on it, the floor at its ends, and the moves from one end to the other. */
export const flightMove = { lying, lyingBeside, floorBefore, floorAfter, inSection, pass };
