import { entryAt } from '../../lists/entryAt';
import type { KeyAttitude } from '../../space/motion';
import { between, partWay, reach, type Vector } from '../../space/vector';
import type { PlacedRow } from '../place/placedRoute';
import type { Stretch } from './carrier';
import type { Walk } from './walk';

/**
 * Follows the drawn keys of a motion through several rows, each told of the row that it is nearest to, in the order of the
 * way.
 * @param i the placed row with which they begin
 * @param last the one with which they end
 * @returns whether every move is free
 */
export function followedAlong(
  walk: Walk,
  i: number,
  last: number,
  keys: readonly KeyAttitude[],
  stretch: Stretch,
): boolean {
  let at = i;
  return keys.every((key) => {
    const off = walk.route.rows.slice(at, last + 1).map((row) => offWay(row, key.at));
    at += off.indexOf(Math.min(...off));
    return walk.carrier.go(key, entryAt(walk.route.rows, at).row, stretch, 'without search');
  });
}

/** How far a place is from the straight through a row, on its floor [mm]. */
function offWay({ entry, exit }: PlacedRow, at: Vector): number {
  const along = between(entry.at, exit.at);
  const square = reach(along, along);
  const part = square > 0 ? reach(between(entry.at, at), along) / square : 0;
  const nearest = partWay(entry.at, exit.at, Math.max(0, Math.min(1, part)));
  return Math.hypot(...between(nearest, at));
}
