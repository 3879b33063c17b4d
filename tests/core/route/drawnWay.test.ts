import { drawnWay } from '../../../src/core/route/drawnWay';
import type { Way } from '../../../src/core/route/stageBook';

const way = (clearance: number, pose: string): Way =>
  ({ clearance, answer: { clearance, pose } }) as unknown as Way;
const WAYS = [way(10, 'flat'), way(30, 'on edge'), way(20, 'on edge'), way(20, 'on end')];

test('the way that was judged is drawn: both its clearance and its pose agree', () => {
  expect(drawnWay(WAYS, 20, 'on end')).toBe(WAYS[3]);
  expect(drawnWay(WAYS, 20, 'on edge')).toBe(WAYS[2]);
});

test('where the route decides and not the stage, the widest way is drawn', () => {
  expect(drawnWay(WAYS, 5, 'on edge')).toBe(WAYS[1]);
  expect(drawnWay(WAYS, 20, 'flat')).toBe(WAYS[1]);
  expect(drawnWay(WAYS, undefined, undefined)).toBe(WAYS[1]);
});

test('without a way nothing is drawn', () => {
  expect(drawnWay([], 20, 'flat')).toBeUndefined();
});
