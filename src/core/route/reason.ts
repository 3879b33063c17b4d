import type { PieceSize } from '../measures/piece';
import { closestAt, closestAtFigure, NOWHERE_CLOSEST, toldOfStair, type Closest } from '../motion/closest';
import { holdAt } from '../motion/hold';
import { measureAtStage } from '../survey/words/measureHeading';
import { MEASURES, SKY, type MeasureName } from '../stages/measures';
import type { StageRow } from '../survey/table/stageRow';
import { kindOf, measureAt, stageNeeds } from '../stages/kinds';
import { capWords } from './cap';
import type { ChainStep } from './chain';
import type { LimitCause } from './limitCause';
import { changeWords } from './poseChange';
import type { PreparedRoute } from './preparedRoute';
import { shownDown, shownGiven, shownUp } from '../measures/shown';
import { RAISE_BY_HAND } from '../motion/raiseByHand';
import type { BookPiece, StageBook } from './stageBook';
import { notSaid } from './notSaid';
import type { Verdict } from './verdict';
import { WITHIN_TAPE } from './verdictClass';
import { entryAt } from '../lists/entryAt';
import { present } from '../lists/present';

/** What a sentence about a step is made from. */
export interface StepWords {
  readonly route: PreparedRoute;
  readonly i: number;
  readonly piece: BookPiece;
  readonly book: StageBook;
  /** [mm] */
  readonly allowance: number;
  readonly verdict: Verdict;
  readonly measured: ChainStep | undefined;
  readonly worst: ChainStep | undefined;
  /** The worst case leaves too little only as the survey may be meant, too. */
  readonly otherwise?: boolean;
  readonly proof?: string | undefined;
}

/** A length [mm] as it was given, in a sentence. @example mm(762) // '762 mm' */
export const mm = (value: number): string => `${shownGiven(value)} mm`;

/** Whole millimetres, tenths where it is small. */
const places = (value: number): number => (Math.abs(value) < 10 ? 1 : 0);

/** What is left [mm], in a sentence: no more than it is. @example mmLeft(24.96) // '24 mm' */
export const mmLeft = (value: number): string => `${shownDown(value, places(value))} mm`;

/** What is short, needed or raised [mm], in a sentence: no less than it is. @example mmNeeded(24.04) // '25 mm' */
export const mmNeeded = (value: number): string => `${shownUp(value, places(value))} mm`;

/** The measure [mm] that is needed in place of one, in a sentence: a greater one is told no less than it is, a smaller one no greater. */
export const mmNeededFrom = (asMeasured: number | undefined, needed: number): string =>
  asMeasured !== undefined && needed < asMeasured ? mmLeft(needed) : mmNeeded(needed);

/** The measures of a step as a sentence lists them: `Width 762 mm, Height 1981 mm`. */
function measuresInWords({ route, i }: StepWords): string {
  const { row } = entryAt(route.steps, i);
  const { stage } = row;
  if (!stage) return '';
  const { needs, may } = stageNeeds(stage);
  const named: readonly MeasureName[] = [
    ...needs,
    ...may.filter((name) => measureAt(stage, name)?.named && row.measures[name] !== undefined),
  ];
  return named.map((name) => `${measureAtStage(name, stage)} ${figureOf(name, row)}`).join(', ');
}

function figureOf(name: MeasureName, { stage, measures }: StageRow): string {
  const value = measures[name] ?? 0;
  if (stage && value === SKY && measureAt(stage, name)?.sky) return 'open';
  switch (MEASURES[name].quantity) {
    case 'angle':
      return `${value} degrees`;
    case 'count':
      return String(value);
    default:
      return mm(value);
  }
}

const sizes = ({ length, breadth, thickness }: BookPiece['size']): string =>
  `${shownGiven(length)} x ${shownGiven(breadth)} x ${shownGiven(thickness)} mm`;

/** Why a step has its verdict, in a clause that follows `step 3 (corner): `. */
export function stepReason(words: StepWords): string {
  const { verdict, measured, piece, book, proof } = words;
  switch (verdict) {
    case 'cannot go': {
      const tape = book.tape > 0 ? ', even with the tape in its favour' : '';
      return `a piece of ${sizes(piece.size)} cannot pass ${measuresInWords(words)}${tape}: ${proof ?? ''}`;
    }
    case 'no way found': {
      const nothing = measured?.closest === 'passage' && measured.passage?.answer.nothingFound === true;
      if (measured === undefined || measured.clearance === -Infinity || nothing) {
        return `no way of carrying it through ${measuresInWords(words)} is shown, which proves nothing: measure again or try a frame`;
      }
      return (
        `${shortBy(measured, piece.size)} ${whereClosest(words, measured)} ` +
        `(${measuresInWords(words)}), which proves nothing: measure again or try a frame`
      );
    }
    case 'tight':
      return whyTight(words, present(measured, 'the chain of a step that passes'));
    default:
      return leftWords(words, present(measured, 'the chain of a step that passes'));
  }
}

