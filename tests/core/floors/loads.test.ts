import { ADVICE } from '../../../src/core/carrying/advice';
import { codeLoad } from '../../../src/core/floors/codeLoad';
import { CODE_LOADS, CODES, USES, type Code, type Use } from '../../../src/core/floors/codeLoads';
import { codePoint } from '../../../src/core/floors/codePoint';
import { flightLoad } from '../../../src/core/floors/flightLoad';
import { floorLoad } from '../../../src/core/floors/floorLoad';
import { footLoad } from '../../../src/core/floors/footLoad';
import { footPressure } from '../../../src/core/floors/footPressure';
import { treadLoad } from '../../../src/core/floors/treadLoad';
import { collectWorking } from '../../../src/core/measures/working';

describe('codeLoad and codePoint', () => {
  it.each<[Code, Use, number, number | null, string]>([
    ['EN', 'dwelling', 2, 2, 'EN 1991-1-1 table 6.2; 2.00/2.00 read in NTC 2018'],
    ['EN', 'sleeping room', 2, 2, 'EN 1991-1-1 table 6.2, category A; 2.00/2.00 read in NTC 2018'],
    ['EN', 'stairs', 2, 2, 'EN 1991-1-1 table 6.2, from memory'],
    ['UK', 'dwelling', 1.5, 2, 'UK National Annex, A1, from memory'],
    ['UK', 'sleeping room', 1.5, 2, 'UK National Annex, A1 and A2, from memory'],
    ['UK', 'stairs', 1.5, 2, 'UK National Annex, A1, from memory'],
    [
      'UK',
      'billiard room',
      2,
      2.7,
      'UK National Annex, A4, from memory; 2.0/2.7 read in a list after BS 6399-1',
    ],
    ['US', 'dwelling', 1.92, null, 'IRC R301.5: 40 psf'],
    ['US', 'sleeping room', 1.44, null, 'IRC R301.5: 30 psf'],
    ['US', 'billiard room', 3.59, null, 'ASCE 7 table 4.3-1: 75 psf, from memory'],
    ['US', 'stairs', 1.92, 1.33, 'IRC R301.5: 40 psf, 300 lb on a tread'],
  ])('%s, %s: %f kN/m2, %s kN (%s)', (code, use, area, point) => {
    const load = codeLoad({ use, code });
    // Half a unit of the last place printed: metric values are printed in full, those of pounds to a hundredth.
    const rounding = code === 'US' ? 0.005 : 1e-9;
    expect(load.ok && Math.abs(load.value - area)).toBeLessThanOrEqual(rounding);
    const alone = codePoint({ use, code });
    if (point === null) expect(alone).toMatchObject({ ok: false, problem: { kind: 'no answer' } });
    else expect(alone.ok && Math.abs(alone.value - point)).toBeLessThanOrEqual(rounding);
  });

  it('has every use of every code in the table above but one, which has no answer', () => {
    const held = CODES.flatMap((code) =>
      USES.filter((use) => CODE_LOADS[code][use]).map((use) => `${code} ${use}`),
    );
    expect(held).toHaveLength(11);
    expect(held).not.toContain('EN billiard room');
  });

  it('converts exactly: 30 psf is 1436.4 N/m2 (30 x 47.880259, NIST SP 811)', () => {
    const load = codeLoad({ use: 'sleeping room', code: 'US' });
    expect(load.ok && load.value).toBeCloseTo(30 * 0.04788026, 6);
  });

  it('has no answer for a billiard room in EN, and says what to do instead', () => {
    const outcome = codeLoad({ use: 'billiard room', code: 'EN' });
    expect(outcome).toMatchObject({ ok: false, problem: { kind: 'no answer' } });
    expect(outcome.ok || outcome.problem.kind !== 'no answer' ? '' : outcome.problem.instead).toContain(
      'engineer',
    );
  });

  it('gives every value it holds its clause and whether it was read', () => {
    for (const code of CODES) {
      for (const use of USES) {
        const entry = CODE_LOADS[code][use];
        for (const held of [entry?.area, entry?.point]) {
          if (!held) continue;
          expect(held.clause).toMatch(/EN 1991-1-1|IRC|ASCE/);
          expect(held.status).toMatch(/^(read in a quotation|from memory)$/);
        }
      }
    }
  });
});

describe('floorLoad', () => {
  it('is weight over area (400 kg on 2 m x 1 m: 400 x 9.80665 / 2 N/m2)', () => {
    expect(floorLoad({ mass: 400, length: 2000, breadth: 1000 })).toBeCloseTo(1.96133, 9);
  });

  it('names the advice only where a code value is passed', () => {
    const over = collectWorking((w) => floorLoad({ mass: 400, length: 2000, breadth: 1000 }, w));
    expect(over.steps.some((s) => s.value === ADVICE.floor)).toBe(true);
    expect(over.steps.at(-1)!.value).toBe(over.result);
    const under = collectWorking((w) => floorLoad({ mass: 300, length: 2000, breadth: 1000 }, w));
    expect(under.steps.some((s) => s.value === ADVICE.floor)).toBe(false);
  });
});

