import { CONDITIONS } from '../../geometry/proofs/conditions';
import type { PieceSize } from '../../measures/piece';
import type { ProvedBound } from '../../geometry/proofs/provedBound';

/**
 * Greatest padding with which a box can pass a flat opening by any motion: when the box's centre crosses the
 * plane of the opening, its central section lies within the opening. Every central section of a box has an
 * area of at least breadth x thickness, holds a disc of diameter thickness, and holds a chord of length
 * breadth, so each of these must fit.
 *
 * @param opening clear width and height [mm]
 * @param where what the opening is called in the condition
 * @source elementary; least central section of a box: Ball 1986 for the cube, here by projection along the length
 * @returns the least of the three bounds, rounded outward
 * @example openingAtMost({ width: 100, height: 2000 }, { length: 1830, breadth: 930, thickness: 25 }).atMost // 37.5
 */
export function openingAtMost(
  { width, height }: { readonly width: number; readonly height: number },
  { breadth, thickness }: PieceSize,
  where = 'the opening',
): ProvedBound {
  const disc = (Math.min(width, height) - thickness) / 2;
  const chord = (Math.hypot(width, height) - breadth) / 2;
  // (B + 2c)(T + 2c) = w h, the greater root.
  const area = (Math.sqrt((breadth - thickness) ** 2 + 4 * width * height) - (breadth + thickness)) / 4;
  // A thin piece counts as 0 thick once the padding takes its thickness away, and then has no area.
  const areaBound = area >= -thickness / 2 ? area : Infinity;
  const discBound = disc;
  if (discBound <= chord && discBound <= areaBound) {
    return {
      atMost: outward(discBound),
      bound: CONDITIONS.thickness(where),
    };
  }
  if (chord <= areaBound) {
    return { atMost: outward(chord), bound: CONDITIONS.breadth(where) };
  }
  return { atMost: outward(areaBound), bound: CONDITIONS.section(where) };
}

/** A bound a hair above, so that rounding never makes it too low. */
const outward = (value: number): number => value + 1e-9 * (1 + Math.abs(value));
