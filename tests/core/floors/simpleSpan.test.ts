import fc from 'fast-check';
import {
  deflectionAt,
  greatestDeflection,
  greatestMoment,
  momentAt,
  reactions,
  type SpanLoads,
} from '../../../src/core/floors/simpleSpan';
import { evenly } from '../../support/evenly';

// Textbook values of a simple span: wL^2/8, PL/4, 5wL^4/384EI, PL^3/48EI, Pa(3L^2-4a^2)/24EI for two equal loads.
const L = 4200;
const EI = 5.5e11;
const RIGID = { bending: EI, shear: Infinity };

describe('a simple span', () => {
  it('has wL^2/8 and 5wL^4/384EI under an even load (textbook)', () => {
    const loads: SpanLoads = { span: L, line: 1.2, points: [] };
    expect(greatestMoment(loads).moment).toBeCloseTo((1.2 * L ** 2) / 8, 3);
    const sag = greatestDeflection(loads, RIGID);
    expect(sag.deflection).toBeCloseTo((5 * 1.2 * L ** 4) / (384 * EI), 9);
    expect(sag.at).toBeCloseTo(L / 2, 3);
  });

  it('sags by a thousandth under a thousandth of the load, and not at all under none', () => {
    const loads = (load: number): SpanLoads => ({ span: L, line: 0, points: [{ load, at: 1300 }] });
    const whole = greatestDeflection(loads(2000), RIGID).deflection;
    expect(greatestDeflection(loads(2), RIGID).deflection * 1000).toBeCloseTo(whole, 9);
    expect(greatestDeflection(loads(0), RIGID)).toEqual({ deflection: 0, at: L / 2 });
    expect(greatestMoment(loads(0))).toEqual({ moment: 0, at: L / 2 });
  });

  it('has PL/4 and PL^3/48EI under a load at mid-span (textbook)', () => {
    const loads: SpanLoads = { span: L, line: 0, points: [{ load: 2000, at: L / 2 }] };
    expect(greatestMoment(loads)).toEqual({ moment: (2000 * L) / 4, at: L / 2 });
    expect(greatestDeflection(loads, RIGID).deflection).toBeCloseTo((2000 * L ** 3) / (48 * EI), 9);
  });

  it('has Pa and Pa(3L^2-4a^2)/24EI under two equal loads at a from the ends (textbook)', () => {
    const a = 900;
    const points = [
      { load: 1500, at: a },
      { load: 1500, at: L - a },
    ];
    const loads: SpanLoads = { span: L, line: 0, points };
    expect(greatestMoment(loads).moment).toBeCloseTo(1500 * a, 3);
    expect(greatestDeflection(loads, RIGID).deflection).toBeCloseTo(
      (1500 * a * (3 * L ** 2 - 4 * a ** 2)) / (24 * EI),
      9,
    );
  });

  it('sags most at sqrt((L^2-b^2)/3) under one load off the middle, Pb(L^2-b^2)^1.5/(9 sqrt(3) L EI) (textbook)', () => {
    const b = 1000;
    const loads: SpanLoads = { span: L, line: 0, points: [{ load: 1000, at: L - b }] };
    const sag = greatestDeflection(loads, RIGID);
    expect(sag.at).toBeCloseTo(Math.sqrt((L ** 2 - b ** 2) / 3), 2);
    expect(sag.deflection).toBeCloseTo(
      (1000 * b * (L ** 2 - b ** 2) ** 1.5) / (9 * Math.sqrt(3) * L * EI),
      9,
    );
  });

  it('agrees with the curvature added up numerically, whatever stands on it', () => {
    const point = fc.record({
      load: evenly(0, 5000),
      at: evenly(10, L - 10),
    });
    fc.assert(
      fc.property(evenly(0, 3), fc.array(point, { maxLength: 4 }), (line, points) => {
        const loads: SpanLoads = { span: L, line, points };
        const { left, right } = reactions(loads);
        expect(left + right).toBeCloseTo(line * L + points.reduce((sum, p) => sum + p.load, 0), 6);
        // Twice integrated M/EI with 0 at both supports, by the influence of a unit load: w(x) = sum M(s) m(s,x) ds / EI.
        const n = 2000;
        const x = 0.37 * L;
        let sum = 0;
        let most = 0;
        for (let i = 0; i < n; i++) {
          const s = ((i + 0.5) * L) / n;
          const unit = s <= x ? (s * (L - x)) / L : (x * (L - s)) / L;
          const moment = momentAt(loads, s);
          sum += (moment * unit * L) / n;
          most = Math.max(most, moment);
        }
        const bent = deflectionAt(loads, RIGID, x);
        expect(Math.abs(bent - sum / EI)).toBeLessThan(1e-3 * bent + 1e-9);
        const greatest = greatestMoment(loads).moment;
        expect(greatest).toBeGreaterThanOrEqual(most - 1e-6);
        expect(greatest).toBeLessThanOrEqual(most * 1.005 + 1e-6);
        const sag = greatestDeflection(loads, RIGID).deflection;
        for (let i = 1; i < 40; i++) {
          expect(sag).toBeGreaterThanOrEqual(deflectionAt(loads, RIGID, (i * L) / 40) * (1 - 1e-12));
        }
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});
