import type { PieceSize } from '../../measures/piece';
import { ALL_HOLDS, POSE_BY_UPRIGHT, poseOfHold, sidesOfHold, type Hold } from '../../motion/hold';
import { bestFamilyFit, type FamilyFit, type LandingPlan } from './motionFamilies';
import { drawFamilyMotion } from './drawFamilyMotion';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import {
  checkedMotion,
  searchForMotion,
  retraceMotion,
  searchForRoute,
  type SearchTask,
} from './searchMotion';
import { RAISE_BY_HAND } from '../../motion/raiseByHand';
import { answerOfMotion, withoutMotion, type FoundMotion } from '../../motion/answerOfMotion';
import type { AnswerWithMotion, StageAnswer } from '../../motion/stageAnswer';
import type { StagePassage } from '../../motion/stagePassage';

/** A stage whose motions are solved as far as families go, and searched in space beyond: landings and winders. */
export interface SearchedStage {
  /** What the families see; absent where there are none. */
  readonly plan?: LandingPlan;
  readonly task: (piece: PieceSize, hold: Hold) => SearchTask;
  /** The same with full-height walls in place of a handrail; absent where there is no handrail. */
  readonly walled?: ((piece: PieceSize, hold: Hold) => SearchTask) | undefined;
  readonly proved: (piece: PieceSize) => ProvedBound;
}

/** A passage, and the searched motion it rests on; null where it is a family's or nothing was found. */
export interface FoundPassage {
  readonly hold: Hold;
  readonly found: FoundMotion | null;
  readonly passage: StagePassage;
}

/** Places looked at for one padding. */
export const SEARCH_WORK = 30000;
/** How the piece is held on both flights in the motions that are looked for. */
const SEARCHED_HOLDS: readonly Hold[] = ['LB', 'LT'];
/** All of them, the ones that mostly go best first. */
const LIKELIEST_FIRST: readonly Hold[] = ['LB', 'LT', 'BL', 'TL', 'BT', 'TB'];
/** Clearance in a route above which nothing depends on more [mm a side]: hands and tape are well within it. */
const ENOUGH = 150;
/** The same on a winder, where the verdict is never better than tight. */
const WINDER_ENOUGH = 60;
/**
 * Clearance of a family, lifted no higher than by hand, above which a route does not search for more [mm a
 * side]: twice a usual allowance, and what the tape takes.
 */
const FAMILY_ENOUGH = 60;
/** Where the best family falls so far short nothing is searched: no search was seen to make that up. */
const HOPELESS = -80;
/** What tape and growth can be thought to take of a clearance before another motion is looked for [mm a side]. */
const GENEROUS = 40;
/** A family's clearance in closed form, less this [mm a side]: its drawn motion is then free between attitudes. */
export const DRAWN = 0.5;
/** More than this is looked for beyond a family [mm a side]. */
const WORTH_MORE = 1;

/**
 * The widest motion: the best of the families in closed form, or one that a search finds beyond it, in either
 * way of holding it; one that cannot beat the best so far is left out.
 * @param work places looked at for one padding
 */
export function widestMotion(stage: SearchedStage, piece: PieceSize, work: number): AnswerWithMotion {
  const proved = stage.proved(piece);
  let best = widestFamilyMotion(stage, piece, proved);
  if (best !== null && pastSearching(best.clearance, proved)) return best;
  if (best === null && stage.plan && proved.atMost < 0) {
    return answerOfMotion(null, piece, 'LB', proved);
  }
  let nothing: AnswerWithMotion | undefined;
  const tasks = SEARCHED_HOLDS.map((hold) => ({ hold, task: stage.task(piece, hold) }));
  for (const { hold, task } of tasks.sort((a, b) => b.task.mostPadding - a.task.mostPadding)) {
    if (best !== null && task.mostPadding <= best.clearance + WORTH_MORE) continue;
    const found = foundFor(stage, task, piece, hold, work);
    const shown = answerOfMotion(found, piece, hold, proved);
    if (found === null) nothing ??= shown;
    else if (best === null || shown.clearance > best.clearance) best = shown;
  }
  return best ?? nothing ?? answerOfMotion(null, piece, 'LB', proved);
}

