import { radians } from '../../../../src/core/measures/angle';
import { paddedPiece, sortedPiece } from '../../../../src/core/measures/piece';
import { boxPolygon, type ConvexPolygon } from '../../../../src/core/geometry/planar/planarWorld';
import { passageBracket } from '../../../../src/core/geometry/planar/passageBracket';
import { flightCutBlocks } from '../../../../src/core/geometry/proofs/flightCutBlocks';
import { insideBlocks } from '../../../../src/core/geometry/proofs/insideBlocks';
import { liftCutBlocks } from '../../../../src/core/geometry/proofs/liftCutBlocks';
import { sideDoorCutBlocks } from '../../../../src/core/geometry/proofs/sideDoorCutBlocks';
import { winderCutBlocks } from '../../../../src/core/geometry/proofs/winderCutBlocks';
import { flightPassages } from '../../../../src/core/stages/flight/flightPassages';
import { liftCarAnswer } from '../../../../src/core/stages/lift/liftCar';
import { bestPassage } from '../../../../src/core/stages/opening/opening';
import { sideDoorAnswer } from '../../../../src/core/stages/sideDoor/sideDoor';
import { widestMotion } from '../../../../src/core/stages/landing/landingPassages';
import { winderStage } from '../../../../src/core/stages/winder/winder';
import { seeded } from '../../../support/parkMiller';
import { replay } from '../../../support/replayMotion';

/** What the calculus books give for equal widths a: a rod of 2 sqrt 2 a goes round, no longer one. */
const LADDER = 2 * Math.SQRT2;

describe('the longest rod round a right-angled bend (calculus textbooks), for a plate as high as the way', () => {
  test('out of a door as deep as may be into a passage as wide as it', () => {
    const door = {
      doorWidth: 900,
      doorHeight: 1200,
      wallThickness: 0,
      passageWidth: 900,
      ceiling: 1200,
      approachWidth: 900,
    };
    // At 45 degrees a rectangle is shorter than the rod by twice its breadth; a bare rod may lie along the wall.
    expect(sideDoorCutBlocks(door, sortedPiece(900 * LADDER - 200 + 8, 100, 1200))).toBe(true);
    expect(sideDoorCutBlocks(door, sortedPiece(900 * LADDER - 200 - 1, 100, 1200))).toBe(false);
  });

  test('round winding treads that hardly rise', () => {
    const stair = {
      width: 900,
      widthOut: 900,
      headroom: 1200,
      rise: [1e-3, 1e-3],
      slope: [4e-6, 4e-6],
      turn: radians(90),
      treads: 3,
      facingWall: false,
    } as const;
    expect(winderCutBlocks(stair, sortedPiece(900 * LADDER + 8, 0, 1200))).toBe(true);
    expect(winderCutBlocks(stair, sortedPiece(900 * LADDER - 1, 0, 1200))).toBe(false);
  });
});

describe('inside a box-shaped room', () => {
  test('no rod longer than its diagonal (Pythagoras)', () => {
    const room = { along: 1500, across: 1100, height: 2100 };
    const diagonal = Math.hypot(1500, 1100, 2100);
    expect(insideBlocks(room, sortedPiece(diagonal + 20, 0, 0))).toBe(true);
    expect(insideBlocks(room, sortedPiece(diagonal - 1, 0, 0))).toBe(false);
  });

  test("a plate as high as the room by Carver's condition (Wetzel, Math. Mag. 73, 2000)", () => {
    // p x q with p > a goes into a x b only when b >= (2 p q a + (p^2 - q^2) sqrt(p^2 + q^2 - a^2)) / (p^2 + q^2).
    const [p, q, a, height] = [1600, 500, 1500, 1650];
    const b = (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q);
    const piece = sortedPiece(height, p, q);
    expect(insideBlocks({ along: a, across: b + 2, height }, piece)).toBe(false);
    expect(insideBlocks({ along: a, across: b - 12, height }, piece)).toBe(true);
  });
});

