import { radians, RIGHT_ANGLE } from '../../../src/core/measures/angle';
import fc from 'fast-check';
import { sortedPiece } from '../../../src/core/measures/piece';
import { corner } from '../../../src/core/stages/corner/corner';
import { cornerPassages } from '../../../src/core/stages/corner/cornerPassages';
import { flightFit } from '../../../src/core/stages/flight/flight';
import { flightPassages } from '../../../src/core/stages/flight/flightPassages';
import { sizesOfHold } from '../../../src/core/motion/hold';
import { bestPassage } from '../../../src/core/stages/opening/opening';
import { roomPassages } from '../../../src/core/stages/room/roomPassages';
import { evenly } from '../../support/evenly';

const mm = (min: number, max: number) => fc.integer({ min, max });
const anyPiece = fc.tuple(mm(300, 2600), mm(200, 1300), mm(15, 700)).map(([l, b, t]) => sortedPiece(l, b, t));
const anyCorner = fc.record({
  widthIn: mm(400, 1500),
  widthOut: mm(400, 1500),
  ceiling: mm(900, 2600),
  turn: fc.oneof(fc.constantFrom(90, 45, 120), evenly(1, 120)).map(radians),
});

describe('the ways round a corner, by how the piece is held', () => {
  test('the best of them is what CORNER gives, by another route through the cases', () => {
    fc.assert(
      fc.property(anyCorner, anyPiece, (measures, piece) => {
        const ways = cornerPassages(measures, piece);
        const best = ways.length > 0 ? bestPassage(ways).clearance : -Infinity;
        const own = corner(measures, piece).clearance;
        expect(best).toBeLessThanOrEqual(own + 1e-5);
        // CORNER may come and go at any angle in plan; in an arm a piece can always be set square again from
        // there, so held lengthwise or crosswise that is no more. Below 0 ways that a better one stands beside
        // are left out.
        if (own >= 0) expect(best).toBeCloseTo(own, 5);
      }),
      { seed: 11, numRuns: 250 },
    );
  });

  // Leaning in the first arm, moved sideways at 89 degrees: 98.65, by the two quite different cases of the code.
  test('a piece that leans in one arm and is tilted in the other passes at 89 degrees as at 90', () => {
    const measures = { widthIn: 1110, widthOut: 950, ceiling: 930, turn: radians(89) };
    const crate = sortedPiece(860, 835, 100);
    expect(corner(measures, crate).clearance).toBeCloseTo(98.6517, 3);
    expect(bestPassage(cornerPassages(measures, crate)).clearance).toBeCloseTo(98.6517, 3);
  });

  test('none beats what is proved of every motion', () => {
    fc.assert(
      fc.property(anyCorner, anyPiece, (measures, piece) => {
        for (const { answer } of cornerPassages(measures, piece)) {
          expect(answer.clearance).toBeLessThanOrEqual(answer.atMost);
        }
      }),
      { seed: 12, numRuns: 250 },
    );
  });

  test('the ladder bound refuses what no motion brings round: Briggs & Cochran, 3 and 4 ft under 8 ft', () => {
    // Their ladder of 12.70 ft is the longest that may tilt: sqrt(9.8657^2 + 8^2), derived.
    const foot = 304.8;
    const measures = { widthIn: 3 * foot, widthOut: 4 * foot, ceiling: 8 * foot, turn: RIGHT_ANGLE };
    const rod = (feet: number) => cornerPassages(measures, sortedPiece(feet * foot, 1, 1))[0]!.answer.atMost;
    expect(rod(12.69)).toBeGreaterThanOrEqual(0);
    expect(rod(12.72)).toBeLessThan(0);
  });
});

describe('the ways up a flight', () => {
  const flight = { width: 900, headroom: 2000, rise: 190, going: 240 };

  test('the best of them is at least what FLIGHT gives, and none beats its proof', () => {
    fc.assert(
      fc.property(
        fc.record({
          width: mm(400, 1300),
          headroom: mm(1200, 2500),
          rise: mm(150, 220),
          going: mm(220, 320),
        }),
        anyPiece,
        (measures, piece) => {
          const ways = flightPassages(measures, piece);
          expect(bestPassage(ways).clearance).toBeGreaterThanOrEqual(
            flightFit(measures, piece).clearance - 1e-9,
          );
          // A plumb piece stands partly over the treads, so only the ways along the pitch keep to the tube.
          for (const { answer } of ways) expect(answer.clearance).toBeLessThanOrEqual(answer.atMost);
        },
      ),
      { seed: 13, numRuns: 300 },
    );
  });

  test('kept plumb: upright + along tan(pitch) within the headroom', () => {
    const piece = sortedPiece(1200, 500, 25);
    const onEnd = flightPassages(flight, piece).find((way) => way.from === 'TL')!;
    const tangent = 190 / 240;
    expect(sizesOfHold(piece, 'TL')).toEqual({ along: 25, across: 500, upright: 1200 });
    // Limited by the width first: 900 leaves 200 beside the breadth.
    expect(onEnd.answer.clearance).toBe((900 - 500) / 2);
    const wide = flightPassages({ ...flight, width: 1500 }, piece).find((way) => way.from === 'TL')!;
    const c = wide.answer.clearance;
    expect(wide.answer.pose).toBe('on end');
    expect(1200 + 2 * c + (25 + 2 * c) * tangent).toBeCloseTo(2000, 9);
  });
});

test('a room takes the piece in the pose and direction that leave most, and its proof never refuses a fit', () => {
  const ways = roomPassages({ length: 4000, width: 3000, height: 2400 }, sortedPiece(1830, 930, 25));
  // On edge across the middle the ceiling is closest: (2400 - 930)/2.
  expect(ways.find((w) => w.from === 'LB')!.answer.clearance).toBe(735);
  fc.assert(
    fc.property(mm(1000, 4000), mm(1000, 4000), mm(1000, 2600), anyPiece, (length, width, height, piece) => {
      for (const { answer } of roomPassages({ length, width, height }, piece)) {
        expect(Math.min(answer.clearance, 0)).toBeLessThanOrEqual(answer.atMost);
      }
    }),
    { seed: 14, numRuns: 200 },
  );
});
