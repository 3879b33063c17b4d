import { never, type MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import { CONDITIONS } from '../../geometry/proofs/conditions';
import { sideDoorCutBlocks } from '../../geometry/proofs/sideDoorCutBlocks';
import { sideDoorPassages } from './sideDoor';
import type { SIDE_DOOR } from './sideDoorKind';

/** How a door in the side of a passage is passed, and what is proved of it. */
export const SIDE_DOOR_SOLVER: SolvedStage<MeasuresOf<typeof SIDE_DOOR>> = {
  solvedBy: 'closed form',
  passages: (m, piece) =>
    sideDoorPassages(
      {
        doorWidth: m.width,
        doorHeight: m.height,
        wallThickness: m.wall,
        passageWidth: m.widthOut,
        ceiling: m.ceiling,
        deadEnd: m.depth,
        approachWidth: m.approachWidth,
      },
      piece,
    ),
  leaningApart: false,
  turningSpaces: never,
  deepProof: {
    upTo: Infinity,
    proves: ({ best: [m] }, piece) =>
      sideDoorCutBlocks(
        {
          doorWidth: m.width,
          doorHeight: m.height,
          wallThickness: m.wall,
          passageWidth: m.widthOut,
          ceiling: m.ceiling,
          approachWidth: m.approachWidth ?? m.width,
        },
        piece,
      )
        ? CONDITIONS.middleOutOfDoor
        : undefined,
  },
};
