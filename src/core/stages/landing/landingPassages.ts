import type { PieceSize } from '../../measures/piece';
import {
  LIKELIEST_FIRST,
  ALL_HOLDS,
  POSE_BY_UPRIGHT,
  poseOfHold,
  sidesOfHold,
  type Hold,
} from '../../motion/hold';
import { bestFamilyFit, eachFamilyFit } from './solveFamilies';
import { DRAWN, type FamilyFit } from './familyFit';
import type { LandingPlan } from './landingPlan';
import { drawFamilyMotion } from './drawFamilyMotion';
import { slidFit } from './slidFit';
import type { ProvedBound } from '../../geometry/proofs/provedBound';
import {
  checkedMotion,
  foundMotion,
  motionByChance,
  retracedMotion,
  widestFrom,
  widestIn,
  type KnownMotion,
  type SearchTask,
} from './landingSearch';
import { RAISE_BY_HAND } from '../../motion/raiseByHand';
import { answerOfMotion, withoutMotion, type FoundMotion } from '../../motion/answerOfMotion';
import type { AnswerWithMotion, StageAnswer } from '../../motion/stageAnswer';
import type { StagePassage } from '../../motion/stagePassage';
import type { Motion } from '../../space/motion';

/** A stage whose motions are solved as far as families go, and widened or searched in space beyond: landings and winders. */
export interface SearchedStage {
  /** What the families see; absent where there are none. */
  readonly plan?: LandingPlan;
  /** Motions drawn as they mostly go, whatever they meet, for the piece shrunk to a point. */
  readonly guides: (piece: PieceSize, hold: Hold) => readonly Motion[];
  readonly task: (piece: PieceSize, hold: Hold) => SearchTask;
  /** The same with full-height walls in place of a handrail; absent where there is no handrail. */
  readonly walled?: ((piece: PieceSize, hold: Hold) => SearchTask) | undefined;
  readonly proved: (piece: PieceSize) => ProvedBound;
}

/** A passage, and the widened or searched motion it rests on; null where it is a family's or nothing was found. */
export interface FoundPassage {
  readonly hold: Hold;
  readonly found: FoundMotion | null;
  readonly passage: StagePassage;
  /** It is a family's: solved anew where the measures are a little off. */
  readonly family?: true;
}

/** Places that a search by chance looks at. */
export const SEARCH_WORK = 30000;
/** Places that the widening of a stage’s motions looks at in all: a quarter of a second. */
const WIDENING_WORK = 150000;
/** How the piece is held on both flights in the motions that are widened or looked for. */
const SEARCHED_HOLDS: readonly Hold[] = ['LB', 'LT'];
/** Clearance up to which a motion is widened [mm a side]: hands and tape are well within it, and nothing depends on more. */
const ENOUGH = 150;
/** Where the best family falls so far short [mm a side] nothing is widened. */
const HOPELESS = -150;
/** Where what is shown between walls falls so far short [mm a side] chance is not asked: it was never seen to make that up. */
const UNLIKELY = -80;
/** Of what a family's motion gains when it is widened no more is claimed [mm a side]: so far it is steady. */
const MOST_WIDER = 40;
/** The other ways of holding it are left out where the flights leave no more than is shown, and this [mm a side]. */
const WORTH_MORE = 1;

/** The widest motion: the best of the families in closed form, or one of them widened in space. */
export function widestMotion(stage: SearchedStage, piece: PieceSize): AnswerWithMotion {
  const proved = stage.proved(piece);
  const fits = stage.plan ? familyFits(stage.plan, piece) : [];
  const best = widestOf(fits);
  const wider = widestOf(widenedMotions(stage, piece, proved, fits, 'the widest'));
  if (wider && (!best || wider.clearance > best.clearance - DRAWN)) {
    const found = foundMotion(stage.task(piece, wider.hold), piece, wider);
    const low = found.raise > RAISE_BY_HAND ? widenedLow(stage, piece, proved, fits) : [];
    const lowest = widestOf(low);
    if (!lowest || lowest.clearance <= wider.clearance)
      return answerOfMotion(found, piece, wider.hold, proved);
    return answerOfMotion(
      foundMotion(stage.task(piece, lowest.hold), piece, lowest),
      piece,
      lowest.hold,
      proved,
    );
  }
  if (!best || !stage.plan) return answerOfMotion(null, piece, 'LB', proved);
  const found = checkedMotion(stage.task(piece, best.hold), piece, drawnOf(stage, piece, best), best.raise);
  return answerOfMotion(found, piece, best.hold, proved);
}

