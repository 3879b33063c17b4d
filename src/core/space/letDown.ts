import { entryAt } from '../lists/entryAt';
import type { SpaceChecker } from './spaceChecker';

/** Nothing in a house is raised higher [mm]. */
export const HIGHEST = 4000;

/**
 * How far a piece can be let straight down until it rests [mm], every place between being free.
 * @param checker of what is below, which holds the piece
 * @param place where the piece is, as the checker takes it
 * @param near how near that has to be known [mm]
 */
export function letDown(checker: SpaceChecker, place: Float64Array, near: number): number {
  const to = Float64Array.from(place);
  let free = 0;
  let met = HIGHEST;
  while (met - free > near) {
    const middle = (free + met) / 2;
    to[2] = entryAt(place, 2) - middle;
    if (checker.moveFree(place, 0, to, 0)) free = middle;
    else met = middle;
  }
  return free;
}
