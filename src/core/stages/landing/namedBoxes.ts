import { moved } from '../../space/vector';
import { quaternionFromAxes } from '../../space/quaternion';
import type { SceneBox } from '../../space/motion';

type V = readonly [number, number, number];

/** An obstacle and what it is, in words that can be read to a customer. */
export interface NamedBox {
  readonly name: string;
  readonly box: SceneBox;
}

/** Thickness of the plates that stand for sloping floors and ceilings [mm]: thin, so that they hardly jut out. */
const PLATE = 60;

/**
 * An upright box from corner to corner [mm].
 * @param name what it is, in words that follow "at"
 */
export function block(name: string, low: V, high: V): NamedBox {
  return {
    name,
    box: {
      centre: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2],
      size: [Math.max(0, high[0] - low[0]), Math.max(0, high[1] - low[1]), Math.max(0, high[2] - low[2])],
      turn: [1, 0, 0, 0],
    },
  };
}

/**
 * A box given by a corner, a level direction, its extents along it, across to the left, and up.
 * @param corner [mm], its height is not used
 * @param along level unit direction
 * @param lengthAlong extent from the corner along that direction [mm], may be negative
 * @param left extent from the corner to its left [mm], may be negative
 * @param low height of its lower face [mm]
 * @param high height of its upper face [mm]
 */
export function turnedBlock(
  name: string,
  corner: V,
  along: readonly [number, number],
  lengthAlong: number,
  left: number,
  low: number,
  high: number,
): NamedBox {
  const [ax, ay] = along;
  const centre: V = [
    corner[0] + (ax * lengthAlong) / 2 - (ay * left) / 2,
    corner[1] + (ay * lengthAlong) / 2 + (ax * left) / 2,
    (low + high) / 2,
  ];
  return {
    name,
    box: {
      centre,
      size: [Math.abs(lengthAlong), Math.abs(left), Math.max(0, high - low)],
      turn: quaternionFromAxes([ax, ay, 0], [-ay, ax, 0], [0, 0, 1]),
    },
  };
}

/**
 * One flight as obstacles, seen from the level place it joins: the plane of its nosings below, its ceiling
 * plumb `headroom` above, each a plate on the far side of its plane.
 *
 * @param edge where the plane of the nosings meets the level place, at the right-hand end of that edge as one
 *   looks out along the flight [mm]
 * @param out level unit direction from the level place out along the flight
 * @param slope rise of the plane of nosings per mm outward, negative for the flight that leads down
 * @param width of the flight, from that end of the edge to the left [mm]
 * @param headroom plumb over the line of nosings [mm]
 * @param length of the flight in plan [mm]
 */
export function flightPlates(
  name: string,
  edge: V,
  out: readonly [number, number],
  slope: number,
  width: number,
  headroom: number,
  length: number,
): NamedBox[] {
  const stretch = Math.sqrt(1 + slope * slope);
  const t: V = [out[0] / stretch, out[1] / stretch, slope / stretch];
  const left: V = [-out[1], out[0], 0];
  const up: V = [-(out[0] * slope) / stretch, -(out[1] * slope) / stretch, 1 / stretch];
  const run = length * stretch;
  const plate = (what: string, raise: number, side: number): NamedBox => ({
    name: what,
    box: {
      centre: moved(
        moved(moved([edge[0], edge[1], edge[2] + raise], t, run / 2), left, width / 2),
        up,
        (side * PLATE) / 2,
      ),
      size: [run, width, PLATE],
      turn: quaternionFromAxes(t, left, up),
    },
  });
  return [
    plate(`the nosings of the ${name}`, 0, -1),
    plate(`the ceiling over the ${name}`, headroom, 1),
    ...endFills(name, edge, out, slope, width, headroom),
  ];
}

/** Upright pieces where a plate leaves a wedge open at the level place. */
function endFills(
  name: string,
  edge: V,
  out: readonly [number, number],
  slope: number,
  width: number,
  headroom: number,
): NamedBox[] {
  const far = 6000;
  const fills: NamedBox[] = [];
  const corner: V = [edge[0], edge[1], 0];
  if (slope > 0) {
    // The riser under the first nosing; and above the ceiling's plate, which leans over the level place.
    fills.push(
      turnedBlock(`the first riser of the ${name}`, corner, out, PLATE, width, edge[2] - far, edge[2]),
    );
    const above = edge[2] + headroom + PLATE * slope;
    fills.push(turnedBlock(`the ceiling over the ${name}`, corner, out, PLATE, width, above, above + far));
  } else {
    const above = edge[2] + headroom;
    fills.push(turnedBlock(`the ceiling over the ${name}`, corner, out, PLATE, width, above, above + far));
  }
  return fills;
}
