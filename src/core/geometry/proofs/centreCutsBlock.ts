import type { PieceSize } from '../../measures/piece';
import { CentreOnCut, type Cut, type CutScene } from './centreOnCut';

/** Cells that one cut may take: some 15 ms. */
const CUT_CELLS = 40_000;
/** Cells in which an attitude that stands is mostly found where there is one. */
const FIRST_LOOK = 500;
/** All cuts together may take so many times what one may: where two leave it open the others mostly do. */
const CUTS_WORTH = 2.5;

/**
 * Whether on one of these cuts the piece can have its centre in no attitude. Each cut must part where the piece
 * comes from from where it goes to, so that its centre has to cross it: then no motion passes.
 *
 * All cuts are looked at shortly first, and in the attitudes in which pieces mostly stand: one on which an attitude is
 * found in which the piece stands is given up.
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
  const left: Cut[] = [];
  for (const cut of cuts) {
    const outcome = search.decide(cut, piece, FIRST_LOOK);
    if (outcome === 'stands nowhere') return true;
    if (outcome === 'open' && !search.standsAsMostly(cut, piece)) left.push(cut);
  }
  let work = CUTS_WORTH * cells;
  for (const cut of left) {
    if (work <= 0) break;
    const outcome = search.decide(cut, piece, Math.min(cells, work));
    if (outcome === 'stands nowhere') return true;
    work -= search.looked;
  }
  return false;
}
