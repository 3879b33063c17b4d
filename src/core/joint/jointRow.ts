import type { PieceSize } from '../measures/piece';
import type { Motion, SceneBox } from '../space/motion';
import type { Hold } from '../motion/hold';
import type { StagePassage } from '../motion/stagePassage';
import type { StageMeasures } from '../stages/measures';
import type { StageName } from '../stages/kinds';

/** The side towards which the way leaves a turn, in row order. */
export type Hand = 'left' | 'right';
/** Which way a stair row is walked, in row order. */
export type StairWay = 'up' | 'down';

/** A row of a route among rows that stand close, with everything known that its place in space depends on. */
export interface JointRow {
  readonly stage: StageName;
  /** Every length concrete: what was not measured has been supposed by the caller. */
  readonly measures: StageMeasures;
  /** The side towards which the way leaves a turn, in row order; left when absent. */
  readonly hand?: Hand | undefined;
  /** Which way a stair row is walked, in row order; up when absent. */
  readonly way?: StairWay | undefined;
  /** A side door leads into its passage; told by the row before when absent. */
  readonly into?: boolean | undefined;
  /**
   * Where the narrower of this row's section and that of the row before stands across the wider one, seen along the
   * way: 0 flush on the left ... 1 flush on the right; in the middle when absent.
   */
  readonly place?: number | undefined;
  /** Steps or a ramp as the flight that they are: no stairwell, so that a lower ceiling at their foot begins there. */
  readonly standsAlone?: boolean | undefined;
}

/**
 * What lies beyond an end of a block: a straight of the same section as the row there, longer than the piece
 * (a flight: the same flight going on), or open level ground from that row's plane on.
 */
export type JointEnd = 'straight' | 'open';

/** Rows that stand close, to be solved as one space. */
export interface JointBlock {
  readonly rows: readonly JointRow[];
  readonly before: JointEnd;
  readonly after: JointEnd;
}

/** A place where a piece can be at rest, and a block ends. */
export interface RestOnWay {
  /** Index of its row; -1 and the number of rows for open ground. */
  readonly row: number;
  /**
   * Where of the row: in it; along a flight; on the floor of its own that a flight has before it or after it; or in a
   * straight behind a turn that was not measured, which as measured may be as long as it likes.
   */
  readonly at: 'row' | 'along' | 'floor before' | 'floor after' | 'behind';
}

/** Rows of a route that are passed as one space, with the places of rest between which they are. */
export interface RowsAsOne {
  readonly block: JointBlock;
  readonly begins: RestOnWay;
  readonly ends: RestOnWay;
  /** The motion that shows it, in the block's own frame, where that is known at once. */
  readonly motion?: Motion | undefined;
}

/** What is asked of a joint solver. */
export interface JointAsk {
  /** Padding [mm a side] below which no answer is wanted: it is tried first, and what fails it is not listed. */
  readonly atLeast?: number;
  /** Padding [mm a side] above which more is of no interest. */
  readonly enough?: number;
  /** How near the greatest padding has to be [mm]. */
  readonly tolerance?: number;
  /** Only ways that begin in one of these; all when absent. */
  readonly from?: readonly Hold[];
}

/** A motion that shows a passage, in the block's own frame. */
export interface JointMotion {
  readonly motion: Motion;
  readonly scene: readonly SceneBox[];
  /** Padding [mm a side] with which the motion is free in the scene. */
  readonly motionPadding: number;
}

/**
 * One way through a block: how the piece is held in the straight before it and in the straight after it, and what a
 * motion leaves. The clearance is sufficient: the motion exists, `shown` draws it.
 *
 * The block's own frame: the origin midway across the entry plane of its first row, on the floor there (on a flight:
 * on the line of nosings), x along the way, y to the left, z up.
 */
export interface JointPassage extends StagePassage {
  /** The motion, where that is known at once. */
  readonly motion?: Motion;
  /** Draws the motion and the scene; work, and only done when called. Undefined where it cannot be drawn. */
  readonly shown: () => JointMotion | undefined;
}

/**
 * Solves a block for a piece: every pair of ways of being held that it can show. Undefined where the solver does not
 * deal with such rows, which proves nothing; an empty list where it found no motion, which proves nothing either.
 */
export type JointSolver = (
  block: JointBlock,
  piece: PieceSize,
  ask?: JointAsk,
) => readonly JointPassage[] | undefined;
