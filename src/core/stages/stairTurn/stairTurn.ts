import { Remembered } from '../../lists/remembered';
import type { PieceSize, Pose } from '../../measures/piece';
import { CROSSED, LIKELIEST_FIRST, poseOfHold, type Hold } from '../../motion/hold';
import type { StageAnswer } from '../../motion/stageAnswer';
import type { StagePassage } from '../../motion/stagePassage';
import { NO_MOTION } from '../../motion/answerOfMotion';
import { bestPassage } from '../opening/opening';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import { openingAtMost } from '../opening/openingAtMost';
import { stairTurnFit, type StairTurnFit } from './stairTurnFit';
import { TurnGrid, type LeavesAs } from './turnGrid';
import { StairTurnPlaces, type StairTurnPlan } from './turnedPlace';
import { closestAt, type Closest } from '../../motion/closest';

/** One way round, with what draws it. */
export interface StairTurnWay {
  readonly hold: Hold;
  readonly fit: StairTurnFit;
  readonly passage: StagePassage;
}

/** What is asked of a turn. */
export interface StairTurnAsk {
  /** Padding [mm a side] below which no answer is wanted. */
  readonly atLeast?: number;
  /** Padding [mm a side] above which more is of no interest. */
  readonly enough?: number;
  /** The ways of being held on the flight that are looked at; all when absent. */
  readonly holds?: readonly Hold[];
}

const LYING = ['lying'] as const;
const BEGINS = ['level', 'half way', 'lying'] as const;
/** A drawn motion is free with this less than the fit says [mm a side]. */
const DRAWN = 0.5;
/** The side upright on the flight lies along the way once it has been stood on its other end. */
const STOOD: Record<Hold, Hold> = { LB: 'BL', LT: 'TL', BL: 'LB', TL: 'LT', BT: 'TB', TB: 'BT' };

/**
 * Clearance of a piece that turns at a stair's end: a motion that is known, and a bound that is proved.
 *
 * Model: the flight as wide as the straight before the turn, its outer side in one line with the outer wall; at the head
 * the line of nosings meets the floor's edge, at the foot the first riser is plumb and the first nosing one rise up;
 * over the flight the ceiling runs parallel to the line of nosings, over the floor it is flat; the passage leads off to
 * one side, its outer wall faces the flight; walls full height, or the inner sides clear air above `overRail`. Flight and
 * passage are longer than the piece.
 *
 * Motions: every path of an angle in plan and a tilt about the side across, the piece pushed into the outer corner and
 * resting on floor and nosings (`stairTurnFit`): level, tilted by any schedule, stood up and laid down again; out
 * lengthwise, moved off sideways, or stood on end.
 *
 * @example stairTurnAnswer({ end: 'head', flightWidth: 860, headroom: 2050, rise: 195, going: 240, straight: 0,
 *   passageWidth: 1000, ceiling: 2400, overRail: 0 }, { length: 2640, breadth: 320, thickness: 40 }).clearance // 82.9 mm a side
 */
export function stairTurnAnswer(plan: StairTurnPlan, piece: PieceSize): StageAnswer {
  return bestPassage(stairTurnWays(plan, piece, 'best').map((way) => way.passage));
}

/**
 * Every way of carrying a piece round the turn, by how it is held on the flight and in the passage.
 *
 * @param which `best`: ways that cannot beat those before them are left out; `every`: only those that cannot pass and
 *   that a better one stands beside
 */
export function stairTurnWays(
  plan: StairTurnPlan,
  piece: PieceSize,
  which: 'best' | 'every',
  ask: StairTurnAsk = {},
): readonly StairTurnWay[] {
  const { length, breadth, thickness } = piece;
  const key = JSON.stringify([plan, length, breadth, thickness, which, ask]);
  return KNOWN.get(key, () => waysRound(plan, piece, which, ask));
}

/** Turns asked for lately: the ways to read a route, and rows farther off, often leave a turn as it is. */
const KNOWN = new Remembered<readonly StairTurnWay[]>(300);

