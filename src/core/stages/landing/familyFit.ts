import type { Closest } from '../../motion/closest';
import type { Hold } from '../../motion/hold';
import type { Swing } from './swingUp';

/** One attitude and place of a piece that is slid round. */
export interface SlidPlace {
  readonly yaw: number;
  /** Its middle in plan beyond the inner edge, along the way it points [mm]. */
  readonly past: number;
  /** Height of its lower back corner above the landing on the way there from the place before, and on to the next [mm]. */
  readonly from: number;
  readonly to: number;
}

/** How the piece is held while it goes round. */
export type RoundAs = 'level' | 'tilted' | 'upright' | 'swung' | 'slid';

/** A family's clearance in closed form, less this [mm a side]: its drawn motion is then free between attitudes. */
export const DRAWN = 0.5;

/** A motion of a family, by what tells it apart; `drawFamilyMotion` draws it. */
export interface FamilyFit {
  /** [mm a side] */
  readonly clearance: number;
  readonly hold: Hold;
  readonly as: RoundAs;
  /** Angle [rad] of its side along the way above the level while it goes round. */
  readonly tilt: number;
  /** Moved across sideways without turning about. */
  readonly sideways: boolean;
  /** Nowhere is the padded piece farther above what is below it than this [mm]. */
  readonly raise: number;
  /** Height [mm] of its lowest corner above the landing as it comes over the upper flight. */
  readonly raisedTo: number;
  /** Where it is closest. */
  readonly critical: Closest;
  /** Swung: which way on the lower flight's side and on the upper's. */
  readonly swings?: readonly [Swing, Swing];
  /** Slid: where it is on the way round. */
  readonly slid?: readonly SlidPlace[];
}
