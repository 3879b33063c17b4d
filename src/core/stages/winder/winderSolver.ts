import { radians } from '../../measures/angle';
import { never, type MeasuresOf } from '../stageKind';
import type { PlacedEnds, SpaceStage, TapedSets } from '../stageSolver';
import { CONDITIONS } from '../../geometry/proofs/conditions';
import { winderCutBlocks } from '../../geometry/proofs/winderCutBlocks';
import type { PieceSize } from '../../measures/piece';
import { WIDE_TURN, winderStage } from './winder';
import type { WINDER } from './winderKind';

/** How winding treads are passed, and what is proved of them. */
export const WINDER_SOLVER: SpaceStage<MeasuresOf<typeof WINDER>> = {
  solvedBy: 'search alone',
  searched: ({ width, widthOut, height, turn, treads, rise, going }) =>
    winderStage({
      width,
      headroom: height,
      turn: radians(turn),
      rise,
      going,
      ...(widthOut === undefined ? {} : { widthOut }),
      ...(treads === undefined ? {} : { treads }),
    }),
  turningSpaces: never,
  deepProof: { upTo: Infinity, proves },
};

function proves(
  { best }: TapedSets<MeasuresOf<typeof WINDER> & PlacedEnds>,
  piece: PieceSize,
): string | undefined {
  const [{ width, widthOut = width, height: headroom, turn, treads, lowerOpen = false }] = best;
  // Treads that were not counted may lie anyhow.
  if (treads === undefined) return undefined;
  const rises = best.map((m) => m.rise);
  const slopes = best.map((m) => m.rise / m.going);
  const stair = {
    width,
    widthOut,
    headroom,
    rise: [Math.min(...rises), Math.max(...rises)],
    slope: [Math.min(...slopes), Math.max(...slopes)],
    turn: radians(turn),
    treads,
    facingWall: radians(turn) > WIDE_TURN,
    lowerOpen,
  } as const;
  return winderCutBlocks(stair, piece) ? CONDITIONS.middleRoundWinders : undefined;
}
