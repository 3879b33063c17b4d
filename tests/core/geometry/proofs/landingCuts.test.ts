import { halfLandingCutAtMost, quarterLandingCutAtMost } from '../../../support/cutsAtMost';
import { halfLandingAtMost } from '../../../../src/core/geometry/proofs/halfLandingAtMost';
import {
  halfLandingCutBlocks,
  halfLandingCuts,
} from '../../../../src/core/geometry/proofs/halfLandingCutBlocks';
import {
  quarterLandingCutBlocks,
  quarterLandingCuts,
} from '../../../../src/core/geometry/proofs/quarterLandingCutBlocks';
import { paddedPiece, sortedPiece, type PieceSize } from '../../../../src/core/measures/piece';
import { seededStream } from '../../../../src/core/space/seededStream';
import { halfLandingWithMotion, halfLandingStage } from '../../../../src/core/stages/landing/halfLanding';
import {
  quarterLandingWithMotion,
  quarterLandingStage,
} from '../../../../src/core/stages/landing/quarterLanding';
import { greatestStanding, type BuiltLanding } from '../../../support/standsOnStairs';

const stairs = { headroom: 2100, rise: 190, going: 240, overRail: 0 };
const slope = [190 / 240, 190 / 240] as const;
const quarter = (width: number) => ({ widthIn: width, widthOut: width, landingCeiling: 2100 });
const half = (depth: number) => ({ flightWidth: 800, well: 100, landingDepth: depth, landingCeiling: 2100 });
const spineOf = (m: { flightWidth: number; well: number }) =>
  [m.flightWidth, m.flightWidth + m.well] as const;

describe('the bound on a landing', () => {
  const pieces = [sortedPiece(1830, 930, 25), sortedPiece(2100, 1050, 30), sortedPiece(2000, 900, 300)];

  test('quarter landing 850 wide: within 110 mm of the motion, where the quick bounds are 290 mm away', () => {
    for (const piece of pieces) {
      const m = { ...stairs, ...quarter(850) };
      const shown = quarterLandingWithMotion(m, piece).clearance;
      const quick = quarterLandingStage(m).proved(piece).atMost;
      expect(quarterLandingCutBlocks({ ...m, slope }, paddedPiece(piece, shown - 1e-6))).toBe(false);
      expect(quarterLandingCutBlocks({ ...m, slope }, paddedPiece(piece, shown + 110))).toBe(true);
      expect(quick).toBeGreaterThan(shown + 290);
    }
  });

  test('half landing 850 deep: far below the fit in the box of the landing', () => {
    for (const piece of pieces) {
      const m = { ...stairs, ...half(850) };
      const shown = halfLandingWithMotion(m, piece).clearance;
      const inBox = halfLandingAtMost({ ...m, height: 2100 }, piece)!.atMost;
      const quick = Math.min(inBox, halfLandingStage(m).proved(piece).atMost);
      const most = { ...m, slope, spine: spineOf(m) };
      expect(halfLandingCutBlocks(most, paddedPiece(piece, shown - 1e-6))).toBe(false);
      expect(halfLandingCutBlocks(most, paddedPiece(piece, quick - 100))).toBe(true);
    }
  });
});

