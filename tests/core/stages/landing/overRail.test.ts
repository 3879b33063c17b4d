import { paddedPiece, sortedPiece, type PieceSize } from '../../../../src/core/measures/piece';
import type { Motion } from '../../../../src/core/space/motion';
import { halfLandingStage } from '../../../../src/core/stages/landing/halfLanding';
import { quarterLandingStage } from '../../../../src/core/stages/landing/quarterLanding';
import { routePassages, type SearchedStage } from '../../../../src/core/stages/landing/landingPassages';
import { replay } from '../../../support/replayMotion';
import { rotationRows } from '../../../support/rotationRows';

/*
 * Motions over the rail of a landing, point by point against the stair as the stages' documentation has it, written anew
 * here: the scene that a motion was searched in is not looked at, so that a rail left out of that is found.
 */

type Point = readonly [number, number, number];
/** How deep a point is in what is built [mm], plumb or level; below 0 it is in the air. */
type Depth = (point: Point) => number;

const stairs = { rise: 190, going: 240 };

/** x from the landing's edge over it, y across both flights, z up from it. */
const halfBuilt =
  (m: {
    flightWidth: number;
    well: number;
    landingDepth: number;
    headroom: number;
    overRail: number;
    landingCeiling: number;
    rise: number;
    going: number;
  }): Depth =>
  ([x, y, z]) => {
    const slope = m.rise / m.going;
    const { flightWidth: w, well } = m;
    const walls = Math.max(-y, y - 2 * w - well, x - m.landingDepth);
    if (x >= 0) return Math.max(walls, -z, z - m.landingCeiling);
    const [lower, upper] = [slope * x, m.rise - slope * x];
    // How far into each of the three strips that lie side by side: one of them is meant.
    if (y <= w) return Math.max(walls, Math.min(lower - z, -x), Math.min(z - lower - m.headroom, -x));
    if (y >= w + well) return Math.max(walls, Math.min(upper - z, -x), Math.min(z - upper - m.headroom, -x));
    const beside = Math.min(-x, y - w, w + well - y);
    return Math.max(walls, Math.min(upper + m.overRail - z, beside), Math.min(z - lower - m.headroom, -x));
  };

/** x and y from the inner corner's landing edges: the lower flight at x < 0, the upper at y > widthIn. */
const quarterBuilt =
  (m: {
    widthIn: number;
    widthOut: number;
    headroom: number;
    overRail: number;
    landingCeiling: number;
    rise: number;
    going: number;
  }): Depth =>
  ([x, y, z]) => {
    const slope = m.rise / m.going;
    const walls = Math.max(-y, x - m.widthOut);
    const beyond = y - m.widthIn;
    if (x >= 0 && beyond <= 0) return Math.max(walls, -z, z - m.landingCeiling);
    const [lower, upper] = [slope * x, m.rise + slope * beyond];
    if (beyond <= 0) return Math.max(walls, Math.min(lower - z, -x), Math.min(z - lower - m.headroom, -x));
    if (x >= 0) return Math.max(walls, Math.min(upper - z, beyond), Math.min(z - upper - m.headroom, beyond));
    const beside = Math.min(-x, beyond);
    return Math.max(walls, Math.min(upper + m.overRail - z, beside), Math.min(z - lower - m.headroom, -x));
  };

/** Points of the faces of a box, at most so far apart [mm]. */
function pointsOf({ length, breadth, thickness }: PieceSize, apart: number): Point[] {
  const steps = (side: number): number[] => {
    const n = Math.max(1, Math.ceil(side / apart));
    return Array.from({ length: n + 1 }, (_, i) => side * (i / n - 0.5));
  };
  const [ls, bs, ts] = [steps(length), steps(breadth), steps(thickness)];
  const outside = (v: number, side: number): boolean => Math.abs(v) > side / 2 - 1e-9;
  return ls.flatMap((l) =>
    bs.flatMap((b) =>
      ts.flatMap((t): Point[] =>
        outside(l, length) || outside(b, breadth) || outside(t, thickness) ? [[l, b, t]] : [],
      ),
    ),
  );
}

