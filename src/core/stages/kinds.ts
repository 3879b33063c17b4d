import { CORNER } from './corner/cornerKind';
import { DOOR } from './door/doorKind';
import { FLIGHT } from './flight/flightKind';
import { HALF_LANDING } from './landing/halfLandingKind';
import { QUARTER_LANDING } from './landing/quarterLandingKind';
import { LIFT } from './lift/liftKind';
import type { MeasuredOf } from './measuredOf';
import { MEASURE_NAMES, MEASURES, within, type MeasureName, type MeasureRange } from './measures';
import { PASSAGE } from './passage/passageKind';
import { RAMP } from './ramp/rampKind';
import { ROOM } from './room/roomKind';
import { SIDE_DOOR } from './sideDoor/sideDoorKind';
import { FURNITURE } from './siteRemedies';
import { STEPS } from './steps/stepsKind';
import type {
  HeightName,
  MeasureAt,
  MeasuresOf,
  StageFacts,
  StageOnWay,
  StageRole,
  TurnArms,
} from './stageKind';
import { PRACTICE, range } from './usualRanges';
import { WINDER } from './winder/winderKind';

/** The stages of a route, in the trade's words and in the order in which they are offered. A new one is a line here. */
export const STAGE_KINDS = {
  door: DOOR,
  'side door': SIDE_DOOR,
  passage: PASSAGE,
  steps: STEPS,
  ramp: RAMP,
  corner: CORNER,
  flight: FLIGHT,
  'quarter landing': QUARTER_LANDING,
  'half landing': HALF_LANDING,
  winder: WINDER,
  lift: LIFT,
  room: ROOM,
} as const;

/** The name of a stage. */
export type StageName = keyof typeof STAGE_KINDS;

/** Every stage, in the order in which they are offered. */
export const STAGE_NAMES = Object.keys(STAGE_KINDS) as readonly StageName[];

/** The measures of a stage of this name: those it needs are there. */
export type MeasuresAt<Stage extends StageName> = MeasuresOf<(typeof STAGE_KINDS)[Stage]>;

/** A measure as a stage has it, whatever it is of. */
type AnyMeasure = MeasureAt & { readonly of?: MeasuredOf[keyof MeasuredOf] };
type AnyKind = Omit<StageFacts, 'needs' | 'may'> &
  StageOnWay & {
    readonly needs: Readonly<Partial<Record<MeasureName, AnyMeasure>>>;
    readonly may: Readonly<Partial<Record<MeasureName, AnyMeasure>>>;
  };

/** What is said of a kind of stage. */
export const kindOf = (stage: StageName): AnyKind => STAGE_KINDS[stage];

/** Which measures a stage needs, and which it may have besides. */
export interface StageNeeds {
  /** Without these the stage is not measured. */
  readonly needs: readonly MeasureName[];
  /** Used where given. */
  readonly may: readonly MeasureName[];
}

const namesIn = (measures: Readonly<Partial<Record<MeasureName, MeasureAt>>>): MeasureName[] =>
  Object.keys(measures) as MeasureName[];

/** One value for each stage. */
const forEachStage = <T>(of: (stage: StageName) => T): Readonly<Record<StageName, T>> =>
  Object.fromEntries(STAGE_NAMES.map((stage) => [stage, of(stage)])) as Record<StageName, T>;

const NEEDS = forEachStage((stage): StageNeeds => {
  const { needs, may } = kindOf(stage);
  return { needs: namesIn(needs), may: namesIn(may) };
});

/**
 * The measures that a stage needs, and those it may have besides. `run` belongs to no stage but to the way on
 * to the next one, and is in neither list: without it a route is still measured.
 * @example stageNeeds('corner') // { needs: ['width', 'widthOut', 'height'], may: ['turn'] }
 */
export const stageNeeds = (stage: StageName): StageNeeds => NEEDS[stage];

/** The straight clear length on to the next turn, which any stage may have. */
const RUN: MeasureAt = {
  usual: range(0, 30000, PRACTICE),
  tape: 'more helps',
  remedy: FURNITURE,
  // The next turn may follow at once.
  none: '0 mm',
};