const leftWords = (words: StepWords, measured: ChainStep): string =>
  `${mmLeft(measured.clearance)} a side left ${whereClosest(words, measured)} (${measuresInWords(words)})`;

function whyTight(words: StepWords, measured: ChainStep): string {
  if (measured.passage?.answer.byChance)
    return `a motion was found ${whereClosest(words, measured)} (${measuresInWords(words)}) by a search, which gives no figure: try a frame first`;
  const { worst, allowance, route, i, book, otherwise = false } = words;
  const { caps } = entryAt(route.steps, i);
  const parts: string[] = [];
  const short = worst === undefined || worst.clearance < allowance;
  // What is known as one motion is looked for as measured alone.
  const measuredOnly = measured.passage?.measuredOnly === true;
  const open = route.steps.some((step) => step.open.length > 0);
  const prefix = worst !== undefined && worst.clearance < 0 && !open && !otherwise ? `${WITHIN_TAPE}: ` : '';
  const left = leftWords(words, measured);
  if (measuredOnly)
    parts.push(`${left}; with the tape against it no motion was looked for: try a frame first`);
  else if (short) {
    const after =
      worst !== undefined && measured.clearance >= allowance
        ? `, ${atWorst(worst, otherwise ? 'meant otherwise' : open ? 'open' : 'tape')}`
        : '';
    parts.push(`${prefix}${left}${after}, and the allowance is ${mm(allowance)}`);
  } else parts.push(left);
  if (short && otherwise && !measuredOnly) parts.push(...notSaid(route));
  if (caps.length > 0) parts.push(capWords(caps));
  if (short && worst !== measured) {
    parts.push(...leftOpen(route, i, worst));
    const needed = straightNeeded(worst, allowance, book.tape);
    if (needed !== undefined) {
      parts.push(`as it is carried here that straight needs at least ${mmNeeded(needed)}`);
    }
  }
  const capped = [measured, worst].find((step) => step?.passage?.capped)?.passage;
  if (capped) parts.push(...raiseWords(capped.answer));
  return parts.join('; ');
}

/** By how much it is short; where a length is too short for it, by how much of its own length. */
function shortBy(step: ChainStep, size: PieceSize): string {
  const { clearance, closest, limit } = step;
  const inLength = closest === 'limit' && limit?.length !== undefined && IN_LENGTH.includes(limit.kind);
  if (!inLength && tellsNothing(step, size)) return 'it is far from passing';
  return inLength ? `${mmNeeded(-2 * clearance)} too long` : `${mmNeeded(-clearance)} a side short`;
}

/** Short of more than this it is far from passing [mm a side]: no measure taken again brings so much. */
const FAR_SHORT = 150;

/**
 * Whether what a step is short of is no clearance of the piece: the length of a place that does not hold it, or so much
 * that nothing would be left of it, or no more than that it is far from passing.
 */
export const tellsNothing = ({ clearance, closest, passage }: ChainStep, { breadth }: PieceSize): boolean =>
  clearance < 0 &&
  (closest === 'limit' ||
    passage?.answer.nothingFound === true ||
    clearance < -Math.min(FAR_SHORT, breadth / 2));

const IN_LENGTH: readonly LimitCause['kind'][] = ['straight', 'flight', 'reach', 'arm'];

const AGAINST = {
  'meant otherwise': 'as it may be meant, too',
  open: 'with what is not measured at its worst and the tape against it',
  tape: 'with the tape against it',
} as const;

/** What the worst case leaves: a figure below nothing says nothing of what was not measured. */
function atWorst({ clearance }: ChainStep, what: keyof typeof AGAINST): string {
  const against = AGAINST[what];
  return clearance < 0 ? `nothing ${against}` : `${mmLeft(clearance)} ${against}`;
}

/**
 * How long a straight that was not measured has to be at least [mm] for the allowance, once it is measured with the
 * same tape, where it alone decides the worst case; undefined where it does not.
 */
function straightNeeded(worst: ChainStep | undefined, allowance: number, tape: number): number | undefined {
  if (worst?.closest !== 'limit' || worst.limit?.kind !== 'straight' || worst.limit.length !== undefined) {
    return undefined;
  }
  // At worst nothing of it is there, so that the piece is short of all that it needs.
  return Math.ceil(2 * (allowance - worst.clearance) + tape);
}

/** What is not measured at step i and was taken at its worst, a part of a sentence for each. */
export function leftOpen(route: PreparedRoute, i: number, worst: ChainStep | undefined): string[] {
  const { open, row } = entryAt(route.steps, i);
  const parts = open
    .filter((measure) => measure !== 'run')
    .map((measure) => `${measureAtStage(measure, row.stage)} is not measured`);
  const cause = worst?.limit;
  const after = cause?.kind === 'straight' && cause.length === undefined ? cause.rows[0] : undefined;
  // A straight belongs to the rows at both of its ends.
  const beside = [i, i - 1].find((k) => route.steps[k]?.open.includes('run'));
  const step = after ?? beside;
  if (step !== undefined)
    parts.unshift(`the straight after ${entryAt(route.steps, step).called} is not measured`);
  return parts;
}

