import type { PieceSize, Pose } from '../measures/piece';
import { holdAt, poseOfHold } from '../motion/hold';
import { bestChain, widestClearance, type ChainStep, type Part, type Passable } from './chain';
import type { PreparedRoute } from './preparedRoute';
import { proofAt } from './proofs';
import { rowThatDecides } from './rowThatDecides';
import { casesOf, type MeasuredCase } from './casesOf';
import {
  changesInWords,
  changesOnChain,
  leftOpen,
  mmLeft,
  stepReason,
  tellsNothing,
  type StepWords,
} from './reason';
import type { BookPassage, BookPiece, StageBook } from './stageBook';
import { verdictRank, type Verdict } from './verdict';
import { TIGHT_WORDS, type Tightness } from './verdictClass';
import { entryAt } from '../lists/entryAt';
import { Lately } from '../lists/lately';
import { once } from '../lists/once';
import { present } from '../lists/present';

/** What is said of one step, on the best chain of the whole route. */
export interface StepJudgement {
  readonly verdict: Verdict;
  /** Why it is tight, where it is. */
  readonly tightness?: Tightness;
  /** Clearance as measured [mm a side]; undefined where none can be shown. */
  readonly clearance: number | undefined;
  /** No way is found, and what it is short of is no clearance of the piece: no table shows that figure. */
  readonly tellsNothing?: boolean;
  readonly pose: Pose | undefined;
  /** Why, in a clause. */
  readonly because: string;
  /** The pose changes made at the step, to follow it: `; stood on end on the landing`, or nothing. */
  readonly changes: string;
}

/** What is said of a piece on a route. `step` is the index of the step that decides. */
export interface RouteJudgement {
  readonly verdict: Verdict;
  /** Why it is tight, where it is. */
  readonly tightness?: Tightness;
  /** [mm a side] */
  readonly clearance: number | undefined;
  /** As at the step that decides. */
  readonly tellsNothing?: boolean;
  /** -1 for a route without steps. */
  readonly step: number;
  readonly pose: Pose | undefined;
  /** How far the motion raises it above what is below it, at most [mm]. */
  readonly raise: number;
  /** One sentence that can be read to a customer. */
  readonly reason: string;
  readonly steps: readonly StepJudgement[];
}

/** The verdict and the figures, before any words are written. */
export interface RouteFinding {
  readonly verdict: Verdict;
  /** [mm a side] */
  readonly clearance: number | undefined;
}

/** One piece on one route: verdict first, words only when they are asked for. */
export interface RouteCase {
  readonly finding: RouteFinding;
  /** What is judged as measured: the reading that leaves most, laid out for the piece. */
  readonly measured: MeasuredCase;
  /** `every step`: all steps to the full, not only the deciding one. */
  judge(detail?: 'every step'): RouteJudgement;
}

/**
 * Judges a piece on a route. Worst, measured and best case each take their own best chain of poses; the worst
 * case is only looked at where the measured one passes, and the best case only where a proof could refuse.
 *
 * - goes: without any way that is at best tight, the worst case leaves the allowance;
 * - tight: the measured case passes; - no way found: it does not, and nothing proves it impossible;
 * - cannot go: proved at some step even in the best case; - not measured: a step cannot be judged.
 * @param allowance the clearance the firm insists on [mm a side]
 */
export function judgeRoute(
  route: PreparedRoute,
  size: PieceSize,
  book: StageBook,
  allowance: number,
): RouteCase {
  const piece = book.pieceOf(size);
  const judge = (): Kept => ({ book, found: caseOf(route, piece, book, allowance) });
  const known = JUDGED.get(route, `${piece.id}|${allowance}`, judge);
  return (known.book === book ? known : judge()).found;
}

/** A case with the book in which it was judged. */
interface Kept {
  readonly book: StageBook;
  readonly found: RouteCase;
}

/** Of the routes asked for lately: what is shown of one is judged, told move by move and drawn, one after the other. */
const JUDGED = new Lately<PreparedRoute, Kept>(4);

