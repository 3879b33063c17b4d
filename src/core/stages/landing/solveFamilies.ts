import { bendWithWall } from '../../geometry/bendWithWall';
import { leastBetween } from '../../geometry/goldenSection';
import { bracket, greatestPadding } from '../../geometry/rootFinding';
import { turnsRightAngle } from '../../geometry/turnsRightAngle';
import { THINNEST, type PieceSize } from '../../measures/piece';
import { sizesOfHold, type Hold } from '../../motion/hold';
import type { FamilyFit, RoundAs } from './familyFit';
import { isHalfLanding, type HalfLandingPlan, type LandingPlan } from './landingPlan';
import { ON_FLIGHTS } from './slidRound';
import { BETWEEN, SWUNG_OVER, bestSwing, type BestSwing } from './swingUp';
import { closestAt, type Closest } from '../../motion/closest';

const WHERE_THEY_MEET = closestAt('where flight and landing meet', 'slope', 'nosings', 'ceiling');
const AS_SWUNG = closestAt('as it is swung up on the landing', 'anything');
const IN_THE_TURN = closestAt('in the turn on the landing', 'sides', 'far wall', 'inner corner');
const UNDER_CEILING = closestAt('under the ceiling over the landing', 'ceiling');
const OVER_FLIGHTS = closestAt('over the flights, as it turns on the landing', 'slope', 'nosings');
const UNDER_CEILINGS = closestAt('under the ceilings, as it is raised and laid back', 'ceiling', 'slope');

// Taken out of Math once: a look-up in every inner loop is slow where the host wraps its globals.
const { PI, SQRT1_2, SQRT2, acos, asin, atan2, cos, hypot, max, min, sin, sqrt, tan } = Math;

/** What is asked of the families. */
export interface FamilyAsk {
  /** Padding [mm a side] below which no answer is wanted. */
  readonly atLeast?: number;
  /** How high the padded piece may be raised above what is below it [mm]. */
  readonly mostRaise?: number;
  /** Only this way of going round. */
  readonly only?: RoundAs;
  /** Flights that end before the piece does. */
  readonly short?: ShortFlights;
}

/**
 * A flight beside a landing that ends before the piece does. How the piece comes on to it from the landing and off it
 * at its other end is not the family's business then; how far it reaches over it while it goes round is.
 */
export interface ShortFlight {
  /** From the landing's edge the piece may reach so far while it goes round [mm]. */
  readonly reach: number;
  /** From the landing's edge to where the flight's line of nosings meets the floor at its other end [mm]. */
  readonly line: number;
}

/** The flights beside a landing that are shorter than the piece; undefined: as long as any piece. */
export interface ShortFlights {
  readonly lower?: ShortFlight | undefined;
  readonly upper?: ShortFlight | undefined;
}

/** Angles looked at in a sweep from the pitch to a steeper tilt, before the least is narrowed down. */
const SWEEP = 12;
/** How often it is narrowed down. */
const SWEEP_STEPS = 18;
/** Greatest value of 2 s - s^3: from there on the height on the way out falls all the way. */
const MOST_SHARE = (4 / 3) * sqrt(2 / 3);
/** How near the greatest padding has to be [mm]. */
const FINENESS = 0.005;
/** Tilts looked at before the best is narrowed down. */
const TILTS = 8;
/** How often the best tilt is narrowed down. */
const TILT_STEPS = 14;
/** How near the least tilt that turns is known [rad]. */
const TILT_FINENESS = 5e-6;
/** What a move strays between two key attitudes raises it by no more [mm]. */
const STRAYS = 1;
/** Parts of the turn in which a tilted piece's raise is bounded, and what is over it looked at. */
const YAWS = 12;
/** Parts of the turn smaller than this are not halved [rad]. */
const YAW_FINENESS = PI / 2 / YAWS / 256;
/** Nor are such as lose less than this [mm]. */
const YAW_LOSS = 0.2;
/** What a tilted piece strays from its height between two key attitudes [mm]. */
const BETWEEN_YAWS = 0.5;
/** It is turned in plan by no more than so far between two key attitudes [rad]. */
export const YAW_STEP = PI / 120;
/** A side with padding [mm]. */
const grown = (side: number, padding: number): number => max(THINNEST, side + 2 * padding);
/** Kept clear of a ceiling or wall that decides the tilt [mm]: far more than any rounding. */
const CLEAR = 0.001;
/** How far beyond the clearance it is asked what stands in the way [mm]. */
const NEAR = 0.05;
/** Paddings nearer than this to each other are the same [mm]. */
const SAME = 1e-6;

