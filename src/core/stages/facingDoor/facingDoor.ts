import { degrees } from '../../measures/angle';
import { greatestPadding } from '../../geometry/rootFinding';
import type { PieceSize, Pose } from '../../measures/piece';
import { attitudeInPlan, leaningAttitude } from '../../motion/attitude';
import { ALL_HOLDS, sizesOfHold, poseOfHold, type Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import type { StageAnswer } from '../../motion/stageAnswer';
import { roomiest, type StagePassage } from '../../motion/stagePassage';
import { turnedFace } from '../../motion/turnedFace';
import { clearSquareToPitch } from '../flight/flight';
import { flightEndsAtMost } from '../flight/flightEnds';
import { openingAtMost } from '../opening/openingAtMost';
import {
  facingDoorFit,
  type FacingDoorFit,
  type FacingDoorLimit,
  type FacingDoorMeasures,
} from './facingDoorFit';
import { shownGiven } from '../../measures/shown';
import { closestAt, closestAtFigure, closestHeld, type Closest } from '../../motion/closest';

/** One way through, with what draws it. */
export interface FacingDoorWay {
  readonly passage: StagePassage;
  readonly fit: FacingDoorFit;
  /** Its sides in the section, padded: along the way and upright [mm]. */
  readonly sidesAt: (padding: number) => { readonly u: number; readonly v: number };
  /** Its attitude with its front raised by an angle [rad]. */
  readonly attitude: (angle: number) => KeyAttitude['turn'];
}

/**
 * Clearance of a piece through a door in the wall that faces a stair's end, between level ground beyond the door and
 * lying along the flight: in each way of being held, kept upright or laid along the pitch (`facingDoorFit`), and
 * leaning over to one side as far as door and flight are wide.
 *
 * Model: door and flight stand so that the narrower is within the wider; the flight longer than the piece; beyond the
 * door level ground, the ceiling there as high as over the floor between.
 *
 * @example facingDoorAnswer({ doorWidth: 770, doorHeight: 1981, wallThickness: 110, space: 950, flightWidth: 800,
 *   headroom: 2000, rise: 200, going: 230, ceiling: 2400, end: 'foot' }, { length: 1830, breadth: 930, thickness: 25 })
 *   .clearance // 276.98 mm a side
 */
export function facingDoorAnswer(measures: FacingDoorMeasures, piece: PieceSize): StageAnswer {
  return roomiest(facingDoorWays(measures, piece)).passage.answer;
}

/** The ways through, by how the piece is held before and after. */
export function facingDoorPassages(measures: FacingDoorMeasures, piece: PieceSize): StagePassage[] {
  return facingDoorWays(measures, piece).map((way) => way.passage);
}

/** As `facingDoorPassages`, with what draws each. */
export function facingDoorWays(measures: FacingDoorMeasures, piece: PieceSize): FacingDoorWay[] {
  const { atMost, bound } = facingDoorAtMost(measures, piece);
  const width = Math.min(measures.doorWidth, measures.flightWidth);
  const between =
    measures.doorWidth <= measures.flightWidth
      ? closestAt('between the jambs of the door', 'jambs')
      : closestAt('between the sides of the flight', 'sides');
  const ways: FacingDoorWay[] = [];
  const add = (
    hold: Hold,
    clearance: number,
    pose: Pose,
    critical: Closest,
    way: Omit<FacingDoorWay, 'passage'>,
  ): void => {
    const answer = { clearance, atMost, bound, pose, critical };
    ways.push({
      ...way,
      passage: { from: hold, to: hold, answer, ...(pose === 'leaning' ? { needsTurningRoom: true } : {}) },
    });
  };
  let most = -Infinity;
  for (const hold of ALL_HOLDS) {
    const { along, across, upright } = sizesOfHold(piece, hold);
    // One that cannot pass, and that a better one stands beside, is left out.
    const cap = Math.min(width - across, Math.min(measures.doorHeight, measures.ceiling) - upright) / 2;
    if (cap < Math.min(0, most)) continue;
    const fit = facingDoorFit(measures, along, upright);
    const byWidth = (width - across) / 2;
    const clearance = Math.max(Math.min(byWidth, fit.clearance), -piece.length / 2);
    most = Math.max(most, clearance);
    const pose = hold[1] === 'L' && !fit.keptLevel ? 'tilted' : poseOfHold(hold);
    add(hold, clearance, pose, byWidth < fit.clearance ? between : closestOf(measures, fit.limit), {
      fit,
      sidesAt: (c) => ({ u: Math.max(0, along + 2 * c), v: Math.max(0, upright + 2 * c) }),
      attitude: (angle) => attitudeInPlan({ hold, turned: 'tilted', tilt: angle }, 0),
    });
  }
  const best = roomiest(ways).passage.answer.clearance;
  const leaning = leaningWay(measures, piece, width, best);
  if (leaning) {
    const turned = shownGiven(degrees(leaning.lean), 0);
    for (const hold of ['LB', 'LT'] as const) {
      add(
        hold,
        leaning.clearance,
        'leaning',
        closestHeld(`leaning ${turned} degrees`, closestOf(measures, leaning.way.fit.limit)),
        leaning.way,
      );
    }
  }
  return ways;
}

/** Lengthwise, leaning over as far as the narrower of door and flight allows, where that leaves more than `floor`. */
function leaningWay(
  measures: FacingDoorMeasures,
  piece: PieceSize,
  width: number,
  floor: number,
):
  | { readonly clearance: number; readonly lean: number; readonly way: Omit<FacingDoorWay, 'passage'> }
  | undefined {
  const { length, breadth, thickness } = piece;
  // Where it is no wider than that when flat, flat is least high.
  const low = Math.max(floor, (width - breadth) / 2) + 1e-6;
  const high = (width - thickness) / 2;
  if (low > high) return undefined;
  const at = (c: number): { readonly fit: FacingDoorFit; readonly lean: number } | undefined => {
    const face = turnedFace(Math.max(0, breadth + 2 * c), Math.max(0, thickness + 2 * c), width);
    if (!face) return undefined;
    return { fit: facingDoorFit(measures, Math.max(0, length + 2 * c), face.plan), lean: face.tilt };
  };
  const clearance = greatestPadding(low, high, (c) => at(c)?.fit.clearance ?? -1, 1e-3);
  const best = clearance === undefined ? undefined : at(clearance);
  if (clearance === undefined || !best) return undefined;
  const { fit, lean } = best;
  const [sl, cl] = [Math.sin(lean), Math.cos(lean)];
  return {
    clearance,
    lean,
    way: {
      fit,
      sidesAt: (c) => ({
        u: Math.max(0, length + 2 * c),
        v: Math.max(0, breadth + 2 * c) * cl + Math.max(0, thickness + 2 * c) * sl,
      }),
      attitude: (angle) => leaningAttitude(lean, angle),
    },
  };
}

/** Proved: the door, the flight and the floor between are openings that it has to pass. */
export function facingDoorAtMost(m: FacingDoorMeasures, piece: PieceSize): ProvedBound {
  const bounds = [
    openingAtMost({ width: m.doorWidth, height: m.doorHeight }, piece, 'the door'),
    openingAtMost(
      { width: m.flightWidth, height: clearSquareToPitch({ ...m, width: m.flightWidth }) },
      piece,
      'the clear way up the stair',
    ),
  ];
  const trimmer = (m.ceiling - m.headroom) / (m.rise / m.going);
  if (m.end === 'head' || trimmer >= m.going - m.space) {
    const ends = m.end === 'head' ? { headCeiling: m.ceiling } : { footCeiling: m.ceiling };
    const proved = flightEndsAtMost({ ...m, width: m.flightWidth }, ends, piece);
    if (proved) bounds.push(proved);
  }
  return bounds.reduce((least, next) => (next.atMost < least.atMost ? next : least));
}

/** Where it is closest, in words. */
function closestOf(m: FacingDoorMeasures, limit: FacingDoorLimit): Closest {
  switch (limit) {
    case 'door head':
      return closestAtFigure(`under the head of the door, ${shownGiven(m.doorHeight)} mm high`, 'head');
    case 'door head as it tilts':
      return closestAt(
        m.end === 'foot'
          ? 'under the head of the door, as its front goes up the stair'
          : 'under the head of the door, as it comes level at the head of the stair',
        'head',
      );
    case 'headroom':
      return closestAtFigure(`under the headroom of ${shownGiven(m.headroom)} mm`, 'slope');
    case 'ceiling edge':
      return closestAt('at the foot, under the edge of the stairwell', 'stairwell edge');
    case 'ceiling':
      return closestAtFigure(
        `under the ceiling of ${shownGiven(m.ceiling)} mm`,
        m.end === 'foot' ? 'foot ceiling' : 'head ceiling',
      );
    case 'top nosing':
      return closestAt('at the head, over the top nosing', 'top nosing');
  }
}
