import type { PieceSize } from '../measures/piece';
import {
  LIKELIEST_FIRST,
  ALL_HOLDS,
  POSE_BY_UPRIGHT,
  poseOfHold,
  sidesOfHold,
  sizesOfHold,
  type Hold,
} from '../motion/hold';
import { RAISE_BY_HAND } from '../motion/raiseByHand';
import type { StageAnswer } from '../motion/stageAnswer';
import type { StagePassage } from '../motion/stagePassage';
import { bestFamilyFit, extentOf, type FamilyAsk, type ShortFlight } from '../stages/landing/solveFamilies';
import type { FamilyFit, RoundAs } from '../stages/landing/familyFit';
import type { LandingPlan } from '../stages/landing/landingPlan';
import { stairTurnWays } from '../stages/stairTurn/stairTurn';
import type { StairTurnFit } from '../stages/stairTurn/stairTurnFit';
import {
  IN_FLIGHT_ARM,
  StairTurnPlaces,
  type ShortOfPiece,
  type StairTurnPlan,
} from '../stages/stairTurn/turnedPlace';
import { greatestShown } from './greatestShown';
import type { JointAsk } from './jointRow';
import {
  comesLevel,
  runOf,
  type FlightSection,
  type FlightToLevel,
  type PlaceBeyond,
  type TurnEnd,
} from './shortFlightSection';
import { closestAt } from '../motion/closest';

/** A landing with the flights beside it, of which one or both end, before the piece does, at a level floor. */
export interface ShortFlightPlan {
  readonly landing: LandingPlan;
  /** Undefined: longer than the piece. */
  readonly lower: FlightToLevel | undefined;
  readonly upper: FlightToLevel | undefined;
}

/** A way round, with how the piece is held on the flights. */
export interface ShortFlightPassage extends StagePassage {
  readonly hold: Hold;
}

/** A flight that leaves a piece lying on it no more than this [mm a side] is solved together with the landing. */
const SHORT = 60;

/** Whether a length [mm] is too short for a piece to be solved in it by itself. */
export const tooShort = (length: number, piece: PieceSize): boolean => length - piece.length < 2 * SHORT;

/** Taken off a family, so that its drawn motion is free between attitudes, with something to spare beside it [mm]. */
const DRAWN = 0.5;
const AS: readonly RoundAs[] = ['level', 'tilted', 'upright'];
/** Clearance by hand with which no other way of being held is looked at [mm a side]. */
const PLENTY = 60;
/** How near the greatest padding has to be [mm]. */
const TOLERANCE = 2;
/** Clearances nearer than this are the same [mm]. */
const SAME = 0.01;

/**
 * The ways round a landing from level on the floor at the other end of a flight that is shorter than the piece, or to
 * there; or from a turn there, or to it. The turn on the landing is one of the families' (`bestFamilyFit`), as far as the
 * flight and the floor beyond it leave room for what reaches over them; a turn at the flight's other end is the stair
 * turn's (`stairTurnFit`), as far as the flight and the landing leave room for what reaches over them. What leads from
 * the one to the other, or to level, is decided in the flight's upright section (`comesLevel`). Through a door that faces
 * the stair it is moved across the flight where its turn has ended, all of it before the door.
 *
 * Sufficient: over a short flight and the floor beyond there is no less air than over the long flight that the families
 * suppose, but for the floor itself and the walls and ceilings that are looked at. It proves nothing: `atMost` is Infinity.
 */
