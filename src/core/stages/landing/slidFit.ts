import { paddedPiece, type PieceSize } from '../../measures/piece';
import type { Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';
import { raiseOfMotion } from '../../space/raiseOfMotion';
import { onFlight } from '../flight/onFlight';
import { drawFamilyMotion } from './drawFamilyMotion';
import type { FamilyAsk } from './solveFamilies';
import type { FamilyFit } from './familyFit';
import type { LandingPlan } from './landingPlan';
import { quarterGrounds } from './quarterGrounds';
import { slidRound } from './slidRound';

/** So far from the landing its motion is looked at, in lengths of the piece. */
const AWAY = 1.5;

/**
 * The best that a piece held so on the flights leaves slid round the inner edge of a quarter landing, with its raise
 * bounded over the whole motion as it is drawn (`raiseOfMotion`).
 * @returns undefined where it does not leave what is asked, and on a half landing
 */
export function slidFit(
  plan: LandingPlan,
  piece: PieceSize,
  hold: Hold,
  { atLeast, mostRaise = Infinity }: Pick<FamilyAsk, 'atLeast' | 'mostRaise'> = {},
): FamilyFit | undefined {
  const found = slidRound(plan, piece, hold, atLeast);
  if (!found) return undefined;
  const { widthIn, widthOut, headroom, rise, going } = plan;
  const slope = rise / going;
  const end = (out: readonly [number, number], along: number, edge: KeyAttitude['at']): KeyAttitude =>
    onFlight(piece, hold, found.clearance, out, along, edge, headroom, AWAY * piece.length);
  const motion = drawFamilyMotion(
    plan,
    piece,
    found,
    end([-1, 0], -slope, [0, widthIn / 2, 0]),
    end([0, 1], slope, [widthOut / 2, widthIn, rise]),
  );
  const grounds = quarterGrounds(widthIn, rise, slope);
  const raise = raiseOfMotion(grounds, paddedPiece(piece, found.clearance), motion);
  return raise > mostRaise ? undefined : { ...found, raise };
}
