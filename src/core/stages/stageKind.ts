import type { LooseStageMeasures, MeasureName, MeasureRange, StageMeasures } from './measures';
import type { MeasuredOf } from './measuredOf';
import type { SiteRemedy } from './siteRemedies';

/**
 * What the tape does to a measure. `more helps`, `more hinders`: a larger figure can only help a piece, only
 * hinder it. `either way`: it can do either, so both ends are looked at. `shared by the risers`: the same, where
 * a run of so many was taped once, so that the tape is divided by them. `0 is none`: more hinders, but 0 says
 * that there is none, which no tape changes. `not taped`: it does not err by the tape. `no space`: nothing a
 * piece could touch, so no answer depends on it.
 */
export type TapeEffect =
  | 'more helps'
  | 'more hinders'
  | 'more hinders, 0 is none'
  | 'either way'
  | 'shared by the risers'
  | 'not taped'
  | 'no space';

/** One measure as one stage has it. */
export interface MeasureAt {
  /** Outside this a figure is doubted, never refused. */
  readonly usual: MeasureRange;
  /** Outside this a figure is refused here, where that is not the measure's own range. */
  readonly possible?: MeasureRange;
  readonly tape: TapeEffect;
  /** What can be done on the spot to gain some of it; null: nothing that is worth a word. */
  readonly remedy: SiteRemedy | null;
  /** What people call it here, after its column's heading: `Height (headroom)`. */
  readonly called?: string;
  /** Another heading that its column may have here. */
  readonly heading?: string;
  /**
   * How it is written that there is none of it; absent: there always is some. An empty cell can arrive as a bare
   * 0, so that mostly the unit says it; a bare 0 then counts as an empty cell.
   */
  readonly none?: '0 mm' | 'bare 0';
  /** Named in a reason where it was measured, although the stage does not need it. */
  readonly named?: true;
  /** Outdoors the word `open` stands for it: there is nothing above but the sky. */
  readonly sky?: true;
}

/** A measure of this name as one stage has it, and what it is of there. */
export type MeasureOf<Name extends MeasureName> = MeasureAt &
  (Name extends keyof MeasuredOf ? { readonly of: MeasuredOf[Name] } : unknown);

/** Why a stage is at best tight, whatever the piece. */
export type StageCap =
  | { readonly kind: 'stair ends not measured'; readonly missing: readonly MeasureName[] }
  | { readonly kind: 'winding treads' };

/** What a stage adds to one trip of a job. */
export interface TripShare {
  /** Turns that take time [count]. */
  readonly turns: number;
  /** What has to be measured for the rest to be added up. */
  readonly needs: readonly MeasureName[];
  /** Carried so far [mm], `Run` not counted. */
  readonly distance: (measures: StageMeasures) => number;
  /** Risers climbed [count]. */
  readonly rises: (measures: StageMeasures) => number;
}

/** A measure of what is above a level floor. */
export type HeightName = 'height' | 'ceiling';

/** One of the two ways that meet at a turn: the measures that say how wide and how high it is. */
export interface TurnArm {
  readonly width: 'width' | 'widthOut';
  readonly height: HeightName;
  /** It is a door's opening: a room before it is no corridor. */
  readonly door?: true;
}

/** The two ways that meet at a turn on one floor. */
export interface TurnArms {
  readonly in: TurnArm;
  readonly out: TurnArm;
  /** It may be walked from its `out` to its `in`, too. */
  readonly eitherWay?: true;
}

/**
 * What a stage is on the way, which is all that the rows beside it and a route go by. Turns, landings and cars suppose
 * straight arms longer than the piece, so what lies between two of them counts; a room holds the piece, so that nothing
 * has to be straight there. `ceiling` is the measure of what is above its level floor, which may be the floor at a
 * flight's end; `stair` says that its height is a headroom, plumb above the line of nosings.
 */
