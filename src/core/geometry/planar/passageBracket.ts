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
 * Brackets the largest padding with which a rectangle passes. Its two ends lie `tolerance` [mm] apart, or twice that
 * where a try on the very edge stays undecided; where the work limit is reached first, it is the bracket known so far. A
 * side that the padding would make negative counts as 0.
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
  const tolerance = options.tolerance ?? 0.5;
  const workLimit = options.workLimit ?? 3 * DEFAULT_WORK;
  let lower = -Math.max(p, q) / 2;
  let upper = Math.max(most, lower);
  let path: () => readonly PlanarPlace[] = () => [];
  let work = 0;
  // Tried on a fixed grid, so that the answer never falls when an opening grows.
  let below = Math.floor(lower / tolerance);
  let above = Math.ceil(upper / tolerance);
  const undecided = new Set<number>();
  const tryAt = (k: number): void => {
    const c = k * tolerance;
    const pc = Math.max(0, p + 2 * c);
    const qc = Math.max(0, q + 2 * c);
    const passage = passageFor(pc, qc);
    const limit = Math.min(DEFAULT_WORK, Math.max(1, workLimit - work));
    const decision = passage && decidePassage(passage.world, pc, qc, passage.start, passage.goal, limit);
    work += decision?.work ?? 0;
    if (decision?.verdict === 'passes') {
      below = k;
      lower = Math.max(lower, c - ROUNDING);
      path = decision.path;
    } else if (decision === undefined || decision.verdict === 'blocked') {
      above = k;
      upper = Math.min(upper, c);
    } else undecided.add(k);
  };
  if (options.guess !== undefined) {
    const k = Math.floor(options.guess / tolerance);
    for (const near of [k, k + 1]) if (near > below && near < above) tryAt(near);
  }
  // What is undecided counts as not shown for the lower end, then as not refused for the upper.
  for (const shown of [true, false]) {
    let from = below;
    let to = above;
    while (to - from > 1 && work < workLimit) {
      const middle = Math.floor((from + to) / 2);
      if (!undecided.has(middle)) tryAt(middle);
      if (undecided.has(middle)) {
        if (shown) to = middle;
        else from = middle;
      } else {
        from = Math.max(from, below);
        to = Math.min(to, above);
      }
    }
    if (undecided.size === 0) break;
  }
  return { lower, upper, path, work };
}