/** Whether no search can make up what the best family falls short: proved not to pass, or too far from it. */
const pastSearching = (best: number, { atMost }: ProvedBound): boolean => atMost < 0 || best < HOPELESS;

/** The best of the families, with its motion drawn and checked; null where there is none. */
function widestFamilyMotion(
  stage: SearchedStage,
  piece: PieceSize,
  proved = stage.proved(piece),
): AnswerWithMotion | null {
  let best: FamilyFit | undefined;
  if (!stage.plan) return null;
  for (const fit of familyFits(stage.plan, piece)) if (!best || fit.clearance > best.clearance) best = fit;
  if (!best) return null;
  const task = stage.task(piece, best.hold);
  const { start, goal } = task.ends(best.clearance);
  const motion = drawFamilyMotion(stage.plan, piece, best, start, goal);
  const known = { clearance: best.clearance - DRAWN, motion };
  const found = checkedMotion(task, piece, known, best.raise);
  return answerOfMotion(found, piece, best.hold, proved);
}

/**
 * The families' passages: for each way of holding it the best, and the best that is lifted by hand. A way that
 * cannot pass and that a better one stands beside is left out.
 */
function familyPassages(
  stage: SearchedStage,
  piece: PieceSize,
  proved = stage.proved(piece),
  among: readonly Hold[] = ALL_HOLDS,
): FamilyPassage[] {
  const { plan } = stage;
  if (!plan) return [];
  const passages: FamilyPassage[] = [];
  for (const fit of familyFits(plan, piece, among)) {
    passages.push(familyPassage(plan, fit, proved));
    if (fit.raise <= RAISE_BY_HAND) continue;
    const ask = { mostRaise: RAISE_BY_HAND, ...(fit.clearance >= 0 ? { atLeast: 0 } : {}) };
    const byHand = bestFamilyFit(plan, piece, fit.hold, ask);
    if (byHand) passages.push(familyPassage(plan, byHand, proved));
  }
  return passages;
}

function familyFits(plan: LandingPlan, piece: PieceSize, among: readonly Hold[] = ALL_HOLDS): FamilyFit[] {
  const fits: FamilyFit[] = [];
  let best = -Infinity;
  for (const hold of LIKELIEST_FIRST) {
    if (!among.includes(hold)) continue;
    const atLeast = Math.min(0, best);
    const fit = bestFamilyFit(plan, piece, hold, best === -Infinity ? {} : { atLeast });
    if (!fit) continue;
    fits.push(fit);
    if (fit.clearance > best) best = fit.clearance;
  }
  return fits;
}

/** A passage of a family: how high it is raised is always known. */
type FamilyPassage = StagePassage & { readonly answer: { readonly raise: number } };

function familyPassage(plan: LandingPlan, fit: FamilyFit, proved: ProvedBound): FamilyPassage {
  const answer = {
    clearance: fit.clearance - DRAWN,
    atMost: proved.atMost,
    ...(proved.atMost === Infinity ? {} : { bound: proved.bound }),
    pose:
      fit.as === 'level'
        ? poseOfHold(fit.hold)
        : fit.as === 'upright' || fit.as === 'swung'
          ? POSE_BY_UPRIGHT[sidesOfHold(fit.hold).along]
          : ('tilted' as const),
    critical: fit.critical,
    raise: fit.raise,
  } satisfies StageAnswer;
  const { depthIn: before, depthOut: after } = plan;
  return { from: fit.hold, to: fit.hold, answer, onLanding: { before, after } };
}

/**
 * The families' passages, and for each way of holding it one that is searched to the full.
 * @param work places looked at for one padding
 */
export function searchedPassages(stage: SearchedStage, piece: PieceSize, work: number): StagePassage[] {
  const proved = stage.proved(piece);
  const families = familyPassages(stage, piece, proved);
  const best = Math.max(-Infinity, ...families.map(({ answer }) => answer.clearance));
  if (families.length > 0 && pastSearching(best, proved)) return families;
  if (families.length === 0 && stage.plan && proved.atMost < 0) {
    return [passageOf(null, piece, 'LB', proved).passage];
  }
  const searched = SEARCHED_HOLDS.map((hold) => {
    const found = foundFor(stage, stage.task(piece, hold), piece, hold, work);
    return passageOf(found, piece, hold, proved).passage;
  });
  return [...families, ...searched];
}

