import { goingOn } from '../../src/core/space/quaternion';
import type { ProfilePart } from './profile';
import { profileScene } from './profileScene';
import type { KeyAttitude, Motion, SceneBox } from '../../src/core/space/motion';
import { flightProfile, movedProfile } from './flightProfile';
import type { FacingDoorFit, FacingDoorMeasures } from '../../src/core/stages/facingDoor/facingDoorFit';
import type { FacingDoorWay } from '../../src/core/stages/facingDoor/facingDoor';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { atan2, ceil, cos, hypot, max, min, sin } = Math;

/** Turned at most so far between two key attitudes [rad]: a straight move between them strays by less than 0.1 mm. */
const STEP = Math.PI / 360;
/** How far a straight move may stray while the piece slides [mm]. */
const STRAY = 0.02;
/** A wall without thickness is drawn so thick [mm]. */
const SLIVER = 0.01;
/** Risers enough for the flight to be longer than the piece. */
const risersBeyond = (m: FacingDoorMeasures, along: number): number =>
  ceil((2 * along + 1000) / hypot(m.rise, m.going)) + 2;

/**
 * The section of a door that faces a stair's end: x along the way up, from the door at the foot, to the door at the
 * head; the origin on the floor, at the first riser's or the top nosing's x.
 */
export function facingDoorProfile(m: FacingDoorMeasures, along: number): ProfilePart[] {
  const risers = risersBeyond(m, along);
  const beyond = 2 * along + 1000;
  const wall = max(m.wallThickness, SLIVER);
  const flight = {
    width: m.flightWidth,
    headroom: m.headroom,
    rise: m.rise,
    going: m.going,
    risers,
    footSpace: m.end === 'foot' ? m.space : 0,
    headSpace: m.end === 'head' ? m.space : 0,
    footCeiling: m.end === 'foot' ? m.ceiling : m.headroom,
    headCeiling: m.end === 'head' ? m.ceiling : m.headroom,
  };
  const room = max(m.doorWidth, m.flightWidth);
  const open = max(m.ceiling, m.doorHeight);
  const level = (from: number, to: number, width: number, ceiling: number): ProfilePart => ({
    from,
    to,
    floor: [0, 0],
    ceiling: [ceiling, ceiling],
    right: -width / 2,
    left: width / 2,
  });
  const parts = flightProfile(flight);
  if (m.end === 'foot') {
    const stair = movedProfile(parts, -m.space, 0);
    // A door's head above what hangs over the floor there is no head.
    const head = min(m.doorHeight, stair[0]?.ceiling[0] ?? m.doorHeight);
    const from = -m.space - wall;
    return [level(from - beyond, from, room, open), level(from, -m.space, m.doorWidth, head), ...stair];
  }
  const stair = movedProfile(parts, -(risers - 1) * m.going, -risers * m.rise);
  const to = m.space + wall;
  return [
    ...stair,
    level(m.space, to, m.doorWidth, min(m.doorHeight, m.ceiling)),
    level(to, to + beyond, room, open),
  ];
}

/** The motion of a way through, as key attitudes, for the piece padded by `padding`, at most the way's clearance. */
export function facingDoorMotion(
  m: FacingDoorMeasures,
  way: FacingDoorWay,
  padding: number,
): { readonly motion: Motion; readonly scene: readonly SceneBox[] } {
  const { u, v } = way.sidesAt(padding);
  const places = m.end === 'foot' ? footPlaces(m, way.fit, u, v) : headPlaces(m, way.fit, u, v);
  let last: KeyAttitude['turn'] | undefined;
  const motion = places.map(({ x, z, angle }): KeyAttitude => {
    const turn = goingOn(way.attitude(angle), last);
    last = turn;
    return { at: [x, 0, z], turn };
  });
  return { motion, scene: profileScene(facingDoorProfile(m, max(u, v))) };
}

interface Place {
  readonly x: number;
  readonly z: number;
  readonly angle: number;
}

/** The centre of a rectangle whose lower back corner stands at x, z, its front raised by `angle`. */
const byBack = (x: number, z: number, u: number, v: number, angle: number): Place => ({
  x: x + (u * cos(angle) - v * sin(angle)) / 2,
  z: z + (u * sin(angle) + v * cos(angle)) / 2,
  angle,
});

const between = (from: number, to: number): number[] => {
  const count = max(1, ceil(Math.abs(to - from) / STEP));
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
};

/** From level beyond the door to lying on the flight. */
function footPlaces(m: FacingDoorMeasures, fit: FacingDoorFit, u: number, v: number): Place[] {
  const pitch = atan2(m.rise, m.going);
  const tangent = m.rise / m.going;
  // Where floor and line of nosings meet; a reach up the stair and before the door.
  const origin = -m.going;
  const up = u + v + 300;
  const start = byBack(-m.space - m.wallThickness - u - 100, 0, u, v, 0);
  if (fit.keptLevel) {
    return [start, byBack(origin - u, 0, u, v, 0), byBack(origin - u + up, up * tangent, u, v, 0)];
  }
  const places = between(0, pitch).map((f) => byBack(origin - (u * sin(pitch - f)) / sin(pitch), 0, u, v, f));
  return [start, ...places, byBack(origin + up, up * tangent, u, v, pitch)];
}

/** From lying on the flight to level beyond the door. */
function headPlaces(m: FacingDoorMeasures, fit: FacingDoorFit, u: number, v: number): Place[] {
  const pitch = atan2(m.rise, m.going);
  const tangent = m.rise / m.going;
  const down = u + v + 300;
  const end = byBack(m.space + m.wallThickness + 100, 0, u, v, 0);
  if (fit.keptLevel) return [byBack(-u - down, -down * tangent, u, v, 0), byBack(-u, 0, u, v, 0), end];
  const channel = m.headroom * cos(pitch);
  const beyond = (f: number): number => {
    const left = sin(pitch - f);
    return left < 1e-9 ? 0 : max(0, u - (channel - v * cos(pitch - f)) / left);
  };
  const places = slidingSteps(between(pitch, 0), beyond).map((f) => {
    const t = beyond(f) - u;
    return byBack(t * cos(f), t * sin(f), u, v, f);
  });
  const first = byBack((-u - down) * cos(pitch), (-u - down) * sin(pitch), u, v, pitch);
  return [first, ...places, end];
}

/**
 * The same angles and more between them where the piece slides fast as it turns: sliding by d while turning by a strays
 * by at most d a / 4 from a straight move.
 */
function slidingSteps(angles: readonly number[], slide: (angle: number) => number): number[] {
  const steps: number[] = [];
  const between = (from: number, to: number, depth: number): void => {
    if (depth > 0 && Math.abs((slide(to) - slide(from)) * (to - from)) > 4 * STRAY) {
      const middle = (from + to) / 2;
      between(from, middle, depth - 1);
      between(middle, to, depth - 1);
    } else steps.push(to);
  };
  angles.forEach((to, i) => {
    const from = angles[i - 1];
    if (from === undefined) steps.push(to);
    else between(from, to, 8);
  });
  return steps;
}
