import { sortedPiece, type PieceSize } from '../../../src/core/measures/piece';
import { closestAt } from '../../../src/core/motion/closest';
import { deeperBound } from '../../../src/core/motion/deeperBound';
import type { StageAnswer } from '../../../src/core/motion/stageAnswer';
import { callInCells } from '../../support/callInCells';

const slab = sortedPiece(1830, 930, 25);
const answer: StageAnswer = {
  clearance: 50,
  atMost: 300,
  pose: 'tilted',
  critical: closestAt('here', 'anything'),
  bound: 'quick',
};

/** Excludes all that is longer than the slab padded by so much. */
const from =
  (padding: number) =>
  ({ length }: PieceSize): string | undefined =>
    length >= slab.length + 2 * padding ? 'deep' : undefined;

test('the least excluded padding is told to within 8 mm, never less than is proved', () => {
  for (const proved of [60, 100, 217.3, 299]) {
    const { atMost, bound } = deeperBound(answer, slab, from(proved));
    expect(atMost).toBeGreaterThanOrEqual(proved);
    expect(atMost).toBeLessThanOrEqual(Math.min(300, proved + 8));
    expect(bound).toBe(atMost < 300 ? 'deep' : 'quick');
  }
});

test('where nothing deeper is proved the quick bound stays, and without one none is made up', () => {
  expect(deeperBound(answer, slab, () => undefined)).toMatchObject({ atMost: 300, bound: 'quick' });
  const { bound, ...open } = { ...answer, atMost: Infinity };
  expect(bound).toBe('quick');
  expect(deeperBound(open, slab, () => undefined)).toEqual(open);
  expect(deeperBound(open, slab, from(100)).atMost).toBeLessThan(109);
});

// A bound below what a motion bears, which the tests of landings replay, would be false; 100 mm is what was measured.
test.each([
  ['QUARTERLANDING', [900, 900, 2100, 190, 240, 1900, 700, 25]],
  ['HALFLANDING', [900, 100, 1000, 2100, 190, 240, 2000, 600, 25]],
] as const)('WORKING of %s tells a bound above the clearance and within 100 mm of it', (name, values) => {
  const rows = callInCells('WORKING', name, ...values) as (string | number)[][];
  const value = (what: string): number => Number(rows.find(([first]) => first === what)![2]);
  const [shown, proved] = [value('Clearance'), value('Proved: no motion whatever leaves more than')];
  expect(proved).toBeGreaterThan(shown);
  expect(proved).toBeLessThan(shown + 100);
  expect(rows.at(-1)![2]).toBe(shown);
});
