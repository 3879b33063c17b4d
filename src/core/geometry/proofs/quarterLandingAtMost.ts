import { CONDITIONS } from './conditions';
import { RIGHT_ANGLE } from '../../measures/angle';
import type { PieceSize } from '../../measures/piece';
import type { ProvedBound } from './provedBound';
import { greatestNotBlocked } from './greatestNotBlocked';
import { longestRodRoundCorner } from './ladderAtMost';

/**
 * The greatest padding [mm a side] with which a piece may pass a quarter landing, by the ladder: no motion has more. All
 * measures in mm.
 *
 * Ladder proof on a quarter landing with full-height inner sides: in plan it is a right-angled corner, and a
 * rod of plan length p can rise no more than the most headroom there is (a flight's, from the back of a real
 * tread: headroom and two risers; or the landing's and one) and the stairs between its ends, which are no
 * more than sqrt(2) p long in plan since they turn. So the long diagonal never shows less in plan than where
 * that much rise and p make it up. Nothing is proved where there is air above a handrail.
 * @source the ladder round a corner of the calculus books (`longestRodRoundCorner`), own derivation on stairs
 * @returns null where nothing is proved
 */
export function quarterLandingAtMost(
  landing: {
    readonly widthIn: number;
    readonly widthOut: number;
    readonly headroom: number;
    readonly rise: number;
    readonly going: number;
    readonly overRail: number;
    readonly landingCeiling: number;
  },
  piece: PieceSize,
): ProvedBound | null {
  if (landing.overRail > 0) return null;
  const rod = longestRodRoundCorner(landing.widthIn, landing.widthOut, RIGHT_ANGLE);
  const slope = (landing.rise / landing.going) * Math.SQRT2;
  const height = Math.max(landing.landingCeiling, landing.headroom + landing.rise) + landing.rise;
  const upright = height + slope * rod;
  // Were its plan no longer than the rod, its rise would be at most `upright`, and it could not be longer than this.
  const longest = Math.sqrt(rod * rod + upright * upright) + 1e-6;
  const atMost = greatestNotBlocked(
    piece,
    longest,
    (p) => Math.sqrt(p.length ** 2 + p.breadth ** 2 + p.thickness ** 2) > longest,
  );
  if (atMost === Infinity) return null;
  return { atMost, bound: CONDITIONS.roundLanding };
}
