import { paddedPiece, type PieceSize } from '../../measures/piece';
import type { Hold } from '../../motion/hold';
import { placeOf, type KeyAttitude, type Motion } from '../../space/motion';
import { SpaceChecker } from '../../space/spaceChecker';
import { pairs } from '../../lists/pairs';
import { raiseOfMotion } from '../../space/raiseOfMotion';
import { onFlight } from '../flight/onFlight';
import { drawFamilyMotion } from './drawFamilyMotion';
import type { FamilyAsk } from './solveFamilies';
import { DRAWN, type FamilyFit } from './familyFit';
import type { LandingPlan } from './landingPlan';
import { quarterBlocks } from './quarterBlocks';
import { quarterGrounds } from './quarterGrounds';
import { slidRound } from './slidRound';

/** So far from the landing its motion is looked at, in lengths of the piece. */
const AWAY = 1.5;

/**
 * The best that a piece held so on the flights leaves slid round the inner edge of a quarter landing, with its raise
 * bounded over the whole motion as it is drawn (`raiseOfMotion`), and every move of it shown free at what is claimed of
 * it: what `slidRound` keeps back for what strays between two yaws is an estimate, and nothing rests on it.
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
  if (raise > mostRaise || !isFree(plan, piece, motion, found.clearance - DRAWN)) return undefined;
  return { ...found, raise };
}

/** Whether the whole motion is free between full-height walls for the piece padded by so much [mm a side]. */
function isFree(plan: LandingPlan, piece: PieceSize, motion: Motion, padding: number): boolean {
  const checker = new SpaceChecker(quarterBlocks({ ...plan, overRail: 0 }, piece).map(({ box }) => box));
  checker.hold(paddedPiece(piece, padding));
  return pairs(motion.map(placeOf)).every(([from, to]) => checker.moveFree(from, 0, to, 0));
}
