import { movesRoundLanding, turnedInPlan, type RoundLanding } from '../../../src/core/crew/roundLanding';
import type { WalkKey } from '../../../src/core/joint/walk/carrier';

const PITCH = Math.atan2(190, 240);
const QUARTER = Math.PI / 2;
const round = (more: Partial<RoundLanding>): RoundLanding => ({
  stage: 'quarter landing',
  from: 'LB',
  to: 'LB',
  pose: 'tilted',
  pitch: PITCH,
  tilt: PITCH,
  raise: 0,
  turned: QUARTER,
  ...more,
});
const kinds = (more: Partial<RoundLanding>): string[] | undefined =>
  movesRoundLanding(round(more))?.map(({ kind }) => kind);

// How a crew goes round: common practice, no source. A quarter landing turns a quarter, a half landing two (its name).
test('a quarter landing is one quarter, a half landing two, or a move to the side', () => {
  expect(kinds({})).toEqual(['approach', 'quarter', 'go on']);
  expect(kinds({ stage: 'half landing', turned: -2 * QUARTER })).toEqual([
    'approach',
    'quarter',
    'second quarter',
    'go on',
  ]);
  expect(kinds({ stage: 'half landing', turned: 0 })).toEqual(['approach', 'aside', 'go on']);
});

test('it is brought into the attitude in which it goes round, and raised where it has to be', () => {
  expect(kinds({ tilt: PITCH + 0.2 })).toEqual(['approach', 'tilt', 'quarter', 'go on']);
  expect(kinds({ pose: 'on end', tilt: 0, raise: 300 })).toEqual([
    'approach',
    'stand',
    'raise',
    'quarter',
    'go on',
  ]);
  expect(kinds({ pose: 'on edge', tilt: 0 })).toEqual(['approach', 'level', 'quarter', 'go on']);
});

test('the raise stands from the line where it is raised to the last turn, the pitch on the slopes', () => {
  const moves = movesRoundLanding(round({ stage: 'half landing', turned: 2 * QUARTER, raise: 403 }))!;
  expect(moves.map(({ raise }) => raise)).toEqual([0, 403, 403, 403, 0]);
  expect([moves[0]!.tilt, moves[4]!.tilt]).toEqual([PITCH, PITCH]);
});

test('what is drawn as no whole number of quarters, or not at all, is not told in quarters', () => {
  expect(movesRoundLanding(round({ turned: undefined }))).toBeUndefined();
  expect(movesRoundLanding(round({ turned: 1 }))).toBeUndefined();
  expect(movesRoundLanding(round({ turned: 2 * QUARTER }))).toBeUndefined();
});

// Treads run together turn the way by what they are measured to turn, and none of it is a floor to turn on.
test('winding treads are turned with, quarter by quarter where they are whole quarters', () => {
  const winding = (turned: number, more: Partial<RoundLanding> = {}) =>
    kinds({ stage: 'winder', turned, tilt: PITCH + 0.3, raise: 60, ...more });
  expect(winding(QUARTER)).toEqual(['approach', 'tilt', 'raise', 'quarter', 'go on']);
  expect(winding(2 * QUARTER)).toEqual(['approach', 'tilt', 'raise', 'quarter', 'second quarter', 'go on']);
  expect(winding(Math.PI / 3)).toEqual(['approach', 'tilt', 'raise', 'round', 'go on']);
  expect(winding(Math.PI / 6)).toEqual(['approach', 'tilt', 'raise', 'round', 'go on']);
  expect(winding(QUARTER, { pose: 'on end', tilt: 0, raise: 0 })).toEqual([
    'approach',
    'stand',
    'quarter',
    'go on',
  ]);
});

/** Lying flat, turned about the upright by an angle. */
const key = (angle: number, row: number): WalkKey => ({
  at: [0, 0, 0],
  turn: [Math.cos(angle / 2), 0, 0, Math.sin(angle / 2)],
  row,
});

test('how far it is turned is read off its motion, to the left positive', () => {
  const steps = [0, 0.4, 0.8, 1.2, QUARTER];
  expect(turnedInPlan([key(0, 0), ...steps.map((a) => key(a, 1)), key(3, 2)], 1, 'LT')).toBeCloseTo(
    QUARTER,
    9,
  );
  expect(
    turnedInPlan(
      steps.map((a) => key(-a, 1)),
      1,
      'LT',
    ),
  ).toBeCloseTo(-QUARTER, 9);
  expect(turnedInPlan([key(0, 0)], 1, 'LT')).toBeUndefined();
});