export function shortFlightPassages(
  plan: ShortFlightPlan,
  piece: PieceSize,
  ask: JointAsk = {},
  holds: readonly Hold[] = ALL_HOLDS,
): ShortFlightPassage[] {
  const { landing, lower, upper } = plan;
  if (!lower && !upper) return [];
  const short = {
    lower: lower && reachOver(landing, 'lower', lower),
    upper: upper && reachOver(landing, 'upper', upper),
  };
  const atLeast = Math.max(0, ask.atLeast ?? 0);
  const turns = { lower: lower?.turn && turnAt(plan, 'lower'), upper: upper?.turn && turnAt(plan, 'upper') };
  const passages: ShortFlightPassage[] = [];
  let byHandBest = -Infinity;
  for (const hold of LIKELIEST_FIRST) {
    if (!holds.includes(hold)) continue;
    // Lengthwise on edge or flat, as it mostly is, is enough where it leaves plenty.
    if (hold[0] !== 'L' && byHandBest >= Math.min(PLENTY, (ask.enough ?? PLENTY) - 1)) break;
    const fits = AS.flatMap((only) =>
      familiesOf(landing, piece, hold, { only, short, atLeast: atLeast + DRAWN }),
    )
      .sort((a, b) => liftedRank(a) - liftedRank(b) || b.clearance - a.clearance)
      .map((fit) => ({ fit, looked: remembering() }));
    if (fits.length === 0) continue;
    const most = Math.max(...fits.map(({ fit }) => fit.clearance));
    for (const way of waysOf(turns, piece, hold, atLeast, Math.min(ask.enough ?? Infinity, most))) {
      // The widest by hand first, and of the others what is wider.
      let [known, byHand] = [-Infinity, -Infinity];
      for (const { fit, looked } of fits) {
        const shown = shownFor(plan, piece, fit, way, ask, liftedRank(fit) > 0 ? known : byHand, looked);
        if (!shown) continue;
        const raise = Math.max(fit.raise, shown.raise);
        known = Math.max(known, shown.clearance);
        if (raise <= RAISE_BY_HAND) byHand = Math.max(byHand, shown.clearance);
        byHandBest = Math.max(byHandBest, byHand);
        // From the lower flight up.
        const [from, to] = [way.lower?.out ?? hold, way.upper?.out ?? hold];
        passages.push({ from, to, hold, answer: answerOf(fit, shown, raise) });
      }
    }
  }
  return passages;
}

const liftedRank = ({ raise }: FamilyFit): number => (raise > RAISE_BY_HAND ? 1 : 0);

/** A family as it is best, and where that raises it farther than by hand, as it is best by hand. */
function familiesOf(landing: LandingPlan, piece: PieceSize, hold: Hold, ask: FamilyAsk): FamilyFit[] {
  const fit = bestFamilyFit(landing, piece, hold, ask);
  if (!fit) return [];
  const byHand =
    fit.raise > RAISE_BY_HAND
      ? bestFamilyFit(landing, piece, hold, { ...ask, mostRaise: RAISE_BY_HAND })
      : undefined;
  return byHand ? [byHand, fit] : [fit];
}

/** A turn at a flight's other end for a piece held so on the flight. */
interface TurnWay {
  readonly fit: StairTurnFit;
  /** How it is held beyond the turn. */
  readonly out: Hold;
  readonly place: PlaceBeyond;
}

/** What is beyond the flights on both sides; nothing: level, or a long flight. */
interface BeyondWay {
  readonly lower?: TurnWay;
  readonly upper?: TurnWay;
}

/** The turns at both ends, each with each; one without a turn where there is none, none where a turn is not shown. */
function waysOf(
  turns: Readonly<Record<'lower' | 'upper', StairTurnPlan | undefined>>,
  piece: PieceSize,
  hold: Hold,
  atLeast: number,
  enough: number,
): BeyondWay[] {
  let ways: BeyondWay[] = [{}];
  for (const side of ['lower', 'upper'] as const) {
    const turn = turns[side];
    if (!turn) continue;
    const shown = turnWays(turn, piece, hold, atLeast, enough);
    ways = ways.flatMap((way) => shown.map((one) => ({ ...way, [side]: one })));
  }
  return ways;
}

