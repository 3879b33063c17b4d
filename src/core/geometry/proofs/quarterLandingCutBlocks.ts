import type { PieceSize } from '../../measures/piece';
import { centreCutsBlock } from './centreCutsBlock';
import type { Cut, CutScene } from './centreOnCut';

const { max, min } = Math;

/** What a proof on a landing rests on: every measure at its most generous [mm]. */
export interface StairsAtMost {
  readonly headroom: number;
  /** Greatest rise. */
  readonly rise: number;
  /** Least and greatest rise for each mm of going. */
  readonly slope: readonly [number, number];
  /** Height of the ceiling over the landing. */
  readonly landingCeiling: number;
  /** How far up the lower flight's own ceiling begins is not known: over it there may be none. */
  readonly lowerOpen?: boolean;
}

/** A quarter landing with its flights, each measure at the end of its range that lets most pass [mm]. */
export interface QuarterAtMost extends StairsAtMost {
  readonly widthIn: number;
  readonly widthOut: number;
}

/**
 * Centre-cut proof on a quarter landing with full-height inner sides: on its way the piece's centre crosses any
 * line in plan from the inner corner to the outer walls, so if on one of them it can be in no attitude, no motion
 * passes. The lines tried: to the outer corner, half-way back from there, and across the mouth of either flight.
 *
 * Model, as generous as can be: the landing is x 0..widthOut, y 0..widthIn, the lower flight at x < 0, the upper at
 * y > widthIn. A point of the piece lies
 * - over the landing between 0 and its ceiling;
 * - over the lower flight not lower than the treads, which are at most a rise below the line of nosings,
 *   slope x - rise, and not higher than its ceiling, slope x + headroom;
 * - over the upper flight, whose line of nosings starts a rise above the landing, not lower than slope (y - widthIn)
 *   and not higher than that, a rise and the headroom.
 * Flights are straight, at least half a piece long from the landing, their ceilings parallel to the nosings. Real
 * widths that are less are parts of this, laid at the inner corner.
 *
 * @source own derivation
 * @returns true is a proof that the piece does not pass; false says nothing
 */
export function quarterLandingCutBlocks(
  landing: QuarterAtMost,
  piece: PieceSize,
  cuts = quarterLandingCuts(landing),
): boolean {
  return centreCutsBlock(sceneOf(landing), cuts, piece);
}

/** The lines in plan [mm] that the piece's centre has to cross on its way round; it crosses each of them. */
export function quarterLandingCuts({ widthIn: a, widthOut: b }: QuarterAtMost): Cut[] {
  return [
    [
      [0, a],
      [0.4 * b, 0],
    ],
    [
      [0, a],
      [b, 0],
    ],
    [
      [0, a],
      [b, a],
    ],
    [
      [0, a],
      [0, 0],
    ],
  ];
}

function sceneOf(landing: QuarterAtMost): CutScene {
  const { widthIn: a, widthOut: b, headroom, rise, landingCeiling, lowerOpen } = landing;
  const overLower = lowerOpen ? Infinity : headroom;
  const [gentle, steep] = landing.slope;
  return {
    // At the landing's edges what is below and above on either side counts.
    openings: [
      { n: [1, 0], at: 0, lowest: 0, highest: min(landingCeiling, overLower) },
      { n: [0, 1], at: a, lowest: 0, highest: min(landingCeiling, rise + headroom) },
    ],
    walls: [
      { n: [0, -1], at: 0 },
      { n: [1, 0], at: b },
    ],
    solids: [[{ edge: [0, a], from: [0, 1], to: [-1, 0] }]],
    free: {
      lowest: (x0, _x1, y0) => (y0 > a ? gentle * (y0 - a) : x0 < 0 ? steep * x0 - rise : 0),
      highest: (x0, x1, y0, y1) => {
        let most = -Infinity;
        if (y0 <= a && x0 < 0) most = gentle * min(x1, 0) + overLower;
        if (y0 <= a && x1 >= 0) most = max(most, landingCeiling);
        if (y1 > a) most = max(most, steep * (y1 - a) + rise + headroom);
        return most;
      },
    },
  };
}
