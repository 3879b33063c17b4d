import { ceilingOverLanding } from '../geometry/landingModel';
import { entryAt } from '../lists/entryAt';
import type { PartPlan, PlannedJoint } from './partPlan';
import type { Planning } from './planning';
import { isLanding } from './reading';
import { shortFlightJoints, type JointBegins } from './shortFlights';
import type { BookStage, LooseMeasures } from './stageBook';
import type { TapeCase } from './tapeCase';

/** The joints of landing i with short flights beside it that begin with a given part; none where there is no landing. */
export function shortJoints(planning: Planning, i: number, begins: JointBegins): PlannedJoint[] {
  const { reading, stageAt } = planning;
  const stage = reading[i] && isLanding(reading[i].stage) ? stageAt(i) : undefined;
  if (!stage) return [];
  const { guarded, levelOnly } = asBesideFlights(planning, i, stage);
  // Where one flight stands back from the edge of the other, what goes round tilted has floor where it supposes treads.
  if (levelOnly) return [];
  return shortFlightJoints(planning, i, begins, guarded).map(({ parts, plan }) => ({
    parts,
    sources: [],
    short: plan,
  }));
}

/** A landing as narrow and low as the flights beside it. */
export function landingBesideFlights(
  planning: Planning,
  i: number,
  stage: BookStage,
): Pick<PartPlan, 'sources' | 'limitsBefore' | 'limitsAfter'> {
  const { reading } = planning;
  const { guarded, levelOnly, beside, searchedUpTo } = asBesideFlights(planning, i, stage);
  const reversed = entryAt(reading, i).way === 'down';
  const source = { stage: guarded, upToBefore: Infinity, upToAfter: Infinity, reversed };
  return {
    sources: [[{ ...source, levelOnly, searchedUpTo, by: beside }]],
    limitsBefore: [],
    limitsAfter: [],
  };
}

/** The landing of row i as the flights beside it leave it. */
function asBesideFlights(
  { reading, tapeCase, tape, lookUp }: Planning,
  i: number,
  stage: BookStage,
): {
  readonly guarded: BookStage;
  readonly levelOnly: boolean;
  readonly beside: readonly number[];
  readonly searchedUpTo: number | undefined;
} {
  const { measures: m } = stage;
  const { way } = entryAt(reading, i);
  const beside = (k: number) => (reading[k]?.stage === 'flight' ? reading[k] : undefined);
  const [lower, upper] = way === 'up' ? [beside(i - 1), beside(i + 1)] : [beside(i + 1), beside(i - 1)];
  const narrow = (own: number | undefined, ...others: (number | undefined)[]): number | undefined =>
    others.reduce<number | undefined>(
      (a, b) => (a === undefined || b === undefined ? a : Math.min(a, b)),
      own,
    );
  const height = narrow(m.height, lower?.measures.height, upper?.measures.height);
  const quarter = stage.stage === 'quarter landing';
  const [wide, wideOut] = [lower?.measures.width, upper?.measures.width];
  // A handrail at any height is there for what reaches over the flight as it goes round.
  const [clear, clearOut] = [clearWidth(lower?.measures), clearWidth(upper?.measures)];
  const width = quarter ? narrow(m.width, clear) : narrow(m.width, clear, clearOut);
  const widthOut = quarter ? narrow(m.widthOut, clearOut) : m.widthOut;
  const ceiling = ceilingOverLanding({ landingCeiling: m.ceiling, headroom: m.height });
  const guarded = lookUp(stage.stage, { ...m, width, widthOut, height, ceiling });
  // On a quarter landing a narrower flight may stand back from the edge of the other: what goes round tilted
  // has then level floor where it supposes treads.
  const standsBack = (own = 0, flight = own): boolean => own - flight > 2 * tape;
  const levelOnly =
    quarter && tapeCase === 'worst' && (standsBack(m.width, wide) || standsBack(m.widthOut, wideOut));
  const besideRows = [i - 1, i + 1].filter((k) => beside(k) !== undefined);
  const lines = [lower, upper].flatMap((flight) =>
    flight ? [lineLength(flight.measures, tapeCase, tape)] : [],
  );
  const searchedUpTo = lines.length > 0 ? Math.min(...lines) : undefined;
  return { guarded, levelOnly, beside: besideRows, searchedUpTo };
}

/** As narrow as a flight is anywhere up to its ceiling [mm]. */
function clearWidth(measures: LooseMeasures | undefined): number | undefined {
  const { width, lowWidth } = measures ?? {};
  return width === undefined || lowWidth === undefined ? width : Math.min(width, lowWidth);
}

/** From the first nosing of a flight to its last, along the pitch [mm]; without its risers: of two, or of many. */
export function lineLength(
  { risers, rise = 0, going = 0 }: LooseMeasures,
  tapeCase: TapeCase,
  tape: number,
): number {
  if (risers === undefined) return tapeCase === 'worst' ? Math.hypot(rise, going) : Infinity;
  const off = tapeCase === 'worst' ? -tape : tapeCase === 'best' ? tape : 0;
  return (risers - 1) * Math.hypot(rise, going) + off;
}
