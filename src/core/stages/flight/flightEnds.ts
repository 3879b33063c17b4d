import { bendWithWall, type Bend } from '../../geometry/bendWithWall';
import { greatestPadding } from '../../geometry/rootFinding';
import type { PieceSize } from '../../measures/piece';
import { clearSquareToPitch, type FlightMeasures } from './flight';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import { openingAtMost } from '../opening/openingAtMost';
import { closestAt, closestOnStair, type Closest } from '../../motion/closest';

/** What was measured at the two ends of a flight; what is absent is not looked at. */
export interface FlightEndMeasures {
  /** Number of risers: tells whether the piece spans the whole flight. */
  readonly risers?: number | undefined;
  /** Height of the ceiling over the foot [mm]; the trimmer is where the flight's ceiling line meets it. */
  readonly footCeiling?: number | undefined;
  /** Level floor from the first riser back to the facing wall [mm]. */
  readonly footSpace?: number | undefined;
  /** Height of the ceiling over the upper floor [mm]. */
  readonly headCeiling?: number | undefined;
  /** Level floor from the top nosing to the facing wall [mm]. */
  readonly headSpace?: number | undefined;
  /**
   * The end is on a landing that is solved by itself: there the piece need not stand with its centre over the
   * level floor, nor is it put down; how far it overhangs and is raised is the landing's.
   */
  readonly footOnLanding?: boolean | undefined;
  readonly headOnLanding?: boolean | undefined;
}

/** How a rectangle passes the bends at the two ends of a flight. */
export interface FlightEndsFit {
  /** Padding [mm a side] with which a motion on to and off the flight is known; Infinity: no end measured. */
  readonly clearance: number;
  readonly limitedBy: 'foot' | 'head' | 'none';
  /** Tells where it is closest; work, and only done when called. */
  readonly critical: () => Closest;
  /** It stays level all the way, its front or back edge on the nosings. */
  readonly keptLevel: boolean;
  /** How far [mm] it is held above the lower floor to stand level before the flight, over the first treads. */
  readonly raise: number;
}

/** A flight of no more is one of a few steps, over which a piece may be raised level. */
export const FEW_RISERS = 4;

const ON_FLIGHT = closestOnStair((stair) => `on ${stair}`, closestAt('', 'sides', 'slope'));
const BENT_AT = {
  foot: {
    edge: closestAt('at the foot, under the edge of the stairwell', 'stairwell edge'),
    wall: closestOnStair(
      (stair) => `at the foot, between ${stair} and the facing wall`,
      closestAt('', 'foot wall'),
    ),
  },
  head: {
    edge: closestAt('at the head, over the top nosing', 'top nosing'),
    wall: closestAt('at the head, between the top nosing and the facing wall', 'head wall'),
  },
} as const;
const LEVEL_AT = {
  foot: {
    ceiling: closestAt('at the foot, under the ceiling, kept level', 'foot ceiling'),
    wall: closestOnStair(
      (stair) => `at the foot, between ${stair} and the facing wall, kept level`,
      closestAt('', 'foot wall'),
    ),
    headroom: closestAt('under the headroom, kept level', 'slope'),
  },
  head: {
    ceiling: closestAt('at the head, under the ceiling, kept level', 'head ceiling'),
    wall: closestAt('at the head, between the top nosing and the facing wall, kept level', 'head wall'),
    headroom: closestAt('under the headroom, kept level', 'slope'),
  },
} as const;
/** A wall that takes no more than this [mm a side] decides nothing. */
const WALL_TELLS = 0.05;

/** A ceiling that is not measured limits nothing [mm]: higher than any stair here. */
const NO_CEILING = 1e5;

/**
 * Clearance of a piece on to a flight and off it, in elevation: from level at the foot to lying along the
 * pitch, and level again at the head; or kept level throughout.
 *
 * Model: floor and line of nosings below, the flight's ceiling line and level ceilings above. The line of
 * nosings meets the foot's floor one going before the first riser, so the foot's space counts from there. At
 * the foot the inner corner is the trimmer; at the head, turned half round, the top nosing, the ceilings
 * standing for the floor. Level, the piece has its centre over the level floor; where the space is shorter
 * than the piece it is held up so that it overhangs the treads (`raise`).
 * A piece longer than the flight goes from the bend at the foot into that at the head before it lies along
 * the pitch (`linkAngle`).
 * @param along its side along the flight [mm]
 * @param upright its upright side [mm]
 * @source bendWithWall; trigonometry
 */
