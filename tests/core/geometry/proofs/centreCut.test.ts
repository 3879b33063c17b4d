import { rotationRows } from '../../../support/rotationRows';
import { centreCutAtMost, yawCutAtMost } from '../../../support/cutsAtMost';
import { radians, RIGHT_ANGLE } from '../../../../src/core/measures/angle';
import { centreCutBlocks } from '../../../../src/core/geometry/proofs/centreCutBlocks';
import { centreCutsBlock } from '../../../../src/core/geometry/proofs/centreCutsBlock';
import { CentreOnCut, type CutScene } from '../../../../src/core/geometry/proofs/centreOnCut';
import { clearanceRoundCorner } from '../../../../src/core/geometry/rectangleRoundCorner';
import { longestRodRoundCorner } from '../../../../src/core/geometry/proofs/ladderAtMost';
import { paddedPiece, sortedPiece } from '../../../../src/core/measures/piece';
import { seededStream } from '../../../../src/core/space/seededStream';
import { corner } from '../../../../src/core/stages/corner/corner';
import { cornerAtMost } from '../../../../src/core/stages/corner/cornerPassages';
import { searchCorner } from '../../../support/cornerOracle';

const FEET = 304.8;
const right = (widthIn: number, widthOut: number, ceiling: number) => ({
  widthIn,
  widthOut,
  ceiling,
  turn: RIGHT_ANGLE,
});

describe('published corners, for a piece as high as the ceiling', () => {
  // Upright it fills the height; leaned or tilted it is no lower and wider in plan. So the plan decides.
  const board = (length: number, width: number, height: number) => sortedPiece(length, width, height);

  test.each([
    // Textbook: equal widths a, a rod of 2 sqrt 2 a.
    ['equal widths', 1000, 1000, 2000 * Math.SQRT2, 0],
    // Briggs & Cochran, Calculus: widths 3 and 4 ft, 9.8657 ft.
    ['3 and 4 ft', 3 * FEET, 4 * FEET, 9.8657 * FEET, 0],
    // Stewart, Calculus, 4.7: 9 and 6 ft; the answer 21.0704 ft is derived.
    ['9 and 6 ft, to scale', 3 * FEET, 2 * FEET, 7.02347 * FEET, 0],
    // Codeforces Round 78, problem 98C, sample 2 2 3 -> 1.3284271.
    ['a crate', 1000, 1000, 1500, 664.21],
    // Moretti, College Math. J. 33(3), 2002: corridors 8 and 3, couch 1 wide; least over the angle 12.85632, derived.
    ['a couch', 800, 300, 1285.632, 100],
  ])('%s', (_name, widthIn, widthOut, length, width) => {
    const height = length / 2;
    const blocks = (l: number): boolean =>
      centreCutBlocks(right(widthIn, widthOut, height), board(l, width, height));
    expect(blocks(length + 6)).toBe(true);
    expect(blocks(length - 1)).toBe(false);
  });

  test('a rod that may tilt: 3 and 4 ft under 8 ft', () => {
    // Briggs & Cochran, question seen, 12.70 ft derived: sqrt(9.8657^2 + 8^2).
    const longest = Math.hypot(9.8657, 8) * FEET;
    const room = right(3 * FEET, 4 * FEET, 8 * FEET);
    expect(centreCutBlocks(room, sortedPiece(longest + 15, 0, 0))).toBe(true);
    expect(centreCutBlocks(room, sortedPiece(longest - 1, 0, 0))).toBe(false);
  });

  test('a turn of 60 and of 120 degrees: the rod of longestRodRoundCorner, which is any angle of the ladder', () => {
    for (const turn of [60, 120].map(radians)) {
      const rod = longestRodRoundCorner(700, 900, turn);
      const room = { widthIn: 700, widthOut: 900, ceiling: rod / 2, turn };
      expect(centreCutBlocks(room, sortedPiece(rod + 25, 0, rod / 2))).toBe(true);
      expect(centreCutBlocks(room, sortedPiece(rod - 1, 0, rod / 2))).toBe(false);
    }
  });
});

describe('pieces that can stand up', () => {
  test('where the yaw cut and the ladder say nothing, the bound comes within a millimetre of the motion', () => {
    // Regression only: a crate that has room on end and otherwise, 2000 x 900 x 300 under 2400.
    const piece = sortedPiece(2000, 900, 300);
    for (const [a, b] of [
      [600, 600],
      [560, 640],
    ] as const) {
      const room = right(a, b, 2400);
      const shown = corner(room, piece).clearance;
      const cut = centreCutAtMost(room, piece);
      expect(shown).toBeLessThan(cut + 1e-6);
      expect(cut).toBeLessThan(shown + 1.5);
      // The ladder excludes nothing; what is left to the quick bound is that it has to pass the narrower arm.
      expect(cornerAtMost(room, piece).atMost).toBeGreaterThan(shown + 60);
      expect(yawCutAtMost(room, piece)).toBeGreaterThan(shown + 60);
    }
  });

  test('nothing goes under a ceiling lower than its thickness', () => {
    expect(centreCutBlocks(right(900, 900, 200), sortedPiece(400, 300, 201))).toBe(true);
    expect(centreCutBlocks(right(900, 900, 200), sortedPiece(400, 300, 199))).toBe(false);
  });
});

