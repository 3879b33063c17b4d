import type { PieceSize } from '../../measures/piece';
import { centreCutsBlock } from './centreCutsBlock';
import type { Cut, CutScene } from './centreOnCut';
import { jambs } from './jambs';

/** A door in the side of a passage, each measure at the end of its range that lets most pass [mm]. */
export interface SideDoorAtMost {
  readonly doorWidth: number;
  readonly doorHeight: number;
  readonly wallThickness: number;
  readonly passageWidth: number;
  /** Over the passage, and over what is before the door. */
  readonly ceiling: number;
  /** Width of what is before the door; as wide as the door when it is no wider. */
  readonly approachWidth: number;
}

/**
 * Centre-cut proof at a door in the side of a passage: the piece's centre crosses the opening on the passage's side of
 * the wall. There its shadow lies between the jambs and before the far wall, its section by the door's plane is no
 * higher than the door, and every corner is under the ceiling and, before the door, between the walls there. If it can
 * be so in no attitude, no motion passes.
 *
 * @source own derivation
 * @returns true is a proof that the piece does not pass; false says nothing
 */
export function sideDoorCutBlocks(door: SideDoorAtMost, piece: PieceSize): boolean {
  const { doorWidth, doorHeight, wallThickness, passageWidth, ceiling, approachWidth } = door;
  const half = doorWidth / 2;
  const side = Math.max(half, approachWidth / 2);
  const scene: CutScene = {
    walls: [{ n: [0, 1], at: passageWidth }],
    solids: jambs(half, side === half ? Infinity : wallThickness),
    free: {
      lowest: () => 0,
      highest: (x0, x1, y0, y1) =>
        y1 < -wallThickness && (x1 < -side || x0 > side)
          ? -Infinity
          : y0 > -wallThickness && y1 < 0
            ? Math.min(doorHeight, ceiling)
            : ceiling,
    },
    section: { n: [0, 1], height: Math.min(doorHeight, ceiling) },
    openings: [{ n: [0, 1], at: -wallThickness, lowest: 0, highest: Math.min(doorHeight, ceiling) }],
  };
  // Both sides of the door's middle are alike: half the opening will do.
  const cuts: Cut[] = [
    [
      [0, 0],
      [half, 0],
    ],
  ];
  return centreCutsBlock(scene, cuts, piece);
}
