import type { PlanarPassage } from '../../src/core/geometry/planar/passageBracket';
import { boxPolygon, type ConvexPolygon } from '../../src/core/geometry/planar/planarWorld';
import { decidePassage } from '../../src/core/geometry/planar/decidePassage';
import type { PieceSize } from '../../src/core/measures/piece';
import { attitudeInPlan } from '../../src/core/motion/attitude';
import type { FlightMeasures } from '../../src/core/stages/flight/flight';
import { flightEndsFit, type FlightEndMeasures } from '../../src/core/stages/flight/flightEnds';
import { sizesOfHold, type Hold } from '../../src/core/motion/hold';
import { levelBox } from '../../src/core/motion/planScene';
import type { KeyAttitude, Motion, SceneBox } from '../../src/core/space/motion';

/** A motion up a whole flight and what it is free in. */
export interface FlightEndsMotion {
  /** Empty when the planner did not show one within its work limit. */
  readonly motion: Motion;
  readonly scene: readonly SceneBox[];
  /** Padding [mm a side] for which it is free. */
  readonly motionPadding: number;
}

/**
 * A motion on to a flight, up it and off it, for a piece held lengthwise, a millimetre below what
 * `flightEndsFit` answers (or below what the width allows): x along the flight, z up, y across, the origin
 * where the line of nosings meets the lower floor.
 * @param risers number of risers; without a count in the survey, one that makes the flight longer than the piece
 */
export function flightEndsMotion(
  measures: FlightMeasures,
  ends: FlightEndMeasures,
  piece: PieceSize,
  hold: Hold,
): FlightEndsMotion {
  const { along, across, upright } = sizesOfHold(piece, hold);
  const { width, headroom, rise, going } = measures;
  const step = Math.hypot(rise, going);
  const risers = ends.risers ?? Math.ceil((along + 1000) / step);
  const fit = flightEndsFit(measures, { ...ends, risers }, along, upright).clearance;
  const channel = ((headroom * going) / step - upright) / 2;
  const motionPadding = Math.min(fit, channel, (width - across) / 2) - 1;
  const u = Math.max(0, along + 2 * motionPadding);
  const v = Math.max(0, upright + 2 * motionPadding);
  const passage = flightElevation(measures, ends, risers, u, v);
  const decision = passage && decidePassage(passage.world, u, v, passage.start, passage.goal);
  const keys: KeyAttitude[] = [];
  if (decision?.verdict === 'passes') {
    for (const { x, y, angle } of decision.path()) {
      let turn = attitudeInPlan({ hold, turned: 'tilted', tilt: angle }, 0);
      const last = keys[keys.length - 1]?.turn;
      if (last && last[0] * turn[0] + last[1] * turn[1] + last[2] * turn[2] + last[3] * turn[3] < 0) {
        turn = [-turn[0], -turn[1], -turn[2], -turn[3]];
      }
      keys.push({ at: [x, 0, y], turn });
    }
  }
  return { motion: keys, scene: flightScene(measures, ends, risers, u), motionPadding };
}

