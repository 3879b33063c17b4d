import { radians } from '../../measures/angle';
import { never, type MeasuresOf } from '../stageKind';
import type { SpaceStage } from '../stageSolver';
import { winderStage } from './winder';
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
  deepProof: null,
};
