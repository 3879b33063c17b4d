import { decidePassage } from '../../geometry/planar/decidePassage';
import type { PieceSize } from '../../measures/piece';
import { attitudeInPlan } from '../../motion/attitude';
import type { FlightMeasures } from './flight';
import { flightElevation, flightEndsFit, type FlightEndMeasures } from './flightEnds';
import { sizesOfHold, type Hold } from '../../motion/hold';
import { levelBox } from '../../motion/planScene';
import type { KeyAttitude, Motion, SceneBox } from '../../space/motion';

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
