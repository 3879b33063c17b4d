import type { PieceSize, Pose } from '../../measures/piece';
import { POSE_BY_UPRIGHT, sidesOfHold, type Hold, type PieceSide } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import { slidFit } from '../../stages/landing/slidFit';
import { drawFamilyMotion } from '../../stages/landing/drawFamilyMotion';
import { halfLandingTask } from '../../stages/landing/halfLanding';
import { bestFamilyFit, type ShortFlight, type ShortFlights } from '../../stages/landing/solveFamilies';
import type { RoundAs } from '../../stages/landing/familyFit';
import type { LandingPlan } from '../../stages/landing/landingPlan';
import { quarterLandingTask } from '../../stages/landing/quarterLanding';
import { widenedRound } from '../../stages/landing/landingPassages';
import { roleOf } from '../../stages/kinds';
import { solverOf } from '../../stages/solvers';
import { rotate, type Quaternion } from '../../space/quaternion';
import { placedKey, type Vec3 } from '../place/frame';
import type { PlacedRoute } from '../place/placedRoute';
import { entryAt } from '../../lists/entryAt';
import { endsOf, isLanding } from '../place/rowContext';
import { reachOver, tooShort } from '../shortFlightJoint';
import { ceilingOverLanding } from '../../geometry/landingModel';
import { landingPlanOf } from '../../stages/landing/landingPlanOf';

/**
 * The angle [rad] above the level at which the piece lies in a flight's upright section, seen up the flight; undefined
 * where it stands across it. Its coordinates are the flight's own.
 */
export function angleInSection(turn: Quaternion, hold: Hold): number | undefined {
  const axis = (side: PieceSide): Vec3 =>
    rotate(turn, side === 'L' ? [1, 0, 0] : side === 'B' ? [0, 1, 0] : [0, 0, 1]);
  const sides = sidesOfHold(hold);
  const along = axis(sides.along);
  if (Math.abs(along[1]) > 1e-6 || Math.abs(axis(sides.upright)[1]) > 1e-6) return undefined;
  const sign = along[0] < 0 ? -1 : 1;
  return Math.atan2(sign * along[2], sign * along[0]);
}

/** What the chain does on a landing. */
export interface LandingStep {
  readonly from: Hold;
  readonly pose: Pose;
  /** [mm] */
  readonly raise?: number | undefined;
  readonly jointly?: boolean;
}

/** A raise is known no nearer than this [mm]. */
const STRAYS = 1;

/**
 * The places of the drawn motion round a landing that are off the flights' straight, in the coordinates of the scene;
 * undefined where the row is no landing or no such motion is free.
 * @param i the landing's row
 * @param drawn padding for which it is drawn [mm a side]
 */
export function landingKeys(
  route: PlacedRoute,
  i: number,
  piece: PieceSize,
  { from: hold, pose, raise = Infinity, jointly = false }: LandingStep,
  drawn: number,
): KeyAttitude[] | undefined {
  const { joint, placing, back } = entryAt(route.rows, i);
  const m = joint.measures;
  const headroom = m.height ?? 0;
  const stair = {
    headroom,
    rise: m.rise ?? 1,
    going: m.going ?? 1,
    overRail: 0,
    landingCeiling: ceilingOverLanding({ landingCeiling: m.ceiling, headroom }),
  };
  const toScene = (keys: readonly KeyAttitude[] | undefined): KeyAttitude[] | undefined => {
    const placed = keys?.map((key) => placedKey(placing, key));
    return back ? placed?.reverse() : placed;
  };
  const plan = landingPlanOf(joint.stage, joint.measures);
  // Winding treads have no families.
  if (!plan) return toScene(widenedKeys(route, i, piece, hold, drawn));
  const { widthIn, widthOut } = plan;
  const task =
    joint.stage === 'quarter landing'
      ? quarterLandingTask({ ...stair, widthIn, widthOut }, piece, hold)
      : halfLandingTask(
          { ...stair, flightWidth: widthIn, well: m.well ?? 0, landingDepth: plan.depthIn },
          piece,
          hold,
        );
  const ends = task.ends(drawn);
  const flight = (side: 'lower' | 'upper'): ShortFlight | undefined =>
    jointly ? shortFlight(route, i, (side === 'lower') === back ? 1 : -1, side, plan, piece) : undefined;
  const short: ShortFlights = { lower: flight('lower'), upper: flight('upper') };
  // The motion that is claimed is raised no farther.
  const only = short.lower || short.upper ? { only: roundAs(pose, hold) } : {};
  const ask = { atLeast: drawn, mostRaise: raise + STRAYS };
  const fit =
    bestFamilyFit(plan, piece, hold, { ...ask, short, ...only }) ??
    (short.lower || short.upper ? undefined : slidFit(plan, piece, hold, ask));
  const keys = fit
    ? drawFamilyMotion(plan, piece, fit, ends.start, ends.goal, short).slice(1, -1)
    : widenedKeys(route, i, piece, hold, drawn);
  return toScene(keys);
}

/** How it goes round in a pose. */
const roundAs = (pose: Pose, hold: Hold): RoundAs =>
  pose === 'tilted' ? 'tilted' : pose === POSE_BY_UPRIGHT[sidesOfHold(hold).along] ? 'upright' : 'level';

/** The flight before landing i (-1) or after it (1), where it does not hold the piece and leads to a level floor. */
function shortFlight(
  route: PlacedRoute,
  i: number,
  step: -1 | 1,
  side: 'lower' | 'upper',
  plan: LandingPlan,
  piece: PieceSize,
): ShortFlight | undefined {
  const flight = route.rows[i + step];
  const beyond = route.rows[i + 2 * step];
  if (flight?.joint.stage !== 'flight' || flight.supposed) return undefined;
  if (beyond && isLanding(beyond.joint)) return undefined;
  const { risers = 2, footSpace, headSpace, footCeiling, headCeiling } = flight.joint.measures;
  const { before, after } = endsOf(flight.joint);
  const foot = (step === -1 ? before : after) === 'foot';
  const line = (risers - 1) * Math.hypot(plan.rise, plan.going);
  if (!tooShort(line, piece)) return undefined;
  return reachOver(plan, side, {
    risers,
    ceiling: foot ? footCeiling : headCeiling,
    space: foot ? footSpace : headSpace,
    door: undefined,
    // The floor before a door is as wide as the flight.
    floorWidth:
      beyond && roleOf(beyond.joint.stage) !== 'opening'
        ? (step === -1 ? beyond.exitSection : beyond.entrySection)?.width
        : undefined,
  });
}

/** Off the flights' straight, a motion that is widened beyond the families; a rail is the wall that stands in the scene. */
function widenedKeys(
  route: PlacedRoute,
  i: number,
  piece: PieceSize,
  hold: Hold,
  drawn: number,
): readonly KeyAttitude[] | undefined {
  const joint = route.rows[i]?.joint;
  const solver = joint && solverOf(joint.stage);
  if (!joint || !solver || solver.solvedBy === 'closed form') return undefined;
  const stage = solver.searched({ ...joint.measures, overRail: 0 });
  return widenedRound(stage, piece, hold, drawn)?.slice(1, -1);
}