test('on a flight so narrow that the piece stays on edge: never below what the planner shows in the section', () => {
  const next = seeded(71);
  let near = 0;
  for (let n = 0; n < 14; n++) {
    const [headroom, rise, going] = [1950 + 350 * next(), 165 + 50 * next(), 215 + 70 * next()];
    const risers = 6 + Math.floor(8 * next());
    const ends = {
      footCeiling: 2050 + 400 * next(),
      footSpace: 900 + 1200 * next(),
      headCeiling: 2050 + 400 * next(),
      headSpace: 900 + 1200 * next(),
    };
    const piece = sortedPiece(1500 + 900 * next(), 750 + 350 * next(), 30);
    const top = (risers - 1) * going;
    const far = 9000;
    const line = (x: number): number => rise + (rise / going) * x + headroom;
    const trimmer = ((ends.footCeiling - headroom - rise) * going) / rise;
    const high = risers * rise + ends.headCeiling;
    const obstacles: ConvexPolygon[] = [
      boxPolygon(-far, -far, far, 0),
      boxPolygon(-far, -far, -ends.footSpace, far),
      boxPolygon(top + ends.headSpace, -far, far, far),
      boxPolygon(top, high, far, far),
      boxPolygon(-far, ends.footCeiling, trimmer, far),
      ...Array.from({ length: risers }, (_, i) => boxPolygon(i * going, -far, far, (i + 1) * rise)),
    ];
    if (trimmer < top) {
      const end = Math.max(line(top), high);
      obstacles.push([
        [trimmer, ends.footCeiling],
        [top, line(top)],
        [top, end + 500],
        [trimmer, end + 500],
      ]);
    }
    const { lower } = passageBracket(
      () => ({
        world: {
          obstacles,
          centre: { xMin: -ends.footSpace, xMax: top + ends.headSpace, yMin: 0, yMax: high },
        },
        start: { xMin: -ends.footSpace, xMax: 0, yMin: 0, yMax: ends.footCeiling, angle: 0 },
        goal: { xMin: top, xMax: top + ends.headSpace, yMin: risers * rise, yMax: high },
      }),
      piece.length,
      piece.breadth,
      500,
      { tolerance: 2, workLimit: 3000 },
    );
    const flight = { width: piece.thickness + 2 * lower + 3, headroom, rise, going, risers, ...ends };
    if (flight.width < 5) continue;
    const padded = (by: number) => ({
      length: piece.length + 2 * by,
      breadth: piece.breadth + 2 * by,
      thickness: Math.max(0, piece.thickness + 2 * lower),
    });
    if (flightCutBlocks(flight, padded(lower - 0.01)))
      throw new Error(`contradiction ${JSON.stringify({ flight, piece, lower })}`);
    if (flightCutBlocks(flight, padded(lower + 90))) near++;
  }
  expect(near).toBeGreaterThan(3);
});

