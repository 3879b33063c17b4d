import { rotationRows } from '../../../support/rotationRows';
import { searchCorner } from '../../../support/cornerOracle';
import { yawCutAtMost } from '../../../support/cutsAtMost';
import { radians, RIGHT_ANGLE } from '../../../../src/core/measures/angle';
import { boxInBoxAtMost } from '../../../../src/core/geometry/proofs/boxInBoxAtMost';
import { ladderAtMost, longestRodRoundCorner } from '../../../../src/core/geometry/proofs/ladderAtMost';
import { yawCutBlocks } from '../../../../src/core/geometry/proofs/yawCutBlocks';
import { seededStream } from '../../../../src/core/space/seededStream';
import { sortedPiece } from '../../../../src/core/measures/piece';
import { corner } from '../../../../src/core/stages/corner/corner';

describe('the ladder proof', () => {
  test('has the calculus books’ ladder', () => {
    // Briggs & Cochran, Calculus: widths 3 and 4 ft, 9.8657 ft.
    expect(longestRodRoundCorner(3000, 4000, RIGHT_ANGLE)).toBeCloseTo(9865.7, 0);
    // Textbook: equal widths a, 2 sqrt 2 a.
    expect(longestRodRoundCorner(1000, 1000, RIGHT_ANGLE)).toBeCloseTo(2828.427, 2);
    // Briggs & Cochran, the ladder tilted under an 8 ft ceiling, 12.70 ft (derived).
    const feet = 304.8;
    const atMost = ladderAtMost(
      { widthIn: 3 * feet, widthOut: 4 * feet, ceiling: 8 * feet, turn: RIGHT_ANGLE },
      sortedPiece(12.7 * feet, 0, 0),
    );
    expect(Math.abs(atMost)).toBeLessThan(5);
  });
});

describe('the ladder round other turns', () => {
  // Every direction by itself: a rod in it is longest where it touches the inner edge and ends on both outer walls.
  const longest = (widthIn: number, widthOut: number, turn: number): number => {
    // Way in along x between y = 0 and y = -widthIn, turning left about the origin; outer walls by their normals.
    const walls = [
      [0, -1, widthIn],
      [Math.sin(turn), -Math.cos(turn), widthOut],
    ] as const;
    const from = (x: number, y: number): number =>
      Math.min(...walls.map(([nx, ny, at]) => (nx * x + ny * y > 1e-12 ? at / (nx * x + ny * y) : Infinity)));
    let least = Infinity;
    for (let n = 1; n < 20000; n++) {
      const direction = (turn * n) / 20000;
      const [x, y] = [Math.cos(direction), Math.sin(direction)];
      least = Math.min(least, from(x, y) + from(-x, -y));
    }
    return least;
  };
  test.each([
    [900, 1100, 90],
    [800, 800, 60],
    [1200, 700, 40],
    [700, 1000, 100],
  ])('%i and %i, turning by %i degrees: as every direction by itself gives', (a, b, turn) => {
    const known = longest(a, b, radians(turn));
    expect(longestRodRoundCorner(a, b, radians(turn))).toBeGreaterThanOrEqual(known - 1e-3);
    expect(longestRodRoundCorner(a, b, radians(turn))).toBeLessThan(known + 0.01);
  });

  test('round a turn of more than 90 degrees the other way of turning counts', () => {
    // Backing: in with its front, past the edge with its tail, out with its tail first. At 150 degrees there are 30 to turn
    // by, from along one way to along the other, and in every direction between it lies wholly in one of the ways.
    const turn = radians(150);
    const widths = [900, 900] as const;
    const rest = Math.PI - turn;
    let backing = Infinity;
    for (let n = 1; n < 3000; n++) {
      const t = (rest * n) / 3000;
      backing = Math.min(backing, Math.max(widths[0] / Math.sin(t), widths[1] / Math.sin(rest - t)));
    }
    // By hand: half-way, at 15 degrees, 900 / sin 15.
    expect(backing).toBeCloseTo(900 / Math.sin(radians(15)), 3);
    expect(longestRodRoundCorner(...widths, turn)).toBeGreaterThanOrEqual(backing - 1e-6);
    expect(longestRodRoundCorner(...widths, turn)).toBeLessThan(backing + 0.01);
  });
});

