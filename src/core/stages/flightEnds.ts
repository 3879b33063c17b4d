import { bendWithWall } from '../geometry/bendWithWall';
import { passageBracket, type PlanarPassage } from '../geometry/planar/passageBracket';
import { boxPolygon, type ConvexPolygon } from '../geometry/planar/planarWorld';
import type { PieceSize } from '../measures/piece';
import { clearSquareToPitch, type FlightMeasures } from './flight';
import { openingAtMost, type ProvedBound } from './openingAtMost';

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
}

export interface FlightEndsFit {
  /** Padding [mm a side] with which a motion on to and off the flight is known; Infinity: no end measured. */
  readonly clearance: number;
  readonly limitedBy: 'foot' | 'head' | 'none';
  /** Where it is closest, in words. */
  readonly critical: string;
  /** It stays level all the way, its front or back edge on the nosings. */
  readonly keptLevel: boolean;
  /** How far [mm] it is held above the lower floor to stand level before the flight, over the first treads. */
  readonly lift: number;
}

// A ceiling that is not measured limits nothing: higher than any stair here.
const NO_CEILING = 1e5;

/**
 * Clearance of a piece on to a flight and off it, in elevation: from level at the foot to lying along the
 * pitch, and level again at the head; or kept level throughout.
 *
 * Model: floor and line of nosings below, the flight's ceiling line and level ceilings above. The line of
 * nosings meets the foot's floor one going before the first riser, so the foot's space counts from there. At
 * the foot the inner corner is the trimmer; at the head, turned half round, the top nosing, the ceilings
 * standing for the floor. Level, the piece has its centre over the level floor; where the space is shorter
 * than the piece it is held up so that it overhangs the treads (`lift`).
 * Closed form for a flight at least as long as the piece, else the planner's bracket (its lower end).
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
  const { footCeiling, footSpace, headCeiling, headSpace, risers } = ends;
  const { headroom, rise, going } = measures;
  const tangent = rise / going;
  const hasFoot = footCeiling !== undefined || footSpace !== undefined;
  const hasHead = headCeiling !== undefined || headSpace !== undefined;
  const space = footSpace === undefined ? Infinity : footSpace - going;
  const words = {
    foot:
      footCeiling === undefined
        ? 'at the foot, between the flight and the facing wall'
        : 'at the foot, under the edge of the stairwell',
    head: 'at the head, over the top nosing',
    none: 'on the flight',
  };
  const floor = -Math.max(along, upright) / 2;
  const answer = (foot: number, head: number, keptLevel: boolean): FlightEndsFit => {
    const limitedBy = !hasFoot && !hasHead ? 'none' : foot <= head ? 'foot' : 'head';
    return {
      clearance: Math.max(floor, Math.min(foot, head)),
      limitedBy,
      critical: words[limitedBy],
      keptLevel,
      lift: hasFoot ? Math.max(0, Math.min(along - space, along / 2) * tangent) : 0,
    };
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
  const foot = hasFoot
    ? bendWithWall(along, upright, { level: footCeiling ?? NO_CEILING, slope, pitch, space })
    : Infinity;
  const nosing = ((headCeiling ?? NO_CEILING) - headroom) / tangent;
  const head = hasHead
    ? bendWithWall(
        along,
        upright,
        {
          level: headCeiling ?? NO_CEILING,
          slope,
          pitch,
          space: headSpace === undefined ? Infinity : headSpace - nosing,
        },
        nosing,
      )
    : Infinity;
  const tilted = answer(foot, head, false);
  let best = level.clearance >= tilted.clearance ? level : tilted;
  if (hasFoot && hasHead && risers !== undefined && best === tilted) {
    const line = risers * Math.hypot(rise, going);
    if (along + 2 * best.clearance > line) {
      // With less padding it lies wholly on the flight between the two bends.
      const apart = Math.min(best.clearance, (line - along) / 2);
      const shown = Math.max(
        apart,
        floor,
        shortFlight(measures, ends, risers, along, upright, best.clearance),
      );
      best = shown > level.clearance ? { ...tilted, clearance: shown } : level;
    }
  }
  return best;
}

const REMEMBERED = 200;
const memo = new Map<string, number>();

/** A flight shorter than the piece: foot and head at once, by the planner. Same answer with or without memory. */
function shortFlight(
  measures: FlightMeasures,
  ends: FlightEndMeasures,
  risers: number,
  along: number,
  upright: number,
  most: number,
): number {
  const key = JSON.stringify([measures, ends, along, upright]);
  const known = memo.get(key);
  if (known !== undefined) return known;
  const { lower } = passageBracket(
    (u, v) => flightElevation(measures, ends, risers, u, v),
    along,
    upright,
    most,
    { workLimit: 3000 },
  );
  if (memo.size >= REMEMBERED) memo.delete(memo.keys().next().value!);
  memo.set(key, lower);
  return lower;
}

