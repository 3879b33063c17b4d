import fc from 'fast-check';
import { sortedPiece } from '../../../../src/core/measures/piece';
import { sizesOfHold } from '../../../../src/core/motion/hold';
import {
  bestPassage,
  openingClearance,
  openingPassages,
  sectionThroughOpening,
} from '../../../../src/core/stages/opening/opening';
import { evenly } from '../../../support/evenly';

const size = (min: number, max: number) => evenly(min, max);
const scenes = fc.record({
  width: size(200, 2500),
  height: size(200, 2500),
  piece: fc.tuple(size(300, 3000), size(5, 2000), size(1, 900)).map((sizes) => sortedPiece(...sizes)),
});

describe('the ways through an opening', () => {
  test('held level a piece has half of what its section leaves, on the side that leaves less', () => {
    // 900 wide and 2000 high; a slab of 1800 x 930 x 30.
    const passages = openingPassages({ width: 900, height: 2000 }, sortedPiece(1800, 930, 30));
    const level = Object.fromEntries(
      passages.filter((p) => !p.needsTurningRoom).map((p) => [p.from, p.answer]),
    );
    expect(Object.values(level).every((answer) => Number.isFinite(answer.clearance))).toBe(true);
    expect(level['LB']).toMatchObject({
      clearance: 435,
      pose: 'on edge',
      critical: { words: 'between the sides of the opening' },
    });
    expect(level['LT']).toMatchObject({
      clearance: -15,
      pose: 'flat',
      critical: { words: 'between the sides of the opening' },
    });
    expect(level['TB']).toMatchObject({ clearance: -450, pose: 'on edge' });
    expect(level['BT']).toMatchObject({ clearance: -450, pose: 'flat' });
    expect(level['BL']).toMatchObject({
      clearance: 100,
      pose: 'on end',
      critical: { words: 'under the head of the opening' },
    });
    expect(level['TL']).toMatchObject({ clearance: -15, pose: 'on end' });
  });

  test('a piece that nothing lets through has lost its larger side at least', () => {
    const [worst] = openingPassages({ width: 100, height: 100 }, sortedPiece(3000, 3000, 3000));
    // (100 - 3000)/2, and a side cannot lose more than itself.
    expect(worst!.answer.clearance).toBe(-1450);
  });

  test('the same room both ways is told as the sides', () => {
    const passages = openingPassages({ width: 500, height: 1400 }, sortedPiece(1800, 1000, 100));
    expect(passages.find((p) => p.from === 'LB' && !p.needsTurningRoom)!.answer).toMatchObject({
      clearance: 200,
      critical: { words: 'between the sides of the opening' },
    });
  });

  test('leaning is offered only where it gains, with its angle, and needs room to turn', () => {
    // Carver (Wetzel 2000): the longest face 30 thick in 1981 x 762 is 2102.75.
    const door = { width: 762, height: 1981 };
    const passages = openingPassages(door, sortedPiece(2600, 2102.75, 30));
    const leaning = passages.filter((p) => p.needsTurningRoom);
    const best = leaning.find((p) => p.from === 'LB')!;
    expect(best.answer.clearance).toBeCloseTo(0, 2);
    expect(best.answer.pose).toBe('leaning');
    const { angle } = sectionThroughOpening(door, sortedPiece(2600, 2102.75, 30));
    expect(best.answer.critical.words).toBe(
      `leaning ${Math.round((angle / Math.PI) * 180)} degrees in the opening`,
    );
    // cos t - sin t = (1981 - 762)/(2102.75 - 30), Carver's angle.
    expect(Math.cos(angle) - Math.sin(angle)).toBeCloseTo((1981 - 762) / (2102.75 - 30), 9);
    const square = openingPassages({ width: 900, height: 900 }, sortedPiece(1800, 500, 500));
    expect(square.some((p) => p.needsTurningRoom && p.from === 'LB')).toBe(false);
    expect(
      openingPassages({ width: 900, height: 2000 }, sortedPiece(1800, 900, 30)).filter(
        (p) => p.needsTurningRoom && p.from === 'LB',
      ),
    ).toEqual([]);
  });

  test('each way is what its section allows, and the best of them is the clearance of the cell', () => {
    fc.assert(
      fc.property(scenes, ({ width, height, piece }) => {
        const passages = openingPassages({ width, height }, piece);
        for (const { from, to, answer, needsTurningRoom } of passages) {
          expect(to).toBe(from);
          const { across, upright } = sizesOfHold(piece, from);
          const by = [(width - across) / 2, (height - upright) / 2] as const;
          if (!needsTurningRoom) {
            expect(answer.clearance).toBe(Math.max(Math.min(...by), -Math.max(across, upright) / 2));
          } else {
            expect(answer.clearance).toBeGreaterThan(Math.min(...by));
          }
          expect(answer.clearance).toBeLessThanOrEqual(answer.atMost);
        }
        const answer = bestPassage(openingPassages({ width, height }, piece));
        expect(answer.clearance).toBe(Math.max(...passages.map((p) => p.answer.clearance)));
        expect(answer).toEqual(passages.find((p) => p.answer.clearance === answer.clearance)!.answer);
        expect(answer.clearance).toBe(openingClearance({ width, height }, piece));
      }),
      { seed: 301, numRuns: 500 },
    );
  });
});