const MEASURES_AT = forEachStage((stage): Readonly<Partial<Record<MeasureName, AnyMeasure>>> => ({
  ...kindOf(stage).needs,
  ...kindOf(stage).may,
  run: RUN,
}));

/** A measure as a stage has it, `run` among them; undefined where the stage does not use it. */
export const measureAt = (stage: StageName, measure: MeasureName): AnyMeasure | undefined =>
  MEASURES_AT[stage][measure];

/** Whether a stage is judged by a measure, needed or not. */
export const usesMeasure = (stage: StageName, measure: MeasureName): boolean =>
  measure !== 'run' && measureAt(stage, measure) !== undefined;

/** Whether a stage is part of a stair. */
export const isStair = (stage: StageName): boolean => kindOf(stage).stair !== null;

/** Whence a piece on its way through a stage is seen best: straight through it, in one upright plane, or in plan. */
export const seenBest = (stage: StageName): StageFacts['seenBest'] => kindOf(stage).seenBest;

/** What a stage is on the way; undefined where it is not known. */
export const roleOf = (stage: StageName | undefined): StageRole | undefined => stage && kindOf(stage).role;

/** The two ways that meet at a stage where the way turns on one floor; undefined where it is none. */
export function turnArms(stage: StageName | undefined): TurnArms | undefined {
  const kind = stage && kindOf(stage);
  return kind?.role === 'turn' ? kind.arms : undefined;
}

/** The measure of what is above the level floor of a stage; undefined where it has none with its neighbours. */
export function floorCeiling(stage: StageName | undefined): HeightName | undefined {
  const kind = stage && kindOf(stage);
  return kind && 'ceiling' in kind ? kind.ceiling : undefined;
}

/** Whether the way turns in plan at a stage: on one floor, on a stair, or in a car. */
export const turns = (stage: StageName): boolean =>
  kindOf(stage).role === 'turn' || kindOf(stage).role === 'landing' || kindOf(stage).role === 'car';

/** Whether the way leads straight on through a stage, on one floor. */
export const leadsStraightOn = (stage: StageName | undefined): boolean =>
  roleOf(stage) === 'opening' || roleOf(stage) === 'straight';

/** Whether `Run` is asked of a stage: the straight on to the next turn, where that is no part of a stair. */
export const hasRun = (stage: StageName | undefined): boolean =>
  roleOf(stage) === 'turn' || roleOf(stage) === 'car';

const POSSIBLE_AT = forEachStage(
  (stage) =>
    Object.fromEntries(
      MEASURE_NAMES.map((name) => [name, measureAt(stage, name)?.possible ?? MEASURES[name].possible]),
    ) as Readonly<Record<MeasureName, MeasureRange>>,
);

/**
 * The range outside which a measure is refused, in its unit; at a stage that is not known, or does not use the
 * measure, the widest that holds for it.
 */
export const possibleRange = (stage: StageName | undefined, measure: MeasureName): MeasureRange =>
  stage === undefined ? MEASURES[measure].possible : POSSIBLE_AT[stage][measure];

/** The range outside which a measure is doubted, in its unit; undefined where the stage does not use it. */
export const plausibleRange = (stage: StageName, measure: MeasureName): MeasureRange | undefined =>
  measureAt(stage, measure)?.usual;

/** Whether a figure is within what is usual for a measure of a stage. */
export function isUsual(stage: StageName, measure: MeasureName, value: number): boolean {
  const usual = plausibleRange(stage, measure);
  return usual !== undefined && within(value, usual);
}

/** Measures on which what a stage answers for a piece depends, in the order of MEASURE_NAMES. */
const SPATIAL = forEachStage((stage) =>
  MEASURE_NAMES.filter((name) => usesMeasure(stage, name) && measureAt(stage, name)?.tape !== 'no space'),
);

/** The measures that an answer of the stage depends on. */
export const spatialMeasures = (stage: StageName): readonly MeasureName[] => SPATIAL[stage];
