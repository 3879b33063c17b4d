import { leastOverAngles, type Branched } from '../../geometry/leastOverAngles';
import { paddingBorne } from '../../geometry/paddingBorne';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { atan2, cos, max, min, sin } = Math;

/** A door in the wall that faces a stair's end, and the flight there. */
export interface FacingDoorMeasures {
  /** Clear width and height of the door [mm]. */
  readonly doorWidth: number;
  /** [mm] */
  readonly doorHeight: number;
  /** Thickness of the wall it stands in [mm]; 0 allowed. */
  readonly wallThickness: number;
  /** Level floor from that wall to the first riser, or to the top nosing [mm]; 0 allowed. */
  readonly space: number;
  /** The floor may be as long as this [mm], or anything between: what is answered then holds for every such length. */
  readonly spaceMost?: number | undefined;
  /** [mm] */
  readonly flightWidth: number;
  /** Headroom plumb above the line of nosings [mm]. */
  readonly headroom: number;
  /** [mm] */
  readonly rise: number;
  /** [mm] */
  readonly going: number;
  /** Clear height over the floor between door and flight [mm]. */
  readonly ceiling: number;
  readonly end: 'foot' | 'head';
}

/** What stands in the way where it is closest. */
export type FacingDoorLimit =
  'door head' | 'headroom' | 'ceiling edge' | 'ceiling' | 'top nosing' | 'door head as it tilts';

/** How a rectangle passes from a flight through the door that faces it. */
export interface FacingDoorFit {
  /** Padding [mm a side] with which a motion is known. */
  readonly clearance: number;
  readonly limit: FacingDoorLimit;
  /** It stays level all the way, its front or back edge on the nosings. */
  readonly keptLevel: boolean;
}

/**
 * Padding with which a rectangle, `along` x `upright` in the vertical section, passes between level ground
 * beyond a door and lying along the pitch of the flight that the door faces: a motion in closed form.
 *
 * Model: floor and line of nosings below, the line of nosings beginning at floor level one going before the first
 * riser; above, the flight's ceiling line and the ceiling over the floor, at the foot up to where the two meet, at
 * the head from the last nosing on; the door's head over the thickness of its wall. Beyond the door the floor goes
 * on level, the ceiling as high as here.
 *
 * Foot: both lower corners slide on floor and line of nosings, which is as far as it can keep from every edge
 * above. At an angle f, f + f' = pitch, an edge at (X, Z) from where the two lines meet leaves
 *   c = [sin p (Z cos f - X sin f) - u sin f sin f' - v sin p] / (2 (sin f sin f' + sin p)),
 * and it is wholly past the door with c = (S - u sin f'/sin p - v sin f) / (2 (sin f'/sin p + sin f)), S = space -
 * going. At every angle the edge of the flight's ceiling counts, and the door's head unless it is past the door.
 *
 * Head: its lower side rests on the top nosing, the front corner t beyond it. Its back is under the flight's ceiling
 * line: (u - t) sin f' + v cos f' <= headroom cos p. Its front is under the ceiling, t sin f + v cos f <= ceiling,
 * and before the wall (t cos f <= space), under the door's head with its upper corner (t sin f + v cos f <= height)
 * or its front side (t <= space cos f + height sin f), or with the whole upper side, v <= height cos f -
 * (space + wall) sin f. Each bounds t from above, so the greatest counts.
 *
 * Or it is kept level throughout.
 *
 * Where the floor is only known to lie between two lengths, each term is taken at the end at which it leaves less: with
 * more floor the door's head and the door itself are farther off; the edge of a ceiling that ends over the floor, and
 * the whole upper side under the door's head, leave less.
 * @source own derivation; checked against the certified planner on seeded sections
 */
export function facingDoorFit(measures: FacingDoorMeasures, along: number, upright: number): FacingDoorFit {
  const floor = -max(along, upright) / 2;
  const tilted =
    measures.end === 'foot' ? tiltedAtFoot(measures, along, upright) : tiltedAtHead(measures, along, upright);
  const level = keptLevel(measures, along, upright);
  const best = level.clearance >= tilted.clearance ? level : tilted;
  return { ...best, clearance: max(best.clearance, floor) };
}