describe('footLoad', () => {
  const kN = (input: Parameters<typeof footLoad>[0]): number | string => {
    const outcome = footLoad(input);
    return outcome.ok ? outcome.value : outcome.problem.kind;
  };

  it('lets the table rock on two feet unless told otherwise', () => {
    expect(kN({ mass: 400, feet: 4 })).toBeCloseTo(200 * 0.00980665, 9);
    expect(kN({ mass: 400, feet: 1 })).toBeCloseTo(400 * 0.00980665, 9);
    expect(kN({ mass: 400, feet: 4, worstShare: 0.25 })).toBeCloseTo(100 * 0.00980665, 9);
  });

  it('stands beside the concentrated loads of the codes, with advice where it is over one', () => {
    const advised = (mass: number): boolean =>
      collectWorking((w) => footLoad({ mass, feet: 4 }, w)).steps.some((s) => s.value === ADVICE.floor);
    // 2.0 kN in EN and UK: 407.9 kg on a table that rocks on two feet.
    expect(advised(407)).toBe(false);
    expect(advised(409)).toBe(true);
  });

  it('refuses a share that the feet cannot have', () => {
    expect(kN({ mass: 400, feet: 4, worstShare: 0.2499 })).toBe('out of range');
    expect(kN({ mass: 400, feet: 4, worstShare: 1.0001 })).toBe('out of range');
    expect(kN({ mass: 400, feet: 3, worstShare: 1 / 3 })).toBeCloseTo((400 / 3) * 0.00980665, 9);
  });
});

describe('footPressure', () => {
  it('is the load over the pad (1.96133 kN on 100 mm square)', () => {
    const outcome = footPressure({ mass: 400, feet: 4, padSide: 100 });
    expect(outcome.ok && outcome.value).toBeCloseTo(0.196133, 9);
  });

  it('passes on the refusal of a share', () => {
    expect(footPressure({ mass: 400, feet: 4, padSide: 100, worstShare: 0.1 }).ok).toBe(false);
  });

  it('writes a working that ends in the result', () => {
    const { result, steps } = collectWorking((w) => footPressure({ mass: 400, feet: 4, padSide: 80 }, w));
    expect(steps.at(-1)!.value).toBe(result.ok && result.value);
  });
});

describe('flightLoad and treadLoad', () => {
  it('spreads piece and crew over the plan (480 kg on 2.4 m2: 200 x 9.80665 N/m2)', () => {
    expect(flightLoad({ mass: 120, crew: 4, length: 3000, width: 800, bodyMass: 90 })).toBeCloseTo(
      1.96133,
      9,
    );
  });

  it('puts carrier and share on one tread', () => {
    expect(treadLoad({ bodyMass: 90, share: 84 })).toBeCloseTo(174 * 0.00980665, 9);
  });

  it('says what to do where a code value for stairs is passed', () => {
    const tread = collectWorking((w) => treadLoad({ bodyMass: 90, share: 84 }, w));
    expect(tread.steps.some((s) => s.value === ADVICE.stair)).toBe(true);
    expect(tread.steps.at(-1)!.value).toBe(tread.result);
    const alone = collectWorking((w) => treadLoad({ bodyMass: 90, share: 20 }, w));
    expect(alone.steps.some((s) => s.value === ADVICE.stair)).toBe(false);
    const flight = collectWorking((w) =>
      flightLoad({ mass: 120, crew: 4, length: 3000, width: 800, bodyMass: 90 }, w),
    );
    expect(flight.steps.some((s) => s.value === ADVICE.stair)).toBe(true);
    expect(flight.steps.at(-1)!.value).toBe(flight.result);
  });
});

// By hand: 377 kg on four feet, levelled 1/4 each, rocking on two 1/2.
test.each([
  [undefined, 0.5, /rocks on two feet/],
  [0.25, 0.25, /every foot bears alike/],
  [0.4, 0.4, /^as given$/],
])('a working of a foot says what a share of %s supposes', (worstShare, part, why) => {
  const { steps } = collectWorking((w) =>
    footLoad({ mass: 377, feet: 4, ...(worstShare === undefined ? {} : { worstShare }) }, w),
  );
  const step = steps.find(({ what }) => what === 'Part on the worst foot')!;
  expect(step.value).toBe(part);
  expect(step.source).toMatch(why);
});