describe('soundness', () => {
  test('random corners of any turn: never below the motion that is held, mostly within 5 mm of it', () => {
    const next = seededStream(31);
    let near = 0;
    for (let n = 0; n < 60; n++) {
      const piece = sortedPiece(600 + 2000 * next(), 200 + 900 * next(), 10 + 200 * next());
      const widthIn = 400 + 700 * next();
      const widthOut = n % 3 ? 400 + 700 * next() : widthIn;
      const ceiling = n % 2 ? piece.length + 10 + 800 * next() : 600 + 1900 * next();
      const room = { widthIn, widthOut, ceiling, turn: radians(n % 4 ? 90 : 1 + 119 * next()) };
      const shown = corner(room, piece).clearance;
      if (centreCutBlocks(room, paddedPiece(piece, shown - 1e-6)))
        throw new Error(`contradiction ${JSON.stringify({ room, piece, shown })}`);
      if (centreCutBlocks(room, paddedPiece(piece, shown + 5))) near++;
    }
    expect(near).toBeGreaterThan(45);
  });

  test('at any turn a crate as high as the ceiling is decided by its plan to a few mm', () => {
    const next = seededStream(34);
    for (let n = 0; n < 24; n++) {
      const width = 500 + 400 * next();
      const turn = radians(40 + 80 * next());
      const piece = sortedPiece(1500 + 500 * next(), 950, 0.3 * width + 0.4 * width * next());
      const room = { widthIn: width, widthOut: width, ceiling: 950, turn };
      // Pushed level on edge: with the walls moved so that its clearance is 0, and then 6 mm less wide.
      const wide = (more: number) => ({ ...room, widthIn: width + more, widthOut: width + more });
      let low = -400;
      let high = 600;
      while (high - low > 0.01) {
        const middle = (low + high) / 2;
        const { thickness, length } = piece;
        if (clearanceRoundCorner(length, thickness, width + middle, width + middle, turn) >= 0) high = middle;
        else low = middle;
      }
      expect(centreCutBlocks(wide(high + 0.01), piece)).toBe(false);
      expect(centreCutBlocks(wide(high - 6), piece)).toBe(true);
    }
  });

  test('a rectangle for which a search in plan lays a path is never excluded', () => {
    const next = seededStream(32);
    let laid = 0;
    let excluded = 0;
    for (let n = 0; n < 60; n++) {
      const p = 500 + 900 * next();
      const q = 20 + 300 * next();
      const widthIn = q + 40 + 0.5 * p * next();
      const widthOut = q + 40 + 0.5 * p * next();
      const degrees = n % 2 ? 90 : 30 + 90 * next();
      const height = 0.6 * p;
      const piece = sortedPiece(p, q, height);
      const blocked = centreCutBlocks({ widthIn, widthOut, ceiling: height, turn: radians(degrees) }, piece);
      if (blocked) excluded++;
      if (!blocked && n > 30) continue;
      const { path } = searchCorner({ widthIn, widthOut, turn: (degrees * Math.PI) / 180 }, p, q);
      if (path) laid++;
      if (path && blocked)
        throw new Error(`contradiction ${JSON.stringify({ widthIn, widthOut, degrees, piece })}`);
    }
    expect(laid).toBeGreaterThan(4);
    expect(excluded).toBeGreaterThan(10);
  });

  // A box at a random attitude by its quaternion, its corners one by one; the room is built tightly round it.
  test('a box that stands on the cut in a room built round it is never said to stand nowhere', () => {
    const next = seededStream(33);
    for (let n = 0; n < 240; n++) {
      const piece = sortedPiece(300 + 1500 * next(), 100 + 800 * next(), 10 + 300 * next());
      // One in three nearly upright, where a yaw and a lean undo each other.
      const corners = cornersAt(piece, next, n % 3 === 0 ? 0.1 * next() : undefined);
      const reach = (nx: number, ny: number): number => Math.max(...corners.map(([x, y]) => nx * x + ny * y));
      const top = Math.max(...corners.map(([, , z]) => z));
      const turn = (1 + 119 * next()) * (Math.PI / 180);
      // Outer walls at n1 . p >= 0 and n2 . p >= 0, with the box touching both, the edge touching a side of it.
      const n1 = [0, 1] as const;
      const n2 = [Math.sin(turn), Math.cos(turn)] as const;
      const m = next();
      const nx = (1 - m) * n1[0] + m * n2[0];
      const ny = (1 - m) * n1[1] + m * n2[1];
      const stretch = reach(nx, ny) / (nx * nx + ny * ny) + 1e-9;
      const aside = 400 * (next() - 0.5);
      const edge = [nx * stretch - ny * aside, ny * stretch + nx * aside] as const;
      const across = 200 + 800 * next();
      const share = next();
      const cut = [
        [edge[0] * share, edge[1] * share],
        [-edge[0] * share * (across / 500), -edge[1] * share * (across / 500)],
      ] as const;
      const slope = 0.8;
      const sloped = n % 2 === 1;
      // More walls that touch it leave little else than this attitude, so that a cell shut wrongly is noticed.
      const more = n % 4 ? [0, 1, 2, 3, 4, 5].map((i) => i + next()) : [];
      const normals = [
        [-n1[0], -n1[1]] as const,
        [-n2[0], -n2[1]] as const,
        ...more.map((angle) => [Math.cos(angle), Math.sin(angle)] as const),
      ];
      const scene: CutScene = {
        walls: normals.map((w) => ({ n: w, at: reach(w[0], w[1]) + 1e-9 })),
        solids: [[{ edge, from: n1, to: n2 }]],
        free: sloped ? slopedRoom(corners, slope) : 2 * top + 1e-9,
      };
      expect(new CentreOnCut(scene).decide(cut, piece, 8000)).not.toBe('stands nowhere');
      expect(centreCutsBlock(scene, [cut], piece, 2000)).toBe(false);
    }
  });

  test('in a room with a floor and a ceiling that rise, a little less height is found to be too little', () => {
    // An upright rod 1000 long, 200 x 200 square: under 1000 it stands, under 990 it can only tilt, and no wall gives way.
    const rod = sortedPiece(1000, 200, 200);
    const scene = (height: number): CutScene => ({
      walls: [
        { n: [-1, 0], at: 0 },
        { n: [1, 0], at: 201 },
        { n: [0, -1], at: 0 },
        { n: [0, 1], at: 201 },
      ],
      solids: [[{ edge: [1000, 1000], from: [1, 0], to: [0, 1] }]],
      free: { lowest: (x0) => 0.01 * x0, highest: (_x0, x1) => 0.01 * x1 + height },
    });
    const cut = [
      [0, 100],
      [200, 100],
    ] as const;
    expect(new CentreOnCut(scene(1003)).decide(cut, rod, 200_000)).not.toBe('stands nowhere');
    expect(new CentreOnCut(scene(990)).decide(cut, rod, 200_000)).toBe('stands nowhere');
  });
});

