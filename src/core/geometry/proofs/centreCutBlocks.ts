import type { CornerRoom } from './cornerRoom';
import type { PieceSize } from '../../measures/piece';
import { centreCutsBlock } from './centreCutsBlock';
import type { Cut, CutScene } from './centreOnCut';

/**
 * Centre-cut proof at a corner between full-height walls: on its way from one arm to the other the piece's centre
 * crosses any line in plan from the inner walls to the outer walls. Where on one such line the centre can be in no
 * attitude under the ceiling, no motion passes. It needs no low ceiling, so it serves where the piece can stand up.
 *
 * The lines tried start at the inner corner or a little way along the inner wall of the wider arm, and end at the
 * outer corner or half way from there across the narrower arm. For equal widths the first is tight. For others: a
 * thin rod of the critical length has its middle over the wider arm, b1/2 + b2/2 (b1/b2)^(1/3) from the outer wall
 * of the narrower (the calculus-book ladder, a right angle), and the line has to pass beyond that.
 *
 * @returns true is a proof that the piece does not pass; false says nothing
 */
export function centreCutBlocks(corner: CornerRoom, piece: PieceSize): boolean {
  // No attitude at all is lower than the thickness.
  if (piece.thickness > corner.ceiling + 1e-6) return true;
  return centreCutsBlock(cornerScene(corner), cornerCuts(corner), piece);
}

/** From the outer corner the first arm runs along 0, the second along 180 degrees - turn. */
function cornerScene({ widthIn, widthOut, ceiling, turn }: CornerRoom): CutScene {
  const between = Math.PI - turn;
  const [s, c] = [Math.sin(between), Math.cos(between)];
  return {
    walls: [
      { n: [0, -1], at: 0 },
      { n: [-s, c], at: 0 },
    ],
    solids: [[{ edge: placeAt(widthIn, widthOut, turn), from: [0, 1], to: [s, -c] }]],
    free: ceiling,
  };
}

/** The place that lies so far from the outer wall of each arm. */
function placeAt(fromFirst: number, fromSecond: number, turn: number): readonly [number, number] {
  const between = Math.PI - turn;
  return [(fromSecond + fromFirst * Math.cos(between)) / Math.sin(between), fromFirst];
}

/** Where the lines start along the wider arm's inner wall, in shares of `beyondInnerEdge`; the likeliest first. */
const STARTS = [1.5, 1, 0.5, 0];

/** How far beyond the inner edge the middle of a thin rod of the critical length lies over the wider arm [mm]. */
function beyondInnerEdge({ widthIn, widthOut }: CornerRoom): number {
  const narrow = Math.min(widthIn, widthOut);
  const wide = Math.max(widthIn, widthOut);
  return (narrow + wide * Math.cbrt(narrow / wide)) / 2 - narrow;
}

/**
 * How far along an arm, from the plane square to it through the inner edge, the middle of a piece may be on one of the
 * lines [mm]: an arm has to hold so much farther than the piece reaches from its middle.
 */
export const lineReaches = (corner: CornerRoom): number =>
  (Math.max(...STARTS) * beyondInnerEdge(corner)) / Math.sin(corner.turn);

function cornerCuts(corner: CornerRoom): Cut[] {
  const { widthIn, widthOut, turn } = corner;
  const narrow = Math.min(widthIn, widthOut);
  const wide = Math.max(widthIn, widthOut);
  const at = (fromNarrow: number, fromWide: number): readonly [number, number] =>
    widthIn <= widthOut ? placeAt(fromNarrow, fromWide, turn) : placeAt(fromWide, fromNarrow, turn);
  const beyond = beyondInnerEdge(corner);
  const starts = narrow === wide ? [0] : STARTS;
  const cuts: Cut[] = [];
  for (const start of starts) {
    for (const end of [0.5, 0]) cuts.push([at(narrow + start * beyond, wide), at(end * narrow, 0)]);
  }
  return cuts;
}
