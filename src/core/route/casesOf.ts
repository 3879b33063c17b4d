import type { PieceSize } from '../measures/piece';
import { entryAt } from '../lists/entryAt';
import { widestClearance, type Part } from './chain';
import { jointsByNeed, partsByNeed, type PartsByNeed, type Wanted } from './partsByNeed';
import type { PreparedReading, PreparedRoute } from './preparedRoute';
import { partsAlone, routeParts, withBlocksNotLookedAt, withJoints, type JointsAsked } from './routeParts';
import type { BookPiece, StageBook } from './stageBook';

/** A reading as measured, with what stands close solved together as far as was needed. */
export interface MeasuredCase {
  readonly reading: PreparedReading | undefined;
  readonly parts: readonly Part[];
  /** The greatest clearance with which some chain passes [mm a side]; -Infinity: none. */
  readonly widest: number;
  /** Where it would not pass whatever stands close: the same with all that supposed to pass, which says what stops it. */
  readonly stopped?: Pick<MeasuredCase, 'parts' | 'widest'>;
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
  const laid = new LaidOut(piece, book, allowance);
  const solved = jointly ? { enough: allowance } : undefined;
  const worstWith = (joints?: JointsAsked): Part[][] =>
    route.readings.map((reading) =>
      withBlocksNotLookedAt(laid.parts(reading, 'worst', joints), reading.worst),
    );
  const enough = (parts: readonly Part[][]): boolean =>
    parts.every((one) => widestClearance(one, 'free') >= allowance);
  const leavesAllowance = (reading: PreparedReading): boolean => {
    const freely = (joints: JointsAsked): boolean =>
      widestClearance(laid.parts(reading, 'worst', joints), 'free') >= allowance;
    // What does not even where all that stands close passes in any way need not be solved.
    return (!jointly || freely('supposed')) && freely(solved);
  };

  const alone = widestReading(route, laid);
  const measured =
    jointly && alone.widest < allowance ? solvedTogether(route, laid, allowance, alone) : alone;
  if (measured.widest < allowance) {
    let worst: Part[][] | undefined;
    return { measured, worst: () => (worst ??= worstWith()), leavesAllowance };
  }
  const own = worstWith();
  if (!jointly || enough(own) || !enough(worstWith('supposed')))
    return { measured, worst: () => own, leavesAllowance };
  const asOne = route.readings.map((reading) =>
    withBlocksNotLookedAt(laid.jointsByNeed(reading, 'worst'), reading.worst),
  );
  const wanted = { least: allowance, enough: allowance, allowance, which: 'free' } as const;
  const widest = solvedTogether(route, laid, allowance, measured);
  // Where it is at best tight, on winding treads or by what is shown only as measured, the tape changes nothing.
  const mayGo =
    route.steps.every(({ caps }) => caps.length === 0) && widestClearance(widest.parts, 'free') >= allowance;
  const worst =
    enough(asOne) || !mayGo
      ? asOne
      : route.readings.map((reading) => laid.byNeed(reading, 'worst', wanted).parts);
  return { measured: widest, worst: () => worst, leavesAllowance };
}

/** In the worst case it is asked for so much more than the allowance [mm a side], so that rounding takes nothing off it. */
const A_HAIR = 0.01;

/** The parts of a route's readings for one piece: those by themselves are laid out once, whatever is added to them. */
class LaidOut {
  private readonly alone = {
    worst: new Map<PreparedReading, readonly Part[]>(),
    measured: new Map<PreparedReading, readonly Part[]>(),
  };

  constructor(
    private readonly piece: BookPiece,
    private readonly book: StageBook,
    private readonly allowance: number,
  ) {}

  parts(reading: PreparedReading, tapeCase: 'worst' | 'measured', joints: JointsAsked): Part[] {
    const alone = this.aloneOf(reading, tapeCase);
    return joints
      ? withJoints(alone, reading[tapeCase], this.piece, this.book, tapeCase, joints)
      : [...alone];
  }

  /** @see jointsByNeed */
  jointsByNeed(reading: PreparedReading, tapeCase: 'worst' | 'measured'): Part[] {
    const alone = this.aloneOf(reading, tapeCase);
    return jointsByNeed(alone, reading[tapeCase], this.piece, this.book, tapeCase, this.allowance);
  }

