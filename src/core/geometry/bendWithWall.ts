import { leastBetween } from './goldenSection';
import { paddingBorne } from './paddingBorne';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { cos, max, min, sin } = Math;

/**
 * A bend in elevation: a level floor from a facing wall up to the origin, where a slope begins that rises by
 * `pitch`; above, an inner corner (the trimmer) `level` above the floor and `slope` square to the slope's
 * line, with a level ceiling before it and one parallel to the slope after it. Turned half round it is the
 * head of a flight: the ceilings are the floor and the slope, and the top nosing is the inner corner.
 */
export interface Bend {
  /** Height of the level part [mm]. */
  readonly level: number;
  /** Height of the sloping part, square to it [mm]. */
  readonly slope: number;
  /** By how much it bends [rad], more than 0 and less than a right angle. */
  readonly pitch: number;
  /** From the facing wall to where the two outer lines meet [mm]; may be negative; Infinity: no wall. */
  readonly space: number;
}

/**
 * Padding [mm a side] with which a rectangle, `along` x `upright`, passes the bend from level to parallel to
 * the slope. Level, it may stand at any height, with its centre at most `centreBefore` past the origin.
 *
 * At an angle f it is farthest from the inner corner when its lower side's ends stand on both outer lines.
 * Then the inner corner is N/sin(pitch) away from its upper side,
 *   N = level sin f' + slope sin f - along sin f sin f' - upright sin(pitch), f + f' = pitch,
 * as round any corner. It needs w = upright sin f + along sin f' / sin(pitch) before the origin; where the
 * wall leaves less it is shifted up along the slope by (w - space)/cos(pitch), which brings it nearer to the
 * inner corner by sin f' of that. Both are needed at every angle on the way.
 * Both are linear in the padding, so each angle gives its own, and the least over the angles counts.
 * (At an angle at which it fits in one of the two parts by itself more may be possible: so this is sufficient.)
 * @param upTo the greatest angle it is turned to [rad]; the pitch unless it leaves the slope before lying along it
 * @source the rectangle round a corner (Moretti, College Math. J. 33(3), 2002, 196-200) for any turn; wall:
 * ours; both checked against the planner on seeded scenes
 */
export function bendWithWall(
  along: number,
  upright: number,
  bend: Bend,
  centreBefore = 0,
  upTo = bend.pitch,
): number {
  const { level, slope, pitch, space } = bend;
  const least = -max(along, upright) / 2;
  const most = min((level - upright) / 2, (slope - upright) / 2, space + centreBefore - along / 2);
  if (most <= least) return least;
  turnThrough(pitch, upTo);
  const cp = cos(pitch);
  const sp = sin(pitch);
  let worst = Infinity;
  let at = 0;
  for (let i = 0; i <= N; i++) {
    const value = borneAt(SIN[i]!, SIN_LEFT[i]!, along, upright, level, slope, space, cp, sp);
    if (value < worst) {
      worst = value;
      at = i;
    }
  }
  const low = (upTo * max(0, at - 1)) / N;
  const high = (upTo * min(N, at + 1)) / N;
  const dip = leastBetween(
    (f) => borneAt(sin(f), sin(pitch - f), along, upright, level, slope, space, cp, sp),
    low,
    high,
    NARROWINGS,
  );
  return max(least, min(most, worst, dip.value));
}

// After so many the angle is known to a few hundred-thousandths, and the least value to less than 1e-6 mm.
const NARROWINGS = 17;
// Angles first looked at, ends included, are N + 1.
const N = 24;
// The sines at those angles f, and of pitch - f, kept for the bend last asked about: a flight is asked about for
// one piece after another, and at its foot and its head.
const SIN = new Float64Array(N + 1);
const SIN_LEFT = new Float64Array(N + 1);
let lastPitch = NaN;
let lastUpTo = NaN;

function turnThrough(pitch: number, upTo: number): void {
  if (pitch === lastPitch && upTo === lastUpTo) return;
  for (let i = 0; i <= N; i++) {
    const f = (upTo * i) / N;
    SIN[i] = sin(f);
    SIN_LEFT[i] = sin(pitch - f);
  }
  lastPitch = pitch;
  lastUpTo = upTo;
}

/** The padding borne at one angle f, s its sine and s2 that of what is left of the pitch. */
function borneAt(
  s: number,
  s2: number,
  along: number,
  upright: number,
  level: number,
  slope: number,
  space: number,
  cp: number,
  sp: number,
): number {
  const free = level * s2 + slope * s;
  const byCorner = paddingBorne(free, s * s2, sp, along, upright);
  if (space === Infinity) return byCorner;
  const shift = (s2 * sp) / cp;
  const byWall = paddingBorne(
    free + space * shift,
    s * s2 + (shift * s2) / sp,
    sp + shift * s,
    along,
    upright,
  );
  return min(byCorner, byWall);
}
