import { sortedPiece, type PieceSize } from '../measures/piece';
import type { KeyAttitude, SceneBox } from './motion';
import { quaternionFromRollPitchYaw } from './quaternion';

/** A task in space: take the piece from one place to another among boxes. */
export interface SpaceTask {
  readonly piece: PieceSize;
  readonly scene: readonly SceneBox[];
  /** Limits of the piece's centre [mm]. */
  readonly least: readonly [number, number, number];
  readonly most: readonly [number, number, number];
  readonly start: KeyAttitude;
  /** Any of the four attitudes in which a box looks the same will do. */
  readonly goal: KeyAttitude;
}

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
