import { degrees } from '../../measures/angle';
import { leastBetween } from '../../geometry/goldenSection';
import { rectangleThroughOpening } from '../../geometry/rectangleThroughOpening';
import type { PieceSize, Pose } from '../../measures/piece';
import { clearSquareToPitch, type FlightMeasures } from './flight';
import { ALL_HOLDS, sizesOfHold, poseOfHold, type Hold } from '../../motion/hold';
import {
  FEW_RISERS,
  flightEndsAtMost,
  flightEndsFit,
  type FlightEndMeasures,
  type FlightEndsFit,
} from './flightEnds';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import { openingAtMost } from '../opening/openingAtMost';
import type { StagePassage } from '../../motion/stagePassage';
import { shownGiven } from '../../measures/shown';
import { closestAt, closestAtFigure, closestOnStair, type Closest } from '../../motion/closest';

const BETWEEN_SIDES = closestOnStair((stair) => `between the sides of ${stair}`, closestAt('', 'sides'));

/**
 * Closest between the sides of a flight.
 * @param width that is clear between them [mm]
 */
export const betweenSides = (width: number): Closest =>
  closestOnStair(
    (stair) => `between the sides of ${stair}, ${shownGiven(width)} mm apart`,
    closestAtFigure('', 'sides'),
  );

/**
 * Closest under the ceiling along a flight.
 * @param headroom plumb [mm]
 */
export const underHeadroom = (headroom: number): Closest =>
  closestAtFigure(`under the headroom of ${shownGiven(headroom)} mm`, 'slope');

interface Leant {
  /** On the straight part alone [mm a side]. */
  readonly straight: number;
  /** Height [mm] it takes square to the pitch, and how much of that padding adds [mm per mm]. */
  readonly height: number;
  readonly perPadding: number;
}

interface StraightMotion extends Leant {
  readonly hold: Hold;
  readonly pose: Pose;
  readonly critical: Closest;
  readonly leaning?: { readonly angle: number; readonly at: (angle: number) => Leant };
}

/**
 * The ways up a flight, by how the piece is held level before and after it: laid along the pitch, its side along
 * the way tilted with the stair; leaning across the pitch, which needs room to lean at both ends; or kept
 * upright, when its lower edge rests on the line of nosings at one end only: upright + along tan(pitch) <=
 * headroom. Where the ends were measured, also on to the flight and off it (`flightEndsFit`); and over a few steps
 * raised level (`raisedLevel`). A way that cannot pass and that a better one stands beside is left out.
 *
 * Model: as `flightFit`; the plane square to the pitch through a nosing is an opening of width x headroom
 * cos(pitch) that the piece's centre has to cross, which gives the proved bound. A flight of which it is not known
 * that its own ceiling is met so from one of its nosings is bounded at its ends alone.
 * @source Carver's condition (Wetzel, Mathematics Magazine 73, 2000, 204-211); trigonometry of the pitch
 */
