import type { JointRow } from '../joint/jointRow';
import { Remembered } from '../lists/remembered';
import { walkRoute, type RouteWalk, type WalkStep } from '../joint/walk/walkRoute';
import type { PieceSize } from '../measures/piece';
import { holdAt } from '../motion/hold';
import type { StageMeasures } from '../stages/measures';
import { bestChain, widestClearance, type ChainStep } from './chain';
import type { PreparedReading, PreparedRoute } from './preparedRoute';
import { standsAlone } from './reading';
import { routeParts } from './routeParts';
import type { BookPiece, StageBook } from './stageBook';
import { HAS_NO_FLOOR } from './arms';
import { floorCeiling, hasRun, roleOf } from '../stages/kinds';
import type { MeasuredCase } from './casesOf';
import { judgeRoute } from './judgeRoute';

/** A chain of a route with the clearance [mm a side] that it leaves all the way. */
export interface JudgedChain {
  readonly reading: PreparedReading;
  readonly steps: readonly ChainStep[];
  readonly clearance: number;
}

/**
 * The chain that is judged and drawn: as measured, of the reading that leaves most; or, as a check, with the tape and
 * what is not measured against the piece, of the reading that leaves least.
 * @param allowance the clearance the firm insists on [mm a side]
 * @returns undefined where no chain is shown, or a step cannot be judged
 */
export function judgedChain(
  route: PreparedRoute,
  size: PieceSize,
  book: StageBook,
  allowance: number,
  tapeCase: 'measured' | 'worst' = 'measured',
): JudgedChain | undefined {
  if (route.steps.some(({ problem }) => problem !== undefined)) return undefined;
  const best =
    tapeCase === 'measured'
      ? judgeRoute(route, size, book, allowance).measured
      : narrowest(route, book.pieceOf(size), book);
  const { reading, parts, widest } = best;
  if (!reading || !Number.isFinite(widest)) return undefined;
  // Where it goes without anything that makes it tight, so it is carried.
  const free = widestClearance(parts, 'free');
  const freely = free >= allowance;
  const clearance = freely ? free : widest;
  const steps = bestChain(parts, freely ? 'free' : 'any', clearance, allowance);
  return steps && { reading, steps, clearance };
}

/** With the tape and what is not measured against the piece: the reading that leaves least. */
function narrowest(route: PreparedRoute, piece: BookPiece, book: StageBook): MeasuredCase {
  let least: MeasuredCase = { reading: undefined, parts: [], widest: Infinity };
  for (const reading of route.readings) {
    const parts = routeParts(reading.worst, piece, book, 'worst');
    const widest = widestClearance(parts, 'any');
    if (widest < least.widest) least = { reading, parts, widest };
  }
  return least;
}

/** What the walk is told of a chain's steps. */
export const walkSteps = (steps: readonly ChainStep[]): WalkStep[] =>
  steps.map((step, row) => ({
    enters: holdAt(step.enters),
    from: holdAt(step.from),
    to: holdAt(step.to),
    leaves: holdAt(step.leaves),
    pose: step.passage?.answer.pose ?? 'on edge',
    clearance: step.passage?.answer.clearance,
    raise: step.passage?.answer.raise,
    jointly: step.joint !== undefined,
    ...asOneFrom(steps, row),
  }));

/** The rows passed as one space that begin with a row, where some do. */
function asOneFrom(steps: readonly ChainStep[], row: number): Pick<WalkStep, 'asOne'> {
  for (const { passage } of steps.slice(row)) {
    const { block, answer, from, to } = passage ?? {};
    if (!block || !answer || from === undefined || to === undefined) continue;
    if (Math.max(0, block.begins.row) !== row) continue;
    const { pose, clearance } = answer;
    return { asOne: { ...block, from: holdAt(from), to: holdAt(to), pose, clearance } };
  }
  return {};
}

/** The drawn motion keeps off what it passes by so much less than the clearance [mm]. */
export const DRAWN_LESS = 1;
/** With more padding than this [mm a side] a motion shows nobody more. */
const AMPLE = 300;
/** Where the drawing is too weak for nearly all of the clearance, it is tried with these shares of it. */
const SHARES_DRAWN = [0.7, 0.4, 0.2, 0.1] as const;

