import type { PieceSize } from '../measures/piece';
import { widestClearance, type Part } from './chain';
import { partsByNeed } from './partsByNeed';
import type { PreparedReading, PreparedRoute } from './preparedRoute';
import { routeParts, type JointsAsked } from './routeParts';
import type { BookPiece, StageBook } from './stageBook';

/** A reading as measured, with what stands close solved together as far as was needed. */
export interface MeasuredCase {
  readonly reading: PreparedReading | undefined;
  readonly parts: readonly Part[];
  /** The greatest clearance with which some chain passes [mm a side]; -Infinity: none. */
  readonly widest: number;
}

/** A piece on a route as measured, and with the tape and what is not measured against it. */
export interface CasesOfPiece {
  /** What is not measured is at its most favourable: the reading that leaves most counts. */
  readonly measured: MeasuredCase;
  /** The parts of every reading; laid out when they are asked for, where the measured case leaves too little anyway. */
  readonly worst: () => readonly Part[][];
  /** Whether a reading by itself leaves the allowance in its worst case. */
  readonly leavesAllowance: (reading: PreparedReading) => boolean;
}

/**
 * Lays a route out for a piece. What stands close is solved together only where the rows by themselves leave too little.
 * @param allowance the clearance the firm insists on [mm a side]
 */
export function casesOf(
  route: PreparedRoute,
  piece: BookPiece,
  book: StageBook,
  allowance: number,
): CasesOfPiece {
  const jointly = route.readings.some(hasJoints);
  const solved = jointly ? { enough: allowance } : undefined;
  const worstWith = (joints?: JointsAsked): Part[][] =>
    route.readings.map(({ worst }) => routeParts(worst, piece, book, 'worst', joints));
  const enough = (parts: readonly Part[][]): boolean =>
    parts.every((one) => widestClearance(one, 'free') >= allowance);
  const leavesAllowance = ({ worst }: PreparedReading): boolean =>
    widestClearance(routeParts(worst, piece, book, 'worst', solved), 'free') >= allowance;

  const alone = widestReading(route, piece, book);
  const measured =
    jointly && alone.widest < allowance ? solvedTogether(route, piece, book, allowance, alone) : alone;
  if (measured.widest < allowance) {
    let worst: Part[][] | undefined;
    return { measured, worst: () => (worst ??= worstWith()), leavesAllowance };
  }
  const own = worstWith();
  if (!jointly || enough(own) || !enough(worstWith('supposed')))
    return { measured, worst: () => own, leavesAllowance };
  const asOne = worstWith(solved);
  const wanted = { least: allowance, enough: allowance, allowance, which: 'free' } as const;
  // On winding treads nothing is better than tight, whatever the tape leaves.
  const mayGo = route.steps.every(({ caps }) => caps.length === 0);
  const worst =
    enough(asOne) || !mayGo
      ? asOne
      : route.readings.map(({ worst: plans }) => partsByNeed(plans, piece, book, 'worst', wanted));
  return {
    measured: solvedTogether(route, piece, book, allowance, measured),
    worst: () => worst,
    leavesAllowance,
  };
}

const hasJoints = ({ measured, worst }: PreparedReading): boolean =>
  [...measured, ...worst].some(({ joints }) =>
    joints?.some(({ solved, block, short }) => block || short || (solved?.length ?? 0) > 0),
  );

/** The measured case with what stands close solved together, where that leaves more. */
function solvedTogether(
  route: PreparedRoute,
  piece: BookPiece,
  book: StageBook,
  allowance: number,
  alone: MeasuredCase,
): MeasuredCase {
  // Not where something else leaves as little.
  if (widestReading(route, piece, book, 'supposed').widest <= alone.widest) return alone;
  const asked = wider(alone, widestReading(route, piece, book, { enough: 0 }));
  if (asked.widest >= allowance) return asked;
  const wanted = {
    least: Math.max(0, asked.widest),
    enough: Math.max(0, allowance),
    allowance,
    which: 'any',
  } as const;
  return wider(
    asked,
    widestOf(route, ({ measured: plans }) => partsByNeed(plans, piece, book, 'measured', wanted)),
  );
}

const wider = (one: MeasuredCase, other: MeasuredCase): MeasuredCase =>
  other.widest > one.widest ? other : one;

function widestReading(
  route: PreparedRoute,
  piece: BookPiece,
  book: StageBook,
  joints?: JointsAsked,
): MeasuredCase {
  return widestOf(route, ({ measured }) => routeParts(measured, piece, book, 'measured', joints));
}

function widestOf(route: PreparedRoute, partsOf: (reading: PreparedReading) => Part[]): MeasuredCase {
  let best: MeasuredCase = { reading: undefined, parts: [], widest: -Infinity };
  for (const reading of route.readings) {
    const parts = partsOf(reading);
    const widest = widestClearance(parts, 'any');
    if (best.parts.length === 0 || widest > best.widest) best = { reading, parts, widest };
  }
  return best;
}

/** Clearance [mm a side] with the tape, and what is not measured, against the piece. */
export function worstClearance(route: PreparedRoute, size: PieceSize, book: StageBook): number {
  const piece = book.pieceOf(size);
  return Math.min(
    ...route.readings.map(({ worst }) => widestClearance(routeParts(worst, piece, book, 'worst'), 'any')),
  );
}