export function flightPassages(
  measures: FlightMeasures,
  piece: PieceSize,
  ends: FlightEndMeasures = {},
): StagePassage[] {
  const channel = clearSquareToPitch(measures);
  const { atMost, bound } = flightAtMost(measures, channel, piece, ends);
  const measured =
    ends.footCeiling !== undefined ||
    ends.footSpace !== undefined ||
    ends.headCeiling !== undefined ||
    ends.headSpace !== undefined;
  let best = -Infinity;
  const passages: StagePassage[] = [];
  const motions = straightMotions(measures, channel, piece);
  if (measured) motions.sort((one, other) => other.straight - one.straight);
  for (const motion of motions) {
    if (measured && motion.straight < Math.min(0, best)) continue;
    let clearance = motion.straight;
    let { critical } = motion;
    let raise = 0;
    if (measured) {
      const { along } = sizesOfHold(piece, motion.hold);
      const atEnds = (leant: Leant): { readonly fit: FlightEndsFit; readonly clearance: number } => {
        const fit = flightEndsFit(measures, ends, along, leant.height);
        // Leaning, padding adds more to the height than to a side.
        return { fit, clearance: fit.clearance > 0 ? fit.clearance / leant.perPadding : fit.clearance };
      };
      let { fit, clearance: byEnds } = atEnds(motion);
      if (motion.leaning && byEnds < clearance) {
        for (const other of leantOtherwise(motion.leaning, (leant) => atEnds(leant).clearance)) {
          const there = atEnds(other);
          if (Math.min(other.straight, there.clearance) <= Math.min(clearance, byEnds)) continue;
          ({ fit, clearance: byEnds } = there);
          clearance = other.straight;
        }
      }
      raise = fit.raise;
      if (byEnds < clearance) {
        clearance = byEnds;
        critical = fit.critical();
      }
    }
    if (clearance > best) best = clearance;
    const answer = { clearance, atMost, bound, pose: motion.pose, critical, ...(raise > 0 ? { raise } : {}) };
    const { hold } = motion;
    passages.push({ from: hold, to: hold, answer, ...(motion.leaning ? { needsTurningRoom: true } : {}) });
  }
  for (const hold of ALL_HOLDS) {
    const raised = raisedLevel(measures, piece, ends, hold);
    if (!raised || raised.clearance < Math.min(0, best)) continue;
    const { clearance, raise, critical } = raised;
    const answer = { clearance, atMost, bound, pose: poseOfHold(hold), critical, raise };
    passages.push({ from: hold, to: hold, answer });
  }
  return passages;
}

/**
 * Lifted straight up on the lower floor to the height of the upper one, carried level over the steps and set down, or
 * the other way about: its middle over the one floor, then over the other, and nothing of it lower than any tread.
 * The foot's ceiling is the lowest on the way but for the upper floor's own: it reaches to where the flight's
 * ceiling line comes up to it, and from there that line only rises.
 *
 * Both floors and both ceilings have to be measured, and the flight to have no more than four risers.
 * @returns undefined where it is not known to go
 * @source the elevation's heights and lengths (ours); replayed in the tests
 */
function raisedLevel(
  { width, rise }: FlightMeasures,
  piece: PieceSize,
  ends: FlightEndMeasures,
  hold: Hold,
): { readonly clearance: number; readonly raise: number; readonly critical: Closest } | undefined {
  const { risers, footCeiling, footSpace, headCeiling, headSpace, footOnLanding, headOnLanding } = ends;
  if (risers === undefined || risers > FEW_RISERS || footOnLanding || headOnLanding) return undefined;
  if (footCeiling === undefined || footSpace === undefined) return undefined;
  if (headCeiling === undefined || headSpace === undefined) return undefined;
  const raise = risers * rise;
  const { along, across, upright } = sizesOfHold(piece, hold);
  const limits = [
    { spare: (width - across) / 2, at: BETWEEN_SIDES },
    {
      spare: (footCeiling - raise - upright) / 2,
      at: closestAt('under the ceiling over the foot, lifted level', 'foot ceiling'),
    },
    {
      spare: (headCeiling - upright) / 2,
      at: closestAt('under the ceiling over the head, lifted level', 'head ceiling'),
    },
    {
      spare: footSpace - along / 2,
      at: closestAt('before the first riser, lifted level', 'foot wall', 'riser'),
    },
    {
      spare: headSpace - along / 2,
      at: closestAt('beyond the top nosing, lifted level', 'head wall', 'top nosing'),
    },
  ];
  const least = limits.reduce((one, other) => (other.spare < one.spare ? other : one));
  if (least.spare < -Math.max(across, upright) / 2) return undefined;
  return { clearance: least.spare, raise, critical: least.at };
}

function flightAtMost(
  measures: FlightMeasures,
  channel: number,
  piece: PieceSize,
  ends: FlightEndMeasures,
): ProvedBound {
  const height = channelCounts(measures, ends) ? channel : NO_HEIGHT;
  const straight = openingAtMost({ width: measures.width, height }, piece, 'the clear way up the stair');
  const atEnds = flightEndsAtMost(measures, ends, piece);
  if (atEnds && atEnds.atMost < straight.atMost) return atEnds;
  return straight;
}