/**
 * The best of the families of motions round a landing for a piece held so on both flights, in closed form:
 * along the lower flight, lying on its pitch; at the landing's edge brought level, or raised to a steeper
 * tilt, or stood upright; turned about on the landing in that attitude, its plan a rectangle pushed into the
 * outer corner, its back over the lower flight and then its front over the upper as far as headroom and
 * nosings allow, raised in between where it has to stand above the upper nosings; and back along the pitch.
 * Or, on a half landing, moved across sideways; or swung up across it and down again (`bestSwing`).
 *
 * Conditions, all sufficient: the rectangle round a corner in plan
 * (`turnsRightAngle`); its diagonal in plan within the landing and what it may overhang; level over
 * the lower flight by (headroom - height)/slope, over the upper once it is raised by rise + slope x overhang;
 * the bends between level and pitch (`bendWithWall`); for a steeper tilt the sweep's height under the ceilings.
 * Where the ceiling over the landing is higher than the flight's, only what is said in `entrySpare` uses it.
 * It never falls when a width, depth, headroom or ceiling grows or the piece shrinks.
 *
 * @source own derivation, replayed in the tests; Moretti, College Math. J. 33(3), 2002, for the turn in plan
 * @returns undefined where no family bears what is asked
 */
export function bestFamilyFit(
  plan: LandingPlan,
  piece: PieceSize,
  hold: Hold,
  ask: FamilyAsk = {},
): FamilyFit | undefined {
  return solvedFamilies(plan, piece, hold, ask, true).at(-1);
}

/** The best of each family that bears what is asked, for a piece held so. */
export const eachFamilyFit = (
  plan: LandingPlan,
  piece: PieceSize,
  hold: Hold,
  ask: FamilyAsk = {},
): readonly FamilyFit[] => solvedFamilies(plan, piece, hold, ask, false);

/** @param better only families that leave more than those before */
function solvedFamilies(
  plan: LandingPlan,
  piece: PieceSize,
  hold: Hold,
  { atLeast = -piece.length / 2, mostRaise = Infinity, only, short = LONG_FLIGHTS }: FamilyAsk,
  better: boolean,
): FamilyFit[] {
  const shape = shapeOf(plan, short);
  const { along, across, upright } = sizesOfHold(piece, hold);
  const most = min(
    (min(plan.widthIn, plan.widthOut) - across) / 2,
    short.lower ? Infinity : (shape.channelIn - upright) / 2,
    short.upper ? Infinity : (shape.channelOut - upright) / 2,
  );
  const least = max(atLeast, (THINNEST - max(along, upright)) / 2);
  const thinned = (THINNEST - min(along, upright)) / 2;
  const fits: FamilyFit[] = [];
  const floor = (): number => {
    const last = better ? fits.at(-1) : undefined;
    return last ? last.clearance + SAME : least;
  };
  const consider = (as: RoundAs, sideways: boolean, limit: number): void => {
    if (only !== undefined && as !== only) return;
    const from = floor();
    const upTo = min(most, limit);
    if (upTo < from) return;
    const roundAt = (c: number, tilt: number): Round =>
      roundOf(as, grown(along, c), grown(upright, c), grown(across, c), tilt, sideways);
    const tiltAt = (c: number): { spare: number; tilt: number } => {
      const spareAt: SpareAt = (round, wanted) => {
        const raised = mostRaise === Infinity ? 0 : raiseOf(shape, round);
        return raised > mostRaise ? mostRaise - raised : roundSpare(shape, round, wanted);
      };
      return bestTilt(shape, as, (tilt) => roundAt(c, tilt), spareAt);
    };
    const spare = (c: number): number => tiltAt(c).spare;
    const clearance = greatestOf(from, upTo, thinned, spare);
    if (clearance === undefined) return;
    const { tilt } = tiltAt(clearance);
    const round = roundAt(clearance, tilt);
    const raise = raiseOf(shape, round);
    const raisedTo = raisedToOf(shape, round);
    const critical =
      clearance >= most - NEAR
        ? ON_FLIGHTS
        : clearance >= limit - NEAR
          ? WHERE_THEY_MEET
          : closestRound(shape, roundOf(as, round.u + NEAR, round.v + NEAR, round.q + NEAR, tilt, sideways));
    fits.push({ clearance, hold, as, tilt, sideways, raise, raisedTo, critical });
  };
  const bends = min(
    short.lower ? Infinity : entryBend(shape, along, upright),
    short.upper ? Infinity : exitBend(shape, along, upright),
  );
  if (plan.across !== undefined) consider('level', true, min(bends, (plan.depthIn - along) / 2));
  consider('level', false, bends);
  // Raised farther its plan is shorter only past twice the angle of its diagonal.
  consider('upright', false, most);
  if (plan.across !== undefined) consider('upright', true, (plan.depthIn - upright) / 2);
  consider('tilted', false, most);
  const long = !short.lower && !short.upper && (only ?? 'swung') === 'swung';
  const swing = isHalfLanding(plan) && long ? swung(plan, piece, hold, most, mostRaise, floor()) : undefined;
  if (swing) fits.push(swing);
  return fits;
}

