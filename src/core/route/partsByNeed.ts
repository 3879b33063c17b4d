import { bestChain, widestClearance, type Part, type Passable } from './chain';
import type { PartPlan } from './partPlan';
import { supposedIn, withBlocks, withJoints, type BlocksAsked } from './routeParts';
import type { BookPiece, StageBook } from './stageBook';
import type { TapeCase } from './tapeCase';
import type { BlockToSolve } from './tapedBlock';

/** What is looked for along a route [mm a side]. */
export interface Wanted {
  /** With less nothing is won. */
  readonly least: number;
  /** More than this is of no interest. */
  readonly enough: number;
  readonly allowance: number;
  readonly which: Passable;
}

/** The parts of a route with the blocks that were solved. */
export interface PartsByNeed {
  readonly parts: Part[];
  /** The same with every block that was not solved supposed to pass in any way. */
  readonly hopeful: Part[];
}

/**
 * The parts of a route with what stands close solved together as far as some chain needs it: blocks that take long to
 * solve are supposed to pass in any way, and those on which the best chain then rests are solved, until it rests on
 * none that is not, or no chain is left that would do.
 * @param alone the parts of these plans by themselves
 */
export function partsByNeed(
  alone: readonly Part[],
  plans: readonly PartPlan[],
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  { least, enough, allowance, which }: Wanted,
): PartsByNeed {
  const solved = new Map<BlockToSolve, Set<number>>();
  const supposed: BlocksAsked['supposed'] = new Map();
  const others = withJoints(alone, plans, piece, book, tapeCase, { enough: least });
  const parts = (rest: BlocksAsked['others']): Part[] =>
    withBlocks(others, plans, piece, book, tapeCase, { solved, others: rest, least, enough, supposed });
  for (;;) {
    const hopeful = parts('supposed');
    const widest = widestClearance(hopeful, which);
    const chain = widest >= least ? bestChain(hopeful, which, widest, allowance) : undefined;
    let more = false;
    for (const { passage } of chain ?? []) {
      const block = passage && supposedIn(passage);
      if (!block) continue;
      more = true;
      solved.set(block, new Set([...(solved.get(block) ?? []), passage.from]));
    }
    if (!more) return { parts: parts('left out'), hopeful };
  }
}
