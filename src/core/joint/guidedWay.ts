import type { Vector } from '../space/vector';
import { attitudeInPlan } from '../motion/attitude';
import type { Hold } from '../motion/hold';
import type { KeyAttitude, Motion } from '../space/motion';
import { nearestAlike, type Quaternion } from '../space/quaternion';
import { middleOfLanding, STEEP } from '../stages/landing/landingGuides';
import { landingPlanOf } from '../stages/landing/landingPlanOf';
import { treadsInTurn } from '../stages/winder/winder';
import { middleOfWinder } from '../stages/winder/winderGuides';
import { radians } from '../measures/angle';
import type { JointBlock } from './jointRow';
import { placedPoint } from './place/frame';
import type { PlacedRoute, PlacedRow } from './place/placedRoute';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, abs, atan2, ceil, cos, max, sin } = Math;

/** What of a way a station is on: level floor, a flight, or winding treads. */
type Ground = 'level' | 'flight' | 'winding';

/** A place in the middle of the air along a way. */
export interface Station {
  readonly at: Vector;
  /** The way's direction in plan [rad]. */
  readonly heading: number;
  /** By how much it rises there [rad]. */
  readonly pitch: number;
  readonly on: Ground;
}

/** No need to be carried higher than in the middle of such a room [mm]. */
const HIGH = 2400;
/** Turned by no more than so far between two key attitudes [rad]. */
const STEP = PI / 24;

/** The middle of the air along the placed rows of a block, between the places where the piece is at rest. */
export const stationsAlong = (
  { rows }: PlacedRoute,
  { before, after }: Pick<JointBlock, 'before' | 'after'>,
): Station[] =>
  rows.flatMap((row, i) => {
    const all = stationsOf(row);
    // It stands in the first straight and in the last, or lies along a flight there.
    if (i === 0 && before === 'straight') return row.joint.stage === 'flight' ? [] : all.slice(-1);
    if (i + 1 === rows.length && after === 'straight')
      return row.joint.stage === 'flight' ? [] : all.slice(0, 1);
    return all;
  });

function stationsOf(row: PlacedRow): Station[] {
  const { joint, placing, entry, exit, back } = row;
  const m = joint.measures;
  if (joint.stage === 'flight') {
    const { rise = 1, going = 1, risers = 1, height = 0 } = m;
    const pitch = atan2(rise, going) * (back ? -1 : 1);
    const [X, Z] = [(risers - 1) * going, risers * rise];
    const on = (x: number, z: number): Station => ({
      at: placedPoint(placing, [x, 0, z + Math.min(height, HIGH) / 2]),
      heading: entry.heading,
      pitch,
      on: 'flight',
    });
    const line = [on(0, rise), on(X, Z)];
    return [...levelAt(row, 'entry'), ...(back ? line.reverse() : line), ...levelAt(row, 'exit')];
  }
  if (joint.stage === 'winder') {
    const turn = radians(m.turn ?? 90);
    const { width = 0, widthOut = width, height: headroom = 0, rise = 1, going = 1 } = m;
    const treads = m.treads ?? treadsInTurn(turn);
    const plan = { width, widthOut, headroom, turn, treads, rise, going };
    const pitch = atan2(treads * rise, (turn * (width + widthOut)) / 4) * (back ? -1 : 1);
    const count = ceil(turn / STEP);
    return Array.from({ length: count + 1 }, (_, n): Station => {
      const part = n / count;
      return {
        at: placedPoint(placing, middleOfWinder(plan, back ? 1 - part : part)),
        heading: entry.heading + (exit.heading - entry.heading) * part,
        pitch,
        on: 'winding',
      };
    });
  }
  const plan = landingPlanOf(joint.stage, m);
  if (plan) {
    const count = ceil(abs(exit.heading - entry.heading) / STEP);
    return Array.from({ length: count + 1 }, (_, n): Station => {
      const part = n / count;
      return {
        at: placedPoint(placing, middleOfLanding(plan, back ? 1 - part : part)),
        heading: entry.heading + (exit.heading - entry.heading) * part,
        pitch: 0,
        on: 'winding',
      };
    });
  }
  return [...levelAt(row, 'entry'), ...bendOf(row), ...levelAt(row, 'exit')];
}

