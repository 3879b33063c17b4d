import type { Bend } from '../../src/core/geometry/bendWithWall';
import type { PlanarPassage } from '../../src/core/geometry/planar/passageBracket';
import { boxPolygon, type ConvexPolygon } from '../../src/core/geometry/planar/planarWorld';

/**
 * The bend that `bendWithWall` solves, for the planner, the slope long enough for the piece.
 * @param centreBefore the piece's centre starts at most here [mm], 0 being where the slope begins
 */
export function bendPassage(u: number, v: number, bend: Bend, centreBefore: number): PlanarPassage {
  const { level, slope, pitch } = bend;
  const reach = Math.hypot(u, v) / 2;
  const c = Math.cos(pitch);
  const s = Math.sin(pitch);
  // The inner corner, `level` high and `slope` off the slope's line.
  const cornerX = (level - slope / c) / Math.tan(pitch);
  const deep = 2 * reach + Math.abs(cornerX) + level + slope + 10;
  const space = Math.min(bend.space, deep);
  const far = 6 * deep + Math.abs(space);
  const slopeBelow: ConvexPolygon = [
    [-far * c, -far * s],
    [-far * c + far * s, -far * s - far * c],
    [far * c + far * s, far * s - far * c],
    [far * c, far * s],
  ];
  const above: ConvexPolygon = [
    [cornerX, level],
    [cornerX + far * c, level + far * s],
    [cornerX - far, level + 2 * far],
    [cornerX - far, level],
  ];
  const obstacles: ConvexPolygon[] = [boxPolygon(-far, -far, far, 0), slopeBelow, above];
  if (bend.space < deep) obstacles.push(boxPolygon(-far, -far, -space, far));
  const x = deep * c;
  const y = deep * s;
  const box = { xMin: -space, xMax: x + reach, yMin: 0, yMax: y + slope / c + reach + level };
  return {
    world: { obstacles, centre: box },
    start: { xMin: -space, xMax: Math.max(-space, centreBefore), yMin: 0, yMax: level, angle: 0 },
    goal: { xMin: x, xMax: x + 1, yMin: y, yMax: y + slope / c + 1, angle: pitch },
  };
}