/** The greatest padding with something to spare; what takes the piece's thickness away is looked at last. */
function greatestOf(
  from: number,
  upTo: number,
  thinned: number,
  spare: (padding: number) => number,
): number | undefined {
  const thick = upTo >= thinned ? greatestPadding(max(from, thinned), upTo, spare, FINENESS) : undefined;
  if (thick !== undefined || from >= thinned) return thick;
  return greatestPadding(from, min(upTo, thinned), spare, FINENESS);
}

/** Swung up and down again, where that leaves as much as is asked. */
function swung(
  plan: HalfLandingPlan,
  piece: PieceSize,
  hold: Hold,
  most: number,
  mostRaise: number,
  least: number,
): FamilyFit | undefined {
  const sizes = sizesOfHold(piece, hold);
  const shape = shapeOf(plan);
  const under = (c: number): number => max(SWUNG_OVER, runOnTo(shape, grown(sizes.along, c))) + STRAYS;
  const at = (c: number): BestSwing =>
    bestSwing(
      plan,
      {
        along: grown(sizes.along, c) / 2,
        upright: grown(sizes.upright, c) / 2,
        across: grown(sizes.across, c) / 2,
      },
      mostRaise - under(c),
    );
  const from = least + BETWEEN;
  const thinned = (THINNEST - min(sizes.along, sizes.upright)) / 2 + BETWEEN;
  const solved = greatestOf(from, most, thinned, (c) => at(c).spare);
  if (solved === undefined) return undefined;
  const clearance = solved - BETWEEN;
  const { raise: raisedTo, swings } = at(clearance);
  const raise = raisedTo + under(clearance);
  const critical = solved >= most - NEAR ? ON_FLIGHTS : AS_SWUNG;
  return { clearance, hold, as: 'swung', tilt: PI / 2, sideways: true, raise, raisedTo, critical, swings };
}

/** The plan with what follows from it. */
interface LandingShape extends LandingPlan {
  readonly short: ShortFlights;
  readonly slope: number;
  readonly pitch: number;
  /** Clear heights square to the pitch on the two flights [mm]. */
  readonly channelIn: number;
  readonly channelOut: number;
  /** Height above the landing at which the ceiling over the upper flight begins, or the landing's if lower. */
  readonly lip: number;
}

const LONG_FLIGHTS: ShortFlights = {};

function shapeOf(plan: LandingPlan, short: ShortFlights = LONG_FLIGHTS): LandingShape {
  const { headroom, rise, going, ceiling } = plan;
  const pitch = atan2(rise, going);
  const lip = min(ceiling, headroom + rise);
  return {
    ...plan,
    short,
    slope: rise / going,
    pitch,
    channelIn: headroom * cos(pitch),
    channelOut: (lip - rise) * cos(pitch),
    lip,
  };
}

/** From the lower flight's pitch to level on the landing; the flight and its ceiling reach as far as is needed. */
function entryBend(s: LandingShape, along: number, upright: number): number {
  // Turned half round: the ceilings are the floor and the slope, the landing's edge is the inner corner.
  const past = (s.ceiling - s.headroom) / s.slope;
  const bend = { level: s.ceiling, slope: s.channelIn, pitch: s.pitch, space: s.depthIn - past };
  return bendWithWall(along, upright, bend, Infinity);
}

