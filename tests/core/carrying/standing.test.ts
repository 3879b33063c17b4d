import { standing, type StandingInput } from '../../../src/core/carrying/standing';
import { collectWorking } from '../../../src/core/measures/working';

/** A slate on edge on a 1 m flight; steps of 200 and 250 mm are 320.2 mm from nosing to nosing. */
const SLATE: StandingInput = {
  length: 1980,
  across: 60,
  width: 1000,
  rise: 200,
  going: 250,
  gripLength: 600,
  bodyWidth: 450,
};

const people = (change: Partial<StandingInput>): number | string => {
  const outcome = standing({ ...SLATE, ...change });
  return outcome.ok ? outcome.value : outcome.problem.kind;
};

// Counted by hand: the model is our own, its lengths common practice, no source.
describe('standing', () => {
  it('has the two ends alone where no body fits beside the piece', () => {
    expect(people({ width: 500 })).toBe(2);
  });

  it('adds one side from one body width beside it, and the other from two', () => {
    expect(people({ width: 509 })).toBe(2);
    expect(people({ width: 510 })).toBe(3);
    expect(people({ width: 959 })).toBe(3);
    expect(people({ width: 960 })).toBe(4);
  });

  it('has two sides, however wide the flight is', () => {
    // 1940 mm beside it have room for four bodies; a piece has two sides.
    expect(people({ width: 2000 })).toBe(4);
  });

  it('keeps carriers on one side whole treads apart', () => {
    // Between the end grips 1280 mm: two places 640.3 mm apart do not fit, 1281 mm do.
    expect(people({ length: 1200 + 1280 })).toBe(4);
    expect(people({ length: 1200 + 1281 })).toBe(6);
    // Level steps of 600 mm take one tread each.
    expect(people({ length: 2400, rise: 0, going: 600 })).toBe(6);
  });

  it('has no place between the ends on a short piece', () => {
    expect(people({ length: 900 })).toBe(2);
  });

  it('refuses a piece wider than the flight', () => {
    expect(people({ across: 1001 })).toBe('impossible');
    expect(people({ across: 1000 })).toBe(2);
  });

  it('writes a working that ends in the result', () => {
    const { result, steps } = collectWorking((w) => standing(SLATE, w));
    expect(steps.at(-1)!.value).toBe(result.ok && result.value);
  });
});