function caseOf(route: PreparedRoute, piece: BookPiece, book: StageBook, allowance: number): RouteCase {
  const { steps } = route;
  const complete = steps.length > 0 && steps.every((step) => step.problem === undefined);
  const { measured, worst, leavesAllowance } = casesOf(route, piece, book, allowance);
  const { widest } = measured;

  let verdict: Verdict;
  let free = false;
  if ((!complete || widest < 0) && firstProof(route, piece, book) >= 0) verdict = 'cannot go';
  else if (!complete) verdict = 'not measured';
  else if (widest < 0) verdict = 'no way found';
  else {
    free =
      widest >= allowance &&
      steps.every((step) => step.caps.length === 0) &&
      worst().every((parts) => widestClearance(parts, 'free') >= allowance) &&
      widestClearance(measured.parts, 'free') >= allowance;
    verdict = free ? 'goes' : 'tight';
  }
  const { stopped } = measured;
  const most = stopped?.widest ?? widest;
  const figure = steps.length > 0 && Number.isFinite(most) && !hangsOnChance(measured);
  const shown = figure ? most : undefined;
  // The widest motion's, whatever its raise; the one that is carried may leave less.
  const finding: RouteFinding = { verdict, clearance: complete ? shown : undefined };

  const briefly = once(() => judgeSteps());
  const fully = once(() => judgeSteps('every step'));
  const judge = (detail?: 'every step'): RouteJudgement => (detail ? fully() : briefly());
  const judgeSteps = (detail?: 'every step'): RouteJudgement => {
    if (steps.length === 0) {
      const reason = 'the route has no steps';
      return { verdict, clearance: undefined, step: -1, pose: undefined, raise: 0, reason, steps: [] };
    }
    const best = free ? widestClearance(measured.parts, 'free') : widest;
    const chain = bestChain(measured.parts, free ? 'free' : 'any', best, allowance);
    const stops = stopped && bestChain(stopped.parts, 'any', stopped.widest, allowance);
    const stopsAt = stops && leastOf(stops);
    const roomiest = best < widest ? bestChain(measured.parts, 'any', widest, allowance) : undefined;
    // Where the measured case does not pass, the worst case changes nothing at the deciding step.
    const looksAtWorst = widest >= 0 || detail === 'every step';
    const worstChain = looksAtWorst ? narrowestChain(worst(), free ? 'free' : 'any', allowance) : undefined;
    // Whether it is only as the survey may be meant, too, that the worst case leaves less than the allowance.
    const { reading } = measured;
    const otherwise =
      !free &&
      route.readings.length > 1 &&
      reading !== undefined &&
      widest >= allowance &&
      leavesAllowance(reading);
    const judged = steps.map((_, i) => {
      const asMeasured = i === stopsAt ? stops?.[i] : chain?.[i];
      return judgeStep(route, i, piece, book, allowance, asMeasured, worstChain?.[i], otherwise);
    });
    const first = (verdict === 'no way found' ? stopsAt : undefined) ?? limitingStep(verdict, judged);
    const decides = rowThatDecides(route, stops ?? chain, first) ?? first;
    const alike =
      judged[decides]?.verdict === judged[first]?.verdict &&
      judged[decides]?.clearance === judged[first]?.clearance;
    const limiting = alike ? decides : first;
    const at = atWidest(entryAt(judged, limiting), roomiest?.[limiting]);
    const tightness = verdict === 'tight' ? tightnessOf(judged) : undefined;
    const told = judged.map((step, i) => atWidest(step, roomiest?.[i]));
    return {
      verdict,
      ...(tightness === undefined ? {} : { tightness }),
      clearance: finding.clearance,
      ...(at.tellsNothing === true ? { tellsNothing: true } : {}),
      step: limiting,
      pose: at.pose,
      raise: Math.max(0, ...(chain ?? []).map(({ passage }) => passage?.answer.raise ?? 0)),
      reason: `${tightness === undefined ? '' : `${TIGHT_WORDS[tightness]}: `}${routeReason(route, limiting, at, chain)}${closerElsewhere(route, at, told)}`,
      steps: told,
    };
  };
  return { finding, judge, measured };
}

/** Whether it passes only by a motion that a search found by chance, which gives no figure. */
function hangsOnChance({
  parts,
  widest,
}: {
  readonly parts: readonly Part[];
  readonly widest: number;
}): boolean {
  const byChance = ({ answer }: BookPassage): boolean => answer.byChance === true;
  if (widest < 0 || !parts.some(({ passages }) => passages?.some(byChance))) return false;
  const steady = parts.map((part) => ({
    ...part,
    passages: part.passages?.filter((passage) => !byChance(passage)),
  }));
  return widestClearance(steady, 'any') < 0;
}

/** The best chain of the reading that leaves least. */
function narrowestChain(
  readings: readonly Part[][],
  which: Passable,
  allowance: number,
): ChainStep[] | undefined {
  let least = Infinity;
  let narrowest: Part[] = [];
  for (const parts of readings) {
    const widest = widestClearance(parts, which);
    if (widest >= least) continue;
    least = widest;
    narrowest = parts;
  }
  return bestChain(narrowest, which, least, allowance);
}

/** Index of the first step that is proved impossible even with the tape in the piece's favour, or -1. */
function firstProof(route: PreparedRoute, piece: BookPiece, book: StageBook): number {
  return route.steps.findIndex(
    ({ stage }, i) => stage !== undefined && proofAt(route, i, piece, book) !== undefined,
  );
}