/** Where the widest is raised high: what begins low may stay low. */
function widenedLow(
  stage: SearchedStage,
  piece: PieceSize,
  proved: ProvedBound,
  fits: readonly FamilyFit[],
): HeldMotion[] {
  if (!stage.plan) return [];
  const low = withByHand(stage.plan, piece, fits).filter(({ raise }) => raise <= RAISE_BY_HAND);
  const byHand = widestOf(low);
  if (!byHand || byHand === widestOf(fits)) return [];
  return widenedMotions(stage, piece, proved, low, 'each hold', low);
}

function widestOf<T extends { readonly clearance: number }>(all: readonly T[]): T | undefined {
  let best: T | undefined;
  for (const one of all) if (!best || one.clearance > best.clearance) best = one;
  return best;
}

/** A family's motion as it is drawn, with what is claimed for it. */
function drawnOf(stage: SearchedStage, piece: PieceSize, fit: FamilyFit): KnownMotion {
  if (!stage.plan) throw new Error('a stage without families has none to draw');
  const { start, goal } = stage.task(piece, fit.hold).ends(fit.clearance);
  return {
    clearance: fit.clearance - DRAWN,
    motion: drawFamilyMotion(stage.plan, piece, fit, start, goal),
  };
}

type HeldMotion = KnownMotion & { readonly hold: Hold };

/**
 * The motions of families, and guides, widened in space without chance: for each way of holding it the widest.
 * @param fits the best families
 * @param which the widest of all alone is wanted, or that of each way of holding it
 * @param among the families that they begin from, else the best of each
 */
function widenedMotions(
  stage: SearchedStage,
  piece: PieceSize,
  proved: ProvedBound,
  fits: readonly FamilyFit[],
  which: 'the widest' | 'each hold',
  among?: readonly FamilyFit[],
): HeldMotion[] {
  const best = widestOf(fits)?.clearance;
  const slid = fits.filter(({ as }) => as === 'slid');
  if (proved.atMost < 0 || (best !== undefined && (best < HOPELESS || best >= ENOUGH))) return [];
  const most = best === undefined ? ENOUGH : Math.min(ENOUGH, best - DRAWN + MOST_WIDER);
  const widest: HeldMotion[] = [];
  const budget = { left: WIDENING_WORK };
  let shown = best ?? -Infinity;
  for (const hold of SEARCHED_HOLDS) {
    if (which === 'each hold') shown = HOPELESS;
    const task = stage.task(piece, hold);
    const walls = stage.walled?.(piece, hold);
    if (Math.min(task.mostPadding, most) <= shown) continue;
    const starts = startsOf(stage, piece, hold, slid, among);
    const widening = { enough: most, shown, budget };
    const found = [widestFrom(task, piece, starts, widening)];
    // Where there is air above a rail, all that walls would allow goes too.
    const walled = walls && widestFrom(walls, piece, starts, widening);
    if (walled) found.push(widestIn(task, piece, [walled], widening));
    const motion = widestOf(found.filter((one) => one !== undefined));
    if (!motion) continue;
    const widestHeld = { ...motion, hold };
    shown = Math.max(shown, motion.clearance);
    const least = best === undefined || which === 'each hold' ? HOPELESS : best - DRAWN;
    if (widestHeld.clearance > least) widest.push(widestHeld);
  }
  return widest;
}

