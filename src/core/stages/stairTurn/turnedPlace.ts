// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { atan2, cos, max, min, sin, tan } = Math;

/** A turn at a stair's end, seen from the flight: a straight, then a passage across the way. */
export interface StairTurnPlan {
  readonly end: 'head' | 'foot';
  /** Clear width of the flight and of the straight [mm]. */
  readonly flightWidth: number;
  /** Headroom plumb above the line of nosings [mm]. */
  readonly headroom: number;
  /** [mm] */
  readonly rise: number;
  /** [mm] */
  readonly going: number;
  /** Level floor between the flight's end and the near side of the passage [mm]; 0: the turn is at the stair's end. */
  readonly straight: number;
  /** Clear width of the passage that leads off to one side [mm]. */
  readonly passageWidth: number;
  /** Clear height over the level floor [mm]. */
  readonly ceiling: number;
  /** Clear height of the way that leads off, where it is lower: the head of a door [mm]. */
  readonly passageCeiling?: number | undefined;
  /** Height [mm] above which the inner sides are clear air; 0: walls. */
  readonly overRail: number;
  /** The flight ends before the piece does, at a landing. */
  readonly short?: ShortOfPiece | undefined;
}

/** A flight that leads from a landing to a turn and is shorter than the piece [mm], from the turn's end of it on. */
export interface ShortOfPiece {
  /** To its other end: the edge of the landing. */
  readonly run: number;
  /** Head: to where its line of nosings meets the landing. */
  readonly line: number;
  /** To the wall behind the landing. */
  readonly reach: number;
  /** The ceiling over the landing, above the floor of the turn. */
  readonly ceiling: number;
}

/** A padded piece as it is carried along the flight [mm]. */
export interface TurningBox {
  readonly u: number;
  readonly v: number;
  readonly q: number;
}

/** The ways of standing at an angle in plan and a tilt, one bit each. */
export const IN_FLIGHT_ARM = 1;
/** It stands in the outer corner, over the floor of the turn. */
export const IN_CORNER = 2;
/** It stands in the outer corner and lies in the passage after it. */
export const IN_PASSAGE = 4;
/** It stands in the outer corner, and over the rail. */
export const OVER_RAIL = 8;
/** Besides: it can be moved from the flight's arm to where it stands in the outer corner. */
export const LINKED = 16;
/** All ways in which it stands pushed into the outer corner. */
export const IN_OUTER_CORNER = IN_CORNER | IN_PASSAGE | OVER_RAIL;
const EVERY_WAY = IN_FLIGHT_ARM | IN_OUTER_CORNER | LINKED;

/** Where it stands: how far it reaches out over the flight [mm], negative: not; and its lowest point above the floor. */
export interface TurnedPlace {
  readonly over: number;
  readonly z: number;
}

/** Slack of every comparison [mm]: above rounding, far below what is drawn off a clearance. */
const SLACK = 1e-7;
/** A tilt nearer upright than this counts as upright [rad]. */
export const UPRIGHT = Math.PI / 2 - 1e-7;

/**
 * Whether and how a box stands at an angle in plan (0: along the flight, a right angle: along the passage) and a tilt,
 * its end towards the flight the lower one at a stair's head and the higher one at its foot.
 *
 * In plan it is a rectangle p x q, p = u cos t + v sin t, pushed into the outer corner, so that it reaches out over the
 * flight by p cos a + q sin a - depth. It stands in the flight's arm alone (p sin a + q cos a <= flight width), where it
 * may also stand farther back; in the corner (the rectangle round a corner); in the passage alone; or above a rail,
 * where only heights count. It rests on what is below it, so its height follows:
 * - head: on the floor, or lower where its lower edge is past the edge of the floor, over the nosings;
 * - foot: on the floor, or its higher end on the nosings, or its lower side on the first nosing.
 * Its top is under the ceiling over the floor and under the flight's ceiling line over the flight; what stands across the
 * edge is under the lower of the two there.
 * @source own derivation; the plan as in Moretti, College Math. J. 33(3), 2002, 196-200
 */
export class StairTurnPlaces {
  readonly slope: number;
  readonly pitch: number;
  readonly channel: number;
  readonly depth: number;
  private u = 0;
  private v = 0;
  private q = 0;
  // The attitude looked at: cosine and sine in plan; cosine, sine and tangent of the tilt; what follows from them.
  private c = 1;
  private s = 0;
  private ct = 1;
  private st = 0;
  private tt = 0;
  /** Length in plan, height, and how far its upper edge stands back over its lower one at the raised end [mm]. */
  private p = 0;
  private height = 0;
  private edge = 0;

