import type { PieceSize } from '../../measures/piece';
import { CentreOnCut, type Cut, type CutScene } from './centreOnCut';

/** Cells that one cut may take: some 15 ms. */
export const CUT_CELLS = 40_000;

/**
 * Whether on one of these cuts the piece can have its centre in no attitude. Each cut must part where the piece
 * comes from from where it goes to, so that its centre has to cross it: then no motion passes.
 *
 * All cuts are tried with little work first, because the one that holds is often quick to hold; a cut on which
 * an attitude is found in which the piece stands is given up.
 *
 * @param cells greatest number of cells of attitude for one cut
 * @returns true is a proof; false says nothing
 */
export function centreCutsBlock(
  scene: CutScene,
  cuts: readonly Cut[],
  piece: PieceSize,
  cells = CUT_CELLS,
): boolean {
  const search = new CentreOnCut(scene);
  let left = cuts;
  for (const work of [cells / 16, cells / 4, cells]) {
    const open: Cut[] = [];
    for (const cut of left) {
      const outcome = search.decide(cut, piece, work);
      if (outcome === 'stands nowhere') return true;
      if (outcome === 'open') open.push(cut);
    }
    left = open;
  }
  return false;
}