function raiseWords(answer: { readonly raise?: number; readonly overRail?: boolean }): string[] {
  const parts: string[] = [];
  const raise = answer.raise ?? 0;
  if (answer.overRail) {
    parts.push(
      `it is lifted ${raise > 0 ? `${mmNeeded(raise)} ` : ''}over the handrail, which is more than by hand`,
    );
  } else if (raise > RAISE_BY_HAND) parts.push(`it is lifted ${mmNeeded(raise)}, which is more than by hand`);
  return parts;
}

/** Where on a step it is closest, in words, with the measure where a single one is meant. */
export const whereClosest = (at: Pick<StepWords, 'route' | 'i'>, step: ChainStep): string =>
  closestOfStep(at, step).words;

/**
 * Where on a step it is closest: what is said of it, ringed and printed. A straight that is too short, and a change of pose
 * in the space beside the step, have no face that decides.
 */
export function closestOfStep({ route, i }: Pick<StepWords, 'route' | 'i'>, step: ChainStep): Closest {
  const hold = holdAt(step.from);
  switch (step.closest) {
    case 'limit':
      return step.limit ? closestAtFigure(limitWords(route, i, step.limit)) : NOWHERE_CLOSEST;
    case 'change before':
      return closestAt(`while it is ${changeWords(holdAt(step.enters), hold)}`);
    case 'change after':
      return closestAt(`while it is ${changeWords(holdAt(step.to), holdAt(step.leaves))}`);
    case 'leaning':
      return closestAt('while it is leaned over beside this step');
    default:
      return step.passage ? toldOfStair(step.passage.answer.critical, stairOf(route, i)) : NOWHERE_CLOSEST;
  }
}

/** What a stair is called: what is solved as a flight is not always one. */
function stairOf(route: PreparedRoute, i: number): string {
  const { stage } = entryAt(route.steps, i).row;
  const kind = stage && kindOf(stage);
  return kind?.solvedAsFlight ? kind.passedBy : 'the flight';
}

/** A place beside a step that limits it. */
function limitWords(route: PreparedRoute, i: number, { kind, length, rows }: LimitCause): string {
  // A length that has to hold the piece, mostly a sum: no more of it than there is.
  const long = length === undefined ? 'which is not measured' : `${shownDown(length)} mm long`;
  const name = (row: number): string => entryAt(route.steps, row).called;
  switch (kind) {
    case 'straight':
      if (rows[0] === i) return `in the straight after this step, ${long}`;
      if (rows[1] === i) return `in the straight before this step, ${long}`;
      return `in the straight between ${name(rows[0])} and ${name(rows[1])}, ${long}`;
    case 'offset':
      return `between ${name(rows[0])} and ${name(rows[1])}, which may not face each other`;
    case 'reach':
      return `on the flight and the landing beside it, ${long} together`;
    case 'arm':
      return `in the straight up to ${name(rows[0] === i ? rows[1] : rows[0])}, ${long}, which is narrower or lower`;
    case 'flight':
      return `on the flight between its ends, ${long} along the pitch`;
    case 'room depth':
      return `on the way into the room, whose door may be in any wall`;
  }
}

/** The pose changes at step i, to go on with a sentence: `; stood on end on the landing`. */
export function changesInWords(route: PreparedRoute, i: number, step: ChainStep): string {
  const changes = changesAt(route, i, step);
  return changes.length > 0 ? `; ${changes.join(', then ')}` : '';
}

function changesAt(route: PreparedRoute, i: number, step: ChainStep): string[] {
  const stage = entryAt(route.steps, i).row.stage;
  const place = stage ? kindOf(stage).place : 'on the way';
  const changes: string[] = [];
  const add = (from: number, to: number, when: string): void => {
    if (from !== to) changes.push(`${changeWords(holdAt(from), holdAt(to))} ${place}${when}`);
  };
  const both = step.enters !== step.from && step.to !== step.leaves;
  add(step.enters, step.from, both ? ' first' : '');
  add(step.to, step.leaves, both ? ' after' : '');
  return changes;
}

/** All pose changes on a chain, each with its step, to follow the route's reason. */
export function changesOnChain(route: PreparedRoute, chain: readonly ChainStep[] | undefined): string {
  if (!chain) return '';
  const changes = chain.flatMap((step, i) =>
    changesAt(route, i, step).map((change) => `${change} at ${entryAt(route.steps, i).called}`),
  );
  return changes.length > 0 ? `; ${changes.join(', ')}` : '';
}