/** How deep a piece comes into what is built along a motion, at places [mm] apart. */
function deepest(motion: Motion, piece: PieceSize, built: Depth, apart = 40): number {
  const points = pointsOf(piece, 60);
  const reach = Math.hypot(piece.length, piece.breadth, piece.thickness) / 2;
  let most = -Infinity;
  motion.slice(1).forEach((to, k) => {
    const from = motion[k]!;
    const cosine = from.turn.reduce((sum, v, i) => sum + v * to.turn[i]!, 0);
    const near = to.turn.map((v) => (cosine < 0 ? -v : v));
    const half = Math.acos(Math.min(1, Math.abs(cosine)));
    const travel = Math.hypot(...to.at.map((v, i) => v - from.at[i]!)) + 2 * half * reach;
    const count = Math.max(1, Math.ceil(travel / apart));
    for (let step = 0; step <= count; step++) {
      const part = step / count;
      const [one, other] =
        half < 1e-9
          ? [1 - part, part]
          : [Math.sin((1 - part) * half) / Math.sin(half), Math.sin(part * half) / Math.sin(half)];
      const rows = rotationRows(from.turn.map((v, i) => one * v + other * near[i]!));
      const at = from.at.map((v, i) => v + part * (to.at[i]! - v));
      // Written out: this is gone through millions of times.
      const [[a1, a2, a3], [b1, b2, b3], [c1, c2, c3]] = rows as readonly Point[] as [Point, Point, Point];
      const [x, y, z] = at as [number, number, number];
      for (const [l, m, t] of points) {
        const depth = built([
          x + a1 * l + a2 * m + a3 * t,
          y + b1 * l + b2 * m + b3 * t,
          z + c1 * l + c2 * m + c3 * t,
        ]);
        if (depth > most) most = depth;
      }
    }
  });
  return most;
}

/** Of a stage: its motions that are not of the families, in the stair as it is and in the same with walls for its rail. */
function hold(stage: SearchedStage, piece: PieceSize, built: Depth, walled: Depth, search: number): number {
  let over = 0;
  const seen = new Set<unknown>();
  for (const { passage, found } of routePassages(stage, piece, search)) {
    if (found === null || seen.has(found)) continue;
    seen.add(found);
    const padded = paddedPiece(piece, found.clearance);
    expect(deepest(found.motion, padded, built)).toBeLessThan(0.01);
    // It is said to go over the rail where walls up to the ceiling would be met, and nowhere else.
    expect(deepest(found.motion, padded, walled) > 0.01).toBe(passage.answer.overRail === true);
    expect(replay(found, padded).collides).toBe(false);
    if (passage.answer.overRail) over++;
  }
  expect(seen.size).toBeGreaterThan(0);
  return over;
}

/** A rail that reaches every ceiling [mm]. */
const WALL = 9000;

// Stairs where the families leave too little; in the last, motions stay between the walls all the same.
test.each([
  [885, 125, 740, 2165, 1065, 2205, sortedPiece(1785, 980, 25), true],
  [865, 130, 840, 1900, 900, 2685, sortedPiece(1760, 970, 105), true],
  [885, 60, 845, 1905, 1075, 2365, sortedPiece(2075, 610, 180), false],
])(
  'what goes over the rail of a half landing meets nothing that is built: %i wide, %i well, %i deep',
  (flightWidth, well, landingDepth, headroom, overRail, landingCeiling, piece, goesOver) => {
    const stair = { ...stairs, flightWidth, well, landingDepth, headroom, overRail, landingCeiling };
    const walled = halfBuilt({ ...stair, overRail: WALL });
    const over = hold(halfLandingStage(stair), piece, halfBuilt(stair), walled, 30000);
    expect(over > 0).toBe(goesOver);
  },
);

test.each([
  [762, 946, 2117, 1001, 2526, sortedPiece(1551, 853, 162)],
  [950, 922, 1970, 911, 2376, sortedPiece(1859, 836, 156)],
  [714, 850, 1968, 914, 2550, sortedPiece(1582, 905, 107)],
])(
  'what goes over the rail of a quarter landing meets nothing that is built: %i by %i',
  (widthIn, widthOut, headroom, overRail, landingCeiling, piece) => {
    const stair = { ...stairs, widthIn, widthOut, headroom, overRail, landingCeiling };
    const walled = quarterBuilt({ ...stair, overRail: WALL });
    expect(hold(quarterLandingStage(stair), piece, quarterBuilt(stair), walled, 3000)).toBeGreaterThan(0);
  },
);
