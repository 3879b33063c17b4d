import { IN_CORNER, IN_FLIGHT_ARM, IN_PASSAGE, type StairTurnPlaces, type TurningBox } from './turnedPlace';

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { hypot, max, min } = Math;

/** Taken off what a steep tilt multiplies, so that rounding stays on the safe side [mm]. */
const SAFE = 1e-9;

/**
 * Whether a box surely stands in one of the ways of `StairTurnPlaces` at every angle of a range: its conditions with
 * the least and the greatest that each of their terms has there (interval arithmetic). No slack is granted, so what is
 * sure here holds at every angle that is looked at by itself; what is not sure may hold all the same.
 */
export class TurnedThrough {
  private u = 0;
  private v = 0;
  private q = 0;
  // The range looked at: least and greatest of the cosine and sine in plan, and of those and the tangent of the tilt.
  private cl = 1;
  private ch = 1;
  private sl = 0;
  private sh = 0;
  private ctl = 1;
  private cth = 1;
  private stl = 0;
  private sth = 0;
  private ttl = 0;
  private tth = 0;
  // Of its height, and of how far its upper edge stands back over its lower one [mm].
  private heightLow = 0;
  private heightHigh = 0;
  private edgeLow = 0;
  private edgeHigh = 0;

  constructor(private readonly places: StairTurnPlaces) {}

  /** Takes up a padded piece. */
  hold({ u, v, q }: TurningBox): void {
    this.u = u;
    this.v = v;
    this.q = q;
  }

  /**
   * @param mask the ways of which one has to hold throughout
   * @param c0 @param s0 cosine and sine of the lesser angle in plan, `c1` and `s1` of the greater, less than 0.1 rad apart
   * @param ct0 @param st0 @param tt0 cosine, sine and tangent of the lesser tilt, `ct1`, `st1`, `tt1` of the greater
   */
  standsThroughout(
    mask: number,
    c0: number,
    s0: number,
    c1: number,
    s1: number,
    ct0: number,
    st0: number,
    tt0: number,
    ct1: number,
    st1: number,
    tt1: number,
  ): boolean {
    const { u, v, q, places } = this;
    const { plan, depth } = places;
    // Over a rail it is looked at angle by angle.
    if (plan.overRail > 0) return false;
    const { flightWidth, passageWidth, ceiling } = plan;
    const beyond = plan.passageCeiling ?? ceiling;
    this.cl = c1;
    this.ch = c0;
    this.sl = s0;
    this.sh = s1;
    this.ctl = ct1;
    this.cth = ct0;
    this.stl = st0;
    this.sth = st1;
    this.ttl = tt0;
    this.tth = tt1;
    this.edgeLow = v * st0;
    this.edgeHigh = v * st1;
    const pLow = min(u * ct0 + v * st0, u * ct1 + v * st1);
    const pHigh = greatest(u, v, ct0, st0, ct1, st1);
    this.heightLow = min(u * st0 + v * ct0, u * st1 + v * ct1);
    this.heightHigh = greatest(v, u, ct0, st0, ct1, st1);
    const height = this.heightHigh;
    const reachHigh = greatest(pHigh, q, c0, s0, c1, s1);
    const inPassage = reachHigh <= passageWidth;
    if ((mask & IN_PASSAGE) !== 0 && inPassage && height <= min(ceiling, beyond)) return true;
    const broadHigh = greatest(q, pHigh, c0, s0, c1, s1);
    const inArm = broadHigh <= flightWidth;
    const overLow = min(pLow * c0 + q * s0, pLow * c1 + q * s1) - depth;
    const overHigh = reachHigh - depth;
    if ((mask & IN_CORNER) !== 0) {
      // Between two angles the corner's condition lies above its chord less p times the angle squared over 4.
      const bow = ((c0 - c1) ** 2 + (s1 - s0) ** 2) * 1.01 * (pHigh / 4);
      const round =
        min(
          flightWidth * c0 + passageWidth * s0 - pHigh * s0 * c0,
          flightWidth * c1 + passageWidth * s1 - pHigh * s1 * c1,
        ) -
        q -
        bow;
      if (inArm || inPassage || round >= 0) {
        const z = this.rest(overLow, overHigh);
        if ((inArm || z + height <= beyond) && this.heightFits(overLow, overHigh, z)) return true;
      }
    }
    if ((mask & IN_FLIGHT_ARM) === 0 || !inArm) return false;
    return this.standsBack(overLow, overHigh);
  }