/** No ceiling is so high [mm]. */
const NO_HEIGHT = 1e6;

/**
 * Whether the plane square to the pitch through some nosing meets the flight's own ceiling line, beyond the trimmer:
 * only then is it the opening that the clear height square to the pitch says. The ceiling over a foot that is not
 * measured may be so high that the line is nowhere.
 */
function channelCounts(
  { headroom, rise, going }: FlightMeasures,
  { risers, footCeiling }: FlightEndMeasures,
): boolean {
  // Not counted, they are those of a flight longer than the piece.
  if (risers === undefined) return true;
  if (footCeiling === undefined) return false;
  const tangent = rise / going;
  const trimmer = (footCeiling - headroom - rise) / tangent;
  const square = headroom * (tangent / (1 + tangent ** 2));
  return (risers - 1) * going - square >= trimmer;
}

function straightMotions(measures: FlightMeasures, channel: number, piece: PieceSize): StraightMotion[] {
  const { width, headroom, rise, going } = measures;
  const tangent = rise / going;
  const between = betweenSides(width);
  const under = underHeadroom(headroom);
  const motions: StraightMotion[] = [];
  for (const hold of ALL_HOLDS) {
    const { along, across, upright } = sizesOfHold(piece, hold);
    const byWidth = (width - across) / 2;
    const alongPitch = (channel - upright) / 2;
    const plumb = (headroom - upright - along * tangent) / (2 * (1 + tangent));
    const byHeight = Math.max(alongPitch, plumb);
    const floor = -Math.max(across, upright) / 2;
    const straight = Math.max(Math.min(byWidth, byHeight), floor);
    motions.push({
      hold,
      straight,
      // A piece laid along the pitch is tilted with the stair and keeps its trade name, unless it stands on end.
      pose: hold[1] === 'L' && alongPitch > plumb ? 'tilted' : poseOfHold(hold),
      critical: byWidth <= byHeight ? between : under,
      height: upright,
      perPadding: 1,
    });
    if (hold[0] !== 'L') continue;
    const fit = rectangleThroughOpening(width, channel, across, upright);
    if (fit.clearance <= straight || fit.angle <= 0) continue;
    const at = (angle: number): Leant => leantBy(angle, width, channel, across, upright);
    motions.push({
      ...at(fit.angle),
      hold,
      straight: fit.clearance,
      pose: 'leaning',
      critical: closestOnStair(
        (stair) => `leaning ${shownGiven(degrees(fit.angle), 0)} degrees on ${stair}`,
        closestAt('', 'sides', 'slope'),
      ),
      leaning: { angle: fit.angle, at },
    });
  }
  return motions;
}

/** A face as it stands between the sides and the ceiling line, its long side turned by so much from the longer of these two. */
function leantBy(angle: number, width: number, channel: number, across: number, upright: number): Leant {
  const [s, c] = [Math.sin(angle), Math.cos(angle)];
  const [long, short] = [Math.max(across, upright), Math.min(across, upright)];
  const [along, beside] = [long * c + short * s, long * s + short * c];
  const [height, wide] = channel >= width ? [along, beside] : [beside, along];
  return {
    straight: Math.min(channel - height, width - wide) / (2 * (c + s)),
    height,
    perPadding: s + c,
  };
}

/** After so many an angle is known to a thousandth of what is told. */
const STEPS = 40;

/**
 * Leant over more, and less, than leaves most between the sides, as far as the ends leave more for it: so a flight that is
 * wider leaves no less for being leant in otherwise.
 */
function leantOtherwise(
  { angle, at }: { readonly angle: number; readonly at: (angle: number) => Leant },
  byEnds: (leant: Leant) => number,
): Leant[] {
  const left = (turned: number): number => Math.min(at(turned).straight, byEnds(at(turned)));
  return [0, Math.PI / 2].map((end) =>
    at(leastBetween((turned) => -left(turned), Math.min(angle, end), Math.max(angle, end), STEPS).at),
  );
}
