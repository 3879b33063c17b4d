import { CONDITIONS } from '../../geometry/proofs/conditions';
import { bracket } from '../../geometry/rootFinding';
import type { PieceSize } from '../../measures/piece';
import type { LiftCarMeasures } from './liftCarMeasures';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import { openingAtMost } from '../opening/openingAtMost';

/**
 * Greatest padding with which a box can get into a lift car by any motion and stand inside with the door shut:
 * it passes the door, and fits in the car in some attitude, for which its thickness must be no more than the
 * car's least size, its three sizes together no more than the car's, and its longest diagonal no more than
 * the car's.
 * @source openingAtMost; a box never fits inside one whose edges sum to less: Winkler, Mathematical
 * Mind-Benders; rounded outward
 */
export function liftCarAtMost(measures: LiftCarMeasures, piece: PieceSize): ProvedBound {
  const { doorWidth, doorHeight, carWidth, carDepth, carHeight } = measures;
  let best = openingAtMost({ width: doorWidth, height: doorHeight }, piece, "the lift's door");
  const consider = (spare: (l: number, b: number, t: number) => number, bound: string): void => {
    const at = (c: number): number =>
      spare(
        Math.max(0, piece.length + 2 * c),
        Math.max(0, piece.breadth + 2 * c),
        Math.max(0, piece.thickness + 2 * c),
      );
    if (at(best.atMost) >= 0) return;
    const { fails } = bracket(-piece.length / 2, best.atMost, (c) => at(c) >= 0, 1e-7);
    best = { atMost: fails + 1e-9 * (1 + Math.abs(fails)), bound };
  };
  const least = Math.min(carWidth, carDepth, carHeight);
  const sum = carWidth + carDepth + carHeight;
  const diagonal = Math.hypot(carWidth, carDepth, carHeight);
  consider((_l, _b, t) => least - t, CONDITIONS.thicknessInside("the car's"));
  consider((l, b, t) => sum - l - b - t, CONDITIONS.sizesInside('the car'));
  consider((l, b, t) => diagonal - Math.hypot(l, b, t), CONDITIONS.diagonalInside("the car's"));
  return best;
}