export function flightEndsFit(
  measures: FlightMeasures,
  ends: FlightEndMeasures,
  along: number,
  upright: number,
): FlightEndsFit {
  const { footCeiling, footSpace, headCeiling, headSpace, risers, footOnLanding, headOnLanding } = ends;
  const { headroom, rise, going } = measures;
  const tangent = rise / going;
  const hasFoot = footCeiling !== undefined || footSpace !== undefined;
  const hasHead = headCeiling !== undefined || headSpace !== undefined;
  const space = footSpace === undefined ? Infinity : footSpace - going;
  const floor = -Math.max(along, upright) / 2;
  const answer = (foot: number, head: number, keptLevel: boolean): FlightEndsFit => {
    const limitedBy = !hasFoot && !hasHead ? 'none' : foot <= head ? 'foot' : 'head';
    return {
      clearance: Math.max(floor, Math.min(foot, head)),
      limitedBy,
      critical: () =>
        limitedBy === 'none'
          ? ON_FLIGHT
          : keptLevel
            ? LEVEL_AT[limitedBy][levelLimit(limitedBy)]
            : BENT_AT[limitedBy][bendLimit(limitedBy)],
      keptLevel,
      raise: hasFoot && !footOnLanding ? Math.max(0, Math.min(along - space, along / 2) * tangent) : 0,
    };
  };

  const levelLimit = (end: 'foot' | 'head'): 'ceiling' | 'wall' | 'headroom' => {
    const [ceiling, floorLength] = end === 'foot' ? [footCeiling, space] : [headCeiling, headSpace];
    const under = ((ceiling ?? NO_CEILING) - upright) / 2;
    const beside = (floorLength ?? Infinity) - along / 2;
    if (plumb <= Math.min(under, beside)) return 'headroom';
    return under <= beside ? 'ceiling' : 'wall';
  };
  /** A wall decides where without it more would be left. */
  const bendLimit = (end: 'foot' | 'head'): 'edge' | 'wall' => {
    const bend = end === 'foot' ? footBend : headBend;
    if (bend.space === Infinity) return 'edge';
    if (end === 'foot' && footCeiling === undefined) return 'wall';
    const open = { ...bend, space: Infinity };
    const before = (end === 'foot' ? footOnLanding : headOnLanding) ? Infinity : end === 'foot' ? 0 : nosing;
    const without = bendWithWall(along, upright, open, before, pitch);
    return without > bendWithWall(along, upright, bend, before, pitch) + WALL_TELLS ? 'wall' : 'edge';
  };

  // Kept level: its upright size under each ceiling, its centre over each floor, and under the headroom.
  const plumb = (headroom - upright - along * tangent) / (2 * (1 + tangent));
  const levelFoot = hasFoot
    ? Math.min(((footCeiling ?? NO_CEILING) - upright) / 2, space - along / 2, plumb)
    : Infinity;
  const levelHead = hasHead
    ? Math.min(((headCeiling ?? NO_CEILING) - upright) / 2, (headSpace ?? Infinity) - along / 2, plumb)
    : Infinity;
  const level = answer(levelFoot, levelHead, true);

  const pitch = Math.atan2(rise, going);
  const slope = clearSquareToPitch(measures);
  const footBend: Bend = { level: footCeiling ?? NO_CEILING, slope, pitch, space };
  const nosing = ((headCeiling ?? NO_CEILING) - headroom) / tangent;
  const headBend: Bend = {
    level: headCeiling ?? NO_CEILING,
    slope,
    pitch,
    space: headSpace === undefined ? Infinity : headSpace - nosing,
  };
  const footUpTo = (angle: number): number =>
    hasFoot ? bendWithWall(along, upright, footBend, footOnLanding ? Infinity : 0, angle) : Infinity;
  const headUpTo = (angle: number): number =>
    hasHead ? bendWithWall(along, upright, headBend, headOnLanding ? Infinity : nosing, angle) : Infinity;
  const tilted = answer(footUpTo(pitch), headUpTo(pitch), false);
  if (level.clearance >= tilted.clearance) return level;
  if (!hasFoot || !hasHead || risers === undefined) return tilted;
  const line = risers * Math.hypot(rise, going);
  if (along + 2 * tilted.clearance <= line) return tilted;
  const least = Math.max(floor, (line - along) / 2);
  const spare = (c: number): number => {
    const turned = linkAngle(measures, footCeiling, risers, along + 2 * c, Math.max(0, upright + 2 * c));
    if (turned === undefined) return -1;
    return Math.min(footUpTo(turned), headUpTo(turned)) - c;
  };
  // With less padding it lies wholly on the flight between the two bends.
  const shown =
    least <= tilted.clearance ? (greatestPadding(least, tilted.clearance, spare) ?? least) : least;
  const clearance = Math.min(shown, tilted.clearance);
  return clearance > level.clearance ? { ...tilted, clearance } : level;
}