/** The flight as boxes: floors, ceilings, walls, and two sloping slabs for the line of nosings and the ceiling. */
export function flightScene(
  { width, headroom, rise, going }: FlightMeasures,
  ends: FlightEndMeasures,
  risers: number,
  along: number,
): SceneBox[] {
  const run = risers * going;
  const up = risers * rise;
  const tangent = rise / going;
  const pitch = Math.atan(tangent);
  const reach = 2 * along + 1000;
  const left = ends.footSpace === undefined ? -reach : going - ends.footSpace;
  const right = run + (ends.headSpace ?? reach);
  const half = width / 2;
  const deep = 200;
  const top = up + headroom + (right - run) * tangent + (ends.headCeiling ?? 0) + deep;
  const box = (x0: number, z0: number, x1: number, z1: number): SceneBox =>
    levelBox([x0, -half, z0], [x1, half, z1]);
  // A slab whose lower or upper face runs from one point of the elevation along the pitch.
  const slab = (x0: number, x1: number, z0: number, above: boolean): SceneBox => {
    const length = (x1 - x0) / Math.cos(pitch);
    const off = ((above ? 1 : -1) * deep) / 2;
    return {
      centre: [
        (x0 + x1) / 2 - off * Math.sin(pitch),
        0,
        z0 + ((x1 - x0) * tangent) / 2 + off * Math.cos(pitch),
      ],
      size: [length, width, deep],
      turn: [Math.cos(pitch / 2), 0, -Math.sin(pitch / 2), 0],
    };
  };
  const trimmer = ends.footCeiling === undefined ? left - 100 : (ends.footCeiling - headroom) / tangent;
  const end = ends.headCeiling === undefined ? right + 100 : run + (ends.headCeiling - headroom) / tangent;
  const scene: SceneBox[] = [
    box(left - deep, -deep, run, 0),
    slab(0, run, 0, false),
    box(run, up - deep, right + deep, up),
    levelBox([left - deep, -half - deep, -deep], [right + deep, -half, top]),
    levelBox([left - deep, half, -deep], [right + deep, half + deep, top]),
  ];
  if (end > trimmer) scene.push(slab(trimmer, end, headroom + trimmer * tangent, true));
  if (ends.footCeiling !== undefined && trimmer > left) {
    scene.push(box(left - deep, ends.footCeiling, trimmer, ends.footCeiling + deep));
  }
  if (ends.headCeiling !== undefined && end < right + deep) {
    scene.push(box(end, up + ends.headCeiling, right + deep, up + ends.headCeiling + deep));
  }
  if (ends.footSpace !== undefined) scene.push(box(left - deep, -deep, left, top));
  if (ends.headSpace !== undefined) scene.push(box(right, up - deep, right + deep, top));
  return scene;
}

/** Stands for no ceiling at all [mm]. */
const NO_CEILING = 1e5;

/**
 * A whole flight in elevation for the planner: x along the flight, y up, the origin where the line of nosings
 * meets the lower floor. Undefined when the piece cannot stand level at an end.
 */
export function flightElevation(
  { headroom, rise, going }: FlightMeasures,
  ends: FlightEndMeasures,
  risers: number,
  u: number,
  v: number,
): PlanarPassage | undefined {
  const run = risers * going;
  const up = risers * rise;
  const tangent = rise / going;
  const reach = u + v + 10;
  const footCeiling = ends.footCeiling ?? NO_CEILING;
  const headCeiling = ends.headCeiling ?? NO_CEILING;
  const before = Math.min(ends.footSpace === undefined ? Infinity : ends.footSpace - going, reach);
  const after = Math.min(ends.headSpace ?? Infinity, reach);
  if (before <= u / 2 || after <= u / 2) return undefined;
  const far = 4 * (reach + run + up + headroom);
  const trimmer = (footCeiling - headroom) / tangent;
  const top = Math.min(footCeiling, 3 * far);
  const obstacles: ConvexPolygon[] = [
    boxPolygon(-far, -far, far, 0),
    // Below the line of nosings and the upper floor.
    [
      [0, 0],
      [-far * 0.01, -far],
      [far, -far],
      [far, up],
      [run, up],
    ],
    // Above the flight's ceiling line and the foot's ceiling.
    [
      [Math.min(trimmer, far), top],
      [Math.min(trimmer, far) + far, top + far * tangent],
      [-far, top + far * (tangent + 2)],
      [-far, top],
    ],
  ];
  if (ends.headCeiling !== undefined) {
    obstacles.push(boxPolygon(-far, up + headCeiling, 2 * far, up + headCeiling + 3 * far));
  }
  if (before < reach) obstacles.push(boxPolygon(-far, -far, -before, 2 * far));
  if (after < reach) obstacles.push(boxPolygon(run + after, -far, far + run, 2 * far));
  // Where a wall is out of reach the centre need not go farther than clear of the flight.
  const clear = (u + v) / 2 + 10;
  const back = before < reach ? before : clear;
  const onward = after < reach ? after : clear;
  const centre = {
    xMin: -back,
    xMax: run + onward,
    yMin: 0,
    yMax: Math.min(up + headCeiling, up + headroom + (after + reach) * tangent + reach),
  };
  return {
    world: { obstacles, centre },
    start: { xMin: -back, xMax: 0, yMin: 0, yMax: Math.min(footCeiling, headroom + reach), angle: 0 },
    goal: { xMin: run, xMax: run + onward, yMin: up, yMax: centre.yMax, angle: 0 },
  };
}