  /** @see partsByNeed */
  byNeed(reading: PreparedReading, tapeCase: 'worst' | 'measured', wanted: Wanted): PartsByNeed {
    const alone = this.aloneOf(reading, tapeCase);
    return partsByNeed(alone, reading[tapeCase], this.piece, this.book, tapeCase, wanted);
  }

  private aloneOf(reading: PreparedReading, tapeCase: 'worst' | 'measured'): readonly Part[] {
    const { [tapeCase]: known } = this.alone;
    let alone = known.get(reading);
    if (alone) return alone;
    const enough = this.allowance + A_HAIR;
    alone = partsAlone(reading[tapeCase], this.piece, this.book, tapeCase, enough);
    known.set(reading, alone);
    return alone;
  }
}

/** Asked of the measured case first: the worst case need not have been laid out. */
const hasJoints = (reading: PreparedReading): boolean =>
  (['measured', 'worst'] as const).some((tapeCase) =>
    reading[tapeCase].some(({ joints }) =>
      joints?.some(({ solved, block, short }) => block || short || (solved?.length ?? 0) > 0),
    ),
  );

/**
 * The measured case with what stands close solved together, where that leaves more. A reading that would not leave more
 * than what is known, whatever stands close, is not looked at.
 */
function solvedTogether(
  route: PreparedRoute,
  laid: LaidOut,
  allowance: number,
  alone: MeasuredCase,
): MeasuredCase {
  const { readings } = route;
  const supposed = readings.map((reading) => laid.parts(reading, 'measured', 'supposed'));
  const atMost = supposed.map((parts) => widestClearance(parts, 'any'));
  const most = Math.max(...atMost);
  if (most < 0)
    return { ...alone, stopped: { parts: entryAt(supposed, atMost.indexOf(most)), widest: most } };
  const wider = (known: MeasuredCase, partsOf: (reading: PreparedReading) => Part[]): MeasuredCase =>
    readings.reduce(
      (best, reading, i) =>
        entryAt(atMost, i) > best.widest ? widerOf(best, reading, partsOf(reading)) : best,
      known,
    );
  const asked = wider(alone, (reading) => laid.parts(reading, 'measured', { enough: 0 }));
  if (asked.widest >= allowance) return asked;
  const wanted = {
    least: Math.max(0, asked.widest),
    enough: Math.max(AMPLE, allowance),
    allowance,
    which: 'any',
  } as const;
  let stopped: MeasuredCase['stopped'];
  const solved = wider(asked, (reading) => {
    const { parts, hopeful } = laid.byNeed(reading, 'measured', wanted);
    const widest = widestClearance(hopeful, 'any');
    if (widest > (stopped?.widest ?? -Infinity)) stopped = { parts: hopeful, widest };
    return parts;
  });
  return stopped && solved.widest < 0 && stopped.widest < 0 ? { ...solved, stopped } : solved;
}

/** As measured rows that stand close are solved up to this [mm a side]: more is of no interest. */
const AMPLE = 150;

/** The reading that leaves most, the first among equals, its rows by themselves. */
function widestReading({ readings }: PreparedRoute, laid: LaidOut): MeasuredCase {
  const none: MeasuredCase = { reading: undefined, parts: [], widest: -Infinity };
  return readings.reduce(
    (best, reading) => widerOf(best, reading, laid.parts(reading, 'measured', undefined)),
    none,
  );
}

function widerOf(best: MeasuredCase, reading: PreparedReading, parts: readonly Part[]): MeasuredCase {
  const widest = widestClearance(parts, 'any');
  return best.parts.length === 0 || widest > best.widest ? { reading, parts, widest } : best;
}

/** Clearance [mm a side] with the tape, and what is not measured, against the piece. */
export function worstClearance(route: PreparedRoute, size: PieceSize, book: StageBook): number {
  const piece = book.pieceOf(size);
  return Math.min(
    ...route.readings.map(({ worst }) => widestClearance(routeParts(worst, piece, book, 'worst'), 'any')),
  );
}
