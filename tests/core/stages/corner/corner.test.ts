import { radians, RIGHT_ANGLE } from '../../../../src/core/measures/angle';
import fc from 'fast-check';
import { sortedPiece } from '../../../../src/core/measures/piece';
import { corner, type CornerMeasures } from '../../../../src/core/stages/corner/corner';
import { cornerLength } from '../../../../src/core/stages/corner/cornerLength';
import { padded, searchCorner } from '../../../support/cornerOracle';
import { evenly } from '../../../support/evenly';

const { PI, cos, sin } = Math;

/**
 * Whether some face, turned by some angle out of level, passes: the angle is tried at 20,000 places, and of those
 * whose height fits under the ceiling the one with the narrowest plan is searched for a path. A narrower plan
 * passes wherever a wider one of the same depth does.
 */
function searchTilts(measures: CornerMeasures, sizes: readonly number[], padding: number) {
  const [length, breadth, thickness] = sizes.map((size) => padded(size, padding)) as [number, number, number];
  const scene = {
    widthIn: measures.widthIn,
    widthOut: measures.widthOut,
    turn: measures.turn,
  };
  let path = false;
  let none = true;
  for (const [u, v, a] of [
    [length, breadth, thickness],
    [length, thickness, breadth],
    [breadth, thickness, length],
  ] as const) {
    let narrowest = Infinity;
    const steps = 20000;
    for (let i = 0; i <= steps; i++) {
      const tilt = (i / steps) * (PI / 2);
      const s = i === steps ? 1 : sin(tilt);
      const c = i === steps ? 0 : cos(tilt);
      if (u * s + v * c > measures.ceiling) continue;
      const plan = u * c + v * s;
      if (plan < narrowest) narrowest = plan;
    }
    if (narrowest === Infinity) continue;
    const found = searchCorner(scene, narrowest, a);
    path ||= found.path;
    none &&= found.none;
  }
  return { path, none };
}

const agrees = (measures: CornerMeasures, sizes: readonly [number, number, number]) => {
  const answer = corner(measures, sortedPiece(...sizes));
  const less = searchTilts(measures, sizes, answer.clearance - 0.5);
  const more = searchTilts(measures, sizes, answer.clearance + 0.5);
  expect({ measures, sizes, answer, less, more }).toMatchObject({
    less: { path: true },
    more: { none: true },
  });
  return answer;
};

describe('a piece of three sizes against a search over poses, tilts, angles and places', () => {
  const width = evenly(500, 1600);
  const turn = fc.oneof(fc.constant(90), evenly(1, 120)).map(radians);

  test('any box under any ceiling', () => {
    const cases = fc.sample(
      fc.record({
        widthIn: width,
        widthOut: width,
        ceiling: evenly(500, 2800),
        turn,
        sizes: fc.tuple(evenly(300, 3000), evenly(10, 1500), evenly(10, 800)),
      }),
      { numRuns: 60, seed: 31 },
    );
    for (const { sizes, ...measures } of cases) agrees(measures, [sizes[0], sizes[1], sizes[2]]);
  });

  test('long pieces under ceilings that make them tilt', () => {
    const cases = fc.sample(
      fc.record({
        widthIn: evenly(600, 1100),
        widthOut: evenly(600, 1100),
        turn,
        length: evenly(2400, 4200),
        breadth: evenly(60, 700),
        thin: evenly(10, 60),
        low: evenly(0.4, 0.95),
      }),
      { numRuns: 60, seed: 32 },
    );
    let turned = 0;
    for (const { length, breadth, thin, low, ...rest } of cases) {
      // A ceiling between the breadth and the length, so that it can be neither level on end nor always on edge.
      const ceiling = breadth + low * (length - breadth);
      const { pose } = agrees({ ...rest, ceiling }, [length, breadth, thin]);
      if (pose === 'tilted' || pose === 'leaning') turned += 1;
    }
    expect(turned).toBeGreaterThan(20);
  });

  test('wide slabs under ceilings lower than they are broad, which lean', () => {
    const cases = fc.sample(
      fc.record({
        widthIn: evenly(500, 1300),
        widthOut: evenly(500, 1300),
        turn,
        length: evenly(1200, 2200),
        breadth: evenly(700, 1200),
        thin: evenly(10, 60),
        low: evenly(0.6, 0.999),
      }),
      { numRuns: 40, seed: 33 },
    );
    let leaning = 0;
    for (const { length, breadth, thin, low, ...rest } of cases) {
      const { pose } = agrees({ ...rest, ceiling: breadth * low }, [length, breadth, thin]);
      if (pose === 'leaning') leaning += 1;
    }
    expect(leaning).toBeGreaterThan(3);
  });
});

// Briggs & Cochran, Calculus: a ladder round 3 and 4 ft is 9.8657 ft; under an 8 ft ceiling it may tilt, which
// gives sqrt(9.8657^2 + 8^2) = 12.70 ft (derived). In mm, 300 and 400, 100 to the foot.
test('a pole 12.70 ft long goes round 3 and 4 ft under 8 ft, and one of 12.71 does not', () => {
  const measures = { widthIn: 300, widthOut: 400, ceiling: 800, turn: RIGHT_ANGLE };
  const pole = (feet: number) => corner(measures, sortedPiece(feet * 100, 1e-6, 1e-6));
  expect(pole(12.7).clearance).toBeGreaterThanOrEqual(-1e-5);
  expect(pole(12.7).pose).toBe('tilted');
  expect(pole(12.71).clearance).toBeLessThan(-1e-3);
});

describe('the longest level piece', () => {
  test.each([
    [57.24, 285],
    [57.24, 270],
    [30, 285],
    [45, 291],
  ])(
    'round %d degrees of 300 mm, %d thick, is shorter than it is thick: no such square passes the search',
    (degrees, thickness) => {
      const scene = { widthIn: 300, widthOut: 300, turn: radians(degrees) };
      expect(searchCorner(scene, thickness, thickness)).toMatchObject({ none: true });
      const longest = cornerLength({ ...scene, thickness });
      expect(longest).toBeLessThan(thickness);
      expect(searchCorner(scene, longest - 0.5, thickness - 0.5)).toMatchObject({ path: true });
      expect(searchCorner(scene, longest + 0.5, thickness + 0.5)).toMatchObject({ none: true });
    },
  );

  test('passes by the search half a millimetre shorter, and half a millimetre longer does not', () => {
    const cases = fc.sample(
      fc.record({
        widthIn: evenly(350, 1600),
        widthOut: evenly(350, 1600),
        slim: evenly(0.01, 0.98),
        turn: fc.oneof(fc.constant(90), evenly(20, 120)).map(radians),
      }),
      { numRuns: 60, seed: 34 },
    );
    for (const { widthIn, widthOut, slim, turn } of cases) {
      const thickness = slim * Math.min(widthIn, widthOut);
      const longest = cornerLength({ widthIn, widthOut, thickness, turn });
      const scene = { widthIn, widthOut, turn };
      // The length is far more sensitive than the clearance, so the search gets its slack across the piece.
      const less = searchCorner(scene, longest - 0.5, thickness - 0.5);
      const more = searchCorner(scene, longest + 0.5, thickness + 0.5);
      expect({ widthIn, widthOut, thickness, turn, longest, less, more }).toMatchObject({
        less: { path: true },
        more: { none: true },
      });
    }
  });
});