function waysRound(
  plan: StairTurnPlan,
  piece: PieceSize,
  which: 'best' | 'every',
  { atLeast = -piece.length / 2, enough = Infinity, holds = LIKELIEST_FIRST }: StairTurnAsk,
): StairTurnWay[] {
  const proved = stairTurnAtMost(plan, piece);
  const ways: StairTurnWay[] = [];
  let grid: TurnGrid;
  let best = -Infinity;
  const consider = (hold: Hold, leaves: LeavesAs): void => {
    const wanted = which === 'best' ? best : Math.min(0, best);
    const least = Math.max(atLeast, wanted) + DRAWN;
    const fit = stairTurnFit(grid, piece, hold, leaves, least, enough + DRAWN);
    if (!fit) return;
    const clearance = fit.clearance - DRAWN;
    best = Math.max(best, clearance);
    const out = leftAs(hold, leaves);
    const raise = plan.overRail > 0 && overRail(plan, piece, hold, fit) ? plan.overRail : 0;
    const answer: StageAnswer = {
      clearance,
      atMost: proved.atMost,
      bound: proved.bound,
      pose: poseOn(fit, hold),
      critical: closestOf(plan, fit),
      raise,
      ...(raise > 0 ? { overRail: true } : {}),
    };
    const [from, to] = plan.end === 'head' ? [hold, out] : [out, hold];
    ways.push({ hold, fit, passage: { from, to, answer } });
  };
  // Of a short flight it need not have lain along it.
  for (const begins of plan.short ? BEGINS : LYING) {
    grid = new TurnGrid(new StairTurnPlaces(plan), begins);
    for (const hold of holds) {
      consider(hold, 'lengthwise');
      consider(hold, 'sideways');
      consider(hold, 'upright');
      consider(hold, 'upright sideways');
    }
    if (ways.length > 0) break;
  }
  if (ways.length === 0) ways.push(nothingFound(piece, proved));
  return ways;
}

function leftAs(hold: Hold, leaves: LeavesAs): Hold {
  if (leaves === 'lengthwise') return hold;
  if (leaves === 'sideways') return CROSSED[hold];
  return leaves === 'upright' ? STOOD[hold] : CROSSED[STOOD[hold]];
}

/** The pose half way round. */
function poseOn(fit: StairTurnFit, hold: Hold): Pose {
  const turning = fit.path.filter(({ yaw }) => yaw > 0.7 && yaw < 0.9);
  const tilt = turning[0]?.tilt ?? 0;
  if (tilt < 1e-9) return poseOfHold(hold);
  if (tilt > Math.PI / 2 - 1e-3) return poseOfHold(STOOD[hold]);
  return 'tilted';
}

function overRail(plan: StairTurnPlan, piece: PieceSize, hold: Hold, fit: StairTurnFit): boolean {
  const grid = new TurnGrid(new StairTurnPlaces({ ...plan, overRail: 0 }));
  const walled = stairTurnFit(grid, piece, hold, fit.leaves, fit.clearance - DRAWN);
  return walled === undefined;
}

function closestOf(plan: StairTurnPlan, fit: StairTurnFit): Closest {
  if (fit.limit === 'flight') return closestAt('on the flight', 'sides', 'slope');
  const where = `at the stair's ${plan.end}`;
  const at =
    fit.limit === 'turn'
      ? closestAt(`in the turn ${where}`, 'sides', 'far wall', 'inner corner')
      : closestAt(`under the ceilings, as it turns ${where}`, 'ceiling', 'slope');
  return { ...at, atEnd: plan.end };
}

/** Proved: the flight and the passage are openings that it has to pass. */
export function stairTurnAtMost(plan: StairTurnPlan, piece: PieceSize): ProvedBound {
  const { channel } = new StairTurnPlaces(plan);
  const flight = openingAtMost(
    { width: plan.flightWidth, height: channel },
    piece,
    'the clear way up the stair',
  );
  const passage = openingAtMost(
    { width: plan.passageWidth, height: Math.min(plan.ceiling, plan.passageCeiling ?? plan.ceiling) },
    piece,
    'the passage beside the stair',
  );
  return flight.atMost <= passage.atMost ? flight : passage;
}

/** Without a motion the piece shrunk to a point. */
function nothingFound(piece: PieceSize, proved: ProvedBound): StairTurnWay {
  const hold: Hold = 'LB';
  const answer: StageAnswer = {
    clearance: -piece.length / 2,
    atMost: proved.atMost,
    bound: proved.bound,
    pose: poseOfHold(hold),
    critical: NO_MOTION,
    nothingFound: true,
  };
  const fit: StairTurnFit = { clearance: -piece.length / 2, path: [], leaves: 'lengthwise', limit: 'turn' };
  return { hold, fit, passage: { from: hold, to: hold, answer } };
}
