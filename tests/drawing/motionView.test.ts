import { XMLValidator } from 'fast-xml-parser';
import type { Motion, SceneBox } from '../../src/core/space/motion';
import { criticalAttitude } from '../../src/drawing/criticalAttitude';
import { drawStage } from '../../src/drawing/drawStage';
import { motionView } from '../../src/drawing/motionView';

const LEVEL = [1, 0, 0, 0] as const;
const SIZE = { length: 1000, breadth: 400, thickness: 20 };
/** On the way along x, a post stands 260 mm beside the middle of the way: at x = 1500. */
const POST: SceneBox = { centre: [1500, 500, 500], size: [40, 40, 1000], turn: LEVEL };
/** A slab of floor below everything, never cut by the level of the piece. */
const FLOOR: SceneBox = { centre: [1500, 0, -50], size: [6000, 4000, 100], turn: LEVEL };
const WAY: Motion = [
  { at: [0, 0, 300], turn: LEVEL },
  { at: [3000, 0, 300], turn: LEVEL },
];

test('the critical place of a straight way is beside the post', () => {
  const { attitude } = criticalAttitude(WAY, [POST, FLOOR], SIZE);
  // By hand: the piece is 1000 long, so it is beside a post at 1500 from 1000 to 2000.
  expect(attitude.at[0]).toBeGreaterThanOrEqual(1000 - 20);
  expect(attitude.at[0]).toBeLessThanOrEqual(2000 + 20);
});

test('building is cut at the height of the piece: the post is seen, the floor is not', () => {
  const { faces, outline } = motionView('Plan', [], SIZE, WAY, [POST, FLOOR]);
  expect(faces).toHaveLength(1);
  const xs = faces[0]!.map(([x]) => x);
  expect([Math.min(...xs), Math.max(...xs)]).toEqual([1480, 1520]);
  // Level and unturned, from above it is its length by its breadth.
  const ys = outline!.map(([, y]) => y);
  expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(400, 9);
});

test('a tilted piece shows its shadow: L cos t + T sin t', () => {
  const t = Math.PI / 6;
  const tilted: Motion = [{ at: [1500, 0, 300], turn: [Math.cos(t / 2), 0, Math.sin(t / 2), 0] }];
  const { outline } = motionView('Plan', [], SIZE, tilted, [POST]);
  const xs = outline!.map(([x]) => x);
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(1000 * Math.cos(t) + 20 * Math.sin(t), 9);
});

test('a landing with a motion is drawn from it, with its measures in words', () => {
  const { svg, text } = drawStage(
    'half landing',
    { width: 800, well: 100, depth: 850, height: 2000, rise: 190, going: 240 },
    SIZE,
    { pose: 'tilted', clearance: 12, critical: 'beside the post', motion: WAY, scene: [POST, FLOOR] },
  )!;
  expect(XMLValidator.validate(svg)).toBe(true);
  expect(text).toContain('Depth 850');
  expect(text).toContain('Closest beside the post: 12 mm a side to spare');
  expect(svg.match(/class="dashed"/g)!.length).toBeGreaterThanOrEqual(1);
});
