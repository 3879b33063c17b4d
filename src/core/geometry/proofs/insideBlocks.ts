import type { PieceSize } from '../../measures/piece';
import { centreCutsBlock } from './centreCutsBlock';
import type { CutScene } from './centreOnCut';

/**
 * Whether the piece is proved to fit in no attitude inside a box-shaped room. Both are alike about their middles, so
 * that what fits anywhere fits in the middle too: one place of the centre will do. Finer than `boxInBoxAtMost`, which a
 * cell can afford.
 *
 * @returns true is a proof; false says nothing
 */
export function insideBlocks(
  { along, across, height }: { readonly along: number; readonly across: number; readonly height: number },
  piece: PieceSize,
): boolean {
  const walls = ([-1, 1] as const).flatMap((side) => [
    { n: [side, 0] as const, at: along / 2 },
    { n: [0, side] as const, at: across / 2 },
  ]);
  const scene: CutScene = { walls, solids: [], free: height };
  return centreCutsBlock(
    scene,
    [
      [
        [0, 0],
        [0, 0],
      ],
    ],
    piece,
  );
}