function turnWays(
  turn: StairTurnPlan,
  piece: PieceSize,
  hold: Hold,
  atLeast: number,
  enough: number,
): TurnWay[] {
  const { along, across, upright } = sizesOfHold(piece, hold);
  const places = new StairTurnPlaces(turn);
  const asked = { atLeast, enough, holds: [hold] };
  return stairTurnWays(turn, piece, 'every', asked).flatMap(({ fit, passage }): TurnWay[] => {
    const [first] = fit.path;
    if (!first) return [];
    const grown = (side: number): number => Math.max(1, side + 2 * fit.clearance);
    places.hold({ u: grown(along), v: grown(upright), q: grown(across) });
    const { over, z } = places.placeAt(0, first.tilt, IN_FLIGHT_ARM);
    const { p, height } = places.extent(first.tilt);
    const place = { x: p / 2 - over, lowestAtMost: z, height, tilt: first.tilt };
    return [{ fit, out: turn.end === 'head' ? passage.to : passage.from, place }];
  });
}

/** The turn at the other end of a short flight, as it is solved by itself. */
function turnAt(
  { landing, ...flights }: ShortFlightPlan,
  side: 'lower' | 'upper',
): StairTurnPlan | undefined {
  const flight = flights[side];
  if (!flight?.turn) return undefined;
  const { rise, going, headroom } = landing;
  const { straight, passageWidth, passageCeiling, width } = flight.turn;
  return {
    end: side === 'upper' ? 'head' : 'foot',
    flightWidth: Math.min(width, side === 'upper' ? landing.widthOut : landing.widthIn),
    headroom,
    rise,
    going,
    straight,
    passageWidth,
    ceiling: flight.ceiling ?? HIGH,
    passageCeiling,
    overRail: 0,
    short: shortOf(landing, side, flight.risers),
  };
}

/** A flight of so many risers [count] beside a landing, as a turn at its other end sees it. */
export function shortOf(landing: LandingPlan, side: 'lower' | 'upper', risers: number): ShortOfPiece {
  const { rise, going, depthIn, depthOut, ceiling } = landing;
  const run = Math.max(0, risers - 1) * going;
  return {
    run,
    line: risers * going,
    reach: run + (side === 'upper' ? depthOut : depthIn),
    ceiling: ceiling + (side === 'upper' ? -1 : 1) * risers * rise,
  };
}

/** Higher than any piece is long [mm]. */
const HIGH = 9000;

/** What was looked up for a family's turn, or is now: a side's section does not depend on what is on the other. */
type Looked = (
  side: 'lower' | 'upper',
  c: number,
  way: TurnWay | undefined,
  look: () => { readonly raise: number } | undefined,
) => { readonly raise: number } | undefined;

function remembering(): Looked {
  const known = new Map<string, { readonly raise: number } | undefined>();
  return (side, c, way, look) => {
    const key = `${side}|${c}|${way?.place.x ?? ''}|${way?.place.tilt ?? ''}`;
    if (!known.has(key)) known.set(key, look());
    return known.get(key);
  };
}

interface ShownRound {
  readonly clearance: number;
  readonly raise: number;
  /** What leaves least. */
  readonly by: 'section' | 'landing' | 'turn';
}

/**
 * The greatest padding for which a family's turn is shown to be reached from what is beyond the flights, and left for it.
 * @param known no more than this is of no interest [mm a side]
 */
