import { bestChain, widestClearance, type Part, type Passable } from './chain';
import type { PartPlan, PlannedJoint } from './partPlan';
import {
  anyWay,
  isSolved,
  solvedPassages,
  supposedIn,
  withBlocks,
  withJoints,
  withMore,
  type BlocksAsked,
} from './routeParts';
import type { BookPassage, BookPiece, StageBook } from './stageBook';
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
    withBlocks(others, plans, piece, book, tapeCase, {
      solved,
      others: rest,
      least,
      enough,
      allowance,
      supposed,
    });
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

/**
 * The parts of a route with what stands close solved together, but for blocks, and only as far as a chain needs it that
 * leaves the allowance without anything that is at best tight: all is supposed to leave it in any way, and that on which
 * the best chain then rests is solved, until it rests on nothing that is not. Where no such chain is left all is solved.
 * @param alone the parts of these plans by themselves
 * @param allowance [mm a side]
 */
export function jointsByNeed(
  alone: readonly Part[],
  plans: readonly PartPlan[],
  piece: BookPiece,
  book: StageBook,
  tapeCase: TapeCase,
  allowance: number,
): Part[] {
  const known = new Map<PlannedJoint, readonly BookPassage[]>();
  const supposed = new Map<PlannedJoint, readonly BookPassage[]>();
  const supposes = new Map<BookPassage, PlannedJoint>();
  const suppose = (joint: PlannedJoint): readonly BookPassage[] => {
    const any = anyWay(allowance);
    for (const passage of any) supposes.set(passage, joint);
    supposed.set(joint, any);
    return any;
  };
  const parts = (others: 'supposed' | 'left out'): Part[] =>
    withMore(alone, plans, (joint) => {
      const found = known.get(joint);
      if (found || others === 'left out' || !isSolved(joint)) return found ?? [];
      return supposed.get(joint) ?? suppose(joint);
    });
  for (let more = true; more;) {
    more = false;
    const hopeful = parts('supposed');
    const widest = widestClearance(hopeful, 'free');
    const chain = widest >= allowance ? bestChain(hopeful, 'free', widest, allowance) : undefined;
    for (const { passage } of chain ?? []) {
      const joint = passage && supposes.get(passage);
      if (!joint || known.has(joint)) continue;
      more = true;
      known.set(joint, solvedPassages(joint, piece, book, tapeCase, allowance));
    }
  }
  const found = parts('left out');
  if (widestClearance(found, 'free') >= allowance) return found;
  return withJoints(alone, plans, piece, book, tapeCase, { enough: allowance });
}