type Corner = [number, number, number];

/** At a random attitude; its length so far [rad] out of plumb, any when left out. */
function cornersAt(
  piece: ReturnType<typeof sortedPiece>,
  next: () => number,
  outOfPlumb: number | undefined,
): Corner[] {
  let q = [next() - 0.5, next() - 0.5, next() - 0.5, next() - 0.5];
  if (outOfPlumb !== undefined) {
    // About its length by a, out of level by t, about the plumb line by c: half angles, quaternions multiplied out.
    const [a, t, c] = [Math.PI * next(), (Math.PI / 2 - outOfPlumb) / -2, Math.PI * next()];
    const [ca, sa, ct, st] = [Math.cos(a), Math.sin(a), Math.cos(t), Math.sin(t)];
    const [cc, sc] = [Math.cos(c), Math.sin(c)];
    const [w, x, y, z] = [ct * ca, ct * sa, st * ca, -st * sa];
    q = [cc * w - sc * z, cc * x - sc * y, cc * y + sc * x, cc * z + sc * w];
  }
  const rows = rotationRows(q);
  const all: Corner[] = [];
  for (const a of [-0.5, 0.5])
    for (const b of [-0.5, 0.5])
      for (const c of [-0.5, 0.5]) {
        const v = [a * piece.length, b * piece.breadth, c * piece.thickness];
        all.push(rows.map((row) => row[0] * v[0]! + row[1] * v[1]! + row[2] * v[2]!) as Corner);
      }
  return all;
}

/** A floor and a ceiling that rise along x and touch the box standing with its centre at the origin. */
function slopedRoom(corners: readonly Corner[], slope: number) {
  const low = Math.min(...corners.map(([x, , z]) => z - slope * x)) - 1e-9;
  const high = Math.max(...corners.map(([x, , z]) => z - slope * x)) + 1e-9;
  return {
    lowest: (x0: number) => slope * x0 + low,
    highest: (_x0: number, x1: number) => slope * x1 + high,
  };
}
