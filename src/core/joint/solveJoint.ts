import type { PieceSize } from '../measures/piece';
import { levelledJoint } from './levelledJoint';
import type { JointAsk, JointBlock, JointPassage, JointSolver } from './jointRow';
import { planJoint } from './planJoint';
import { sectionJoint } from './sectionJoint';
import { guidedJoint } from './guidedJoint';
import { spaceJoint } from './spaceJoint';
import { turnJoint } from './turnJoint';

/** The solvers in the order of their cost; each deals with rows of its own kind. */
const SOLVERS: readonly JointSolver[] = [turnJoint, planJoint, sectionJoint, levelledJoint, guidedJoint];

/**
 * Rows that stand close, solved as one space by whatever deals with them: the family of turns at a stair's end, the plan
 * of level rows, the vertical section of straight ones, level from a stair's end on; and, only where none of these shows
 * a passage and it is asked for, the search in space. For each pair of ways of being held the widest.
 *
 * @param search whether the search in space is asked where nothing else shows a passage
 * @returns an empty list where no motion was found, which proves nothing
 */
export function solveJoint(
  block: JointBlock,
  piece: PieceSize,
  ask: JointAsk = {},
  search: 'with search' | 'without search' = 'without search',
): readonly JointPassage[] {
  const best = new Map<string, JointPassage>();
  const take = (passages: readonly JointPassage[]): void => {
    for (const passage of passages) {
      // Room to lean is something else to ask for.
      const key = `${passage.from}|${passage.to}|${passage.needsTurningRoom === true}`;
      const known = best.get(key);
      if (!known || passage.answer.clearance > known.answer.clearance) best.set(key, passage);
    }
  };
  const wanted = ask.enough ?? Infinity;
  for (const solve of SOLVERS) {
    const level = [...best.values()].filter(({ needsTurningRoom }) => needsTurningRoom !== true);
    // What is enough in one of the ways that were asked for needs no dearer solver.
    if (level.some(({ answer }) => answer.clearance >= wanted - 0.5)) break;
    take(solve(block, piece, ask) ?? []);
  }
  if (best.size === 0 && search === 'with search') take(spaceJoint(block, piece, ask) ?? []);
  return [...best.values()];
}