/** From level on the landing to the upper flight's pitch, under the edge where the flight's ceiling begins. */
function exitBend(s: LandingShape, along: number, upright: number): number {
  const bend = { level: s.lip, slope: s.channelOut, pitch: s.pitch, space: s.depthOut - s.going };
  return bendWithWall(along, upright, bend, Infinity);
}

/** A piece as it goes round: its sides along, upright and across as on the flight, its plan's length, its height [mm]. */
interface Round {
  readonly as: RoundAs;
  readonly u: number;
  readonly v: number;
  readonly q: number;
  readonly p: number;
  readonly height: number;
  readonly tilt: number;
  readonly sideways: boolean;
}

function roundOf(as: RoundAs, u: number, v: number, q: number, tilt: number, sideways: boolean): Round {
  return { as, u, v, q, ...extentOf(as, u, v, tilt), tilt, sideways };
}

/** Length in plan and height [mm] of a piece as it goes round. */
export function extentOf(
  as: RoundAs,
  u: number,
  v: number,
  tilt: number,
): { readonly p: number; readonly height: number } {
  if (as === 'level') return { p: u, height: v };
  if (as === 'upright') return { p: v, height: u };
  return { p: u * cos(tilt) + v * sin(tilt), height: u * sin(tilt) + v * cos(tilt) };
}

/** What is spare at a tilt; where it is less than `wanted`, anything between the two. */
type SpareAt = (round: Round, wanted: number) => number;

/** The tilt in which a family goes round, with the most to spare. */
function bestTilt(
  s: LandingShape,
  as: RoundAs,
  roundAt: (tilt: number) => Round,
  spareAt: SpareAt,
): { readonly spare: number; readonly tilt: number } {
  if (as !== 'tilted') {
    const tilt = as === 'level' ? 0 : PI / 2;
    return { spare: spareAt(roundAt(tilt), -Infinity), tilt };
  }
  const { u, v, q } = roundAt(s.pitch);
  // From the pitch up to what the ceiling allows on the way to the greatest height, and what the depths allow.
  const diagonal = hypot(u, v);
  const depth = min(s.depthIn, s.depthOut) - q;
  const byHeight = s.lip >= diagonal ? PI / 2 : asin((s.lip - CLEAR) / diagonal) - atan2(v, u);
  const steepest = min(byHeight, depth >= v ? PI / 2 : asin(max(0, depth - CLEAR) / v));
  let best = { spare: steepest - s.pitch, tilt: s.pitch };
  if (best.spare < 0) return best;
  best.spare = -Infinity;
  const look = (tilt: number): number => {
    const spare = spareAt(roundAt(tilt), best.spare);
    if (spare > best.spare) best = { spare, tilt };
    return spare;
  };
  const step = (steepest - s.pitch) / TILTS;
  for (let i = 0; i <= TILTS; i++) look(s.pitch + step * i);
  leastBetween(
    (tilt) => -look(tilt),
    max(s.pitch, best.tilt - step),
    min(steepest, best.tilt + step),
    TILT_STEPS,
  );
  if (best.spare < 0) look(leastTurned(s, u, v, q, steepest));
  return best;
}

/**
 * The least tilt with which it just turns in plan, its plan growing shorter with the tilt. Its front may have
 * room to be so low over the upper flight, and then again only where it is much steeper: two tops of what is spare.
 */
function leastTurned(s: LandingShape, u: number, v: number, q: number, steepest: number): number {
  const tooLong = (tilt: number): boolean => planSpare(s, u * cos(tilt) + v * sin(tilt), q) < 0;
  return bracket(s.pitch, steepest, tooLong, TILT_FINENESS).fails;
}

/** How far the piece is from not going round in this attitude [mm]; negative where it does not. */
function roundSpare(s: LandingShape, round: Round, wanted: number): number {
  const within = reachSpare(s, round);
  return within < 0 || within < wanted ? within : min(within, turnSpare(s, round, wanted));
}