/**
 * A piece longer than the flight, on the way up with its front lower edge on the top nosing: the least angle
 * [rad] at which its back is under the flight's ceiling line and its upper side under the trimmer. There the
 * bend at the foot gives over to that at the head. Undefined where its back would be below the floor.
 *
 * With u along and v upright: under the ceiling line when v (cos f + t sin f) + u (t cos f - sin f) <=
 * headroom, t = rise/going; under a trimmer X before and Z above the top nosing when X sin f + Z cos f >= v;
 * above the floor while u sin f is at most the whole rise.
 * @source trigonometry of the elevation (ours); checked against the planner on seeded flights
 */
function linkAngle(
  { headroom, rise, going }: FlightMeasures,
  footCeiling: number | undefined,
  risers: number,
  u: number,
  v: number,
): number | undefined {
  const tangent = rise / going;
  const most = Math.asin(Math.min(1, (risers * rise) / u));
  const reach = Math.hypot(v + u * tangent, v * tangent - u);
  const underLine =
    reach <= headroom ? 0 : Math.atan2(v * tangent - u, v + u * tangent) + Math.acos(headroom / reach);
  let underTrimmer = 0;
  if (footCeiling !== undefined) {
    const before = risers * going - (footCeiling - headroom) / tangent;
    const above = footCeiling - risers * rise;
    const far = Math.hypot(before, above);
    if (far < v) return undefined;
    underTrimmer = Math.atan2(before, above) - Math.acos(v / far);
  }
  const angle = Math.max(0, underLine, underTrimmer);
  return angle <= Math.min(most, Math.atan(tangent)) + 1e-12 ? angle : undefined;
}

/**
 * Greatest padding with which a box can come on to a flight and off it by any motion: its centre crosses the
 * upright plane through the trimmer, an opening as wide as the flight and as high as the foot's ceiling, and
 * that through the top nosing, as high as the ceiling before it or the head's beyond it, whichever is lower.
 * @source openingAtMost; undefined when neither end is measured
 */
export function flightEndsAtMost(
  measures: FlightMeasures,
  { risers, footCeiling, headCeiling }: FlightEndMeasures,
  piece: PieceSize,
): ProvedBound | undefined {
  const { width, headroom, rise } = measures;
  const at = (height: number, where: string): ProvedBound => {
    return openingAtMost({ width, height }, piece, where);
  };
  // The foot's ceiling may reach beyond the top nosing, higher than the flight's own; not measured, as high as may be.
  // Risers that are not counted are those of a flight longer than the piece.
  const overTopNosing =
    risers === undefined ? headroom : Math.max(headroom, (footCeiling ?? Infinity) - risers * rise);
  const foot = footCeiling === undefined ? undefined : at(footCeiling, 'the foot of the flight');
  const head =
    headCeiling === undefined
      ? undefined
      : at(Math.min(overTopNosing, headCeiling), 'the head of the flight');
  if (!foot || !head) return foot ?? head;
  return foot.atMost <= head.atMost ? foot : head;
}
