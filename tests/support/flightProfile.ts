import type { ProfilePart } from './profile';
import type { FlightMeasures } from '../../src/core/stages/flight/flight';

/** A flight with its risers counted and the floors at its ends. */
export interface WholeFlight extends FlightMeasures {
  readonly risers: number;
  /** Level floor before the first riser and after the top nosing [mm]; 0: none. */
  readonly footSpace: number;
  readonly headSpace: number;
  /** Clear heights over those floors [mm]. */
  readonly footCeiling: number;
  readonly headCeiling: number;
}

/**
 * A flight as it is walked up, in the vertical section: the floor at its foot begins at x = 0, z = 0. The first riser is
 * plumb, and below the line of nosings all is solid from there on; the flight's ceiling line meets the foot's ceiling
 * at the trimmer and ends over the last nosing, where the head's ceiling begins.
 */
export function flightProfile(flight: WholeFlight): ProfilePart[] {
  const { width, headroom, rise, going, risers, footSpace, headSpace, footCeiling, headCeiling } = flight;
  const tangent = rise / going;
  const riser = footSpace;
  const origin = riser - going;
  const top = origin + risers * going;
  const up = risers * rise;
  const nosings = (x: number): number => (x - origin) * tangent;
  const trimmer = Math.min(origin + (footCeiling - headroom) / tangent, top);
  const under = (x: number): number => (x <= trimmer ? footCeiling : nosings(x) + headroom);
  const cuts = [0, riser, top, ...(trimmer > 0 && trimmer < top ? [trimmer] : [])].sort((a, b) => a - b);
  const parts: ProfilePart[] = [];
  const sides = { right: -width / 2, left: width / 2 };
  cuts.forEach((from, i) => {
    const to = cuts[i + 1];
    if (to === undefined || !(to > from)) return;
    const onFlight = from >= riser;
    const flat = to <= trimmer;
    parts.push({
      from,
      to,
      floor: onFlight ? [nosings(from), to === top ? up : nosings(to)] : [0, 0],
      ceiling: flat
        ? [footCeiling, footCeiling]
        : [from === trimmer ? footCeiling : nosings(from) + headroom, under(to)],
      ...sides,
    });
  });
  if (headSpace > 0) {
    parts.push({
      from: top,
      to: top + headSpace,
      floor: [up, up],
      ceiling: [up + headCeiling, up + headCeiling],
      ...sides,
    });
  }
  return parts;
}

/** The same way set down elsewhere. */
export function movedProfile(parts: readonly ProfilePart[], x: number, z: number): ProfilePart[] {
  return parts.map((part) => ({
    ...part,
    from: part.from + x,
    to: part.to + x,
    floor: [part.floor[0] + z, part.floor[1] + z],
    ceiling: [part.ceiling[0] + z, part.ceiling[1] + z],
  }));
}