// Where there is air above a rail, all that walls would allow goes too.
function foundFor(
  stage: SearchedStage,
  task: SearchTask,
  piece: PieceSize,
  hold: Hold,
  work: number,
): FoundMotion | null {
  const known = stage.walled && searchForMotion(stage.walled(piece, hold), piece, work);
  return searchForMotion(task, piece, work, known ?? undefined);
}

/**
 * The passages as a route needs them: the families', and where these leave less than is enough and nothing is
 * proved against it, a coarse search. The answer depends on the stage and the piece alone.
 * @param work places looked at for one padding; 0: the families alone
 */
export function routePassages(stage: SearchedStage, piece: PieceSize, work: number): FoundPassage[] {
  const proved = stage.proved(piece);
  const known = familyPassages(stage, piece, proved);
  const families = known.map((passage): FoundPassage => ({ hold: passage.from, found: null, passage }));
  const byHand = known.filter(({ answer }) => answer.raise <= RAISE_BY_HAND);
  // What is proved not to pass needs no search, and what passes amply by hand gains nothing by one.
  if (work === 0 || (families.length > 0 && proved.atMost < 0)) return families;
  const above = Math.max(-Infinity, ...byHand.map(({ answer }) => answer.clearance));
  if (above >= FAMILY_ENOUGH) return families;
  if (families.length > 0 && families.every(({ passage }) => passage.answer.clearance < HOPELESS))
    return families;
  const tasks = SEARCHED_HOLDS.map((hold) => ({ hold, task: stage.task(piece, hold) }));
  const searched: FoundPassage[] = [];
  const enough = stage.plan ? ENOUGH : WINDER_ENOUGH;
  let amply = false;
  for (const { hold, task } of tasks.sort((a, b) => b.task.mostPadding - a.task.mostPadding)) {
    // Of the ways of holding it that do not fit the flights only the likeliest is looked at, for its figure.
    if (task.mostPadding <= 0 && (searched.length > 0 || families.length > 0)) continue;
    if (task.mostPadding <= above + WORTH_MORE || (amply && !stage.plan)) continue;
    const walls = stage.walled && searchForRoute(stage.walled(piece, hold), piece, work, { enough, above });
    const found = searchForRoute(task, piece, work, { enough, known: walls ?? undefined, above });
    if (found !== null && found.clearance >= enough - 1) amply = true;
    if (found !== null || families.length === 0) searched.push(passageOf(found, piece, hold, proved));
  }
  return [...families, ...searched];
}

/**
 * The same passages with the measures a little off and the piece a little larger: the families solved anew,
 * the motions found gone over again there; another is looked for only where a motion that passed loses more
 * than can be thought.
 * @param work places looked at for one padding
 */
export function retracedPassages(
  stage: SearchedStage,
  piece: PieceSize,
  known: readonly FoundPassage[],
  work: number,
): StagePassage[] {
  const proved = stage.proved(piece);
  const searched = known.flatMap(({ hold, found, passage }) => {
    if (found === null) {
      return passage.onLanding ? [] : [passageOf(null, piece, hold, proved).passage];
    }
    const task = stage.task(piece, hold);
    let again = retraceMotion(task, piece, found, found.clearance - GENEROUS);
    if (again === null && found.clearance >= 0)
      again = searchForRoute(task, piece, work, { enough: found.clearance });
    return [passageOf(again, piece, hold, proved).passage];
  });
  // Worse off, a way of holding it that does not pass as measured does not pass either.
  const families = known.filter(({ passage }) => passage.onLanding);
  const passing = families.filter(({ passage }) => passage.answer.clearance >= 0);
  const among = (passing.length > 0 ? passing : families).map(({ hold }) => hold);
  return [...familyPassages(stage, piece, proved, among), ...searched];
}

function passageOf(
  found: FoundMotion | null,
  piece: PieceSize,
  hold: Hold,
  proved: ProvedBound,
): FoundPassage {
  const answer = withoutMotion(answerOfMotion(found, piece, hold, proved));
  return { hold, found, passage: { from: hold, to: hold, answer } };
}
