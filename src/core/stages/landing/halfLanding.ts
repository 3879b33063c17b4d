import { radians } from '../../measures/angle';
import { CONDITIONS } from '../../geometry/proofs/conditions';
import { acrossHalfLanding, ceilingOverLanding } from '../../geometry/landingModel';
import { halfLandingAtMost } from '../../geometry/proofs/halfLandingAtMost';
import type { PieceSize } from '../../measures/piece';
import { multiply, quaternionAbout, quaternionFromAxes, type Quaternion } from '../../space/quaternion';
import type { Hold } from '../../motion/hold';
import { withoutMotion } from '../../motion/answerOfMotion';
import { onFlight, paddingOnFlight } from '../flight/onFlight';
import type { SearchTask } from './landingSearch';
import { widestMotion, type SearchedStage } from './landingPassages';
import { halfLandingPlan } from './landingPlan';
import { landingStage } from './landingStage';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import type { KeyAttitude } from '../../space/motion';
import { openingAtMost } from '../opening/openingAtMost';
import type { AnswerWithMotion, StageAnswer } from '../../motion/stageAnswer';
import { block, flightPlates, type NamedBox } from './namedBoxes';

/** A half landing, with the flights that run to it. */
export interface HalfLandingMeasures {
  /** Clear width of each flight [mm]. */
  readonly flightWidth: number;
  /** Width of the spine or well between the flights [mm], 0 or more. */
  readonly well: number;
  /** Landing depth [mm], to the face of the first riser. */
  readonly landingDepth: number;
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
}

/**
 * Clearance of a piece round a half landing: a motion that is held, and a bound that is proved.
 *
 * Model, for a motion (every measure at its least): x runs from the landing's edge over the landing, y across
 * it, z up from it. Lower flight y 0..W, upper flight W+well..2W+well, both at x < 0. The lower flight's plane of
 * nosings meets the landing's edge at z = 0, the upper's starts one rise above it, its first riser upright
 * at x = 0. Ceilings run parallel, `headroom` plumb above. Walls at y = 0, y = 2W+well and x = depth; the
 * spine is a wall from floor to ceiling, or with `overRail` solid up to that height above the upper flight's
 * plane of nosings, with the lower flight's ceiling running on over the well.
 * Motions looked at: the families in closed form (`bestFamilyFit`: level, tilted or upright as it goes round, or swung up), and
 * beyond them a search, held on edge or flat along the flights, with the middle of the motion on end, on edge,
 * flat or tilted on the landing.
 *
 * For a proof: halfLandingAtMost, and the section of the flight (with real treads one rise more headroom); a route
 * tries halfLandingCutBlocks as well, which is far tighter and takes some 10 ms.
 *
 * @example halfLandingAnswer({ flightWidth: 900, well: 100, landingDepth: 900, headroom: 2100, rise: 180,
 *   going: 250, overRail: 0 }, { length: 1500, breadth: 700, thickness: 25 }).clearance // 165.4 mm a side
 */
export function halfLandingAnswer(measures: HalfLandingMeasures, piece: PieceSize): StageAnswer {
  return withoutMotion(halfLandingWithMotion(measures, piece));
}

/** The same with the motion and the obstacles, for a checker. */
export function halfLandingWithMotion(measures: HalfLandingMeasures, piece: PieceSize): AnswerWithMotion {
  return widestMotion(halfLandingStage(measures), piece);
}

/** The stage as it is searched. */
export const halfLandingStage = (measures: HalfLandingMeasures): SearchedStage =>
  landingStage(measures, halfLandingPlan(measures), halfLandingTask, provedBound);

function provedBound(m: HalfLandingMeasures, piece: PieceSize): ProvedBound {
  const height = ceilingOverLanding(m);
  const section = openingAtMost({ width: m.flightWidth, height: m.headroom + m.rise }, piece);
  const landing = halfLandingAtMost({ ...m, height }, piece);
  return landing !== null && landing.atMost < section.atMost
    ? landing
    : { ...section, bound: CONDITIONS.onFlight(section.bound) };
}