/** What is widened: the families as they are drawn, and the guides. Which they are does not hang on a millimetre. */
function startsOf(
  stage: SearchedStage,
  piece: PieceSize,
  hold: Hold,
  slid: readonly FamilyFit[],
  among?: readonly FamilyFit[],
): KnownMotion[] {
  const { plan } = stage;
  const clearance = -piece.length / 2;
  if (among) return among.filter((fit) => fit.hold === hold).map((fit) => drawnOf(stage, piece, fit));
  const guides = stage.guides(piece, hold).map((motion) => ({ clearance, motion }));
  const fits = plan ? eachFamilyFit(plan, piece, hold, { atLeast: HOPELESS }) : [];
  const drawn = [...fits, ...slid.filter((fit) => fit.hold === hold)]
    .sort((a, b) => b.clearance - a.clearance)
    .map((fit) => drawnOf(stage, piece, fit));
  return [...drawn, ...guides];
}

/**
 * The best family of each way of holding it that may be the best of all, and slid round where that leaves more: it needs
 * the flights for all its length, where the others do with less.
 */
function familyFits(plan: LandingPlan, piece: PieceSize, among: readonly Hold[] = ALL_HOLDS): FamilyFit[] {
  const fits: FamilyFit[] = [];
  let best = -Infinity;
  for (const hold of LIKELIEST_FIRST) {
    if (!among.includes(hold)) continue;
    const atLeast = Math.min(0, best);
    const fit = bestFamilyFit(plan, piece, hold, best === -Infinity ? {} : { atLeast });
    const better = Math.max(atLeast, (fit?.clearance ?? -Infinity) + WORTH_MORE);
    const slid = SEARCHED_HOLDS.includes(hold)
      ? slidFit(plan, piece, hold, better === -Infinity ? {} : { atLeast: better })
      : undefined;
    for (const one of [fit, slid]) {
      if (!one) continue;
      fits.push(one);
      if (one.clearance > best) best = one.clearance;
    }
  }
  return fits;
}

/** The fits, and for each that is raised higher than by hand the best of that hold that is not. */
function withByHand(plan: LandingPlan, piece: PieceSize, fits: readonly FamilyFit[]): FamilyFit[] {
  return fits.flatMap((fit) => {
    if (fit.raise <= RAISE_BY_HAND || fit.as === 'slid') return [fit];
    const ask = { mostRaise: RAISE_BY_HAND, ...(fit.clearance >= 0 ? { atLeast: 0 } : {}) };
    const byHand = bestFamilyFit(plan, piece, fit.hold, ask);
    return byHand ? [fit, byHand] : [fit];
  });
}

function familyPassage(plan: LandingPlan, fit: FamilyFit, proved: ProvedBound): StagePassage {
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
  // Slid round it is turned while all of it but its front is over the flight.
  if (fit.as === 'slid') return { from: fit.hold, to: fit.hold, answer };
  const { depthIn: before, depthOut: after } = plan;
  return { from: fit.hold, to: fit.hold, answer, onLanding: { before, after } };
}

/**
 * The passages of a stage: the families', for each way of holding it the best and the best that is raised by hand;
 * these widened in space; and where nothing of it passes, what a search by chance finds, which gives no figure.
 * The answer depends on the stage and the piece alone.
 * @param work places that a search by chance may look at; 0: the families alone, and guides
 */