/** How far short flights leave it room to reach over them while it goes round, its lower side on their nosings. */
function reachSpare({ short, depthIn, depthOut }: LandingShape, round: Round): number {
  if (!short.lower && !short.upper) return Infinity;
  const { as, u, q, p, tilt, sideways } = round;
  const reach = sideways ? p : hypot(p, q);
  let spare = Infinity;
  if (short.lower) {
    spare = short.lower.reach + depthIn - reach;
    if (as === 'tilted') spare = min(spare, short.lower.line + depthIn - u * cos(tilt));
  }
  if (short.upper) spare = min(spare, short.upper.reach + depthOut - reach);
  return spare;
}

function turnSpare(s: LandingShape, round: Round, wanted: number): number {
  const { as, u, v, q, p, height, tilt, sideways } = round;
  if (as === 'tilted') {
    // The quick ones first: most tilts that are looked at are not the best.
    let spare = tiltedOverhangSpare(s, round, wanted);
    if (spare < wanted) return spare;
    spare = min(spare, planSpare(s, p, q));
    return spare < 0 || spare < wanted ? spare : min(spare, sweepSpare(s, u, v, tilt));
  }
  const inPlan = sideways ? s.depthIn - p : planSpare(s, p, q);
  if (inPlan < 0) return inPlan;
  const over = sideways ? s.ceiling - height : levelOverhangSpare(s, p, q, height);
  if (over < 0 || as === 'level') return min(inPlan, over);
  return min(inPlan, over, sweepSpare(s, u, v, tilt));
}

/** What stands in the way of a little more, in words. */
function closestRound(s: LandingShape, { as, u, v, q, p, height, tilt, sideways }: Round): Closest {
  if ((sideways ? s.depthIn - p : planSpare(s, p, q)) < 0) return IN_THE_TURN;
  if (height > s.ceiling) return UNDER_CEILING;
  return as === 'level' || sweepSpare(s, u, v, tilt) >= 0 ? OVER_FLIGHTS : UNDER_CEILINGS;
}

/** The turn in plan: the corners, and on a half landing across it. */
function planSpare(s: LandingShape, p: number, q: number): number {
  const diagonal = hypot(p, q);
  if (s.across === undefined) return roundCorner(p, q, s.widthIn, s.widthOut);
  if (diagonal > s.across) {
    // The corners half-way round count here too: without them what is spare would fall where the tilt that is
    // looked for grows, and the best tilt would be taken to be where the piece just turns.
    const first = halfwayRound(p, q, s.widthIn, s.depthIn);
    return min(s.across - diagonal, first, halfwayRound(p, q, s.depthOut, s.widthOut));
  }
  const first = roundCorner(p, q, s.widthIn, s.depthIn);
  const second =
    s.widthOut === s.widthIn && s.depthOut === s.depthIn ? first : roundCorner(p, q, s.depthOut, s.widthOut);
  return min(s.across - diagonal, first, second);
}

/** Round a corner at half a right angle, never less than what is spare in the whole turn. */
const halfwayRound = (p: number, q: number, from: number, to: number): number =>
  max((max(from, to) - (p + q) * SQRT1_2) * SQRT1_2, (2 / 3) * ((from + to) * SQRT1_2 - p / 2 - q));

const roundCorner = (p: number, q: number, from: number, to: number): number =>
  min(2 * turnsRightAngle(p, q, from, to), from - q, to - q);

/** Level while it turns: over the lower flight under its ceiling, over the upper above its nosings. */
function levelOverhangSpare(s: LandingShape, p: number, q: number, height: number): number {
  const diagonal = hypot(p, q);
  const overIn = max(0, diagonal - s.depthIn);
  const overOut = max(0, diagonal - s.depthOut);
  let spare = s.ceiling - height;
  if (overIn > 0) spare = min(spare, s.headroom - height - s.slope * overIn);
  if (overOut > 0) spare = min(spare, s.lip - height - s.rise - s.slope * overOut);
  if (s.across === undefined && overIn > 0 && overOut > 0) {
    // On a quarter landing both at once: together they are most at half a right angle.
    const both = max(overIn, overOut, SQRT2 * (p + q) - s.depthIn - s.depthOut);
    spare = min(spare, s.headroom - height - s.rise - s.slope * both);
  }
  return spare;
}

