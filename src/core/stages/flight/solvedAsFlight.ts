import { never, type StageKind } from '../stageKind';
import type { LooseStageMeasures, MeasureName } from '../measures';
import type { SolvedStage } from '../stageSolver';
import { toldOfStair } from '../../motion/closest';
import { flightPassages } from './flightPassages';

/** The solver of a kind that is solved as a flight, whatever its measures are called. */
export function solvedAsFlight<Needs extends MeasureName, May extends MeasureName>(
  kind: StageKind<Needs, May>,
): SolvedStage<LooseStageMeasures> {
  return {
    solvedBy: 'closed form',
    passages: (given, piece) => {
      const { solvedAsFlight: asFlight } = kind;
      if (!asFlight) return [];
      const m = asFlight(given);
      const { width, height, rise, going } = m;
      if (width === undefined || height === undefined || rise === undefined || going === undefined) return [];
      return flightPassages({ width, headroom: height, rise, going }, piece, m).map((passage) => {
        const { answer } = passage;
        return { ...passage, answer: { ...answer, critical: toldOfStair(answer.critical, kind.passedBy) } };
      });
    },
    leaningApart: false,
    turningSpaces: never,
    deepProof: null,
  };
}