const levelStation = (
  { entrySection, exitSection }: PlacedRow,
  [x, y, z]: Vector,
  heading: number,
): Station => ({
  at: [x, y, z + Math.min(entrySection.height, exitSection?.height ?? Infinity, HIGH) / 2],
  heading,
  pitch: 0,
  on: 'level',
});

function levelAt(row: PlacedRow, plane: 'entry' | 'exit'): Station[] {
  const { at, heading } = row[plane];
  return [levelStation(row, at, heading)];
}

/** Where the middles of the two arms of a turn meet; nothing where the way leads straight on. */
function bendOf(row: PlacedRow): Station[] {
  const { entry, exit } = row;
  const s = sin(exit.heading - entry.heading);
  if (abs(s) < 1e-6) return [];
  const [dx, dy] = [exit.at[0] - entry.at[0], exit.at[1] - entry.at[1]];
  const along = (dx * sin(exit.heading) - dy * cos(exit.heading)) / s;
  const at: Vector = [
    entry.at[0] + along * cos(entry.heading),
    entry.at[1] + along * sin(entry.heading),
    entry.at[2],
  ];
  return [levelStation(row, at, entry.heading), levelStation(row, at, exit.heading)];
}

/** How steeply it is held on each ground, the way rising so much there. */
type Tilts = (station: Station) => number;

/**
 * How a piece mostly goes: along the way; with one end raised where the stair turns, or all along; stood on end on the stair.
 * Of eight such ways, level and on end elsewhere among them, one of these four was the widest or near it in all ten blocks tried.
 */
function tiltsOf(up: number): readonly Tilts[] {
  return [
    ({ pitch }) => pitch,
    ({ pitch, on }) => (on === 'winding' ? up * max(abs(pitch), STEEP) : pitch),
    () => up * STEEP,
    ({ on }) => (on === 'level' ? 0 : (up * PI) / 2),
  ];
}

/** Motions through the stations for the piece shrunk to a point, in all the ways in which it mostly goes. */
export function guidesThrough(
  stations: readonly Station[],
  hold: Hold,
  start: KeyAttitude,
  goal: KeyAttitude,
): Motion[] {
  const up = stations.some(({ pitch }) => pitch < 0) ? -1 : 1;
  return tiltsOf(up).map((tilts) => guide(stations, hold, start, goal, tilts));
}

function guide(
  stations: readonly Station[],
  hold: Hold,
  start: KeyAttitude,
  goal: KeyAttitude,
  tilts: Tilts,
): Motion {
  const motion: KeyAttitude[] = [start];
  const push = (at: Vector, turn: Quaternion): void => {
    motion.push({ at, turn: nearestAlike(turn, motion[motion.length - 1]?.turn ?? turn) });
  };
  let [yaw, tilt] = [stations[0]?.heading ?? 0, 0];
  const turnTo = (at: Vector, toYaw: number, toTilt: number): void => {
    const parts = max(1, ceil(max(abs(toYaw - yaw), abs(toTilt - tilt)) / STEP));
    for (let n = 1; n <= parts; n++) {
      const share = n / parts;
      push(
        at,
        attitudeInPlan(
          { hold, turned: 'tilted', tilt: tilt + (toTilt - tilt) * share },
          yaw + (toYaw - yaw) * share,
        ),
      );
    }
    [yaw, tilt] = [toYaw, toTilt];
  };
  for (const station of stations) {
    push(station.at, attitudeInPlan({ hold, turned: 'tilted', tilt }, yaw));
    turnTo(station.at, station.heading, tilts(station));
  }
  push(goal.at, goal.turn);
  return motion;
}