/**
 * A whole flight in elevation for the planner: x along the flight, y up, the origin where the line of nosings
 * meets the lower floor. Undefined when the piece cannot stand level at an end.
 */
export function flightElevation(
  { headroom, rise, going }: FlightMeasures,
  ends: FlightEndMeasures,
  risers: number,
  u: number,
  v: number,
): PlanarPassage | undefined {
  const run = risers * going;
  const up = risers * rise;
  const tangent = rise / going;
  const reach = u + v + 10;
  const footCeiling = ends.footCeiling ?? NO_CEILING;
  const headCeiling = ends.headCeiling ?? NO_CEILING;
  const before = Math.min(ends.footSpace === undefined ? Infinity : ends.footSpace - going, reach);
  const after = Math.min(ends.headSpace ?? Infinity, reach);
  if (before <= u / 2 || after <= u / 2) return undefined;
  const far = 4 * (reach + run + up + headroom);
  const trimmer = (footCeiling - headroom) / tangent;
  const top = Math.min(footCeiling, 3 * far);
  const obstacles: ConvexPolygon[] = [
    boxPolygon(-far, -far, far, 0),
    // Below the line of nosings and the upper floor.
    [
      [0, 0],
      [-far * 0.01, -far],
      [far, -far],
      [far, up],
      [run, up],
    ],
    // Above the flight's ceiling line and the foot's ceiling.
    [
      [Math.min(trimmer, far), top],
      [Math.min(trimmer, far) + far, top + far * tangent],
      [-far, top + far * (tangent + 2)],
      [-far, top],
    ],
  ];
  if (ends.headCeiling !== undefined) {
    obstacles.push(boxPolygon(-far, up + headCeiling, 2 * far, up + headCeiling + 3 * far));
  }
  if (before < reach) obstacles.push(boxPolygon(-far, -far, -before, 2 * far));
  if (after < reach) obstacles.push(boxPolygon(run + after, -far, far + run, 2 * far));
  // Where a wall is out of reach the centre need not go farther than clear of the flight.
  const clear = (u + v) / 2 + 10;
  const back = before < reach ? before : clear;
  const onward = after < reach ? after : clear;
  const centre = {
    xMin: -back,
    xMax: run + onward,
    yMin: 0,
    yMax: Math.min(up + headCeiling, up + headroom + (after + reach) * tangent + reach),
  };
  return {
    world: { obstacles, centre },
    start: { xMin: -back, xMax: 0, yMin: 0, yMax: Math.min(footCeiling, headroom + reach), angle: 0 },
    goal: { xMin: run, xMax: run + onward, yMin: up, yMax: centre.yMax, angle: 0 },
  };
}

/**
 * Greatest padding with which a box can come on to a flight and off it by any motion: its centre crosses the
 * upright plane through the trimmer, an opening as wide as the flight and as high as the foot's ceiling, and
 * that through the top nosing, as high as the headroom or the head's ceiling, whichever is lower.
 * @source openingAtMost; undefined when neither end is measured
 */
export function flightEndsAtMost(
  measures: FlightMeasures,
  { footCeiling, headCeiling }: FlightEndMeasures,
  piece: PieceSize,
): ProvedBound | undefined {
  const { width, headroom } = measures;
  const at = (height: number, where: string): ProvedBound => {
    const { atMost, bound } = openingAtMost({ width, height }, piece);
    return { atMost, bound: bound.replace('the opening', where) };
  };
  const foot = footCeiling === undefined ? undefined : at(footCeiling, 'the foot of the flight');
  const head =
    headCeiling === undefined ? undefined : at(Math.min(headroom, headCeiling), 'the head of the flight');
  if (!foot || !head) return foot ?? head;
  return foot.atMost <= head.atMost ? foot : head;
}
