import { edgeFree } from '../geometry/planar/edgeFree';
import type { PlanarPlace, PlanarWorld } from '../geometry/planar/planarWorld';
import { inSteps } from './inSteps';
import { cornersOf, plumbGap } from './raiseInSection';
import { pairs } from '../lists/pairs';

/** Between two places no point of the rectangle moves farther [mm]. */
const STEP = 50;
/** It is carried so high above what it would rest on [mm]. */
const CLEAR = 1;

/**
 * The same path carried as low as it goes: at every place let down plumb until it nearly rests on what is below it, and
 * moved on from each to the next at the higher of the two. A path that was looked for only to be free wanders through the
 * air; nobody carries so.
 *
 * @param sides the rectangle's sides along and upright when level [mm]
 * @returns free as the path is: where a lower move is not shown free, the path's own is kept
 */
export function loweredPath(
  world: PlanarWorld,
  { u, v }: { readonly u: number; readonly v: number },
  path: readonly PlanarPlace[],
): PlanarPlace[] {
  const [start] = path;
  if (!start) return [];
  const free = (from: PlanarPlace, to: PlanarPlace): boolean => edgeFree(world, u, v, from, to);
  const lowered: PlanarPlace[] = [start];
  let at = start;
  const go = (...places: readonly PlanarPlace[]): boolean => {
    let last = at;
    if (!places.every((place) => free(last, (last = place)))) return false;
    lowered.push(...places);
    at = last;
    return true;
  };
  for (const [from, to] of pairs(inSteps(path, Math.hypot(u, v) / 2, STEP))) {
    const height = Math.max(lowest(world, u, v, from), lowest(world, u, v, to));
    const low = Math.min(height + CLEAR, Math.max(from.y, to.y));
    if (go({ ...from, y: low }, { ...to, y: low })) continue;
    if (go(from, to)) continue;
    return [...path];
  }
  const end = path[path.length - 1] ?? start;
  return at === end || go(end) ? lowered : [...path];
}

const lowest = (world: PlanarWorld, u: number, v: number, place: PlanarPlace): number => {
  const gap = plumbGap(cornersOf(place, u, v), world.obstacles);
  return Number.isFinite(gap) ? place.y - gap : place.y;
};
