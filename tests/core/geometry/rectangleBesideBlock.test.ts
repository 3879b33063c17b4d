import fc from 'fast-check';
import { leaningBesideBlock } from '../../../src/core/geometry/rectangleBesideBlock';
import { cornersOf, fitsBesideBlock } from '../../support/besideBlock';

const sizes = fc.record({
  width: fc.integer({ min: 500, max: 1200 }),
  height: fc.integer({ min: 1500, max: 2500 }),
  lowWidth: fc.integer({ min: 300, max: 1000 }),
  lowHeight: fc.integer({ min: 100, max: 1200 }),
  long: fc.integer({ min: 400, max: 1400 }),
  short: fc.integer({ min: 20, max: 400 }),
});

test('the padded rectangle fits where it is said to, by clipped areas, at the raise that is given', () => {
  fc.assert(
    fc.property(sizes, ({ long, short, ...section }) => {
      fc.pre(section.lowWidth < section.width);
      const { clearance, angle, raise } = leaningBesideBlock(section, long, short);
      fc.pre(clearance >= 0);
      const [p, q] = [long + 2 * clearance, short + 2 * clearance];
      const wide = p * Math.cos(angle) + q * Math.sin(angle);
      const high = p * Math.sin(angle) + q * Math.cos(angle);
      expect(fitsBesideBlock(cornersOf(wide / 2, section.height - high / 2, p, q, angle), section)).toBe(
        true,
      );
      expect(fitsBesideBlock(cornersOf(wide / 2, raise + high / 2, p, q, angle), section)).toBe(true);
    }),
    { seed: 15, numRuns: 400 },
  );
});

test('no leaning place found by trying many fits a larger one', () => {
  fc.assert(
    fc.property(sizes, fc.integer({ min: 1, max: 89 }), ({ long, short, ...section }, tilt) => {
      fc.pre(section.lowWidth < section.width);
      const { clearance } = leaningBesideBlock(section, long, short);
      const more = Math.max(clearance, -short / 2) + 1;
      const [p, q] = [long + 2 * more, short + 2 * more];
      const angle = (tilt * Math.PI) / 180;
      // Beside the block and above it are openings of their own.
      const wide = p * Math.cos(angle) + q * Math.sin(angle);
      const high = p * Math.sin(angle) + q * Math.cos(angle);
      for (let i = 0; i <= 12; i++) {
        for (let j = 0; j <= 12; j++) {
          const x = wide / 2 + ((section.width - wide) * i) / 12;
          const y = high / 2 + ((section.height - high) * j) / 12;
          if (x + wide / 2 <= section.lowWidth + 1e-6 || y - high / 2 >= section.lowHeight - 1e-6) continue;
          expect(fitsBesideBlock(cornersOf(x, y, p, q, angle), section, 1e-9)).toBe(false);
        }
      }
    }),
    { seed: 16, numRuns: 300 },
  );
});

// By hand: over a block of 400 x 400 in 800 x 2000 a sheet of 1000 leans at 45 degrees where both sides allow it.
test('a sheet leans over a radiator that it can pass neither beside nor level above', () => {
  const section = { width: 800, height: 2000, lowWidth: 500, lowHeight: 700 };
  expect(leaningBesideBlock(section, 1900, 30).clearance).toBeGreaterThan(0);
});
