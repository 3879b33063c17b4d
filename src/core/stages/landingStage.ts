import type { PieceSize } from '../measures/piece';
import type { Held } from './held';
import {
  landingMotion,
  retracedMotion,
  routeMotion,
  type LandingFound,
  type LandingTask,
} from './landingMotion';
import type { ProvedBound } from './openingAtMost';
import { shownAnswer, withoutMotion } from './shownAnswer';
import type { ShownAnswer } from './stageAnswer';
import type { StagePassage } from './stagePassage';

/** A stage whose motions are searched in space: landings and winders. */
export interface LandingStage {
  readonly task: (piece: PieceSize, held: Held) => LandingTask;
  /** The same with full-height walls in place of a handrail; absent where there is no handrail. */
  readonly walled?: ((piece: PieceSize, held: Held) => LandingTask) | undefined;
  readonly proved: (piece: PieceSize) => ProvedBound;
  readonly overRail: number;
}

/** A passage, and the motion it rests on. */
export interface FoundPassage {
  readonly held: Held;
  readonly found: LandingFound | null;
  readonly passage: StagePassage;
}

/** Places looked at for one padding. */
export const LANDING_WORK = 30000;
/** How the piece is held on both flights in the motions that are looked for. */
const HELD: readonly Held[] = ['LB', 'LT'];
/** Clearance in a route above which nothing depends on more [mm a side]: hands and tape are well within it. */
const ENOUGH = 150;
/** What tape and growth can be thought to take of a clearance before another motion is looked for [mm a side]. */
const GENEROUS = 40;

/** The widest motion found in either way of holding it; one that cannot beat the best so far is left out. */
export function landingShown(stage: LandingStage, piece: PieceSize, work: number): ShownAnswer {
  const proved = stage.proved(piece);
  let best: ShownAnswer | null = null;
  const tasks = HELD.map((held) => ({ held, task: stage.task(piece, held) }));
  for (const { held, task } of tasks.sort((a, b) => b.task.mostPadding - a.task.mostPadding)) {
    if (best !== null && task.mostPadding <= best.clearance) continue;
    const found = foundFor(stage, task, piece, held, work);
    const shown = shownAnswer(found, piece, held, proved, stage.overRail);
    if (best === null || shown.clearance > best.clearance) best = shown;
  }
  return best!;
}

/** One passage for each way of holding it, each searched to the full. */
export function landingPassages(stage: LandingStage, piece: PieceSize, work: number): StagePassage[] {
  const proved = stage.proved(piece);
  return HELD.map((held) => {
    const found = foundFor(stage, stage.task(piece, held), piece, held, work);
    return passageOf(stage, found, piece, held, proved).passage;
  });
}

// Where there is air above a rail, all that walls would allow goes too.
function foundFor(
  stage: LandingStage,
  task: LandingTask,
  piece: PieceSize,
  held: Held,
  work: number,
): LandingFound | null {
  const known = stage.walled && landingMotion(stage.walled(piece, held), piece, work);
  return landingMotion(task, piece, work, known ?? undefined);
}

/**
 * The passages as a route needs them: searched coarsely, and no further than is enough. The answer depends on
 * the stage and the piece alone.
 */
export function foundPassages(stage: LandingStage, piece: PieceSize, work: number): FoundPassage[] {
  const proved = stage.proved(piece);
  const tasks = HELD.map((held) => ({ held, task: stage.task(piece, held) }));
  const byHeld = new Map<Held, FoundPassage>();
  for (const { held, task } of tasks.sort((a, b) => b.task.mostPadding - a.task.mostPadding)) {
    let found: LandingFound | null = null;
    // Of the ways of holding it that do not fit the flights only the likeliest is looked at, for its figure.
    if (byHeld.size === 0 || task.mostPadding > 0) {
      const walls = stage.walled && routeMotion(stage.walled(piece, held), piece, work, { enough: ENOUGH });
      found = routeMotion(task, piece, work, { enough: ENOUGH, known: walls ?? undefined });
    }
    byHeld.set(held, passageOf(stage, found, piece, held, proved));
  }
  return HELD.map((held) => byHeld.get(held)!);
}

/**
 * The same passages with the measures a little off and the piece a little larger: the motions found are gone
 * over again there, and another is looked for only where a motion that passed loses more than can be thought.
 */
export function retracedPassages(
  stage: LandingStage,
  piece: PieceSize,
  known: readonly FoundPassage[],
  work: number,
): StagePassage[] {
  const proved = stage.proved(piece);
  return known.map(({ held, found }) => {
    if (found === null) return passageOf(stage, null, piece, held, proved).passage;
    const task = stage.task(piece, held);
    let again = retracedMotion(task, piece, found, found.clearance - GENEROUS);
    if (again === null && found.clearance >= 0)
      again = routeMotion(task, piece, work, { enough: found.clearance });
    return passageOf(stage, again, piece, held, proved).passage;
  });
}

function passageOf(
  stage: LandingStage,
  found: LandingFound | null,
  piece: PieceSize,
  held: Held,
  proved: ProvedBound,
): FoundPassage {
  const answer = withoutMotion(shownAnswer(found, piece, held, proved, stage.overRail));
  return { held, found, passage: { from: held, to: held, answer } };
}
