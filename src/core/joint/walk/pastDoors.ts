import type { Frame } from '../place/frame';
import type { PlacedRow } from '../place/placedRoute';
import { isLanding, runOf } from '../place/rowContext';
import { GOES_ON } from '../place/buildSideDoor';
import { entryAt } from '../../lists/entryAt';
import { pastStraights } from './straights';
import { turns } from '../../stages/kinds';

/** A straight beyond a door in the side of its passage, along a frame [mm]. */
export interface StationPastDoor {
  readonly frame: Frame;
  readonly from: number;
  readonly to: number;
  /** Rows that a move there may touch: up to this one. */
  readonly upTo: number;
}

/**
 * Where a passage goes on past the door of the turn that follows row i, and past that of row i itself: a piece too long
 * for what lies between them stands there while it is clear of both.
 */
export function stationsPastDoors(rows: readonly PlacedRow[], i: number): StationPastDoor[] {
  const own = entryAt(rows, i);
  const stations: StationPastDoor[] = [];
  const k = pastStraights(rows, i, 1);
  const next = rows[k];
  if (!next || !turns(next.joint.stage) || isLanding(next.joint)) return stations;
  // Seen from the way in, the door of a row whose own coordinates run against the way stands in the passage's side.
  if (next.joint.stage === 'side door' && next.back) {
    const { width = 0, depth = GOES_ON } = next.joint.measures;
    stations.push({ frame: next.entry, from: width, to: width + depth, upTo: k });
  }
  if (own.joint.stage === 'side door' && !own.back) {
    const { width = 0, depth = GOES_ON } = own.joint.measures;
    const jamb = -runOf(own.joint, rows[i + 1]?.joint) - width;
    stations.push({ frame: own.exit, from: jamb - depth, to: jamb, upTo: i });
  }
  return stations;
}
