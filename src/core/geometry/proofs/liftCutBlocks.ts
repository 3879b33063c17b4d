import type { PieceSize } from '../../measures/piece';
import { centreCutsBlock } from './centreCutsBlock';
import type { CutScene } from './centreOnCut';
import { jambs } from './jambs';

/** A lift, each measure at the end of its range that lets most pass [mm]. */
export interface LiftAtMost {
  readonly doorWidth: number;
  readonly doorHeight: number;
  readonly carWidth: number;
  readonly carDepth: number;
  readonly carHeight: number;
}

/**
 * Centre-cut proof at a lift: on its way in the piece's centre crosses the door's opening. There its shadow lies
 * between the jambs and before the back of the car, its section by the door's plane is no higher than the door, and
 * every corner that is inside lies between the car's sides, on its floor and under its ceiling. If it can be so in no
 * attitude, no motion passes.
 *
 * Model as liftCarPassages: the door in the middle of the car's width, the front wall thin; of what is before it
 * nothing is supposed.
 *
 * @source own derivation
 * @returns true is a proof that the piece does not get in; false says nothing
 */
export function liftCutBlocks(lift: LiftAtMost, piece: PieceSize): boolean {
  const { carWidth, carDepth, carHeight } = lift;
  const half = Math.min(lift.doorWidth, carWidth) / 2;
  const side = carWidth / 2;
  const scene: CutScene = {
    walls: [{ n: [0, 1], at: carDepth }],
    solids: jambs(half, 0),
    free: {
      lowest: (_x0, _x1, y0) => (y0 < 0 ? -Infinity : 0),
      highest: (x0, x1, y0) => (y0 <= 0 ? Infinity : x1 < -side || x0 > side ? -Infinity : carHeight),
    },
    section: { n: [0, 1], height: Math.min(lift.doorHeight, carHeight) },
  };
  // The car is alike on both sides of its middle: half the opening will do.
  return centreCutsBlock(
    scene,
    [
      [
        [0, 0],
        [half, 0],
      ],
    ],
    piece,
  );
}