  constructor(readonly plan: StairTurnPlan) {
    this.slope = plan.rise / plan.going;
    this.pitch = atan2(plan.rise, plan.going);
    this.channel = plan.headroom * cos(this.pitch);
    this.depth = plan.straight + plan.passageWidth;
  }

  /** Takes up a padded piece. */
  hold({ u, v, q }: TurningBox): void {
    this.u = u;
    this.v = v;
    this.q = q;
  }

  /** Length in plan and height at a tilt. */
  extent(tilt: number): { readonly p: number; readonly height: number } {
    const c = cos(tilt);
    const s = sin(tilt);
    return { p: this.u * c + this.v * s, height: this.u * s + this.v * c };
  }

  /** The ways in which it stands there, as bits; 0: none. */
  waysAt(yaw: number, tilt: number): number {
    this.turn(yaw, tilt);
    return this.ways(EVERY_WAY);
  }

  /**
   * Those of the ways that are asked for, where the cosine and the sine in plan, and those and the tangent of the tilt,
   * are known.
   */
  waysOf(c: number, s: number, ct: number, st: number, tt: number, asked = EVERY_WAY): number {
    this.c = c;
    this.s = s;
    this.ct = ct;
    this.st = st;
    this.tt = tt;
    this.measure();
    return this.ways(asked);
  }

  private ways(asked: number): number {
    const { plan, c, s, p, q, height } = this;
    const { flightWidth, passageWidth } = plan;
    const beyond = plan.passageCeiling ?? plan.ceiling;
    const reach = p * c + q * s;
    const broad = p * s + q * c;
    const inPassage = reach <= passageWidth + SLACK;
    const inArm = broad <= flightWidth + SLACK;
    const over = reach - this.depth;
    let ways = inPassage && height <= min(plan.ceiling, beyond) + SLACK ? IN_PASSAGE : 0;
    const inCorner = inArm || inPassage || flightWidth * c + passageWidth * s - p * s * c - q >= -SLACK;
    const rest = this.rest(over);
    // What stands out of the flight's arm is under the way's own head.
    const underHead = inArm || rest + height <= beyond + SLACK;
    const cornerAsked = (asked & (IN_CORNER | LINKED)) !== 0;
    const fitsCorner = cornerAsked && inCorner && underHead && this.heightFits(over, rest);
    if (fitsCorner) ways |= IN_CORNER;
    if (inArm && (asked & (IN_FLIGHT_ARM | LINKED)) !== 0) {
      const back = this.farBack(over);
      if (back === over && cornerAsked ? fitsCorner : this.heightFits(back, this.rest(back))) {
        ways |= IN_FLIGHT_ARM;
        if ((asked & LINKED) !== 0 && fitsCorner && this.slideFits(over, back)) ways |= LINKED;
      }
    }
    if (plan.overRail > 0 && (asked & OVER_RAIL) !== 0) {
      const raised = this.aboveRail(over);
      if (raised + height <= beyond + SLACK && this.heightFits(over, raised)) ways |= OVER_RAIL;
    }
    return ways;
  }

  /** Where it stands there in one of the ways. */
  placeAt(yaw: number, tilt: number, way: number): TurnedPlace {
    this.turn(yaw, tilt);
    const least = this.p * this.c + this.q * this.s - this.depth;
    const over = way === IN_FLIGHT_ARM ? this.farBack(least) : least;
    return { over, z: way === OVER_RAIL ? this.aboveRail(over) : this.rest(over) };
  }

  /** Height of its lowest point above the floor where it rests on what is below it. */
  restAt(yaw: number, tilt: number, over: number): number {
    this.turn(yaw, tilt);
    return this.rest(over);
  }

  private turn(yaw: number, tilt: number): void {
    this.c = max(cos(yaw), 1e-12);
    this.s = sin(yaw);
    this.ct = cos(tilt);
    this.st = sin(tilt);
    this.tt = tan(min(tilt, UPRIGHT));
    this.measure();
  }

  private measure(): void {
    const { u, v, ct, st } = this;
    this.p = u * ct + v * st;
    this.height = u * st + v * ct;
    this.edge = v * st;
  }

  /** In the flight's arm: as far over the flight as leaves its top the most room, but no farther than is of use. */
  private farBack(least: number): number {
    const { plan, slope, u, q, c, s, tt, edge } = this;
    if (plan.end === 'foot') {
      // Its lower end on the floor, and the higher end on the nosings or its lower side on the first of them.
      const raised = u * this.st - plan.rise;
      return max(least, min(raised / slope, (raised * c) / max(tt, 1e-12)));
    }
    // So low over the flight that its top is under the ceiling.
    const short = this.height - plan.ceiling;
    // Level it is as high everywhere.
    if (short <= 0 || tt < 1e-9) return least;
    const byFloor = (edge + short / tt) * c + q * s;
    const byNosings = short / slope + edge * c + q * s;
    return max(least, byFloor, byNosings);
  }

