import { CONDITIONS } from '../../geometry/proofs/conditions';
import { ceilingOverLanding } from '../../geometry/landingModel';
import { quarterLandingAtMost } from '../../geometry/proofs/quarterLandingAtMost';
import type { PieceSize } from '../../measures/piece';
import { alikeTurns, likeness, quaternionFromAxes, slerp, type Quaternion } from '../../space/quaternion';
import { withoutMotion } from '../../motion/answerOfMotion';
import type { Hold } from '../../motion/hold';
import type { SearchTask } from './landingSearch';
import { widestMotion, type SearchedStage } from './landingPassages';
import { quarterLandingPlan } from './landingPlan';
import { landingStage } from './landingStage';
import { onFlight, paddingOnFlight } from '../flight/onFlight';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import type { KeyAttitude } from '../../space/motion';
import { openingAtMost } from '../opening/openingAtMost';
import type { AnswerWithMotion, StageAnswer } from '../../motion/stageAnswer';
import { quarterGrounds } from './quarterGrounds';
import { quarterBlocks, quarterReach } from './quarterBlocks';

/** A quarter landing, with the flights that run to it. */
export interface QuarterLandingMeasures {
  /** Clear width of the flight it comes from [mm], the landing's size across it. */
  readonly widthIn: number;
  /** Clear width of the flight it goes to [mm], the landing's size along the first. */
  readonly widthOut: number;
  /** Headroom plumb above the line of nosings [mm]. */
  readonly headroom: number;
  /** [mm] */
  readonly rise: number;
  /** [mm] */
  readonly going: number;
  /** Height [mm] above which the inner sides are clear air; 0: walls. */
  readonly overRail: number;
  /** Flat ceiling over the landing [mm]; the headroom when absent. */
  readonly landingCeiling?: number;
  /** For a proof: over the lower flight there may be no ceiling. */
  readonly lowerOpen?: boolean | undefined;
}

/**
 * Clearance of a piece round a quarter landing: a motion that is held, and a bound that is proved.
 *
 * Model, for a motion (every measure at its least): the landing is x 0..widthOut, y 0..widthIn, z up from it.
 * The lower flight comes along x at x < 0, its plane of nosings meeting the landing's edge at z = 0; the upper
 * goes off along y at y > widthIn and starts one rise above the landing, its first riser upright. Ceilings run
 * parallel, `headroom` plumb above. Walls at y = 0 and x = widthOut; the inner corner is the upright edge
 * (0, widthIn), with full-height walls along both flights' inner sides, or with `overRail` solid up to that
 * height above the upper flight's plane of nosings, with the lower flight's ceiling running on above it.
 * Motions looked at: the families in closed form (`bestFamilyFit`: level, tilted or upright as it goes round), and
 * beyond them a search, held on edge or flat along the flights, with the middle of the motion on end, on edge,
 * flat or tilted on the landing.
 *
 * For a proof: quarterLandingAtMost, and the section of the flights (with real treads one rise more headroom); a
 * route tries quarterLandingCutBlocks as well, which is far tighter and takes some 10 ms.
 *
 * @example quarterLandingAnswer({ widthIn: 900, widthOut: 900, headroom: 2100, rise: 180, going: 250,
 *   overRail: 0 }, { length: 1500, breadth: 700, thickness: 25 }).clearance // 158.1 mm a side
 */
export function quarterLandingAnswer(measures: QuarterLandingMeasures, piece: PieceSize): StageAnswer {
  return withoutMotion(quarterLandingWithMotion(measures, piece));
}

/** The same with the motion and the obstacles, for a checker. */
export function quarterLandingWithMotion(
  measures: QuarterLandingMeasures,
  piece: PieceSize,
): AnswerWithMotion {
  return widestMotion(quarterLandingStage(measures), piece);
}

/** The stage as it is searched. */
export const quarterLandingStage = (measures: QuarterLandingMeasures): SearchedStage =>
  landingStage(measures, quarterLandingPlan(measures), quarterLandingTask, provedBound);

function provedBound(m: QuarterLandingMeasures, piece: PieceSize): ProvedBound {
  const width = m.lowerOpen ? m.widthOut : Math.min(m.widthIn, m.widthOut);
  const section = openingAtMost({ width, height: m.headroom + m.rise }, piece);
  const landing = m.lowerOpen
    ? null
    : quarterLandingAtMost({ ...m, landingCeiling: ceilingOverLanding(m) }, piece);
  return landing !== null && landing.atMost < section.atMost
    ? landing
    : { ...section, bound: CONDITIONS.onFlight(section.bound) };
}

/** The scene and its ends. */
export function quarterLandingTask(m: QuarterLandingMeasures, piece: PieceSize, hold: Hold): SearchTask {
  const { widthIn: a, widthOut: b, headroom: H, rise } = m;
  const C = ceilingOverLanding(m);
  const slope = rise / m.going;
  const diagonal = Math.sqrt(piece.length ** 2 + piece.breadth ** 2 + piece.thickness ** 2);
  const F = quarterReach(piece);
  const far = slope * F + Math.max(H, C) + rise + 1000;
  const open = m.overRail > 0;
  const obstacles = quarterBlocks({ ...m, ceiling: C }, piece);
  const away = F / 2;
  const ends = (padding: number): { start: KeyAttitude; goal: KeyAttitude } => ({
    start: onFlight(piece, hold, padding, [-1, 0], -slope, [0, a / 2, 0], H, away),
    goal: onFlight(piece, hold, padding, [0, 1], slope, [b / 2, a, rise], H, away),
  });
  const { start, goal } = ends(0);
  return {
    obstacles,
    least: [-F + diagonal / 2, 0, -far],
    most: [b, a + F - diagonal / 2, far],
    ends,
    mostPadding: paddingOnFlight(piece, hold, Math.min(a, b), H, slope),
    middles: {
      turns: [...halfTurned(start.turn, goal.turn), ...UPRIGHT],
      least: [-0.25 * b, 0.3 * a, Math.min(C, piece.breadth) / 4],
      most: [0.7 * b, 1.25 * a, 0.75 * C],
    },
    grounds: quarterGrounds(a, rise, slope),
    ...(open ? { walls: quarterLandingTask({ ...m, overRail: 0 }, piece, hold).obstacles } : {}),
  };
}

/** Half way between two attitudes, whichever of the four alike is meant. */
export function halfTurned(start: Quaternion, goal: Quaternion): Quaternion[] {
  return alikeTurns(goal)
    .map((g) => ({ g, near: Math.abs(likeness(g, start)) }))
    .sort((p, q) => q.near - p.near)
    .map(({ g }) => slerp(start, g, 0.5));
}

const R = Math.SQRT1_2;
/** On end square and aslant; on edge and flat aslant. */
export const UPRIGHT: readonly Quaternion[] = [
  quaternionFromAxes([0, 0, 1], [R, -R, 0], [R, R, 0]),
  quaternionFromAxes([R, R, 0], [0, 0, 1], [R, -R, 0]),
  quaternionFromAxes([0, 0, 1], [0, 1, 0], [-1, 0, 0]),
  quaternionFromAxes([0, 0, 1], [1, 0, 0], [0, 1, 0]),
];
