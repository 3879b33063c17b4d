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
