import type { PieceSize } from '../measures/piece';
import { ALL_HOLDS, POSE_BY_UPRIGHT, poseOfHold, sidesOfHold, sizesOfHold } from '../motion/hold';
import { RAISE_BY_HAND } from '../motion/raiseByHand';
import type { StageAnswer } from '../motion/stageAnswer';
import type { StagePassage } from '../motion/stagePassage';
import {
  bestFamilyFit,
  extentOf,
  type FamilyAsk,
  type FamilyFit,
  type LandingPlan,
  type RoundAs,
  type ShortFlight,
} from '../stages/landing/motionFamilies';
import { greatestShown } from './greatestShown';
import type { JointAsk } from './jointRow';
import {
  comesLevel,
  runOf,
  type FlightSection,
  type FlightToLevel,
  type TurnEnd,
} from './shortFlightSection';

/** A landing with the flights beside it, of which one or both end, before the piece does, at a level floor. */
export interface ShortFlightPlan {
  readonly landing: LandingPlan;
  /** Undefined: longer than the piece. */
  readonly lower: FlightToLevel | undefined;
  readonly upper: FlightToLevel | undefined;
}

/** A flight that leaves a piece lying on it no more than this [mm a side] is solved together with the landing. */
const SHORT = 60;

/** Whether a length [mm] is too short for a piece to be solved in it by itself. */
export const tooShort = (length: number, piece: PieceSize): boolean => length - piece.length < 2 * SHORT;

/** Taken off a family, so that its drawn motion is free between attitudes, with something to spare beside it [mm]. */
const DRAWN = 0.5;
const AS: readonly RoundAs[] = ['level', 'tilted', 'upright'];
/** How near the greatest padding has to be [mm]. */
const TOLERANCE = 2;

/**
 * The ways round a landing from level on the floor at the other end of a flight that is shorter than the piece, or to
 * there; held alike all the way. The turn on the landing is one of the families' (`bestFamilyFit`), as far as the flight
 * and the floor beyond it leave room for what reaches over them; what leads from there to level is decided in the
 * flight's upright section (`comesLevel`). Through a door that faces the stair it is moved across the flight where its
 * turn has ended, all of it before the door.
 *
 * Sufficient: over a short flight and the floor beyond there is no less air than over the long flight that the family
 * supposes, but for the floor itself and the walls that are looked at. It proves nothing: `atMost` is Infinity.
 */
export function shortFlightPassages(
  plan: ShortFlightPlan,
  piece: PieceSize,
  ask: JointAsk = {},
): StagePassage[] {
  const { lower, upper } = plan;
  if (!lower && !upper) return [];
  const short = {
    lower: lower && reachOver(plan.landing, 'lower', lower),
    upper: upper && reachOver(plan.landing, 'upper', upper),
  };
  const passages: StagePassage[] = [];
  let best = -Infinity;
  for (const hold of ALL_HOLDS) {
    const known: Record<'any' | 'by hand', number> = { any: Math.max(best, -Infinity), 'by hand': -Infinity };
    const take = (asked: FamilyAsk, kind: 'any' | 'by hand'): boolean => {
      const fit = bestFamilyFit(plan.landing, piece, hold, { ...asked, short });
      if (!fit) return false;
      const shown = shownFor(plan, piece, fit, ask, Math.max(ask.atLeast ?? 0, known[kind]));
      if (!shown) return fit.raise > RAISE_BY_HAND;
      const raise = Math.max(fit.raise, shown.raise);
      known[kind] = shown.clearance;
      if (raise <= RAISE_BY_HAND) known['by hand'] = Math.max(known['by hand'], shown.clearance);
      passages.push({ from: hold, to: hold, answer: answerOf(fit, shown, raise) });
      return raise > RAISE_BY_HAND;
    };
    for (const only of AS) {
      const atLeast = Math.max(0, ask.atLeast ?? 0) + DRAWN;
      if (take({ only, atLeast }, 'any')) take({ only, atLeast, mostRaise: RAISE_BY_HAND }, 'by hand');
    }
    best = Math.max(best, known['by hand']);
  }
  return passages;
}

interface ShownRound {
  readonly clearance: number;
  readonly raise: number;
  /** The flight's section leaves less than the turn. */
  readonly bySection: boolean;
}

/** The greatest padding for which a family's turn is shown to be reached from level, and left for it. */
function shownFor(
  plan: ShortFlightPlan,
  piece: PieceSize,
  fit: FamilyFit,
  ask: JointAsk,
  least: number,
): ShownRound | undefined {
  const doors = [plan.lower, plan.upper].flatMap((flight) => (flight?.door ? [flight.door] : []));
  const { along, across, upright } = sizesOfHold(piece, fit.hold);
  const lane = Math.min(Infinity, ...doors.map((door) => Math.min(door.width, door.widthBeyond)));
  const most = Math.min(fit.clearance - DRAWN, (lane - across) / 2);
  const turn = turnOf(fit, along, upright);
  const shown = greatestShown({ tolerance: TOLERANCE, ...ask }, least, most, (c) => {
    let raise = 0;
    for (const side of ['upper', 'lower'] as const) {
      const section = sectionOf(plan, side);
      if (!section) continue;
      const level = comesLevel(section, along + 2 * c, upright + 2 * c, turn);
      if (!level) return undefined;
      raise = Math.max(raise, level.raise);
    }
    return { raise };
  });
  return (
    shown && {
      clearance: shown.clearance,
      raise: shown.by.raise,
      bySection: shown.clearance < fit.clearance - DRAWN,
    }
  );
}

/** Where the family's turn begins and ends; the same on both sides. */
function turnOf({ as, tilt, lift, clearance }: FamilyFit, along: number, upright: number): TurnEnd {
  const { p, height } = extentOf(as, along + 2 * clearance, upright + 2 * clearance, tilt);
  return { inPlan: p, height, tilt, lowestAtMost: lift };
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
  { rise, going, headroom, ceiling }: LandingPlan,
  side: 'lower' | 'upper',
  flight: FlightToLevel,
): ShortFlight {
  const run = runOf(flight, going);
  const toWall = run + (flight.space ?? Infinity);
  if (side === 'lower') return { reach: toWall, line: flight.risers * going };
  // Whatever goes round keeps under where the upper flight's ceiling begins, or the landing's.
  const lip = Math.min(ceiling, headroom + rise);
  const over = flight.risers * rise + (flight.ceiling ?? Infinity);
  return { reach: over >= lip ? toWall : run, line: Infinity };
}

function answerOf(fit: FamilyFit, { clearance, bySection }: ShownRound, raise: number): StageAnswer {
  return {
    clearance,
    atMost: Infinity,
    pose:
      fit.as === 'level'
        ? poseOfHold(fit.hold)
        : fit.as === 'upright'
          ? POSE_BY_UPRIGHT[sidesOfHold(fit.hold).along]
          : 'tilted',
    critical: bySection ? 'on the short flight, between the landing and the floor at its end' : fit.critical,
    raise,
  };
}