function judgeStep(
  route: PreparedRoute,
  i: number,
  piece: BookPiece,
  book: StageBook,
  allowance: number,
  measured: ChainStep | undefined,
  worst: ChainStep | undefined,
  otherwise: boolean,
): StepJudgement {
  const step = entryAt(route.steps, i);
  if (step.stage === undefined) {
    return {
      verdict: 'not measured',
      clearance: undefined,
      pose: undefined,
      because: present(step.problem, 'why a step cannot be judged'),
      changes: '',
    };
  }
  const proof = proofAt(route, i, piece, book);
  let verdict: Verdict = 'goes';
  let tightness: Tightness | undefined;
  if (proof !== undefined) verdict = 'cannot go';
  else if (measured === undefined || measured.clearance < 0) verdict = 'no way found';
  else {
    const capped = step.caps.length > 0 || measured.passage?.capped || worst?.passage?.capped;
    if (capped || worst === undefined || worst.clearance < allowance) {
      verdict = 'tight';
      const open = measured.clearance >= allowance && (otherwise || leftOpen(route, i, worst).length > 0);
      tightness = capped ? 'trial' : open ? 'open' : 'measured';
    }
  }
  return judgedStep(
    { route, i, piece, book, allowance, verdict, measured, worst, otherwise, proof },
    tightness,
  );
}

/** A step with its words: those of most steps are never read, so they are made when they are. */
function judgedStep(words: StepWords, tightness: Tightness | undefined): StepJudgement {
  const { route, i, verdict, measured } = words;
  return {
    verdict,
    ...(tightness === undefined ? {} : { tightness }),
    clearance: measured?.passage?.answer.byChance ? undefined : measured?.clearance,
    ...(verdict === 'no way found' && measured && tellsNothing(measured, words.piece.size)
      ? { tellsNothing: true }
      : {}),
    pose: measured && poseOfStep(measured),
    get because() {
      return stepReason(words);
    },
    get changes() {
      return measured && verdict !== 'cannot go' ? changesInWords(route, i, measured) : '';
    },
  };
}

/** A step with the clearance of the widest motion, where that is more than the one's that is carried. */
function atWidest(step: StepJudgement, roomiest: ChainStep | undefined): StepJudgement {
  const { clearance } = step;
  if (!roomiest || clearance === undefined || roomiest.clearance <= clearance) return step;
  return {
    ...step,
    clearance: roomiest.clearance,
    because: `${step.because}; raised farther than by hand it leaves ${mmLeft(roomiest.clearance)}`,
  };
}

/** The pose at the step where it is closest. */
function poseOfStep(step: ChainStep): Pose | undefined {
  if (step.passage) return step.passage.answer.pose;
  return poseOfHold(holdAt(step.from));
}

/** The step that decides: the least clearance among those with the route's verdict, the first among equals. */
function limitingStep(verdict: Verdict, steps: readonly StepJudgement[]): number {
  const rank = verdictRank(verdict);
  let limiting = -1;
  steps.forEach((step, i) => {
    if (verdictRank(step.verdict) !== rank) return;
    const better =
      limiting < 0 ||
      // Proofs and missing measures have no weakest: the first is named.
      (verdict !== 'cannot go' &&
        verdict !== 'not measured' &&
        (step.clearance ?? -Infinity) < (entryAt(steps, limiting).clearance ?? -Infinity));
    if (better) limiting = i;
  });
  return limiting >= 0 ? limiting : 0;
}

/** The step at which a chain is closest, the first among equals. */
const leastOf = (chain: readonly ChainStep[]): number =>
  chain.reduce((least, { clearance }, i) => (clearance < entryAt(chain, least).clearance ? i : least), 0);

/** A trial is needed whatever is measured; what is measured and tight is not freed by more of the tape. */
function tightnessOf(steps: readonly StepJudgement[]): Tightness {
  const kinds = new Set(steps.map(({ tightness }) => tightness));
  if (kinds.has('trial')) return 'trial';
  return kinds.has('open') && !kinds.has('measured') ? 'open' : 'measured';
}

/** Where another step than the one that makes the verdict leaves less: the route's figure is that step's. */
function closerElsewhere(route: PreparedRoute, at: StepJudgement, steps: readonly StepJudgement[]): string {
  if (at.verdict !== 'tight' || at.clearance === undefined) return '';
  const left = steps.map(({ clearance = Infinity }) => clearance);
  const least = Math.min(...left);
  const step = route.steps[left.indexOf(least)];
  if (!step || mmLeft(least) === mmLeft(at.clearance)) return '';
  return `; the least on the route is ${mmLeft(least)} a side, at ${step.called} (${step.row.stage ?? step.row.stageText})`;
}

function routeReason(
  route: PreparedRoute,
  limiting: number,
  at: StepJudgement,
  chain: readonly ChainStep[] | undefined,
): string {
  const { row, called } = entryAt(route.steps, limiting);
  const name = row.stage ?? row.stageText;
  const changes = at.verdict === 'goes' || at.verdict === 'tight' ? changesOnChain(route, chain) : '';
  return `${called} (${name}): ${at.because}${changes}`;
}
