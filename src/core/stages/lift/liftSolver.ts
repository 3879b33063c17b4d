import { never, type MeasuresOf } from '../stageKind';
import type { SolvedStage } from '../stageSolver';
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
  deepProof: null,
};
