import { tapedMeasures } from '../../../src/core/route/tapeCase';
import {
  kindOf,
  measureAt,
  plausibleRange,
  possibleRange,
  STAGE_NAMES,
  stageNeeds,
  usesMeasure,
} from '../../../src/core/stages/kinds';
import { MEASURE_NAMES } from '../../../src/core/stages/measures';
import { solverOf } from '../../../src/core/stages/solvers';

describe.each(STAGE_NAMES)('the kind %s', (stage) => {
  const { needs, may } = stageNeeds(stage);

  test('has no measure twice, and `run` is nobody’s own', () => {
    const all = [...needs, ...may];
    expect(new Set(all).size).toBe(all.length);
    expect(all).not.toContain('run');
    expect(measureAt(stage, 'run')).toBeDefined();
  });

  test('doubts nothing that it refuses anyway', () => {
    for (const measure of MEASURE_NAMES) {
      const usual = plausibleRange(stage, measure);
      if (!usual) continue;
      const possible = possibleRange(stage, measure);
      expect(usual.least).toBeGreaterThanOrEqual(possible.least);
      expect(usual.most).toBeLessThanOrEqual(possible.most);
    }
  });

  // A measure that the tape leaves alone counts as exact, which errs to the unsafe side: each is named here.
  test('tapes every length that a piece could touch', () => {
    // Counts, an angle and a mass: no tape was held to them.
    const EXACT = ['turn', 'risers', 'treads', 'ratedLoad'];
    const measures = Object.fromEntries([...needs, ...may].map((name) => [name, 600]));
    const worst = tapedMeasures(stage, measures, 7, 'worst');
    const best = tapedMeasures(stage, measures, 7, 'best');
    for (const name of [...needs, ...may]) {
      for (const sets of [worst, best]) {
        for (const set of sets) {
          if (EXACT.includes(name)) expect(set[name]).toBe(600);
          else expect(set[name]).not.toBe(600);
        }
      }
    }
  });

  test('a turn has no straight of its own, and only a flight is measured from level to level', () => {
    const { role, straight, levelToLevel } = kindOf(stage);
    const measures = Object.fromEntries([...needs, ...may].map((name) => [name, 300]));
    if (role !== 'straight' && role !== 'flight') expect(straight(measures)).toBeUndefined();
    // Steps and a ramp are solved as the flight they are, and have no ends of their own to measure.
    expect(levelToLevel(measures) !== undefined).toBe(stage === 'flight');
  });

  test('is solved in closed form unless it turns on a stair', () => {
    const turnsOnStair = kindOf(stage).role === 'landing';
    expect(solverOf(stage).solvedBy === 'closed form').toBe(!turnsOnStair);
  });
});

test('a total run of stairs is taped once: its tape is shared by the risers, a landing’s step has its own', () => {
  const stair = { width: 900, height: 2000, rise: 180, going: 250, risers: 10 };
  const rises = (stage: 'flight' | 'quarter landing') =>
    tapedMeasures(stage, stair, 5, 'worst').map((set) => [set.rise, set.going]);
  expect(rises('flight')).toEqual(
    expect.arrayContaining([
      [179.5, 249.5],
      [179.5, 250.5],
      [180.5, 249.5],
      [180.5, 250.5],
    ]),
  );
  expect(usesMeasure('quarter landing', 'risers')).toBe(false);
  expect(rises('quarter landing')).toContainEqual([175, 245]);
});

test('a rail of 0 is none, which no tape changes; a wall of 0 may be as thick as the tape', () => {
  const landing = { width: 900, widthOut: 900, height: 2000, rise: 180, going: 250 };
  expect(tapedMeasures('quarter landing', { ...landing, overRail: 0 }, 5, 'worst')[0].overRail).toBe(0);
  expect(tapedMeasures('quarter landing', { ...landing, overRail: 900 }, 5, 'worst')[0].overRail).toBe(905);
  expect(tapedMeasures('door', { width: 800, height: 2000, wall: 0 }, 5, 'worst')[0].wall).toBe(5);
});
