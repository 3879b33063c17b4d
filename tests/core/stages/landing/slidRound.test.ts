import { paddedPiece, sortedPiece, type PieceSize } from '../../../../src/core/measures/piece';
import { drawFamilyMotion } from '../../../../src/core/stages/landing/drawFamilyMotion';
import { bestFamilyFit } from '../../../../src/core/stages/landing/solveFamilies';
import {
  quarterLandingAnswer,
  quarterLandingStage,
  quarterLandingTask,
} from '../../../../src/core/stages/landing/quarterLanding';
import { slidFit } from '../../../../src/core/stages/landing/slidFit';
import { replay } from '../../../support/replayMotion';

/** Wide quarter landings, low and steep, on which a search by chance found a way and no other family does. */
const LOW: readonly (readonly [Parameters<typeof quarterLandingStage>[0], PieceSize])[] = [
  [
    { widthIn: 1046, widthOut: 1050, headroom: 1939, rise: 187, going: 212, overRail: 0 },
    sortedPiece(2437, 910, 48),
  ],
  [
    { widthIn: 1029, widthOut: 1053, headroom: 2167, rise: 207, going: 225, overRail: 0 },
    sortedPiece(2183, 1123, 47),
  ],
  [
    { widthIn: 987, widthOut: 1136, headroom: 2039, rise: 172, going: 226, overRail: 0 },
    sortedPiece(2306, 1110, 37),
  ],
];

test('a piece that no other family brings round slides along the inner edge, free on replay', () => {
  for (const [measures, piece] of LOW) {
    const { plan } = quarterLandingStage(measures);
    const others = bestFamilyFit(plan!, piece, 'LB')?.clearance ?? -Infinity;
    const fit = slidFit(plan!, piece, 'LB')!;
    expect(others).toBeLessThan(0);
    expect(fit.clearance).toBeGreaterThan(0);
    const task = quarterLandingTask(measures, piece, 'LB');
    const { start, goal } = task.ends(fit.clearance);
    const motion = drawFamilyMotion(plan!, piece, fit, start, goal);
    const scene = task.obstacles.map(({ box }) => box);
    const seen = replay({ motion, scene }, paddedPiece(piece, fit.clearance - 0.1), { step: 4 });
    expect(seen.collides).toBe(false);
    // What is claimed of the stage is no less.
    expect(quarterLandingAnswer(measures, piece).clearance).toBeGreaterThan(fit.clearance - 1);
  }
});

test('a family that does not leave what is asked is none, nor is there one on a half landing', () => {
  const [[measures, piece]] = LOW as [(typeof LOW)[number]];
  const { plan } = quarterLandingStage(measures);
  const { clearance, raise } = slidFit(plan!, piece, 'LB')!;
  expect(slidFit(plan!, piece, 'LB', { atLeast: clearance + 1 })).toBeUndefined();
  expect(slidFit(plan!, piece, 'LB', { mostRaise: raise - 1 })).toBeUndefined();
  expect(slidFit({ ...plan!, across: 2100 }, piece, 'LB')).toBeUndefined();
});
