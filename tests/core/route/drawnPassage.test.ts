import { drawnPassage } from '../../../src/core/route/drawnPassage';
import type { BookPassage } from '../../../src/core/route/stageBook';

const passage = (clearance: number, pose: string): BookPassage =>
  ({ clearance, answer: { clearance, pose } }) as unknown as BookPassage;
const PASSAGES = [passage(10, 'flat'), passage(30, 'on edge'), passage(20, 'on edge'), passage(20, 'on end')];

test('the way that was judged is drawn: both its clearance and its pose agree', () => {
  expect(drawnPassage(PASSAGES, 20, 'on end')).toBe(PASSAGES[3]);
  expect(drawnPassage(PASSAGES, 20, 'on edge')).toBe(PASSAGES[2]);
});

test('where the route decides and not the stage, the widest way is drawn', () => {
  expect(drawnPassage(PASSAGES, 5, 'on edge')).toBe(PASSAGES[1]);
  expect(drawnPassage(PASSAGES, 20, 'flat')).toBe(PASSAGES[1]);
  expect(drawnPassage(PASSAGES, undefined, undefined)).toBe(PASSAGES[1]);
});

test('without a way nothing is drawn', () => {
  expect(drawnPassage([], 20, 'flat')).toBeUndefined();
});