/**
 * Tilted, its front the higher: the back low over the lower flight, the front high over the upper. Turned by y in the
 * outer corner it stands p cos y + q sin y - depth over the lower flight, and its upper side is under that flight's
 * ceiling at the back and where it leaves it; what it is raised there for the upper nosing counts at the same angle.
 */
function tiltedOverhangSpare(s: LandingShape, round: Round, wanted: number): number {
  const { v, q, p, height, tilt } = round;
  let spare = min(s.depthIn, s.depthOut) - v * sin(tilt) - q;
  const raisedTo = tiltedRaise(s, round);
  const diagonal = hypot(p, q);
  spare = min(spare, s.lip - height - raisedTo);
  if (spare < 0 || diagonal <= s.depthIn) return spare;
  // All the worst at once is quickly looked at, and often enough.
  const crossed = v * cos(tilt) + max(0, p - sqrt(s.depthIn ** 2 - q ** 2)) * tan(tilt);
  const worst = min(
    s.headroom - v * cos(tilt) - s.slope * (diagonal - s.depthIn),
    max(s.headroom - height, s.headroom - crossed),
  );
  if (worst - raisedTo >= spare) return spare;
  const parts: (readonly [number, number])[] = [];
  for (let i = YAWS - 1; i >= 0; i--) parts.push([(PI / 2 / YAWS) * i, (PI / 2 / YAWS) * (i + 1)]);
  for (let part = parts.pop(); part; part = parts.pop()) {
    const [from, to] = part;
    const sure = overLowerFlight(s, round, from, to);
    if (sure >= spare) continue;
    const middle = (from + to) / 2;
    spare = min(spare, overLowerFlight(s, round, middle, middle));
    if (spare < max(worst - raisedTo, 0, wanted)) return max(spare, worst - raisedTo);
    if (to - from < YAW_FINENESS) spare = min(spare, sure);
    else if (sure < spare - YAW_LOSS) parts.push([middle, to], [from, middle]);
    else spare = min(spare, sure);
  }
  return max(spare, worst - raisedTo);
}

/** The least that is spare under the lower flight's ceiling while a tilted piece is turned between two angles in plan. */
function overLowerFlight(s: LandingShape, round: Round, from: number, to: number): number {
  const { u, v, q, p, height, tilt } = round;
  const most = clamp(atan2(q, p), from, to);
  const over = p * cos(most) + q * sin(most) - s.depthIn;
  if (over <= 0) return Infinity;
  const farthest = clamp(asin(min(1, q / s.depthIn)), from, to);
  const crossing = max(0, p + q * tan(farthest) - s.depthIn / cos(farthest));
  const under = max(s.headroom - height, s.headroom - v * cos(tilt) - crossing * tan(tilt));
  const resting = -tailBelow(s, { u, tilt }, to);
  const clears =
    s.across === undefined ? raisedOverNosing(s, round, tiltedRaise(s, round), from, to) : -Infinity;
  return min(s.headroom - v * cos(tilt) - s.slope * over, under) - max(resting, clears) - BETWEEN_YAWS;
}

/** How far a tilted piece is raised so that its lower side clears the upper flight's first nosing. */
function tiltedRaise(s: LandingShape, { v, q, p, tilt }: TiltedRound): number {
  if (hypot(p, q) <= s.depthOut) return 0;
  return max(0, s.rise - (s.depthOut - q - v * sin(tilt)) * tan(tilt));
}

/** Raised from the pitch to a tilt on the way in, and laid back on the way out. */
function sweepSpare(s: LandingShape, u: number, v: number, tilt: number): number {
  const byEntry = s.short.lower ? Infinity : leastInSweep(s.pitch, tilt, (f) => entrySpare(s, u, v, f));
  if (byEntry < 0 || s.short.upper) return byEntry;
  const height = exitHeight(s, v);
  const spareAt = (f: number): number => s.lip - height(f) - (u * sin(f) + v * cos(f));
  // Two smooth parts: until it is so upright that its height is kept, or its corner comes over the nosings.
  const bend = min(tilt, s.depthOut < v ? asin(s.depthOut / v) : leansOut(s, v));
  let spare = min(byEntry, leastInSweep(s.pitch, max(s.pitch, bend), spareAt));
  if (spare >= 0 && bend < tilt)
    spare = min(spare, leastInSweep(bend, tilt, spareAt), spareAt(clamp(atan2(u, v), bend, tilt)));
  return spare;
}

