import type { TurningSpace } from '../motion/turningSpace';
import type { JointPlan } from './jointPlan';
import type { LimitCause } from './limitCause';
import type { ShortFlightsPlan } from './shortFlights';
import type { BookStage } from './stageBook';
import type { BlockToSolve } from './tapedBlock';

/** Where the passages of a part come from: a stage of the book, and how far its arms hold. */
export interface PassageSource {
  readonly stage: BookStage;
  /** The way goes through the stage the other way round. */
  readonly reversed?: boolean;
  /** The piece must not reach farther than this before it and after it [mm]. */
  readonly upToBefore: number;
  /** [mm] */
  readonly upToAfter: number;
  readonly causeBefore?: LimitCause | undefined;
  readonly causeAfter?: LimitCause | undefined;
  /** Rows beside the stage that narrowed it. */
  readonly by?: readonly number[] | undefined;
  /** What it is solved as is not what it is: where it is closest is told of this. */
  readonly toldAs?: 'steps' | 'ramp';
  /** So much more than by itself it is raised above what is below it [mm]. */
  readonly raised?: number;
  /** Only what is held so that it need not lean counts. */
  readonly steadyOnly?: boolean;
  /** Only what goes round level or upright counts. */
  readonly levelOnly?: boolean;
  /** Passages that were searched suppose a flight so long [mm] on both sides. */
  readonly searchedUpTo?: number | undefined;
}

/** Several sources of which each must hold: what is not measured may be any of them. */
export type PassageSources = readonly PassageSource[];

/** A place that limits what is beside it. */
export interface PlannedLimit {
  /** [mm] the piece must lie in it wholly; or else ... */
  readonly length: number;
  /** ... fit so many mm across. */
  readonly orAcross?: number | undefined;
  readonly cause: LimitCause;
}

/** A piece laid along the pitch of a flight. */
export interface LaidOnPitch {
  readonly flight: BookStage;
}

/** One part of a route in one tape case, without a piece: see `Part`. */
export interface PartPlan {
  readonly row: number;
  /** Undefined where the row is not measured. */
  readonly sources: readonly PassageSources[] | undefined;
  readonly laid?: LaidOnPitch | undefined;
  /** A floor where only the pose is changed. */
  readonly floor?: TurningSpace | undefined;
  readonly isFloor?: boolean;
  /** The stage whose own space there is to change the pose. */
  readonly turning?: BookStage | undefined;
  /** The piece has to turn round in this room, wherever its doors are [mm]. */
  readonly disc?: number | undefined;
  readonly limitsBefore: readonly PlannedLimit[];
  readonly limitsAfter: readonly PlannedLimit[];
  readonly joints?: readonly {
    readonly parts: number;
    readonly sources: readonly PassageSources[];
    /** Row of a side door past which the piece is pushed, to come back. */
    readonly pastDoor?: number;
    /** Solved only where the rows by themselves leave too little. */
    readonly solved?: readonly JointPlan[];
    /** Rows between two places of rest, solved as one space by need. */
    readonly block?: BlockToSolve;
    /** A landing with flights that may be shorter than the piece. */
    readonly short?: ShortFlightsPlan;
  }[];
}

/** Rows that are passed as one. */
export type PlannedJoint = NonNullable<PartPlan['joints']>[number];

/** A stage by itself, its arms as long as it takes. */
export const alone = (stage: BookStage): PassageSource => ({
  stage,
  upToBefore: Infinity,
  upToAfter: Infinity,
});