/**
 * The one motion of a piece along its judged chain, in the one scene of the route's rows: free for the piece padded by
 * the chain's clearance less `DRAWN_LESS`, or, where that cannot be drawn whole, by as great a share of it as can. What was
 * not measured is supposed where it does not matter (`supposed`).
 * @returns its padding, for which it is free; `notDrawn` in it names what could not be drawn
 */
export function routeMotion(chain: JudgedChain, size: PieceSize): RouteMotion {
  const rows = jointRows(chain.reading, size);
  const steps = walkSteps(chain.steps);
  const { length, breadth, thickness } = size;
  const key = JSON.stringify([rows, steps, [length, breadth, thickness], chain.clearance]);
  return MOTIONS.get(key, () => drawnMotion(chain, size, rows, steps));
}

/** The motion of a chain with the clearance [mm a side] that the chain leaves. */
type RouteMotion = RouteWalk & { readonly clearance: number };

/** Motions drawn lately: the carry is told and drawn, and a few pieces are looked at in turn. Each hangs on its key alone. */
const MOTIONS = new Remembered<RouteMotion>(12);

function drawnMotion(
  chain: JudgedChain,
  size: PieceSize,
  rows: readonly JointRow[],
  steps: readonly WalkStep[],
): RouteMotion {
  const most = Math.min(chain.clearance, AMPLE) - DRAWN_LESS;
  const drawn = (padding: number): RouteWalk => walkRoute(rows, steps, size, padding);
  const widest = drawn(most);
  let walk = widest;
  for (const share of SHARES_DRAWN) {
    if (!walk.notDrawn || most <= 0) break;
    const less = drawn(share * most);
    if (farther(less, walk)) walk = less;
  }
  return { ...walk, clearance: chain.clearance };
}

/** Whether a motion is drawn through more rows than another. */
const farther = ({ notDrawn: one }: RouteWalk, { notDrawn: other }: RouteWalk): boolean =>
  (one?.row ?? Infinity) > (other?.row ?? Infinity);

/** The rows of a reading with what was not measured supposed: straights longer than the piece, the hand to the left. */
export function jointRows({ reading }: PreparedReading, size: PieceSize): JointRow[] {
  const long = Math.ceil((size.length + 1000) / 100) * 100;
  return reading.map((readRow, i): JointRow => {
    const { row, stage, measures, way, into, straightAfter } = readRow;
    const next = reading[i + 1];
    const supposed: { -readonly [Name in keyof StageMeasures]: number | undefined } = {};
    if (stage === 'passage') supposed.length = measures.length ?? long;
    if (stage === 'flight') {
      supposed.risers = measures.risers ?? Math.ceil((size.length + 1000) / (measures.going ?? 250));
      for (const [end, space, ceiling] of [
        ['foot', 'footSpace', 'footCeiling'],
        ['head', 'headSpace', 'headCeiling'],
      ] as const) {
        const beside = reading[(way === 'up') === (end === 'foot') ? i - 1 : i + 1];
        const own = HAS_NO_FLOOR.includes(roleOf(beside?.stage));
        if (own) supposed[space] = measures[space] ?? long;
        // At a turn behind the flight the space is the straight before it and the turn's own floor, under one ceiling.
        else if (beside === next && next?.stage && roleOf(next.stage) === 'turn') {
          const { width = 0, widthOut = 0, depth = 0 } = next.measures;
          const turn = next.stage === 'corner' ? widthOut : width + depth;
          if (straightAfter?.open) supposed[space] = long + turn;
          const own = floorCeiling(next.stage);
          supposed[ceiling] = measures[ceiling] ?? (own && next.measures[own]);
        }
      }
    }
    if (hasRun(stage)) {
      const straight = straightAfter && !straightAfter.open ? straightAfter.known : undefined;
      supposed.run = measures.run ?? straight ?? (next ? long : undefined);
    }
    const known = Object.entries(supposed).filter(([, value]) => value !== undefined);
    return {
      // A step that cannot be judged has no chain.
      stage: stage ?? 'passage',
      measures: { ...measures, ...Object.fromEntries(known) },
      hand: row.hand,
      way,
      into: stage === 'side door' ? into : undefined,
      standsAlone: standsAlone(readRow),
    };
  });
}
