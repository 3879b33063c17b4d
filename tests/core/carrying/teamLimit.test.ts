import { ADVICE } from '../../../src/core/carrying/advice';
import { carryAdvice } from '../../../src/core/carrying/carryAdvice';
import { handlers } from '../../../src/core/carrying/handlers';
import { teamLimit } from '../../../src/core/carrying/teamLimit';
import { collectWorking } from '../../../src/core/measures/working';

describe('teamLimit', () => {
  // Public training notes based on HSE L23; printed to one decimal.
  it.each([
    [2, 20, 26.7],
    [2, 25, 33.3],
    [3, 25, 37.5],
    [2, 16, 21.3],
    [3, 16, 24],
  ])('%i handlers of %i kg may take %f kg', (count, limitEach, printed) => {
    const outcome = teamLimit({ handlers: count, limitEach });
    expect(outcome.ok && Math.abs(outcome.value - printed)).toBeLessThanOrEqual(0.0501);
  });

  it('leaves one handler the guideline itself (HSE INDG143: 25 kg)', () => {
    expect(teamLimit({ handlers: 1, limitEach: 25 })).toEqual({ ok: true, value: 25 });
  });

  it('has no answer above 3 handlers, and says what to do instead', () => {
    const outcome = teamLimit({ handlers: 4, limitEach: 25 });
    expect(outcome).toMatchObject({ ok: false, problem: { kind: 'no answer', instead: ADVICE.team } });
  });
});

describe('handlers', () => {
  const fewest = (mass: number, limitEach = 25): number | string => {
    const outcome = handlers({ mass, limitEach });
    return outcome.ok ? outcome.value : outcome.problem.kind;
  };

  it('is the first team whose limit covers the mass (limits of HSE L23)', () => {
    expect([25, 25.01, 33.3, 33.34, 37.5].map((mass) => fewest(mass))).toEqual([1, 2, 2, 3, 3]);
    expect([16, 16.5, 21.4, 24].map((mass) => fewest(mass, 16))).toEqual([1, 2, 3, 3]);
  });

  it('covers exactly what the team limit gives', () => {
    for (const team of [1, 2, 3]) {
      const limit = teamLimit({ handlers: team, limitEach: 23.3 });
      expect(fewest(limit.ok ? limit.value : NaN, 23.3)).toBe(team);
    }
  });

  it('has no answer when 3 are not enough, and says what to do instead', () => {
    const outcome = handlers({ mass: 37.6, limitEach: 25 });
    expect(outcome).toEqual({
      ok: false,
      problem: {
        kind: 'no answer',
        because: 'the mass is over the guideline for 3 handlers, 37.5 kg',
        instead: ADVICE.team,
      },
    });
  });

  it('writes a working that ends in the result', () => {
    const { result, steps } = collectWorking((working) => handlers({ mass: 35, limitEach: 25 }, working));
    expect(result).toEqual({ ok: true, value: 3 });
    expect(steps.map((s) => s.value)).toEqual([25, 50 * (2 / 3), 37.5, 3]);
  });
});

describe('carryAdvice', () => {
  it('names the team on the level, or the aid (limits of HSE L23)', () => {
    expect(carryAdvice(20)).toBe('within the guideline for 2 on the level');
    expect(carryAdvice(33.3)).toBe('within the guideline for 2 on the level');
    expect(carryAdvice(33.4)).toBe('within the guideline for 3 on the level');
    expect(carryAdvice(37.5)).toBe('within the guideline for 3 on the level');
    expect(carryAdvice(37.51)).toBe('mechanical aid and a written assessment');
    expect(carryAdvice(120)).toBe('mechanical aid and a written assessment');
  });
});