function shownFor(
  plan: ShortFlightPlan,
  piece: PieceSize,
  fit: FamilyFit,
  way: BeyondWay,
  ask: JointAsk,
  known: number,
  looked: Looked,
): ShownRound | undefined {
  const doors = [plan.lower, plan.upper].flatMap((flight) => (flight?.door ? [flight.door] : []));
  const { along, across, upright } = sizesOfHold(piece, fit.hold);
  const lane = Math.min(
    ...[plan.lower, plan.upper].map((flight) => flight?.floorWidth ?? Infinity),
    ...doors.map((door) => Math.min(door.width, door.widthBeyond)),
  );
  const byTurns =
    Math.min(way.lower?.fit.clearance ?? Infinity, way.upper?.fit.clearance ?? Infinity) - DRAWN;
  const most = Math.min(fit.clearance - DRAWN, byTurns, (lane - across) / 2);
  const turn = turnOf(fit, along, upright);
  const decide = (c: number): { readonly raise: number } | undefined => {
    let raise = 0;
    for (const side of ['upper', 'lower'] as const) {
      const section = sectionOf(plan, side);
      if (!section) continue;
      const level = looked(side, c, way[side], () =>
        comesLevel(section, along + 2 * c, upright + 2 * c, turn, way[side]?.place),
      );
      if (!level) return undefined;
      raise = Math.max(raise, level.raise);
    }
    return { raise };
  };
  const least = Math.max(0, ask.atLeast ?? 0, known);
  const top = Math.min(most, ask.enough ?? most);
  if (top < least || top <= known + SAME) return undefined;
  // Mostly the sections are the roomier.
  const atTop = decide(top);
  const shown = atTop
    ? { clearance: top, by: atTop }
    : greatestShown({ tolerance: TOLERANCE, ...ask }, least, top - TOLERANCE, decide);
  if (!shown) return undefined;
  const { clearance } = shown;
  const by = clearance < top ? 'section' : byTurns <= most ? 'turn' : 'landing';
  return { clearance, raise: shown.by.raise, by };
}

/** Where the family's turn begins and ends; the same on both sides. */
function turnOf({ as, tilt, raisedTo, clearance }: FamilyFit, along: number, upright: number): TurnEnd {
  const { p, height } = extentOf(as, along + 2 * clearance, upright + 2 * clearance, tilt);
  return { inPlan: p, height, tilt, lowestAtMost: raisedTo };
}

function sectionOf(
  { landing, ...flights }: ShortFlightPlan,
  side: 'lower' | 'upper',
): FlightSection | undefined {
  const flight = flights[side];
  if (!flight) return undefined;
  const { rise, going, headroom, ceiling } = landing;
  return {
    side,
    flight,
    rise,
    going,
    headroom,
    depth: side === 'lower' ? landing.depthIn : landing.depthOut,
    ceiling,
  };
}

/** How far the piece may reach over a short flight while it goes round the landing. */
export function reachOver(
  { rise, going, headroom, ceiling, widthIn, widthOut }: LandingPlan,
  side: 'lower' | 'upper',
  flight: FlightToLevel,
): ShortFlight {
  const run = runOf(flight, going);
  // It is moved across to a narrower floor where its turn has ended.
  const narrower = (flight.floorWidth ?? Infinity) < (side === 'lower' ? widthIn : widthOut);
  const toWall = narrower ? run : run + (flight.space ?? Infinity);
  if (side === 'lower') return { reach: toWall, line: flight.risers * going };
  // Whatever goes round keeps under where the upper flight's ceiling begins, or the landing's.
  const lip = Math.min(ceiling, headroom + rise);
  const over = flight.risers * rise + (flight.ceiling ?? Infinity);
  return { reach: over >= lip ? toWall : run, line: Infinity };
}

const CRITICAL = {
  section: closestAt('on the short flight, between the landing and the floor at its end', 'anything'),
  turn: closestAt("in the turn at the stair's end", 'sides', 'far wall', 'inner corner'),
} as const;

function answerOf(fit: FamilyFit, { clearance, by }: ShownRound, raise: number): StageAnswer {
  return {
    clearance,
    atMost: Infinity,
    pose:
      fit.as === 'level'
        ? poseOfHold(fit.hold)
        : fit.as === 'upright'
          ? POSE_BY_UPRIGHT[sidesOfHold(fit.hold).along]
          : 'tilted',
    critical: by === 'landing' ? fit.critical : CRITICAL[by],
    raise,
  };
}
