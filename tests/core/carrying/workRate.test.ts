import { restTime } from '../../../src/core/carrying/restTime';
import { workRate } from '../../../src/core/carrying/workRate';
import { collectWorking } from '../../../src/core/measures/working';

describe('workRate', () => {
  it('is 3.842765 kcal/min for 80 kg at 4 km/h without a load (Pandolf et al. 1977; 4186.8 J/kcal)', () => {
    const watts = workRate({ bodyMass: 80, load: 0, speed: 4, grade: 0, terrain: 1 });
    expect((watts * 60) / 4186.8).toBeCloseTo(3.842765, 6);
  });

  it('adds load, grade and terrain as the equation does (term by term, Pandolf et al. 1977)', () => {
    // W 80, L 20: standing 120; holding 2 x 100 x 0.0625 = 12.5; at 3.6 km/h (1 m/s), 10 %, n 1.2:
    // 1.2 x 100 x (1.5 + 3.5) = 600.
    expect(workRate({ bodyMass: 80, load: 20, speed: 3.6, grade: 10, terrain: 1.2 })).toBeCloseTo(732.5, 9);
    // Twice as fast the climb is twice as much, and the walk four times: 1.2 x 100 x (6 + 7) = 1560.
    expect(workRate({ bodyMass: 80, load: 20, speed: 7.2, grade: 10, terrain: 1.2 })).toBeCloseTo(1692.5, 9);
  });

  it('writes a working that ends in the result', () => {
    const { result, steps } = collectWorking((w) =>
      workRate({ bodyMass: 80, load: 20, speed: 3, grade: 0, terrain: 1 }, w),
    );
    expect(steps.at(-1)!.value).toBe(result);
  });
});

describe('restTime', () => {
  it("is 30 min of 60 at 600 W with limit 350 and resting 100 (Murrell's form, engineering handbooks)", () => {
    expect(restTime({ minutes: 60, workRate: 600, limit: 350, resting: 100 })).toEqual({
      ok: true,
      value: 30,
    });
  });

  it('brings the mean rate down to the limit', () => {
    const rest = restTime({ minutes: 45, workRate: 510, limit: 350, resting: 105 });
    const minutes = rest.ok ? rest.value : NaN;
    expect(((45 - minutes) * 510 + minutes * 105) / 45).toBeCloseTo(350, 9);
  });

  it('asks for no rest at or below the limit, even below the resting rate', () => {
    expect(restTime({ minutes: 60, workRate: 350, limit: 350, resting: 105 })).toEqual({
      ok: true,
      value: 0,
    });
    expect(restTime({ minutes: 60, workRate: 105, limit: 350, resting: 105 })).toEqual({
      ok: true,
      value: 0,
    });
    expect(restTime({ minutes: 60, workRate: 90, limit: 350, resting: 105 })).toEqual({ ok: true, value: 0 });
  });

  it('refuses a resting rate that is not below the limit', () => {
    expect(restTime({ minutes: 60, workRate: 600, limit: 300, resting: 300 })).toMatchObject({
      ok: false,
      problem: { kind: 'impossible', argument: 'resting', got: 300 },
    });
  });

  it('writes a working that ends in the result', () => {
    const { result, steps } = collectWorking((w) =>
      restTime({ minutes: 60, workRate: 500, limit: 350, resting: 105 }, w),
    );
    expect(steps.at(-1)!.value).toBe(result.ok && result.value);
  });
});
