import { never, type MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
import { CONDITIONS } from '../../geometry/proofs/conditions';
import { insideBlocks } from '../../geometry/proofs/insideBlocks';
import { liftCutBlocks } from '../../geometry/proofs/liftCutBlocks';
import { liftCarPassages } from './liftCar';
import type { LIFT } from './liftKind';

/** How a lift is gone into, and what is proved of it. */
export const LIFT_SOLVER: SolvedStage<MeasuresOf<typeof LIFT>> = {
  solvedBy: 'closed form',
  passages: (m, piece) =>
    liftCarPassages(
      {
        doorWidth: m.width,
        doorHeight: m.height,
        carWidth: m.widthOut,
        carDepth: m.depth,
        carHeight: m.ceiling,
      },
      piece,
    ),
  leaningApart: false,
  turningSpaces: never,
  deepProof: {
    upTo: Infinity,
    proves: ({ best: [{ width, height, widthOut, depth, ceiling }] }, piece) => {
      if (insideBlocks({ along: depth, across: widthOut, height: ceiling }, piece))
        return CONDITIONS.insideCar;
      const lift = {
        doorWidth: width,
        doorHeight: height,
        carWidth: widthOut,
        carDepth: depth,
        carHeight: ceiling,
      };
      return liftCutBlocks(lift, piece) ? CONDITIONS.middleIntoCar : undefined;
    },
  },
};