describe('soundness', () => {
  const random = (
    next: () => number,
  ): { piece: PieceSize; flight: typeof stairs & { landingCeiling: number } } => {
    const headroom = 1900 + 400 * next();
    return {
      piece: sortedPiece(900 + 1700 * next(), 300 + 900 * next(), 15 + 250 * next() * next()),
      flight: {
        headroom,
        rise: 160 + 40 * next(),
        going: 220 + 60 * next(),
        overRail: 0,
        landingCeiling: headroom + 300 * next() * Math.round(next()),
      },
    };
  };

  test('no motion round a quarter landing is excluded', () => {
    const next = seededStream(41);
    let near = 0;
    for (let n = 0; n < 5; n++) {
      const { piece, flight } = random(next);
      const m = { ...flight, widthIn: 700 + 300 * next(), widthOut: 700 + 300 * next() };
      const shown = quarterLandingWithMotion(m, piece).clearance;
      const most = { ...m, slope: [m.rise / m.going, m.rise / m.going] as const };
      if (quarterLandingCutBlocks(most, paddedPiece(piece, shown - 1e-6)))
        throw new Error(`contradiction ${JSON.stringify({ m, piece, shown })}`);
      if (quarterLandingCutBlocks(most, paddedPiece(piece, shown + 150))) near++;
    }
    expect(near).toBeGreaterThan(2);
  });

  test('no motion round a half landing is excluded', () => {
    const next = seededStream(42);
    let near = 0;
    for (let n = 0; n < 8; n++) {
      const { piece, flight } = random(next);
      const m = {
        ...flight,
        flightWidth: 700 + 250 * next(),
        well: 200 * next(),
        landingDepth: 700 + 300 * next(),
      };
      const shown = halfLandingWithMotion(m, piece).clearance;
      const most = { ...m, slope: [m.rise / m.going, m.rise / m.going] as const, spine: spineOf(m) };
      if (halfLandingCutBlocks(most, paddedPiece(piece, shown - 1e-6)))
        throw new Error(`contradiction ${JSON.stringify({ m, piece, shown })}`);
      if (halfLandingCutBlocks(most, paddedPiece(piece, shown + 250))) near++;
    }
    expect(near).toBeGreaterThan(5);
  });

  // Found point by point on stairs with treads and risers, with nothing of the proof's.
  test('no line is said to be closed on which a box was found to stand; much larger, it is closed', () => {
    const next = seededStream(43);
    let closed = 0;
    for (let n = 0; n < 9; n++) {
      const { piece, flight } = random(next);
      // Mostly stairs steeper and lower than any, so that what a tread gives below its nosing counts.
      const steep = n % 4 ? { rise: 300, going: 150 + 100 * next(), headroom: 1500 + 600 * next() } : {};
      const low = { ...flight, ...steep };
      const m = { ...low, landingCeiling: low.headroom + [-400, 0, -200][n % 3]! };
      const most = { ...m, slope: [m.rise / m.going, m.rise / m.going] as const };
      const width = 700 + 300 * next();
      const other = 700 + 300 * next();
      const well = 20 + 150 * next();
      const built: BuiltLanding = { ...m, depth: other, lower: width, upper: 'square' };
      const inQuarter = { ...most, widthIn: width, widthOut: other };
      for (const cut of quarterLandingCuts(inQuarter)) {
        const found = greatestStanding(built, cut, piece, n);
        if (quarterLandingCutBlocks(inQuarter, paddedPiece(piece, found - 0.01), [cut]))
          throw new Error(`contradiction ${JSON.stringify({ inQuarter, piece, cut, found })}`);
        if (quarterLandingCutBlocks(inQuarter, paddedPiece(piece, found + 500), [cut])) closed++;
      }
      const beside: BuiltLanding = { ...built, upper: { from: width + well, to: 2 * width + well } };
      const inHalf = {
        ...most,
        flightWidth: width,
        well,
        landingDepth: other,
        spine: [width, width + well] as const,
      };
      for (const cut of halfLandingCuts(inHalf).slice(0, 3)) {
        const found = greatestStanding(beside, cut, piece, n);
        if (halfLandingCutBlocks(inHalf, paddedPiece(piece, found - 0.01), [cut]))
          throw new Error(`contradiction ${JSON.stringify({ inHalf, piece, cut, found })}`);
      }
    }
    expect(closed).toBeGreaterThan(0);
  });

  test('where rise and going are not known exactly, the proof holds for each of them', () => {
    const piece = sortedPiece(1700, 1000, 400);
    const m = { ...stairs, ...quarter(850) };
    const size = paddedPiece(piece, quarterLandingCutAtMost({ ...m, slope }, piece) + 0.1);
    const unsure = { rise: 195, slope: [185 / 245, 195 / 235] as const };
    expect(quarterLandingCutBlocks({ ...m, slope }, size)).toBe(true);
    expect(quarterLandingCutBlocks({ ...m, ...unsure }, size)).toBe(false);
    expect(quarterLandingCutBlocks({ ...m, ...unsure }, paddedPiece(size, 60))).toBe(true);
    const h = { ...stairs, ...half(850) };
    const spine = spineOf(h);
    const inHalf = paddedPiece(piece, halfLandingCutAtMost({ ...h, slope, spine }, piece) + 0.1);
    expect(halfLandingCutBlocks({ ...h, ...unsure, spine }, inHalf)).toBe(false);
    expect(halfLandingCutBlocks({ ...h, ...unsure, spine }, paddedPiece(inHalf, 60))).toBe(true);
  });

  test('nothing is proved where the spine may be nowhere', () => {
    const h = { ...stairs, ...half(600), slope };
    const crate = sortedPiece(2400, 1500, 900);
    expect(halfLandingCutBlocks({ ...h, spine: [800, 800] }, crate)).toBe(true);
    expect(halfLandingCutBlocks({ ...h, spine: [805, 800] }, crate)).toBe(false);
  });
});
