import { greatestDeflection, greatestMoment, type SpanLoads } from '../../../src/core/floors/simpleSpan';

/**
 * The statics under `joist`, held to a span table of another code: IRC table R502.3.1(2), spruce-pine-fir no. 2 at 16 in,
 * 40 psf live and 10 psf dead, L/360 under the live load. The strengths are of the NDS supplement, from memory: bending 875
 * psi, modulus 1.4 million psi, size factor 1.2 / 1.1 / 1.0 for 2 x 8 / 10 / 12, 1.15 for repetitive members; no shear
 * deflection, as the code's tables have none. Test-only: the add-in checks joists to EN 1995-1-1.
 */
const FB = 875 * 1.15;
const E = 1.4e6;
const BREADTH = 1.5;
/** [lb/in] of one joist at 16 in. */
const lineLoad = (psf: number): number => (psf / 144) * 16;

function greatestSpan(depth: number, sizeFactor: number): number {
  const modulus = (BREADTH * depth ** 2) / 6;
  const stiffness = { bending: (E * BREADTH * depth ** 3) / 12, shear: Infinity };
  const holds = (span: number): boolean => {
    const loads = (psf: number): SpanLoads => ({ span, line: lineLoad(psf), points: [] });
    const stress = greatestMoment(loads(50)).moment / modulus;
    const sag = greatestDeflection(loads(40), stiffness).deflection;
    return stress <= FB * sizeFactor && sag <= span / 360;
  };
  let low = 12;
  let high = 600;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

describe('the statics of a joist against IRC table R502.3.1(2)', () => {
  it.each([
    // The 2 x 10 was read; the other two are from memory.
    ['2 x 10', 9.25, 1.1, 15 * 12 + 5],
    ['2 x 8', 7.25, 1.2, 12 * 12 + 3],
    ['2 x 12', 11.25, 1.0, 17 * 12 + 10],
  ])('%s spans as printed, to the inch', (_, depth, sizeFactor, inches) => {
    expect(Math.abs(greatestSpan(depth, sizeFactor) - inches)).toBeLessThan(1);
  });
});