const clamp = (x: number, low: number, high: number): number => min(high, max(low, x));

/** The least value between two angles, by sampling and a golden section beside the least sample. */
function leastInSweep(from: number, to: number, f: (angle: number) => number): number {
  let least = Infinity;
  let at = 0;
  const step = (to - from) / SWEEP;
  for (let i = 0; i <= SWEEP; i++) {
    const value = f(from + step * i);
    if (value < least) {
      least = value;
      at = i;
    }
  }
  if (least < 0) return least;
  return min(
    least,
    leastBetween(f, from + step * max(0, at - 1), from + step * min(SWEEP, at + 1), SWEEP_STEPS).value,
  );
}

/**
 * At an angle f above the pitch on the way in: its front against the facing wall, its lower back corner on the
 * nosings or the landing. Its upper corners are under the two ceilings; where the landing's is the higher, its
 * upper side also passes under the end of the flight's.
 */
function entrySpare(s: LandingShape, u: number, v: number, f: number): number {
  const c = cos(f);
  const n = sin(f);
  const back = s.depthIn - u * c;
  const z = s.slope * min(0, back);
  const top = u * n + v * c + z;
  const front = s.depthIn - v * n;
  if (front < 0) return min(s.ceiling - top, s.headroom + s.slope * front - top);
  const rear = back - v * n;
  const under = rear >= 0 ? Infinity : s.headroom - (z + v * c - (rear * n) / c);
  return min(s.ceiling - top, max(s.headroom - top, under));
}

/**
 * Height [mm] of its lower back corner above the landing at an angle f on the way out, its back against the
 * facing wall: its lower side is over the first nosing, or that corner over the line of nosings where the
 * landing is too short for it. Nearly upright the side comes down past the nosing only once it leans enough
 * (s, the sine there, is the larger root of 2 s - s^3 = depth / v), and until then the height is kept.
 */
export function exitHeight(
  { depthOut, rise, going }: Pick<LandingPlan, 'depthOut' | 'rise' | 'going'>,
  v: number,
): (f: number) => number {
  const over = (f: number): number => max(0, rise - (depthOut - v * sin(f)) * tan(f));
  if (depthOut < v) {
    return (f) => {
      const before = depthOut - v * sin(f);
      return before < 0 ? rise - (rise / going) * before : over(f);
    };
  }
  const leans = leansOut({ depthOut }, v);
  if (leans === PI / 2) return over;
  const kept = over(leans);
  return (f) => (f >= leans ? kept : over(f));
}

/** The angle [rad] from which on its lower side comes down past the first nosing; a right angle where it always does. */
function leansOut({ depthOut }: Pick<LandingPlan, 'depthOut'>, v: number): number {
  const share = depthOut / v;
  if (share < 1 || share >= MOST_SHARE) return PI / 2;
  return asin(bracket(sqrt(2 / 3), 1, (sine) => 2 * sine - sine ** 3 > share, 1e-15).holds);
}

/** Height [mm] of its lowest corner above the landing at most, as it comes over the upper flight. */
function raisedToOf(s: LandingShape, round: Round): number {
  const { as, v, q, p, tilt, sideways } = round;
  if (as === 'tilted') return tiltedRaise(s, round);
  const over = (sideways ? p : hypot(p, q)) - s.depthOut;
  const raisedTo = over > 0 ? s.rise + s.slope * over : 0;
  return as === 'upright' ? max(raisedTo, exitHeight(s, v)(tilt)) : raisedTo;
}

/**
 * How high the padded piece is raised above what is below it, at most [mm]. The padding's play is not counted: the
 * bare piece can be carried at the bottom of it.
 *
 * On the way in it rests on what is below it. Tilted, it goes round with its lower back corner on the flight, or on
 * the landing, but for what its lower side is raised off the upper flight's nosing (`nosingHeight`). Level or upright
 * it is raised just before it comes over that nosing. On the way out it is kept up until it leans enough
 * (`exitHeight`), or, level, as its front corner is run up the line of nosings before it is over the first.
 */
