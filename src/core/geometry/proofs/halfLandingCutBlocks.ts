import { acrossHalfLanding } from '../landingModel';
import type { PieceSize } from '../../measures/piece';
import { centreCutsBlock } from './centreCutsBlock';
import type { Cut, CutScene } from './centreOnCut';
import type { StairsAtMost } from './quarterLandingCutBlocks';

const { max, min } = Math;

/** A half landing with its flights, each measure at the end of its range that lets most pass [mm]. */
export interface HalfAtMost extends StairsAtMost {
  readonly flightWidth: number;
  readonly well: number;
  readonly landingDepth: number;
  /**
   * Where the spine is known to be solid, however the measures err: from the greatest width of the lower flight to
   * the least width and the least well, measured from the lower flight's outer wall.
   */
  readonly spine: readonly [number, number];
}

/**
 * Centre-cut proof on a half landing with a full-height spine: on its way the piece's centre crosses any line in
 * plan from the end of the spine to an outer wall, so if on one of them it can be in no attitude, no motion passes.
 * The lines tried: across the mouth of the lower flight and aslant from there, and to the far corner.
 *
 * Model, as generous as can be, its places as in halfLandingAnswer: the landing is x 0..landingDepth, the flights
 * at x < 0 on both sides of the spine. A point of the piece lies
 * - over the landing between 0 and its ceiling;
 * - over the lower flight not lower than the treads, which are at most a rise below the line of nosings,
 *   slope x - rise, and not higher than its ceiling, slope x + headroom;
 * - over the upper flight, whose line of nosings starts a rise above the landing, not lower than -slope x and not
 *   higher than that, a rise and the headroom.
 * Flights are straight, at least half a piece long from the landing, their ceilings parallel to the nosings. Real
 * widths that are less are parts of this, laid at the lower flight's outer wall.
 *
 * @source own derivation
 * @returns true is a proof that the piece does not pass; false says nothing
 */
export function halfLandingCutBlocks(
  landing: HalfAtMost,
  piece: PieceSize,
  cuts = halfLandingCuts(landing),
): boolean {
  // Where the measures leave it open that there is a spine at all, nothing is proved.
  if (landing.spine[1] < landing.spine[0]) return false;
  return centreCutsBlock(sceneOf(landing), cuts, piece);
}

/** The lines that the centre has to cross, each by itself. */
export function halfLandingCuts(landing: HalfAtMost): Cut[] {
  const { landingDepth: depth, spine } = landing;
  return [
    [
      [0, spine[0]],
      [0.3 * depth, 0],
    ],
    [
      [0, spine[1]],
      [depth, acrossHalfLanding(landing)],
    ],
    [
      [0, spine[0]],
      [0, 0],
    ],
    [
      [0, spine[0]],
      [depth, 0],
    ],
  ];
}

function sceneOf(landing: HalfAtMost): CutScene {
  const { landingDepth, headroom, rise, landingCeiling, spine, lowerOpen } = landing;
  const overLower = lowerOpen ? Infinity : headroom;
  const [gentle, steep] = landing.slope;
  const [near, far] = spine;
  // At the landing's edge what is below and above on either side counts.
  const edge = {
    n: [1, 0],
    at: 0,
    lowest: 0,
    highest: min(landingCeiling, max(overLower, rise + headroom)),
  } as const;
  return {
    openings: [edge],
    walls: [
      { n: [0, -1], at: 0 },
      { n: [0, 1], at: acrossHalfLanding(landing) },
      { n: [1, 0], at: landingDepth },
    ],
    solids: [
      [
        { edge: [0, near], from: [0, 1], to: [-1, 0] },
        { edge: [0, far], from: [-1, 0], to: [0, -1] },
      ],
    ],
    free: {
      lowest: (x0, x1, y0) => (x0 >= 0 ? 0 : y0 <= near ? steep * x0 - rise : x1 >= 0 ? 0 : -gentle * x1),
      highest: (x0, x1, y0, y1) => {
        let most = -Infinity;
        if (x1 >= 0) most = landingCeiling;
        if (x0 < 0 && y0 <= near) most = max(most, gentle * min(x1, 0) + overLower);
        if (x0 < 0 && y1 >= far) most = max(most, -steep * x0 + rise + headroom);
        return most;
      },
    },
  };
}
