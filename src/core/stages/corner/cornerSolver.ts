import { CONDITIONS } from '../../geometry/proofs/conditions';
import { centreCutBlocks } from '../../geometry/proofs/centreCutBlocks';
import { radians, RIGHT_ANGLE } from '../../measures/angle';
import { yawCutBlocks } from '../../geometry/proofs/yawCutBlocks';
import type { PieceSize } from '../../measures/piece';
import { never, type MeasuresOf } from '../stageKind';
import type { SolvedStage, TapedSets } from '../stageSolver';
import { corner, type CornerMeasures } from './corner';
import type { CORNER } from './cornerKind';
import { cornerPassages } from './cornerPassages';

type Measures = MeasuresOf<typeof CORNER>;

const cornerOf = ({ width, widthOut, height, turn }: Measures): CornerMeasures => ({
  widthIn: width,
  widthOut,
  ceiling: height,
  turn: turn === undefined ? RIGHT_ANGLE : radians(turn),
});

/** How a corner is passed, and what is proved of it. */
export const CORNER_SOLVER: SolvedStage<Measures> = {
  solvedBy: 'closed form',
  passages: (measures, piece, leaning) => cornerPassages(cornerOf(measures), piece, leaning),
  leaningApart: true,
  turningSpaces: never,
  deepProof: { upTo: Infinity, proves },
};

function proves({ best: [measures] }: TapedSets<Measures>, piece: PieceSize): string | undefined {
  const room = cornerOf(measures);
  if (piece.length > room.ceiling && yawCutBlocks(room, piece)) return CONDITIONS.standUpAtCorner;
  // What has a motion with the tape for it is blocked by nothing, and looking for that is quicker.
  if (corner(room, piece).clearance >= 0) return undefined;
  return centreCutBlocks(room, piece) ? CONDITIONS.middleRoundCorner : undefined;
}
