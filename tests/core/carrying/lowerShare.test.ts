import { radians } from '../../../src/core/measures/angle';
import fc from 'fast-check';
import { lowerShare } from '../../../src/core/carrying/lowerShare';
import { collectWorking } from '../../../src/core/measures/working';
import { ADVICE } from '../../../src/core/carrying/advice';
import { evenly } from '../../support/evenly';

const value = (input: Parameters<typeof lowerShare>[0]): number => {
  const outcome = lowerShare(input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
};

/** Young & Freedman, University Physics, ch. 11: 200 kg, 1.25 m x 0.5 m, 45 degrees, held at the bottom corners. */
const CRATE = { mass: 200, gripSpacing: 1250, massHeight: 250, pitch: radians(45) };

describe('lowerShare', () => {
  it('gives the lower carrier of the crate 1372 N and the upper 588 N (Young & Freedman, ch. 11, g = 9.8)', () => {
    expect(value(CRATE) * 9.8).toBeCloseTo(1372, 6);
    expect((200 - value(CRATE)) * 9.8).toBeCloseTo(588, 6);
  });

  it('gives the upper carrier more when the centre of mass hangs below the grips (Young & Freedman, ch. 11)', () => {
    expect(value({ ...CRATE, massHeight: -250 })).toBeCloseTo(60, 9);
  });

  it('halves the mass on the level, whatever the height (statics)', () => {
    expect(value({ mass: 120, gripSpacing: 1800, massHeight: 450, pitch: 0 })).toBe(60);
    expect(value({ mass: 120, gripSpacing: 1800, massHeight: 0, pitch: radians(42) })).toBe(60);
  });

  it('agrees with moments taken about the upper grip in coordinates', () => {
    fc.assert(
      fc.property(
        evenly(300, 3000),
        evenly(-300, 300),
        evenly(0, 60).map(radians),
        (gripSpacing, massHeight, pitch) => {
          const outcome = lowerShare({ mass: 100, gripSpacing, massHeight, pitch });
          const a = pitch;
          // The lower grip at the origin, the line of the grips rising to the right.
          const upperX = gripSpacing * Math.cos(a);
          const massX = (gripSpacing / 2) * Math.cos(a) - massHeight * Math.sin(a);
          const lower = (100 * (upperX - massX)) / upperX;
          if (outcome.ok) expect(outcome.value).toBeCloseTo(lower, 6);
          else expect(lower < 1e-6 || lower > 100 - 1e-6).toBe(true);
        },
      ),
      { seed: 11, numRuns: 500 },
    );
  });

  it('refuses a piece that tips over either carrier, and allows one that just does not', () => {
    const tips = lowerShare({ mass: 100, gripSpacing: 500, massHeight: 300, pitch: radians(45) });
    expect(tips).toMatchObject({
      ok: false,
      problem: { kind: 'impossible', argument: 'mass_height', got: 300 },
    });
    expect(tips.ok || tips.problem.kind !== 'impossible' ? '' : tips.problem.because).toContain(
      'lower carrier',
    );
    const other = lowerShare({ mass: 100, gripSpacing: 500, massHeight: -300, pitch: radians(45) });
    expect(other.ok || other.problem.kind !== 'impossible' ? '' : other.problem.because).toContain(
      'upper carrier',
    );
    expect(lowerShare({ mass: 100, gripSpacing: 500, massHeight: 249.999, pitch: radians(45) }).ok).toBe(
      true,
    );
  });

  it('writes a working that ends in the result and says what to do over the guideline', () => {
    const { result, steps } = collectWorking((working) => lowerShare(CRATE, working));
    expect(steps.at(-1)!.value).toBe(result.ok && result.value);
    expect(steps.some((s) => s.value === ADVICE.share)).toBe(true);
    const light = collectWorking((working) => lowerShare({ ...CRATE, mass: 20 }, working));
    expect(light.steps.some((s) => s.value === ADVICE.share)).toBe(false);
  });
});

describe('the working of lowerShare', () => {
  const told = (input: Parameters<typeof lowerShare>[0], what: string) =>
    collectWorking((working) => lowerShare(input, working)).steps.find((step) => step.what === what)?.value;

  it('gives the upper carrier of the crate 60 kg, and the guideline for one of two (Young & Freedman; HSE L23: 2/3 of 25)', () => {
    expect(told(CRATE, 'On the upper carrier')).toBeCloseTo(60, 9);
    expect(told(CRATE, 'Guideline for one of two, level floor')).toBeCloseTo(50 / 3, 1);
    expect(told(CRATE, 'Slope')).toBeCloseTo(1, 9);
    expect(told(CRATE, 'Part on the lower carrier')).toBeCloseTo(0.7, 9);
  });

  it('says what to do where either carrier has more than that, the upper one too', () => {
    const light = { mass: 33, gripSpacing: 1800, massHeight: 0, pitch: 0 };
    expect(told(light, 'Next')).toBeUndefined();
    expect(told({ ...light, mass: 34 }, 'Next')).toBe(ADVICE.share);
    // 0.7 of 24 kg is 16.8 on the lower; hung below the grips, on the upper.
    expect(told({ ...CRATE, mass: 24 }, 'Next')).toBe(ADVICE.share);
    expect(told({ ...CRATE, mass: 24, massHeight: -250 }, 'Next')).toBe(ADVICE.share);
    expect(told({ ...CRATE, mass: 23.7 }, 'Next')).toBeUndefined();
  });

  it('is possible up to all the mass on one carrier, and no farther', () => {
    const edge = { mass: 100, gripSpacing: 1000, massHeight: 500, pitch: radians(45) };
    expect(lowerShare({ ...edge, massHeight: 499.9 }).ok).toBe(true);
    expect(lowerShare({ ...edge, massHeight: 500.1 })).toMatchObject({ ok: false });
    expect(lowerShare({ ...edge, massHeight: -499.9 }).ok).toBe(true);
    expect(lowerShare({ ...edge, massHeight: -500.1 })).toMatchObject({ ok: false });
  });
});