function tiltedAtFoot(m: FacingDoorMeasures, u: number, v: number): FacingDoorFit {
  const { doorHeight, headroom, rise, going, ceiling } = m;
  const pitch = atan2(rise, going);
  const space = m.space - going;
  const sp = sin(pitch);
  // Where the ceiling over the floor ends; beyond the wall it is no longer this ceiling.
  const trimmerX = max((ceiling - headroom) / (rise / going), going - (m.spaceMost ?? m.space));
  const trimmerZ = headroom + trimmerX * (rise / going);
  const head = min(doorHeight, trimmerZ);
  const at = (f: number): Branched => {
    const s = sin(f);
    const c = cos(f);
    const s2 = sin(pitch - f);
    const underEdge = (x: number, z: number): number => paddingBorne(sp * (z * c - x * s), s * s2, sp, u, v);
    const trimmer = underEdge(trimmerX, trimmerZ);
    const lintel = underEdge(-space, head);
    const within = paddingBorne(space * sp, s2, s * sp, u, v);
    const byDoor = max(lintel, within);
    if (trimmer <= byDoor) return { value: trimmer, branch: 0 };
    return { value: byDoor, branch: lintel >= within ? 1 : 4 };
  };
  const { least, branch } = leastOverAngles(0, pitch, at);
  return leastOf([
    [least, branch === 0 ? 'ceiling edge' : 'door head as it tilts'],
    [(head - v) / 2, 'door head'],
    [(ceiling - v) / 2, 'ceiling'],
    [(headroom * cos(pitch) - v) / 2, 'headroom'],
  ]);
}

function tiltedAtHead(m: FacingDoorMeasures, u: number, v: number): FacingDoorFit {
  const { wallThickness, space, spaceMost = space, headroom, rise, going, ceiling } = m;
  const pitch = atan2(rise, going);
  const sp = sin(pitch);
  const channel = headroom * cos(pitch);
  const head = min(m.doorHeight, ceiling);
  const at = (f: number): Branched => {
    const s = sin(f);
    const c = cos(f);
    const s2 = sin(pitch - f);
    const c2 = cos(pitch - f);
    const underLevel = (z: number): number => paddingBorne(channel * s + z * s2, s * s2, sp, u, v);
    const upTo = (t: number): number => paddingBorne(channel + t * s2, s2, c2, u, v);
    const byCeiling = underLevel(ceiling);
    const ways = [
      upTo(space / c),
      underLevel(head),
      upTo(space * c + head * s),
      (head * c - (spaceMost + wallThickness) * s - v) / 2,
    ];
    const byDoor = max(...ways);
    return byCeiling <= byDoor
      ? { value: byCeiling, branch: 0 }
      : { value: byDoor, branch: 1 + ways.indexOf(byDoor) };
  };
  const { least, branch } = leastOverAngles(0, pitch, at);
  return leastOf([
    [least, branch === 0 ? 'top nosing' : 'door head as it tilts'],
    [(head - v) / 2, 'door head'],
    [(ceiling - v) / 2, 'ceiling'],
    [(channel - v) / 2, 'headroom'],
  ]);
}

/** Level all the way: under every head, over the nosings with its front or back edge, clear of the door as it rises. */
function keptLevel(m: FacingDoorMeasures, u: number, v: number): FacingDoorFit {
  const { doorHeight, headroom, rise, going, ceiling } = m;
  const tangent = rise / going;
  const head = min(doorHeight, ceiling);
  const limits: [number, FacingDoorLimit][] = [
    [(head - v) / 2, 'door head'],
    [(ceiling - v) / 2, 'ceiling'],
    [paddingBorne(headroom, tangent, 1, u, v), 'headroom'],
  ];
  if (m.end === 'foot') {
    const space = m.space - going;
    const past = (space - u) / 2;
    limits.push([max(past, paddingBorne(head + space * tangent, tangent, 1, u, v)), 'door head']);
  }
  return { ...leastOf(limits), keptLevel: true };
}

function leastOf(limits: readonly (readonly [number, FacingDoorLimit])[]): FacingDoorFit {
  const [clearance, limit] = limits.reduce((least, next) => (next[0] < least[0] ? next : least));
  return { clearance, limit, keptLevel: false };
}