export function routePassages(stage: SearchedStage, piece: PieceSize, work: number): FoundPassage[] {
  const proved = stage.proved(piece);
  const { plan } = stage;
  const fits = plan ? familyFits(plan, piece) : [];
  const all = plan ? withByHand(plan, piece, fits) : [];
  const passages = all.map((fit) => ofFamily(stage, fit, proved));
  if (plan && work === 0) return passages;
  const wider = widenedMotions(stage, piece, proved, fits, 'each hold');
  let raised = false;
  const add = (held: HeldMotion, task = stage.task): void => {
    const found = foundMotion(task(piece, held.hold), piece, held);
    raised ||= found.raise > RAISE_BY_HAND;
    passages.push(passageOf(found, piece, held.hold, proved));
  };
  wider.forEach((held) => add(held));
  // What goes over a rail is at best tight: what goes beside it, as between walls, may simply go.
  const { walled } = stage;
  if (walled && passages.some(({ passage }) => passage.answer.overRail)) {
    const walls = { ...stage, task: walled, walled: undefined };
    widenedMotions(walls, piece, proved, fits, 'each hold')
      .filter(({ clearance }) => clearance >= 0)
      .forEach((held) => add(held, walled));
  }
  if (raised) widenedLow(stage, piece, proved, fits).forEach((held) => add(held));
  const shown = widestOf(passages.map(({ passage }) => passage.answer))?.clearance ?? -Infinity;
  const unlikely = plan !== undefined && stage.walled === undefined && shown < UNLIKELY;
  if (shown < 0 && proved.atMost >= 0 && !unlikely) {
    const chance = chanceMotion(stage, piece, work, proved);
    if (chance) passages.push(chance);
  }
  return passages.length > 0 ? passages : [passageOf(null, piece, 'LB', proved)];
}

const ofFamily = (stage: SearchedStage, fit: FamilyFit, proved: ProvedBound): FoundPassage => {
  if (!stage.plan) throw new Error('a stage without families has no passage of one');
  return { hold: fit.hold, found: null, passage: familyPassage(stage.plan, fit, proved), family: true };
};

/** A motion of the piece itself, found by chance: it shows that it passes, and no figure. */
function chanceMotion(
  stage: SearchedStage,
  piece: PieceSize,
  work: number,
  proved: ProvedBound,
): FoundPassage | undefined {
  if (work === 0) return undefined;
  for (const hold of SEARCHED_HOLDS) {
    const task = stage.task(piece, hold);
    if (task.mostPadding < 0) continue;
    const known = motionByChance(task, piece, work);
    if (!known) continue;
    const { hold: held, found, passage } = passageOf(foundMotion(task, piece, known), piece, hold, proved);
    return { hold: held, found, passage: { ...passage, answer: { ...passage.answer, byChance: true } } };
  }
  return undefined;
}

/**
 * The same passages with the measures a little off and the piece a little larger: the families solved anew, the
 * widened motions gone over again there. What was found by chance is not: it gives no figure to lose.
 * @param enough clearance [mm a side] above which more is of no interest
 */
export function retracedPassages(
  stage: SearchedStage,
  piece: PieceSize,
  known: readonly FoundPassage[],
  enough = Infinity,
): StagePassage[] {
  const proved = stage.proved(piece);
  // Worse off, what does not pass as measured does not pass either.
  const passes = ({ passage }: FoundPassage): boolean => passage.answer.clearance >= 0;
  const some = known.some(passes);
  const searched = known.flatMap((one) => {
    const { hold, found, passage, family } = one;
    if (family || passage.answer.byChance || (some && !passes(one))) return [];
    const again = found && retracedMotion(stage.task(piece, hold), piece, found, enough);
    return [passageOf(again, piece, hold, proved).passage];
  });
  const { plan } = stage;
  if (!plan) return searched;
  const families = known.filter(({ family }) => family);
  const passing = families.filter(passes);
  const among = [...new Set((passing.length > 0 ? passing : families).map(({ hold }) => hold))];
  const anew = withByHand(plan, piece, familyFits(plan, piece, among));
  return [...anew.map((fit) => familyPassage(plan, fit, proved)), ...searched];
}

/** A motion round the stage, held so on both flights, widened to no less than that; undefined where there is none. */
export function widenedRound(
  stage: SearchedStage,
  piece: PieceSize,
  hold: Hold,
  atLeast: number,
): Motion | undefined {
  const fits = stage.plan ? familyFits(stage.plan, piece) : [];
  const wider = widenedMotions(stage, piece, stage.proved(piece), fits, 'each hold');
  return wider.find((motion) => motion.hold === hold && motion.clearance >= atLeast)?.motion;
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
