import fc from 'fast-check';
import { aboveGuideline, aidFor } from '../../../src/core/crew/aidFor';
import { isStair, kindOf, STAGE_NAMES } from '../../../src/core/stages/kinds';
import { evenly } from '../../support/evenly';

/** HSE L23: a team of three of 25 kg each takes half of 75 kg; nothing is published above three. */
const MOST_BY_GUIDELINE = 37.5;

const moves = fc.record({
  stage: fc.constantFrom(...STAGE_NAMES),
  pose: fc.constantFrom(
    'flat' as const,
    'on edge' as const,
    'on end' as const,
    'tilted' as const,
    'leaning' as const,
  ),
  change: fc.boolean(),
  raise: evenly(0, 1500),
  overRail: fc.boolean(),
});

test('the guideline ends at 37.5 kg for three', () => {
  expect(aboveGuideline(MOST_BY_GUIDELINE)).toBe(false);
  expect(aboveGuideline(MOST_BY_GUIDELINE + 0.01)).toBe(true);
});

test('an aid is named only where it can stand: skates on level floor, a stair climber on a straight flight', () => {
  fc.assert(
    fc.property(moves, evenly(1, 400), (move, mass) => {
      const aid = aidFor(move, mass);
      if (aid === 'skates') {
        expect(isStair(move.stage)).toBe(false);
        expect(['flat', 'on edge', 'on end']).toContain(move.pose);
      }
      if (aid === 'stair climber') {
        expect(kindOf(move.stage).stair).toBe('flight');
        expect(move.stage).not.toBe('ramp');
        expect(move.pose).not.toBe('leaning');
      }
      if (aid === 'skates' || aid === 'stair climber') {
        expect(move.raise).toBeLessThanOrEqual(300);
        expect(move.overRail || move.change).toBe(false);
        expect(mass).toBeGreaterThan(MOST_BY_GUIDELINE);
      }
      // No guidance covers stairs, however light the piece.
      if (isStair(move.stage)) expect(aid).not.toBe('none needed by the guideline on the level');
    }),
    { seed: 1411 },
  );
});

test('without a mass nothing is said of an aid', () => {
  fc.assert(
    fc.property(moves, (move) => {
      expect(aidFor(move, undefined)).toBe('mass not given');
    }),
    { seed: 1412 },
  );
});
