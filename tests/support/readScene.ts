import { sortedPiece } from '../../src/core/measures/piece';
import type { Quaternion } from '../../src/core/space/quaternion';
import type { SpaceTask } from '../../src/core/space/spaceTask';

const { cos, sin } = Math;

type Three = readonly [number, number, number];

/** A scene as it stands in a file: mm and degrees, z up, R = Rz(yaw) Ry(pitch) Rx(roll). */
export interface SceneFile {
  readonly piece: Three;
  readonly bounds: { readonly min: Three; readonly max: Three };
  readonly walls: readonly { readonly c: Three; readonly s: Three; readonly rpy?: Three }[];
  readonly start: { readonly p: Three; readonly rpy?: Three };
  readonly goal: { readonly p: Three; readonly rpy?: Three };
}

/** Reads a scene file; the piece's sizes must stand in the order length, breadth, thickness. */
export function readScene(file: SceneFile): SpaceTask {
  const turn = (rpy?: Three) => quaternionFromRollPitchYaw(rpy?.[0] ?? 0, rpy?.[1] ?? 0, rpy?.[2] ?? 0);
  return {
    piece: sortedPiece(...file.piece),
    scene: file.walls.map((wall) => ({ centre: wall.c, size: wall.s, turn: turn(wall.rpy) })),
    least: file.bounds.min,
    most: file.bounds.max,
    start: { at: file.start.p, turn: turn(file.start.rpy) },
    goal: { at: file.goal.p, turn: turn(file.goal.rpy) },
  };
}

/** The attitude of a box as surveyors write it: R = Rz(yaw) Ry(pitch) Rx(roll), all in degrees. */
function quaternionFromRollPitchYaw(roll: number, pitch: number, yaw: number): Quaternion {
  const half = Math.PI / 360;
  const [cr, sr] = [cos(roll * half), sin(roll * half)];
  const [cp, sp] = [cos(pitch * half), sin(pitch * half)];
  const [cy, sy] = [cos(yaw * half), sin(yaw * half)];
  return [
    cr * cp * cy + sr * sp * sy,
    sr * cp * cy - cr * sp * sy,
    cr * sp * cy + sr * cp * sy,
    cr * cp * sy - sr * sp * cy,
  ];
}
