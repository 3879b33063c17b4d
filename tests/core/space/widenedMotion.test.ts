import { paddedPiece, sortedPiece } from '../../../src/core/measures/piece';
import type { KeyAttitude, SceneBox } from '../../../src/core/space/motion';
import { SpaceChecker } from '../../../src/core/space/spaceChecker';
import { widestMotionOf } from '../../../src/core/space/widenedMotion';
import { replay } from '../../support/replayMotion';

const ARM = 680;
const CEILING = 960;
const FAR = 6000;
const slab = sortedPiece(1830, 930, 25);

const box = (low: readonly number[], high: readonly number[]): SceneBox => ({
  centre: [(low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2],
  size: [high[0]! - low[0]!, high[1]! - low[1]!, high[2]! - low[2]!],
  turn: [1, 0, 0, 0],
});

/** Two arms of the same width along +y and +x, outer walls on the axes, under a low ceiling. */
const corner: readonly SceneBox[] = [
  box([-200, -200, -200], [0, FAR, CEILING + 200]),
  box([-200, -200, -200], [FAR, 0, CEILING + 200]),
  box([ARM, ARM, -200], [FAR, FAR, CEILING + 200]),
  box([-200, -200, -200], [FAR, FAR, 0]),
  box([-200, -200, CEILING], [FAR, FAR, CEILING + 200]),
];

/** On edge, its length at an angle in plan: length to (cos, sin, 0), breadth upright. */
function onEdge(angle: number, at: readonly [number, number, number]): KeyAttitude {
  const [c, s] = [Math.cos(angle / 2), Math.sin(angle / 2)];
  const r = Math.SQRT1_2;
  // The turn in plan after a quarter turn about the length.
  return { at, turn: [c * r, c * r, s * r, s * r] };
}

const middle = CEILING / 2;
const start = onEdge(Math.PI / 2, [ARM / 2, 4000, middle]);
const goal = onEdge(Math.PI, [4000, ARM / 2, middle]);
/** Its length slides round the inner edge: square to the line from there to the outer corner midway. */
const guide = [
  start,
  ...Array.from({ length: 13 }, (_, i) => onEdge((Math.PI / 2) * (1 + i / 12), [ARM / 2, ARM / 2, middle])),
  goal,
];
const task = { piece: slab, ends: () => ({ start, goal }), most: 200 };
const widen = () =>
  widestMotionOf(new SpaceChecker(corner), task, [{ motion: guide, from: -slab.length / 2 }]);

/**
 * What is left in plan at 45 degrees, where arms of the same width leave least: Moretti, College Math. J. 33(3), 2002,
 * 196-200, solved for the padding. It is less than the ceiling leaves, (960 - 930) / 2.
 */
const MORETTI = (2 * ARM * Math.SQRT1_2 - 1830 / 2 - 25) / 3;

test('a point’s way round a corner is widened to what Moretti’s corner leaves, and replayed without contact', () => {
  const { padding, motion } = widen()!;
  // Less than 0.5 mm more is not looked for.
  expect(padding).toBeGreaterThan(MORETTI - 1);
  expect(padding).toBeLessThanOrEqual(MORETTI);
  expect(replay({ motion, scene: corner }, paddedPiece(slab, padding - 0.01)).collides).toBe(false);
});

test('nothing in it hangs on chance: the same twice', () => {
  expect(widen()).toEqual(widen());
});

test('what is not free to begin with is not widened', () => {
  const through = [start, goal];
  expect(widestMotionOf(new SpaceChecker(corner), task, [{ motion: through, from: 0 }])).toBeUndefined();
});
