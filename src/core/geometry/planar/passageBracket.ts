import { decidePassage, DEFAULT_WORK, ROUNDING } from './decidePassage';
import type { PlanarPlace, PlanarRegion, PlanarWorld } from './planarWorld';

/** Even padding [mm a side] with which a rectangle passes: at least `lower` (shown), at most `upper` (proved). */
export interface PassageBracket {
  readonly lower: number;
  readonly upper: number;
  /** The path that shows `lower`, for the padded rectangle. */
  readonly path: () => readonly PlanarPlace[];
  /** Slices looked at. */
  readonly work: number;
}

/** A passage to be bracketed: its obstacles and ends may depend on the padding. */
export interface PlanarPassage {
  readonly world: PlanarWorld;
  readonly start: PlanarRegion & { readonly angle: number };
  readonly goal: PlanarRegion;
}

/**
 * Brackets the largest padding with which a rectangle passes, to `tolerance` unless the work limit ends it
 * first; then the bracket known so far. A side that the padding would make negative counts as 0.
 *
 * @param passageFor the passage for a rectangle p x q (its regions usually depend on the padded size)
 * @param p one side [mm]
 * @param q the other side [mm]
 * @param most padding known to be impossible or of no interest [mm]: `upper` is at most this
 * @param guess a padding near the answer, when there is one: the first two tries are around it
 */
export function passageBracket(
  passageFor: (p: number, q: number) => PlanarPassage | undefined,
  p: number,
  q: number,
  most: number,
  options: { readonly tolerance?: number; readonly guess?: number; readonly workLimit?: number } = {},
): PassageBracket {
  const tolerance = options.tolerance ?? 1;
  const workLimit = options.workLimit ?? 3 * DEFAULT_WORK;
  let lower = -Math.max(p, q) / 2;
  let upper = Math.max(most, lower);
  let path: () => readonly PlanarPlace[] = () => [];
  let work = 0;
  let undecided = false;
  const tryAt = (c: number): void => {
    const pc = Math.max(0, p + 2 * c);
    const qc = Math.max(0, q + 2 * c);
    const passage = passageFor(pc, qc);
    if (passage === undefined) {
      upper = Math.min(upper, c);
      return;
    }
    const limit = Math.min(DEFAULT_WORK, Math.max(1, workLimit - work));
    const decision = decidePassage(passage.world, pc, qc, passage.start, passage.goal, limit);
    work += decision.work;
    if (decision.verdict === 'passes') {
      lower = Math.max(lower, c - ROUNDING);
      path = decision.path;
    } else if (decision.verdict === 'blocked') upper = Math.min(upper, c);
    else undecided = true;
  };
  const { guess } = options;
  if (guess !== undefined) {
    for (const c of [guess - 0.45 * tolerance, guess + 0.45 * tolerance]) {
      if (c > lower && c < upper) tryAt(c);
    }
  }
  undecided = false;
  while (upper - lower > tolerance && !undecided && work < workLimit) {
    // From far off, steps from the upper end find the neighbourhood with cheap refusals.
    tryAt((lower + upper) / 2);
  }
  return { lower, upper, path, work };
}
