import { paddedPiece, sortedPiece } from '../../../../src/core/measures/piece';
import { winderStage } from '../../../../src/core/stages/winder/winder';
import { routePassages } from '../../../../src/core/stages/landing/landingPassages';
import { replay } from '../../../support/replayMotion';

const RIGHT_ANGLE = Math.PI / 2;
const stair = { width: 900, headroom: 2100, turn: RIGHT_ANGLE, rise: 190, going: 230 };
const panel = sortedPiece(900, 600, 25);

/** Tops of the treads in a stage's scene [mm], the lowest first. */
const treadTops = (measures: Parameters<typeof winderStage>[0]): number[] =>
  winderStage(measures)
    .task(panel, 'LB')
    .obstacles.filter(({ name }) => name === 'a winder’s tread')
    .map(({ box }) => box.centre[2] + box.size[2] / 2);

test('as many treads turn the stair as were counted, and one for each 30 degrees where they were not', () => {
  expect(treadTops(stair).map(Math.round)).toEqual([190, 380, 570]);
  expect(treadTops({ ...stair, treads: 4 }).map(Math.round)).toEqual([190, 380, 570, 760]);
  expect(treadTops({ ...stair, treads: 1 }).map(Math.round)).toEqual([190]);
});

test('a narrower upper flight bounds what passes, and the motion found keeps clear of its walls', () => {
  const narrow = { ...stair, widthOut: 700 };
  // No piece thicker than the narrower flight passes: its least side, by the section.
  const crate = sortedPiece(900, 800, 750);
  expect(winderStage(narrow).proved(crate).atMost).toBeLessThan(0);
  expect(winderStage(stair).proved(crate).atMost).toBeGreaterThan(0);
  let replayed = 0;
  for (const measures of [
    narrow,
    { ...stair, widthOut: 1100, treads: 4 },
    { ...stair, turn: Math.PI, widthOut: 800 },
  ]) {
    for (const { found } of routePassages(winderStage(measures), panel, 20000)) {
      if (!found) continue;
      const seen = replay({ motion: found.motion, scene: found.scene }, paddedPiece(panel, found.clearance), {
        step: 15,
      });
      expect(seen.collides).toBe(false);
      replayed++;
    }
  }
  expect(replayed).toBeGreaterThan(1);
});
