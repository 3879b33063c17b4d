import type { PieceSize } from '../measures/piece';
import type { Leaning, StagePassage } from '../motion/stagePassage';
import type { TurningSpaces } from '../motion/turningSpace';
import type { SearchedStage } from './landing/landingPassages';

/** What the rows beside a stage tell of it: which ends of a flight are on a landing, what is before a side door. */
export interface PlacedEnds {
  readonly footOnLanding?: boolean | undefined;
  readonly headOnLanding?: boolean | undefined;
  /** Width [mm] of the floor before a side door, where it is wider than the door; its middle is the door's. */
  readonly approachWidth?: number | undefined;
  /** For a proof on a landing: over the lower flight there may be no ceiling. */
  readonly lowerOpen?: boolean | undefined;
  /** For a proof on a flight: nothing is supposed of what lies beyond its first and its last nosing. */
  readonly endsOpen?: boolean | undefined;
  /** For a proof on a flight: what is solved as its treads lies lower, a ramp or a single step. */
  readonly noTreads?: boolean | undefined;
}

/** Every set of measures that the tape allows: for the piece, and against it. */
export interface TapedSets<Measures> {
  readonly best: readonly [Measures, ...Measures[]];
  readonly worst: readonly [Measures, ...Measures[]];
}

/** A proof that takes longer than a passage is worth, and is tried in a route alone. */
export interface DeepProof<Measures> {
  /**
   * It is not tried where a motion shows more clearance than this [mm a side]: a proof that stays so far from
   * the motions would fail. Infinity: always tried.
   */
  readonly upTo: number;
  /**
   * @param piece as small as the tape allows
   * @returns the condition that fails, in words; undefined where nothing is proved
   */
  readonly proves: (taped: TapedSets<Measures & PlacedEnds>, piece: PieceSize) => string | undefined;
}

interface SolverOfAnyKind<Measures> {
  /** The space for changing the pose, before the piece goes on through the stage and after; undefined: none. */
  readonly turningSpaces: (measures: Measures) => TurningSpaces | undefined;
  readonly deepProof: DeepProof<Measures> | null;
}

/** A stage whose passages are solved. */
export interface SolvedStage<Measures> extends SolverOfAnyKind<Measures> {
  readonly solvedBy: 'closed form';
  /**
   * Every passage that can be shown for a piece, by how it is held before and after.
   * @param leaning `without leaning`: those that need room to lean beside the stage may be left out
   */
  readonly passages: (measures: Measures & PlacedEnds, piece: PieceSize, leaning: Leaning) => StagePassage[];
  /** Its leaning passages are work of their own, left out until they are asked for. */
  readonly leaningApart: boolean;
}

/** A stage that is searched in space: beyond families of motions in closed form, or alone. */
export interface SpaceStage<Measures> extends SolverOfAnyKind<Measures> {
  readonly solvedBy: 'families and search' | 'search alone';
  readonly searched: (measures: Measures & PlacedEnds) => SearchedStage;
}

/** How a piece passes a kind of stage. */
export type StageSolver<Measures> = SolvedStage<Measures> | SpaceStage<Measures>;