export type StageOnWay =
  | { readonly role: 'opening' | 'car'; readonly stair: null }
  | { readonly role: 'straight' | 'room'; readonly stair: null; readonly ceiling: HeightName }
  | { readonly role: 'turn'; readonly stair: null; readonly ceiling: HeightName; readonly arms: TurnArms }
  | { readonly role: 'flight'; readonly stair: 'flight' }
  | { readonly role: 'landing'; readonly stair: 'landing' | 'winding' };

/** What a stage is on the way. */
export type StageRole = StageOnWay['role'];

/** Everything that is said of a kind of stage as data; how a piece passes it is its `StageSolver`. */
export type StageKind<
  Needs extends MeasureName = MeasureName,
  May extends MeasureName = MeasureName,
> = StageFacts<Needs, May> & StageOnWay;

/** What is said of a kind of stage by itself. */
export interface StageFacts<Needs extends MeasureName = MeasureName, May extends MeasureName = MeasureName> {
  /** Without these the stage is not measured; in the order in which they are named. */
  readonly needs: { readonly [Name in Needs]: MeasureOf<Name> };
  /** Used where given. `run` belongs to no stage but to the way on to the next one. */
  readonly may: { readonly [Name in May]: MeasureOf<Name> };
  /** Of these a customer is asked, the most useful first: as long as they are not known they are taken at their worst. */
  readonly worthAsking: readonly NoInfer<May>[];
  /** Its width is what a door's leaf leaves clear, so that a leaf's own width is a slip. */
  readonly doorLeaf: boolean;
  /** A door opens under its ceiling, so that the ceiling is no lower. */
  readonly doorUnderCeiling: boolean;
  readonly cap: (measures: StageMeasures) => StageCap | undefined;
  /** Straight length [mm] that it adds between two turns; undefined: none, or not known. */
  readonly straight: (measures: StageMeasures) => number | undefined;
  /** Plan length [mm] of a stair that is measured from level to level; undefined: it is not one. */
  readonly levelToLevel: (measures: StageMeasures) => number | undefined;
  /** Spaces [mm] that a flight may find before its wall on this landing; undefined: no flight ends here. */
  readonly landingSpaces: (measures: StageMeasures) => readonly number[] | undefined;
  readonly trip: TripShare;
  /** It is solved as a flight: the measures of the flight that it is. */
  readonly solvedAsFlight?: (measures: LooseStageMeasures) => StageMeasures;
  /** A door that follows stands at its last riser, or where the slope ends. */
  readonly doorAtItsEnd?: true;
  /** Where in words a piece is turned over here. */
  readonly place: string;
  /** What a piece is carried through, along or round here: `round the corner`; on a stair what it is carried up or down. */
  readonly passedBy: string;
  /** Whence a piece on its way through it is seen best. */
  readonly seenBest: 'from in front' | 'from the side' | 'from above';
  /** What a customer calls it. */
  readonly customerWord: string;
  /** Its name is a plural: `steps`. */
  readonly plural?: true;
  /** Other words for it, which are taken as its name. */
  readonly names?: readonly string[];
  /** Other plain words for it, which are asked about and not taken. */
  readonly otherWords: readonly string[];
}

/** A kind with its measures known to the type. */
export const stageKind = <Needs extends MeasureName, May extends MeasureName = never>(
  kind: StageKind<Needs, May>,
): StageKind<Needs, May> => kind;

/** The measures of a stage: those it needs are there. */
export type MeasuresOf<Kind> =
  Kind extends StageFacts<infer Needs, infer May>
    ? Readonly<Record<Needs, number>> & Readonly<Partial<Record<May, number | undefined>>>
    : never;

/** For a stage that has no further measures. */
export const NO_MEASURES: Readonly<Record<never, never>> = {};
/**
 * Says of every set of measures that there is none.
 */
export const never = (): undefined => undefined;
/** A stage that adds nothing to a trip. */
export const NO_TRIP: TripShare = { turns: 0, needs: [], distance: () => 0, rises: () => 0 };
/** A stage at which a trip turns once. */
export const ONE_TURN: TripShare = { ...NO_TRIP, turns: 1 };