describe('a box in a box', () => {
  /** Padding with which it stands in a room in one attitude, by its width along each side of the room (projections). */
  const standing = (room: readonly number[], sizes: readonly number[], q: readonly number[]): number => {
    const rows = rotationRows(q);
    return Math.min(
      ...rows.map((row, k) => {
        const wide = row.reduce((sum, v, j) => sum + Math.abs(v) * sizes[j]!, 0);
        return (room[k]! - wide) / (2 * row.reduce((sum, v) => sum + Math.abs(v), 0));
      }),
    );
  };
  /** The best attitude that is found from many, each made better by small turns. */
  const found = (room: readonly number[], sizes: readonly number[], next: () => number): number => {
    let best = -Infinity;
    for (let start = 0; start < 24; start++) {
      let q = [0, 0, 0, 0].map(() => next() - 0.5);
      let value = standing(room, sizes, q);
      for (let size = 0.3, n = 0; n < 80; n++) {
        const other = q.map((v) => v + size * (next() - 0.5));
        const there = standing(room, sizes, other);
        if (there > value) [q, value] = [other, there];
        else size *= 0.93;
      }
      best = Math.max(best, value);
    }
    return best;
  };

  test('never excludes a padding with which it is found standing in some attitude, 36 rooms', () => {
    const next = seededStream(33);
    let tilted = 0;
    for (let n = 0; n < 36; n++) {
      const room = [300 + 1500 * next(), 300 + 1500 * next(), 300 + 1500 * next()] as const;
      const piece = sortedPiece(400 + 1800 * next(), 200 + 900 * next(), 5 + 100 * next());
      const sizes = [piece.length, piece.breadth, piece.thickness];
      const known = found(room, sizes, next);
      if (known < -piece.thickness / 2) continue;
      const square = Math.min(...[...room].sort((a, b) => b - a).map((side, k) => (side - sizes[k]!) / 2));
      if (known > square + 1) tilted++;
      const atMost = boxInBoxAtMost(room, piece);
      expect({ n, room, piece, known, refused: atMost < known - 1e-6 }).toMatchObject({ refused: false });
    }
    expect(tilted).toBeGreaterThan(5);
  });

  test('never excludes a padding with which a plate turned about one edge, or a rod, stands in a room made for it', () => {
    // Made from the attitude, so that no search has to find it; such rooms leave a proof least to spare.
    const next = seededStream(34);
    let near = 0;
    for (let n = 0; n < 240; n++) {
      const long = 1000 + 1500 * next();
      const turn = 2 * next() - 1;
      const rod = n % 4 === 3;
      const piece = rod
        ? sortedPiece(long, 1 + 40 * next(), 1 + 40 * next())
        : sortedPiece(long, 700 + 600 * next(), 1 + 20 * next());
      const about = rod
        ? [turn, 2 * next() - 1, 2 * next() - 1]
        : [0, 1, 2].map((k) => (k === n % 4 ? turn : 0));
      const sizes = [piece.length, piece.breadth, piece.thickness];
      const slack = 10 * next();
      const room = rotationRows([1, ...about]).map((row) =>
        row.reduce((sum, v, k) => sum + Math.abs(v) * sizes[k]!, slack),
      );
      const known = standing(room, sizes, [1, ...about]);
      const atMost = boxInBoxAtMost(room as [number, number, number], piece);
      if (atMost < known + 1) near++;
      expect({ n, room, piece, known, refused: atMost < known - 1e-6 }).toMatchObject({ refused: false });
    }
    expect(near).toBeGreaterThan(40);
  });

  test('a small box in a large room is not excluded as it is set down square', () => {
    // (1000 - 100) / 2 all round.
    expect(boxInBoxAtMost([1000, 1000, 1000], sortedPiece(100, 60, 20))).toBeGreaterThanOrEqual(450);
  });

  test('a textbook box does not fit into one with a longer diagonal of the box', () => {
    // Textbook exercise: 650 x 220 x 55 in 590 x 290 x 160 does not fit.
    expect(boxInBoxAtMost([590, 290, 160], sortedPiece(650, 220, 55))).toBeLessThan(0);
  });

  test('Winkler: never into one whose edges sum to less; one that fits as it stands is not excluded', () => {
    expect(boxInBoxAtMost([600, 700, 800], sortedPiece(1000, 600, 501))).toBeLessThan(0);
    expect(boxInBoxAtMost([650, 1700, 2400], sortedPiece(1830, 930, 25))).toBeGreaterThan(200);
  });

  test('never excludes a box that stands in the room at a random attitude', () => {
    const next = seededStream(21);
    for (let n = 0; n < 200; n++) {
      const piece = sortedPiece(200 + 1800 * next(), 100 + 900 * next(), 5 + 300 * next());
      const q = [next() - 0.5, next() - 0.5, next() - 0.5, next() - 0.5];
      const sizes = [piece.length, piece.breadth, piece.thickness];
      const rows = rotationRows(q);
      const room = rows.map((r) => r.reduce((sum, v, k) => sum + Math.abs(v) * sizes[k]!, 0));
      expect(boxInBoxAtMost(room as [number, number, number], piece)).toBeGreaterThanOrEqual(-1e-9);
    }
  });
});