/** The scene and its ends. */
export function halfLandingTask(m: HalfLandingMeasures, piece: PieceSize, hold: Hold): SearchTask {
  const { flightWidth: W, well, landingDepth: D, headroom: H, rise } = m;
  const C = ceilingOverLanding(m);
  const slope = rise / m.going;
  const across = acrossHalfLanding(m);
  const diagonal = Math.sqrt(piece.length ** 2 + piece.breadth ** 2 + piece.thickness ** 2);
  const F = 2 * diagonal + 600;
  const far = slope * F + Math.max(H, C) + rise + 1000;
  const obstacles: NamedBox[] = [
    block('the landing', [0, -200, -200], [D + 200, across + 200, 0]),
    block(
      'the ceiling over the landing',
      [0, -200, C],
      [D + 200, across + 200, Math.max(C, H + rise) + 1000],
    ),
    block('the outer wall of the lower flight', [-F, -200, -far], [D + 200, 0, far]),
    block('the outer wall of the upper flight', [-F, across, -far], [D + 200, across + 200, far]),
    block('the wall facing the flights', [D, -200, -far], [D + 200, across + 200, far]),
  ];
  // Looking out along -x the right-hand end of an edge is at its larger y; left of it lies the smaller.
  const openWell = m.overRail > 0;
  obstacles.push(
    ...flightPlates(
      'lower flight',
      [0, openWell ? W + well : W, 0],
      [-1, 0],
      -slope,
      openWell ? W + well : W,
      H,
      F,
    ),
    ...flightPlates('upper flight', [0, across, rise], [-1, 0], slope, W, H, F),
  );
  if (openWell) obstacles.push(...railBlocks(W, well, m.overRail + rise, slope, F, far));
  else obstacles.push(block('the spine between the flights', [-F, W, -far], [0, W + well, far]));
  const ends = (padding: number): { start: KeyAttitude; goal: KeyAttitude } => ({
    start: onFlight(piece, hold, padding, [-1, 0], -slope, [0, W / 2, 0], H, F / 2),
    goal: onFlight(piece, hold, padding, [-1, 0], slope, [0, across - W / 2, rise], H, F / 2),
  });
  const reach = diagonal / 2;
  return {
    obstacles,
    least: [-F + reach, 0, -far],
    most: [D, across, far],
    ends,
    mostPadding: paddingOnFlight(piece, hold, W, H, slope),
    middles: {
      turns: MIDDLES,
      least: [Math.min(0, D / 2), Math.min(W / 2, across / 4), Math.min(C, piece.breadth) / 4],
      most: [D, across - W / 2, C * 0.75],
    },
    grounds: [
      { height: 0, alongX: 0, alongY: 0, within: [{ x: 1, y: 0, from: 0 }] },
      {
        height: 0,
        alongX: slope,
        alongY: 0,
        within: [
          { x: -1, y: 0, from: 0 },
          { x: 0, y: -1, from: -(W + well / 2) },
        ],
      },
      {
        height: rise,
        alongX: -slope,
        alongY: 0,
        within: [
          { x: -1, y: 0, from: 0 },
          { x: 0, y: 1, from: W + well / 2 },
        ],
      },
    ],
    ...(openWell ? { walls: halfLandingTask({ ...m, overRail: 0 }, piece, hold).obstacles } : {}),
  };
}

/** Solid up to the handrail between the flights. */
function railBlocks(W: number, well: number, top: number, slope: number, F: number, far: number): NamedBox[] {
  // Steps under the sloping rail would stand out above it; so one tilted block, and a fill at the landing.
  const stretch = Math.sqrt(1 + slope * slope);
  const out: [number, number, number] = [-1 / stretch, 0, slope / stretch];
  const up: [number, number, number] = [slope / stretch, 0, 1 / stretch];
  const deep = far;
  const run = F * stretch;
  return [
    {
      name: 'the handrail',
      box: {
        centre: [
          (out[0] * run) / 2 - (up[0] * deep) / 2,
          W + well / 2,
          top + (out[2] * run) / 2 - (up[2] * deep) / 2,
        ],
        size: [run, well, deep],
        turn: quaternionFromAxes(out, [0, -1, 0], up),
      },
    },
    block('the handrail', [-up[0] * deep, W, -far], [0, W + well, top]),
  ];
}

/** Across the landing: on end, on edge, flat; and in the upright plane across it tilted between. */
const ACROSS: Quaternion = quaternionFromAxes([0, 1, 0], [0, 0, 1], [1, 0, 0]);
const tilted = (angle: number): Quaternion => multiply(quaternionAbout([1, 0, 0], angle), ACROSS);
const MIDDLES: readonly Quaternion[] = [
  tilted(radians(90)),
  ACROSS,
  tilted(radians(70)),
  tilted(radians(110)),
  quaternionFromAxes([0, 0, 1], [1, 0, 0], [0, 1, 0]),
  quaternionFromAxes([0, 1, 0], [-1, 0, 0], [0, 0, 1]),
  tilted(radians(35)),
  tilted(radians(145)),
];
