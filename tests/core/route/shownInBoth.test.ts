import { NOWHERE_CLOSEST } from '../../../src/core/motion/closest';
import { shownInBoth, type BookPassage } from '../../../src/core/route/stageBook';

/** A way of its own, held the same before and after; `shared`: part of its length may stand on the landing. */
const way = (clearance: number, shared: boolean): BookPassage => ({
  from: 0,
  to: 0,
  clearance,
  turningRoom: false,
  capped: false,
  answer: { clearance, atMost: Infinity, pose: 'flat', critical: NOWHERE_CLOSEST },
  onLanding: shared ? { before: 700, after: 700 } : undefined,
});

/*
 * By the meaning of "in both": of a way that does with short flights no more is shown than ways of that kind leave in
 * each place; one that needs the flights for all its length says nothing of short ones.
 */
test('on short flights no more is shown than both places leave there', () => {
  const both = shownInBoth([way(28, true), way(60, false)], [way(23, true), way(61, false)]);
  const short = both.filter(({ onLanding }) => onLanding !== undefined);
  expect(short.map(({ clearance }) => clearance)).toEqual([23]);
  expect(Math.max(...both.map(({ clearance }) => clearance))).toBe(60);
});

test('what is shown on short flights in one place only needs long ones', () => {
  const both = shownInBoth([way(28, true)], [way(61, false)]);
  expect(both.map(({ clearance, onLanding }) => [clearance, onLanding])).toEqual([[28, undefined]]);
  expect(shownInBoth([way(61, false)], [way(28, true)])[0]?.onLanding).toBeUndefined();
});
