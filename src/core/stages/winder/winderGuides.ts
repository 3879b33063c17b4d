import type { Hold } from '../../motion/hold';
import type { KeyAttitude, Motion } from '../../space/motion';
import type { Vector } from '../../space/vector';
import { STEEP, tiltedGuide, type WayRound } from '../landing/landingGuides';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, atan2, cos, max, sin } = Math;

/** What a guide needs to know of a winder stair, in the stage's own coordinates [mm, rad]. */
export interface WinderPlan {
  readonly width: number;
  readonly widthOut: number;
  readonly headroom: number;
  readonly turn: number;
  readonly treads: number;
  readonly rise: number;
  readonly going: number;
}

/**
 * The ways round winding treads: lying along the treads' own pitch at the middle of the way; with one end raised; and
 * stood on end before the treads, turned about the inner edge and laid back.
 *
 *   in plan                      from the side, the way laid straight
 *       |  upper flight              along the treads      one end raised        on end
 *       |  |                             __/                    /                 |
 *   ____o__|  o: inner edge           __/                      /                  |
 *   ______/ kite treads            steps                    steps               steps
 */
export function winderGuides(plan: WinderPlan, hold: Hold, start: KeyAttitude, goal: KeyAttitude): Motion[] {
  const { turn, treads, rise, going, width, widthOut } = plan;
  const way: WayRound = {
    turn,
    pitch: atan2(rise, going),
    middleAt: (part) => middleOfWinder(plan, part),
    hold,
    start,
    goal,
  };
  const along = atan2(treads * rise, (turn * (width + widthOut)) / 4);
  return [along, max(STEEP, along), PI / 2].map((tilt) => tiltedGuide(way, tilt));
}

/** Midway across the way, and midway between treads and ceiling. */
export function middleOfWinder(plan: WinderPlan, part: number): Vector {
  const { width, widthOut, headroom, turn, treads, rise } = plan;
  const radius = (width + (widthOut - width) * part) / 2;
  const angle = turn * part - PI / 2;
  return [radius * cos(angle), radius * sin(angle), rise * (1 + treads * part) + headroom / 2];
}