  /** In the flight's arm, as far over the flight as leaves its top the most room. */
  private standsBack(low: number, high: number): boolean {
    const { u, q, cl, ch, sl, sh, ttl, tth, stl, sth, edgeLow, edgeHigh, places } = this;
    const { plan, slope } = places;
    let [backLow, backHigh] = [low, high];
    if (plan.end === 'foot') {
      const liftedLow = u * stl - plan.rise;
      const liftedHigh = u * sth - plan.rise;
      if (liftedLow >= 0) backLow = max(low, min(liftedLow / slope, (liftedLow * cl) / max(tth, 1e-12)));
      backHigh = max(
        high,
        liftedHigh <= 0 ? 0 : min(liftedHigh / slope, (liftedHigh * ch) / max(ttl, 1e-12)),
      );
    } else {
      const shortLow = this.heightLow - plan.ceiling;
      const shortHigh = this.heightHigh - plan.ceiling;
      if (shortHigh > 0 && tth >= 1e-9) {
        if (shortLow <= 0 || ttl < 1e-9) return false;
        backLow = max(
          low,
          (edgeLow + shortLow / tth) * cl + q * sl,
          shortLow / slope + edgeLow * cl + q * sl,
        );
        backHigh = max(
          high,
          (edgeHigh + shortHigh / ttl) * ch + q * sh,
          shortHigh / slope + edgeHigh * ch + q * sh,
        );
      }
    }
    return this.heightFits(backLow, backHigh, this.rest(backLow, backHigh));
  }

  /** The greatest height of its lowest point above the floor where it rests on what is below it. */
  private rest(low: number, high: number): number {
    const { u, q, cl, ch, sh, stl, ttl, tth, ctl, cth, edgeHigh, places } = this;
    const { plan, slope } = places;
    if (high <= 0) return 0;
    if (plan.end === 'foot') {
      const down = u * stl;
      const atEnd = plan.rise + slope * high - down;
      const onIt = plan.rise + (high / cl) * tth - down;
      const pastIt = plan.rise + slope * (high - u * ctl * cl);
      const atEdge = high <= u * ctl * cl ? onIt : low > u * cth * ch ? pastIt : max(onIt, pastIt);
      return max(0, atEnd, atEdge);
    }
    if (low <= 0) return 0;
    const pastFloor = max((low - q * sh) / ch - edgeHigh - SAFE, 0);
    const onNosings = slope * min(0, edgeHigh * ch + q * sh - low);
    return max(-pastFloor * ttl, onNosings);
  }

  private heightFits(low: number, high: number, z: number): boolean {
    const { u, v, q, cl, ch, sl, sh, ctl, cth, sth, ttl, tth, edgeLow, edgeHigh, places } = this;
    const { headroom, rise, ceiling, short, end } = places.plan;
    const height = this.heightHigh;
    if (high <= 0) return z + height <= ceiling;
    if (short) {
      if (high > short.reach) return false;
      if (high > short.run && z + height > short.ceiling) return false;
      if (end === 'head' && sth >= 1e-9 && high - edgeLow * cl - q * sl > short.line) return false;
    }
    if (end === 'head') {
      const top = min(height, v * cth + (high / cl) * tth);
      const at = max(0, high - u * ctl * cl);
      return (
        z + height <= ceiling &&
        z + v * cth <= headroom - places.slope * high &&
        z + top <= headroom - places.slope * at
      );
    }
    const overFloor = height - max(0, (low - q * sh) / ch - edgeHigh - SAFE) * ttl;
    const atEnd = high / cl < edgeLow ? min(height, u * sth + high / cl / ttl) : height;
    return (
      z + overFloor <= ceiling &&
      z + min(overFloor, atEnd) <= headroom + rise &&
      z + atEnd <= headroom + rise + places.slope * max(0, low - edgeHigh * ch - q * sh)
    );
  }
}

/** The greatest of x cos a + y sin a between two angles, x and y not negative. */
function greatest(x: number, y: number, c0: number, s0: number, c1: number, s1: number): number {
  // Rising at the first and falling at the second: the greatest is between.
  return y * c0 > x * s0 && y * c1 < x * s1 ? hypot(x, y) : max(x * c0 + y * s0, x * c1 + y * s1);
}