  private rest(over: number): number {
    const { plan, slope, q, c, s, edge } = this;
    if (over <= 0) return 0;
    if (plan.end === 'foot') return this.aboveNosings(over, plan.rise);
    const pastFloor = max((over - q * s) / c, edge) - edge;
    const onNosings = slope * min(0, edge * c + q * s - over);
    return max(-pastFloor * this.tt, onNosings);
  }

  /** At the foot: high enough for its lower side over the nosings, or over a rail that runs so far above them. */
  private aboveNosings(over: number, first: number): number {
    const { slope, u, c, st, tt } = this;
    const long = u * this.ct;
    const atEnd = first + slope * over - u * st;
    const atEdge = over <= long * c ? first + (over / c) * tt - u * st : first + slope * (over - long * c);
    return max(0, atEnd, atEdge);
  }

  private aboveRail(over: number): number {
    const { plan } = this;
    if (plan.end === 'head') return plan.overRail;
    const first = plan.rise + plan.overRail;
    return max(first, over > 0 ? this.aboveNosings(over, first) : 0);
  }

  /**
   * Whether it fits all the way between two places of one attitude at both of which it fits. At the head it does: the
   * farther over the flight, the lower under the level ceiling and the nearer to the flight's. At the foot its higher
   * end has to pass under the edge of the flight's ceiling; what that asks for is linear between the places looked at.
   */
  private slideFits(least: number, back: number): boolean {
    if (this.plan.end === 'head' || back <= max(least, 0)) return true;
    const edge = this.edge * this.c;
    for (const over of [1e-6, edge, edge + this.q * this.s]) {
      if (over > least && over < back && !this.heightFits(over, this.rest(over))) return false;
    }
    return true;
  }

  /**
   * Whether it comes along the flight, lying on its pitch, to where it begins to turn. At the head it does where it fits
   * the flight. At the foot its upper edge passes under the end of the ceiling over the floor; what that asks for is
   * linear between the places looked at.
   */
  comesAlong(): boolean {
    // From a short flight it comes as the flight's section lets it.
    if (this.plan.end === 'head' || this.plan.short) return true;
    this.turn(0, this.pitch);
    const begin = this.farBack(this.p - this.depth);
    for (const over of [this.edge, this.u * this.ct, this.p]) {
      if (over > begin && !this.heightFits(over, this.rest(over))) return false;
    }
    return true;
  }

  private heightFits(over: number, z: number): boolean {
    return this.shortFits(over, z) && this.ceilingsFit(over, z);
  }

  /** Over a short flight: its lower edge on the nosings, and what is beyond the flight under the landing's ceiling. */
  private shortFits(over: number, z: number): boolean {
    const { short, end } = this.plan;
    if (!short || over <= 0) return true;
    if (over > short.reach + SLACK) return false;
    if (over > short.run + SLACK && z + this.height > short.ceiling + SLACK) return false;
    const low = over - this.edge * this.c - this.q * this.s;
    return end === 'foot' || this.st < 1e-9 || low <= short.line + SLACK;
  }

  private ceilingsFit(over: number, z: number): boolean {
    const { plan, slope, u, v, q, c, s, tt, edge, height } = this;
    const { headroom, rise, ceiling } = plan;
    if (over <= 0) return z + height <= ceiling + SLACK;
    if (plan.end === 'head') {
      // Its top rises from the end over the flight: above the edge of the floor, or its highest before that.
      const low = v * this.ct;
      const long = u * this.ct;
      const across = over / c;
      const top = across <= long ? low + across * tt : height;
      const at = across <= long ? 0 : over - long * c;
      return (
        z + height <= ceiling + SLACK &&
        z + low <= headroom - slope * over + SLACK &&
        z + top <= headroom - slope * at + SLACK
      );
    }
    const pastFloor = (over - q * s) / c;
    // The highest that stands over the floor or across its edge.
    const overFloor = height - max(0, pastFloor - edge) * tt;
    const end = over / c >= edge ? height : min(height, u * this.st + over / c / tt);
    return (
      z + overFloor <= ceiling + SLACK &&
      z + min(overFloor, end) <= headroom + rise + SLACK &&
      z + end <= headroom + rise + slope * max(0, over - edge * c - q * s) + SLACK
    );
  }
}
