import fc from 'fast-check';
import { ADVICE } from '../../../src/core/carrying/advice';
import { joist, type JoistInput } from '../../../src/core/floors/joist';
import { joistUnderFeet } from '../../../src/core/floors/joistUnderFeet';
import { joistUses } from '../../../src/core/floors/joistUses';
import { collectWorking } from '../../../src/core/measures/working';
import { evenly } from '../../support/evenly';

/** Benoit, Legrand, Tastet, Calcul de structures en bois (2008), ex. 2.3.1. */
const EVEN = {
  span: 4500,
  spacing: 500,
  breadth: 75,
  depth: 200,
  grade: 'C24',
  dead: 0.5,
  imposed: 1.5,
  duration: 'medium',
} as const;
const BENOIT: JoistInput = { ...EVEN, pointLoad: 0 };

const value = (input: JoistInput): number => {
  const outcome = joist(input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
};

const row = (input: JoistInput, what: string): number => {
  const { steps } = collectWorking((working) => joist(input, working));
  const found = steps.find((s) => s.what === what);
  if (!found) throw new Error(`${what} is not in ${steps.map((s) => s.what).join('; ')}`);
  return found.value as number;
};

describe('joist', () => {
  it('reproduces the bending check of Benoit et al. ex. 2.3.1', () => {
    expect(row(BENOIT, 'Moment, all loads, medium')).toBeCloseTo(3.702, 3);
    expect(row(BENOIT, 'Bending stress, all loads, medium')).toBeCloseTo(7.404, 2);
    expect(row(BENOIT, 'Bending strength, all loads, medium')).toBeCloseTo(16.246, 3);
    const uses = joistUses({ ...EVEN, points: [] });
    expect(uses.ok && uses.value.bending).toBeCloseTo(0.45573, 5);
  });

  it('reproduces the deflections of Benoit et al. ex. 2.3.1, shear included', () => {
    // 0.75 kN/m is its imposed load alone, 1.0 kN/m imposed and dead.
    expect(row({ ...BENOIT, dead: 0 }, 'Deflection at once')).toBeCloseTo(7.501, 3);
    expect(row(BENOIT, 'Deflection at once')).toBeCloseTo(10.001, 3);
  });

  it('is the greatest of the three uses: there the deflection, 10.001 of span/300', () => {
    expect(value(BENOIT)).toBeCloseTo(10.001 / 15, 4);
  });

  it('checks shear on 0.67 of the breadth (worked by hand from EN 1995-1-1 6.1.7)', () => {
    // 1.4625 kN/m over 4.5 m: 3290.6 N; 1.5 x 3290.6 / (0.67 x 15000) = 0.49114; 0.8 x 4.0 x 1.1 / 1.3 = 2.70769.
    expect(row(BENOIT, 'Use in shear, all loads, medium')).toBeCloseTo(0.49114 / 2.70769, 4);
  });

  it('puts the system factor on the shear strength too, as a published joist sheet does', () => {
    // A calculation sheet for floor joists to EN 1995-1-1 (C24, 80 x 240, 6300 mm, ksys 1.1, kmod 0.8; on the web, author
    // not named): 1.55 kN/m gives 7.69 kNm, 4882.5 N, 0.56 over 2.7 N/mm2, 21 %.
    const sheet: JoistInput = { ...BENOIT, span: 6300, spacing: 340, breadth: 80, depth: 240, dead: 0 };
    const loaded = { ...sheet, imposed: 1.55 / 1.5 / 0.34 };
    expect(row(loaded, 'Moment, all loads, medium')).toBeCloseTo(7.69, 2);
    expect(row(loaded, 'Shear force, all loads, medium')).toBeCloseTo(4.8825, 4);
    expect(row(loaded, 'Shear strength, all loads, medium')).toBeCloseTo(2.7, 1);
    expect(row(loaded, 'Use in shear, all loads, medium')).toBeCloseTo(0.21, 2);
  });

  it('drops the system factor and adds the permanent combination under a point load (by hand)', () => {
    const loaded = { ...BENOIT, pointLoad: 2 };
    expect(row(loaded, 'System factor')).toBe(1);
    // 1.35 x 0.25 = 0.3375 kN/m and 2.7 kN: 0.3375 x 4.5^2 / 8 + 2.7 x 4.5 / 4 = 3.89180 kNm; 24 x 0.6 / 1.3 = 11.0769.
    expect(row(loaded, 'Use in bending, what stays, permanent')).toBeCloseTo(7.7836 / 11.0769, 4);
    // 1.4625 x 4.5^2 / 8 + 3 x 4.5 / 4 = 7.07695 kNm; 24 x 0.8 / 1.3 = 14.7692.
    expect(row(loaded, 'Use in bending, all loads, medium')).toBeCloseTo(14.1539 / 14.7692, 4);
  });

  it('lets the permanent combination decide where the imposed load is small (by hand)', () => {
    // With no imposed load 1.35 at kmod 0.6 beats 1.35 dead + 1.5 point at kmod 0.9.
    const table = { ...EVEN, dead: 0.3, imposed: 0, duration: 'short' } as const;
    const uses = joistUses({ ...table, points: [{ load: 2000, at: 2250 }] });
    // 1.35 x 0.15 = 0.2025 kN/m and 2.7 kN: 0.51258 + 3.0375 = 3.55008 kNm, 7.10016 N/mm2 over 11.0769.
    expect(uses.ok && uses.value.bending).toBeCloseTo(7.10016 / 11.0769, 4);
  });

  it('takes the worse of the two combinations in shear as well (by hand)', () => {
    // Dead alone: 1.35 x 1.0 kN/m over 4.5 m is 3037.5 N, 1.5 x 3037.5 / (0.67 x 15000) = 0.453358 N/mm2, over
    // 0.6 x 4.0 x 1.1 / 1.3 = 2.030769. With an imposed load of 1.5 kN/m2 all loads decide: 0.75 kN/m more, times 1.5.
    const stays = joistUses({ ...EVEN, dead: 2, imposed: 0, points: [] });
    expect(stays.ok && stays.value.shear).toBeCloseTo(0.453358 / 2.030769, 5);
    const all = joistUses({ ...EVEN, dead: 2, points: [] });
    expect(all.ok && all.value.shear).toBeCloseTo((0.453358 * (1.35 + 1.125)) / 1.35 / 2.707692, 5);
  });

  it('takes the greater reaction for shear, at whichever end the load stands (by hand)', () => {
    // 1.35 x 10 kN a quarter of the span from a support, as it stays: 10.125 kN there and 3.375 kN at the other.
    // 1.5 x 10125 over 0.67 x 15000 is 1.511194 N/mm2, over 0.6 x 4.0 / 1.3 = 1.846154.
    for (const at of [1125, 3375]) {
      const uses = joistUses({ ...EVEN, dead: 0, imposed: 0, points: [{ load: 10_000, at }] });
      expect([at, uses.ok && uses.value.shear]).toEqual([at, expect.closeTo(1.511194 / 1.846154, 5)]);
    }
  });

  it('lets a load that stands on the joist bend it once at once, and 1.6 times in the end (by hand)', () => {
    // 2 kN in the middle: 2000 x 4500^3 / (48 x 11000 x 5e7) = 6.9034 mm and 2000 x 4500 / 4 / (690 x 15000 / 1.2) =
    // 0.2609 mm, of 15 mm; EN 1995-1-1 2.2.3, kdef 0.6.
    const steps: [string, unknown][] = [];
    const uses = joistUses({ ...EVEN, dead: 0, imposed: 0, points: [{ load: 2000, at: 2250 }] }, (step) =>
      steps.push([step.what, step.value]),
    );
    expect(uses.ok && uses.value.deflection).toBeCloseTo(7.1643 / 15, 4);
    expect(new Map(steps).get('Deflection in the end, for information')).toBeCloseTo(1.6 * 7.1643, 3);
    expect(new Map(steps).get('System factor')).toBe(1);
  });

  it('adds the creep of EN 1995-1-1 2.2.3 to the deflection in the end (by hand)', () => {
    // All loads even, so the deflection is in proportion: 10.001 x (0.25 x 1.6 + 0.75 x 1.18) / 1.0.
    expect(row(BENOIT, 'Deflection in the end, for information')).toBeCloseTo(10.001 * 1.285, 2);
  });

  it('leaves the depth factor out, on the safe side', () => {
    const shallow = { ...BENOIT, depth: 140, span: 3000 };
    expect(row(shallow, 'Bending strength, all loads, medium')).toBeCloseTo(16.246, 3);
  });

  it('puts the point load at mid-span unless told otherwise', () => {
    expect(value({ ...BENOIT, pointLoad: 2 })).toBe(value({ ...BENOIT, pointLoad: 2, pointAt: 2250 }));
    expect(value({ ...BENOIT, pointLoad: 2, pointAt: 500 })).toBeLessThan(value({ ...BENOIT, pointLoad: 2 }));
  });

  it.each([0, -1, 4500, 5000])('refuses a point load at %i mm, off the span', (pointAt) => {
    expect(joist({ ...BENOIT, pointLoad: 1, pointAt })).toMatchObject({
      ok: false,
      problem: { kind: 'out of range', argument: 'point_at', got: pointAt },
    });
  });

  it.each([
    [999, false],
    [1000, true],
    [7000, true],
    [7001, false],
  ])('at a span of %i mm on a depth of 200 mm: %s', (span, allowed) => {
    const outcome = joist({ ...BENOIT, span });
    expect(outcome.ok).toBe(allowed);
    if (!outcome.ok) {
      expect(outcome.problem).toMatchObject({ kind: 'impossible', argument: 'depth', got: 200 });
    }
  });

  it('ends its working in the result, with what decides and what to do over 1', () => {
    const heavy = { ...BENOIT, pointLoad: 6 };
    const { result, steps } = collectWorking((working) => joist(heavy, working));
    expect(steps.at(-1)!.value).toBe(result.ok && result.value);
    expect(result.ok && result.value).toBeGreaterThan(1);
    expect(steps.some((s) => s.value === ADVICE.floor)).toBe(true);
    // As soon as it is over 1, and not only at twice that.
    const over = { ...BENOIT, pointLoad: 3 };
    const little = collectWorking((working) => joist(over, working));
    expect(little.result.ok && little.result.value).toBeGreaterThan(1);
    expect(little.result.ok && little.result.value).toBeLessThan(1.9);
    expect(little.steps.some((s) => s.value === ADVICE.floor)).toBe(true);
    const light = collectWorking((working) => joist(BENOIT, working));
    expect(light.steps.find((s) => s.what === 'Decided by')!.value).toBe('deflection');
    expect(light.steps.some((s) => s.value === ADVICE.floor)).toBe(false);
  });

  // Small imposed loads change nothing where what stays decides.
  it('is used no less under more imposed load, and more under a point load, a longer span or a weaker grade', () => {
    fc.assert(
      fc.property(evenly(2000, 5000), evenly(0, 3), evenly(0.01, 3), (span, imposed, pointLoad) => {
        const base = { ...BENOIT, span, imposed, pointLoad };
        const use = value(base);
        expect(value({ ...base, imposed: imposed + 0.1 })).toBeGreaterThanOrEqual(use);
        expect(value({ ...base, pointLoad: pointLoad + 0.1 })).toBeGreaterThan(use);
        expect(value({ ...base, span: span + 50 })).toBeGreaterThan(use);
        expect(value({ ...base, grade: 'C16' })).toBeGreaterThan(use);
      }),
      { seed: 3, numRuns: 100 },
    );
  });
});

describe('joistUnderFeet', () => {
  it('is the joist itself with one foot', () => {
    expect(joistUnderFeet({ ...EVEN, points: [{ load: 1500, at: 1200 }] })).toEqual(
      joist({ ...BENOIT, pointLoad: 1.5, pointAt: 1200 }),
    );
  });

  it('bends by Pa between two equal feet (textbook)', () => {
    const points = [
      { load: 2000, at: 1500 },
      { load: 2000, at: 3000 },
    ];
    const { steps } = collectWorking((w) => joistUnderFeet({ ...EVEN, dead: 0, imposed: 0, points }, w));
    expect(steps.find((s) => s.what === 'Moment, all loads, medium')!.value).toBeCloseTo(1.5 * 2 * 1.5, 9);
  });

  it('is used less with the feet near the supports than with the same load at mid-span', () => {
    const near = joistUnderFeet({
      ...EVEN,
      points: [
        { load: 1000, at: 500 },
        { load: 1000, at: 4000 },
      ],
    });
    const middle = joist({ ...BENOIT, pointLoad: 2 });
    expect(near.ok && middle.ok && near.value < middle.value).toBe(true);
  });

  it('refuses a foot on a support or beyond', () => {
    expect(joistUnderFeet({ ...EVEN, points: [{ load: 1000, at: 4500 }] })).toMatchObject({
      ok: false,
      problem: { kind: 'impossible', argument: 'span' },
    });
  });
});
