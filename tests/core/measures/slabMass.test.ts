import { SLATE_DENSITY, slabMass } from '../../../src/core/measures/slabMass';
import { collectWorking } from '../../../src/core/measures/working';

describe('slabMass', () => {
  it('is volume times density', () => {
    expect(slabMass({ length: 2000, breadth: 1000, thickness: 20, density: 2850 })).toBeCloseTo(114, 9);
  });

  it('takes a density within slate, on the heavy side (Cardarelli: 2700-2950; EN 1991-1-1: 28 kN/m3)', () => {
    expect(SLATE_DENSITY).toBeGreaterThanOrEqual((2700 + 2950) / 2);
    expect(SLATE_DENSITY).toBeLessThanOrEqual(2950);
    expect((SLATE_DENSITY * 9.80665) / 1000).toBeCloseTo(28, 0);
    // 28000 N/m3 over standard gravity, 2855.2, down to a multiple of 50.
    expect(SLATE_DENSITY).toBe(50 * Math.floor(28000 / 9.80665 / 50));
  });

  it('puts a one-piece slate of 6 to 7 ft between 110 and 130 kg (common practice, no source)', () => {
    const mass = slabMass({ length: 1980, breadth: 1070, thickness: 19.05, density: SLATE_DENSITY });
    expect(mass).toBeGreaterThan(110);
    expect(mass).toBeLessThan(130);
  });

  it('writes a working that ends in the result', () => {
    const { result, steps } = collectWorking((w) =>
      slabMass({ length: 2000, breadth: 1000, thickness: 25, density: 2700 }, w),
    );
    expect(steps.at(-1)!.value).toBe(result);
  });
});
