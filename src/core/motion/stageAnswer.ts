import type { Pose } from '../measures/piece';
import type { Motion, SceneBox } from '../space/motion';
import type { Closest } from './closest';

/** What one stage answers for one piece. */
export interface StageAnswer {
  /** Clearance [mm a side] that a motion shows: the piece padded by this passes. Never NaN. */
  readonly clearance: number;
  /** Proved: no motion whatever passes with more padding than this [mm a side]; Infinity when nothing is proved. */
  readonly atMost: number;
  /** The pose of the shown motion where it is closest. */
  readonly pose: Pose;
  /** Where it is closest. */
  readonly critical: Closest;
  /** The condition that gives `atMost`, in words; absent when nothing is proved. */
  readonly bound?: string;
  /** No motion was found at all: the clearance is that of the piece shrunk to a point. */
  readonly nothingFound?: true;
  /** Found by a search that hangs on chance: the piece passes, and its clearance of 0 is no figure to be shown. */
  readonly byChance?: true;
  /** Height [mm] the motion lifts the piece above the floor or the line of nosings. */
  readonly raise?: number;
  /** The motion passes above a handrail. */
  readonly overRail?: boolean;
}

/** A stage's answer with what an independent checker needs to replay it. */
export interface AnswerWithMotion extends StageAnswer {
  readonly motion: Motion;
  /** The stage as obstacles, in the same coordinates as the motion. */
  readonly scene: readonly SceneBox[];
}
