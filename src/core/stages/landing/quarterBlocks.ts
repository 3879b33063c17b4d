import type { PieceSize } from '../../measures/piece';
import { quaternionFromAxes } from '../../space/quaternion';
import { block, flightPlates, type NamedBox } from './namedBoxes';

/** What a quarter landing is built of, as `QuarterLandingMeasures` has it [mm]. */
interface QuarterBuilt {
  readonly widthIn: number;
  readonly widthOut: number;
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  readonly overRail: number;
  readonly ceiling: number;
}

/** So far down and up the flights it is built, so that a piece begins and ends well on them [mm]. */
export const quarterReach = (piece: PieceSize): number =>
  2 * Math.sqrt(piece.length ** 2 + piece.breadth ** 2 + piece.thickness ** 2) + 600;

/** The obstacles about a quarter landing, for a piece that is carried over it. */
export function quarterBlocks(built: QuarterBuilt, piece: PieceSize): NamedBox[] {
  const { widthIn: a, widthOut: b, headroom: H, rise, ceiling: C, overRail } = built;
  const slope = rise / built.going;
  const F = quarterReach(piece);
  const far = slope * F + Math.max(H, C) + rise + 1000;
  const open = overRail > 0;
  const obstacles: NamedBox[] = [
    block('the landing', [0, -200, -200], [b + 200, a, 0]),
    block('the ceiling over the landing', [0, -200, C], [b + 200, a, Math.max(C, H + rise) + 1000]),
    block('the outer wall of the lower flight', [-F, -200, -far], [b + 200, 0, far]),
    block('the wall facing the lower flight', [b, -200, -far], [b + 200, a + F, far]),
    // Looking out along -x the right-hand end of the edge is at the larger y.
    ...flightPlates('lower flight', [0, open ? a + F : a, 0], [-1, 0], -slope, open ? a + F : a, H, F),
    // Looking out along +y the right-hand end is at the larger x.
    ...flightPlates('upper flight', [b, a, rise], [0, 1], slope, b, H, F),
  ];
  if (open) {
    // Solid under a plane that rises with the upper flight, over the whole inner quarter.
    const stretch = Math.sqrt(1 + slope * slope);
    const t: [number, number, number] = [0, 1 / stretch, slope / stretch];
    const up: [number, number, number] = [0, -slope / stretch, 1 / stretch];
    const top = rise + overRail;
    obstacles.push(
      {
        name: 'the handrail',
        box: {
          centre: [
            -F / 2,
            a + (t[1] * F * stretch) / 2 - (up[1] * far) / 2,
            top + (t[2] * F * stretch) / 2 - (up[2] * far) / 2,
          ],
          size: [F * stretch, F, far],
          turn: quaternionFromAxes(t, [-1, 0, 0], up),
        },
      },
      block('the handrail', [-F, a, -far], [0, a - up[1] * far, top]),
    );
  } else obstacles.push(block('the inner corner', [-F, a, -far], [0, a + F, far]));
  return obstacles;
}