describe('corners', () => {
  test('the yaw cut is tight for the slab under a low ceiling', () => {
    // Regression only: 664.68 mm is the critical width of the level slab; under 1000 mm nothing beats it by 1 mm.
    const piece = sortedPiece(1830, 930, 25);
    const atMost = yawCutAtMost(
      { widthIn: 664.6802, widthOut: 664.6802, ceiling: 1000, turn: RIGHT_ANGLE },
      piece,
    );
    expect(atMost).toBeGreaterThanOrEqual(0);
    expect(atMost).toBeLessThan(1);
  });

  test('no cut excludes what a search in plan leads round, turning the wrong way too, 24 random corners', () => {
    // Level on edge under a ceiling that keeps it from standing up; turns beyond 90 degrees, where it may back round.
    const next = seededStream(23);
    let [led, refused] = [0, 0];
    for (let n = 0; n < 24; n++) {
      const turn = radians(100 + 60 * next());
      const [widthIn, widthOut] = [700 + 400 * next(), 700 + 400 * next()];
      const piece = sortedPiece(1500 + 1500 * next(), 500, 20 + 60 * next());
      const { path } = searchCorner({ widthIn, widthOut, turn }, piece.length, piece.thickness);
      const blocked = yawCutBlocks({ widthIn, widthOut, ceiling: 520, turn }, piece);
      if (path) led++;
      if (blocked) refused++;
      expect({ n, turn, widthIn, widthOut, piece, wrong: path && blocked }).toMatchObject({ wrong: false });
    }
    expect(led).toBeGreaterThan(4);
    expect(refused).toBeGreaterThan(4);
  });

  test('no proof excludes a padding that the families pass, 300 random corners', () => {
    const next = seededStream(22);
    let proved = 0;
    for (let n = 0; n < 300; n++) {
      const piece = sortedPiece(600 + 2000 * next(), 200 + 900 * next(), 10 + 200 * next());
      const widthIn = 400 + 900 * next();
      const widthOut = 400 + 900 * next();
      const ceiling = 600 + 1900 * next();
      const turn = radians(n % 2 ? 90 : 20 + 100 * next());
      const shown = corner({ widthIn, widthOut, ceiling, turn }, piece).clearance;
      const ladder = ladderAtMost({ widthIn, widthOut, ceiling, turn }, piece);
      const cut = n % 4 < 2 ? yawCutAtMost({ widthIn, widthOut, ceiling, turn }, piece) : Infinity;
      if (cut < Infinity) proved++;
      const note = JSON.stringify({ piece, widthIn, widthOut, ceiling, turn, shown, ladder, cut });
      if (Math.min(ladder, cut) < shown - 1e-6) throw new Error(`contradiction ${note}`);
    }
    expect(proved).toBeGreaterThan(40);
  });
});
