import type { PieceSize } from '../../measures/piece';
import type { Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import { drawFamilyMotion } from '../../stages/landing/drawFamilyMotion';
import { halfLandingTask } from '../../stages/landing/halfLanding';
import { bestFamilyFit, type LandingPlan } from '../../stages/landing/motionFamilies';
import { quarterLandingTask } from '../../stages/landing/quarterLanding';
import { rotate, type Quaternion } from '../../space/quaternion';
import { placedKey, type Vec3 } from '../place/frame';
import type { PlacedRoute } from '../place/placedRoute';

/**
 * The angle [rad] above the level at which the piece lies in a flight's upright section, seen up the flight; undefined
 * where it stands across it. Its coordinates are the flight's own.
 */
export function angleInSection(turn: Quaternion, hold: Hold): number | undefined {
  const axis = (letter: string): Vec3 =>
    rotate(turn, letter === 'L' ? [1, 0, 0] : letter === 'B' ? [0, 1, 0] : [0, 0, 1]);
  const along = axis(hold[0]!);
  if (Math.abs(along[1]) > 1e-6 || Math.abs(axis(hold[1]!)[1]) > 1e-6) return undefined;
  const sign = along[0] < 0 ? -1 : 1;
  return Math.atan2(sign * along[2], sign * along[0]);
}

/** The keys of the drawn family round a landing that are off the flights' straight, in the scene. */
export function landingKeys(
  route: PlacedRoute,
  i: number,
  piece: PieceSize,
  hold: Hold,
  drawn: number,
): KeyAttitude[] | undefined {
  const { joint, placing, back } = route.rows[i]!;
  const m = joint.measures;
  const headroom = m.height ?? 0;
  const stair = {
    headroom,
    rise: m.rise ?? 1,
    going: m.going ?? 1,
    overRail: 0,
    landingCeiling: m.ceiling ?? headroom,
  };
  const width = m.width ?? 0;
  const widthOut = m.widthOut ?? 0;
  let plan: LandingPlan;
  let ends: { readonly start: KeyAttitude; readonly goal: KeyAttitude };
  if (joint.stage === 'quarter landing') {
    plan = {
      widthIn: width,
      widthOut,
      depthIn: widthOut,
      depthOut: width,
      across: undefined,
      headroom,
      rise: stair.rise,
      going: stair.going,
      ceiling: stair.landingCeiling,
    };
    ends = quarterLandingTask({ ...stair, widthIn: width, widthOut }, piece, hold).ends(drawn);
  } else if (joint.stage === 'half landing') {
    const [well, depth] = [m.well ?? 0, m.depth ?? 0];
    plan = {
      widthIn: width,
      widthOut: width,
      depthIn: depth,
      depthOut: depth,
      across: 2 * width + well,
      headroom,
      rise: stair.rise,
      going: stair.going,
      ceiling: stair.landingCeiling,
    };
    ends = halfLandingTask({ ...stair, flightWidth: width, well, landingDepth: depth }, piece, hold).ends(
      drawn,
    );
  } else return undefined;
  const fit = bestFamilyFit(plan, piece, hold, { atLeast: drawn });
  if (!fit) return undefined;
  const keys = drawFamilyMotion(plan, piece, fit, ends.start, ends.goal).slice(1, -1);
  const placed = keys.map((key) => placedKey(placing, key));
  return back ? placed.reverse() : placed;
}