describe('never below a motion that is held, and mostly not far above it', () => {
  const pieceOf = (next: () => number) =>
    sortedPiece(1400 + 1100 * next(), 700 + 550 * next(), 20 + 30 * next());

  test.each([
    {
      kind: 'a side door',
      seed: 5,
      count: 40,
      near: 25,
      drawn: (next: () => number) => {
        const piece = pieceOf(next);
        const door = {
          doorWidth: 680 + 220 * next(),
          doorHeight: 1950 + 150 * next(),
          wallThickness: 80 + 120 * next(),
          passageWidth: 800 + 500 * next(),
          ceiling: 2200 + 400 * next(),
        };
        const wide = next() < 0.5 ? door.doorWidth : door.doorWidth + 400 * next();
        const shown = sideDoorAnswer({ ...door, approachWidth: wide }, piece).clearance;
        return {
          piece,
          shown,
          blocks: (p: typeof piece) => sideDoorCutBlocks({ ...door, approachWidth: wide }, p),
        };
      },
    },
    {
      kind: 'a lift',
      seed: 6,
      count: 40,
      near: 20,
      drawn: (next: () => number) => {
        const piece = pieceOf(next);
        const carWidth = 900 + 800 * next();
        const lift = {
          doorWidth: 700 + (carWidth - 700) * next(),
          doorHeight: 1900 + 250 * next(),
          carWidth,
          carDepth: 1000 + 1200 * next(),
          carHeight: 2050 + 400 * next(),
        };
        const inside = { along: lift.carDepth, across: carWidth, height: lift.carHeight };
        return {
          piece,
          shown: liftCarAnswer(lift, piece).clearance,
          blocks: (p: typeof piece) => insideBlocks(inside, p) || liftCutBlocks(lift, p),
        };
      },
    },
    {
      kind: 'a flight with its ends',
      seed: 7,
      count: 30,
      near: 8,
      drawn: (next: () => number) => {
        const piece = pieceOf(next);
        const stair = {
          width: 700 + 350 * next(),
          headroom: 1900 + 450 * next(),
          rise: 160 + 60 * next(),
          going: 210 + 80 * next(),
        };
        const ends = {
          risers: 3 + Math.floor(13 * next()),
          footCeiling: 2000 + 600 * next(),
          footSpace: 700 + 1800 * next(),
          headCeiling: 2000 + 600 * next(),
          headSpace: 700 + 1800 * next(),
        };
        return {
          piece,
          shown: bestPassage(flightPassages(stair, piece, ends)).clearance,
          blocks: (p: typeof piece) => flightCutBlocks({ ...stair, ...ends }, p),
        };
      },
    },
    {
      kind: 'winding treads',
      seed: 8,
      count: 6,
      near: 2,
      drawn: (next: () => number) => {
        const piece = pieceOf(next);
        const [width, headroom] = [750 + 300 * next(), 1900 + 450 * next()];
        const [rise, going] = [160 + 60 * next(), 210 + 80 * next()];
        const turn = radians([60, 90, 135, 180][Math.floor(4 * next())] ?? 90);
        const treads = Math.round(turn / radians(30));
        const shown = widestMotion(winderStage({ width, headroom, rise, going, turn, treads }), piece);
        const stair = {
          width,
          widthOut: width,
          headroom,
          rise: [rise, rise],
          slope: [rise / going, rise / going],
          turn,
          treads,
          facingWall: turn > radians(120),
        } as const;
        return {
          piece,
          shown: shown.nothingFound ? -Infinity : shown.clearance,
          blocks: (p: typeof piece) => winderCutBlocks(stair, p),
        };
      },
    },
  ])('$kind', ({ kind, seed, count, near: least, drawn }) => {
    const next = seeded(seed);
    let near = 0;
    for (let n = 0; n < count; n++) {
      const { piece, shown, blocks } = drawn(next);
      if (shown === -Infinity) continue;
      if (blocks(paddedPiece(piece, shown - 1e-6)))
        throw new Error(`contradiction at ${kind}: ${JSON.stringify({ n, piece, shown })}`);
      if (blocks(paddedPiece(piece, shown + 120))) near++;
    }
    expect(near).toBeGreaterThanOrEqual(least);
  });
});

test('no cut refuses a slate that is led round three winding treads and replayed, hardly larger than goes', () => {
  const [width, headroom, rise, going, treads] = [910, 2048, 167, 252, 3];
  const piece = sortedPiece(2322, 975, 75);
  const turn = radians(90);
  const shown = widestMotion(winderStage({ width, headroom, rise, going, turn, treads }), piece);
  const led = paddedPiece(piece, shown.clearance - 1e-6);
  expect(shown.clearance).toBeGreaterThan(20);
  expect(replay(shown, led).collides).toBe(false);
  const slope = rise / going;
  const stair = { width, widthOut: width, headroom, rise: [rise, rise], slope: [slope, slope] } as const;
  const cut = (p: typeof piece): boolean => winderCutBlocks({ ...stair, turn, treads, facingWall: false }, p);
  expect(cut(led)).toBe(false);
  expect(cut(paddedPiece(piece, 120))).toBe(true);
});