function raiseOf(s: LandingShape, round: Round): number {
  const { as, u, v, q, p, tilt, sideways } = round;
  const run = runOnTo(s, u);
  if (as === 'tilted') {
    const kept = tilt > leansOut(s, v) ? exitHeight(s, v)(tilt) : 0;
    return max(tiltedGap(s, { u, v, q, p, tilt }), kept, run) + STRAYS;
  }
  const over = (sideways ? p : hypot(p, q)) - s.depthOut;
  // Where it rests on the upper nosings it counts as raised all the same: most of it is that high above the landing.
  const raisedTo = over > 0 ? s.rise + s.slope * over : 0;
  const out = as === 'upright' ? exitHeight(s, v)(tilt) : s.rise + s.slope * min(0, hypot(u, v) - s.depthOut);
  return max(raisedTo, out, run) + STRAYS;
}

/** Slid up the pitch from the floor, a short piece is off the floor before its front is over the first nosing [mm]. */
const runOnTo = ({ rise, slope, pitch }: LandingShape, u: number): number =>
  max(0, rise - slope * u * cos(pitch));

/** What decides how high a tilted piece is held. */
type TiltedRound = Pick<Round, 'u' | 'v' | 'q' | 'p' | 'tilt'>;

/** How far a tilted piece's lowest corner is above what is below it as it goes round, at most [mm]. */
function tiltedGap(s: LandingShape, round: TiltedRound): number {
  if (s.across !== undefined) return tiltedRaise(s, round);
  const reached = hypot(round.p, round.q) > s.depthOut;
  if (!reached) return 0;
  const raisedTo = tiltedRaise(s, round);
  const step = PI / 2 / YAWS;
  let most = raisedTo;
  for (let i = 0; i < YAWS; i++) {
    const from = step * i;
    const below = tailBelow(s, round, from);
    if (raisedTo + below > most)
      most = max(most, nosingHeight(s, round, raisedTo, from - YAW_STEP, from + step + YAW_STEP) + below);
  }
  return most;
}

/** How far the line of nosings is below the landing under a tilted piece's lower back corner, turned by a yaw [mm]. */
export const tailBelow = (
  { depthIn, rise, going }: Pick<LandingPlan, 'depthIn' | 'rise' | 'going'>,
  { u, tilt }: Pick<Round, 'u' | 'tilt'>,
  yaw: number,
): number => (rise / going) * max(0, u * cos(tilt) * cos(yaw) - depthIn);

/**
 * How high a tilted piece is held for the upper flight's first nosing between two angles in plan [mm above the
 * landing]: what it needs there, and what that bows above its chord over one step of the drawn motion; no more than
 * it needs a step on.
 * @param raisedTo no more is needed [mm]
 */
export function raisedOverNosing(
  s: Pick<LandingPlan, 'depthOut' | 'rise'>,
  round: Pick<Round, 'v' | 'q' | 'tilt'>,
  raisedTo: number,
  from: number,
  to: number,
): number {
  const needed = nosingHeight(s, round, raisedTo, from, to);
  const nearBy = nosingHeight(s, round, raisedTo, from - YAW_STEP, to + YAW_STEP);
  const sine = sin(max(from - YAW_STEP, YAW_STEP));
  const bow = ((2 * s.depthOut) / sine ** 3) * (YAW_STEP ** 2 / 8) * tan(round.tilt);
  return min(nearBy, needed + bow + BETWEEN_YAWS);
}

/**
 * Height [mm] above the landing at which a tilted piece's lower side clears the upper flight's first nosing, the most
 * between two angles in plan. In the outer corner, turned by y, that nosing is first met on the piece's inner side,
 * at (depth - q cos y) / sin y from its back: least where cos y = q / depth.
 * @param raisedTo no more is needed [mm]
 */
export function nosingHeight(
  { depthOut, rise }: Pick<LandingPlan, 'depthOut' | 'rise'>,
  { v, q, tilt }: Pick<Round, 'v' | 'q' | 'tilt'>,
  raisedTo: number,
  from: number,
  to: number,
): number {
  const nearest = q < depthOut ? acos(q / depthOut) : 0;
  const at = min(max(nearest, from, 1e-9), max(to, 1e-9), PI / 2);
  const before = (depthOut - q * cos(at)) / sin(at) - v * sin(tilt);
  return min(raisedTo, rise - before * tan(tilt));
}
