import { CONDITIONS } from '../../geometry/proofs/conditions';
import { insideBlocks } from '../../geometry/proofs/insideBlocks';
import { oneSpace } from '../../motion/turningSpace';
import type { MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import type { ROOM } from './roomKind';
import { roomPassages } from './roomPassages';

/** How a room is gone through, and what is proved of it. */
export const ROOM_SOLVER: SolvedStage<MeasuresOf<typeof ROOM>> = {
  solvedBy: 'closed form',
  passages: roomPassages,
  leaningApart: false,
  turningSpaces: ({ length, width, height }) =>
    oneSpace({ along: length, across: width, height, eitherWay: true }),
  deepProof: {
    upTo: Infinity,
    proves: ({ best: [{ length, width, height }] }, piece) =>
      insideBlocks({ along: length, across: width, height }, piece) ? CONDITIONS.inRoom : undefined,
  },
};
