import type { PieceSize } from '../measures/piece';
import type { KeyAttitude, SceneBox } from './motion';

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
