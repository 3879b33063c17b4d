import type { ConvexPolygon } from '../geometry/planar/planarWorld';
import type { SceneBox } from '../space/motion';

const LEVEL = [1, 0, 0, 0] as const;

/** A level box between two opposite corners [mm], the lesser of each coordinate first. */
export const levelBox = (
  from: readonly [number, number, number],
  to: readonly [number, number, number],
): SceneBox => ({
  centre: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2],
  size: [to[0] - from[0], to[1] - from[1], to[2] - from[2]],
  turn: LEVEL,
});

/**
 * Walls of a plan (axis-parallel rectangles) raised to a ceiling, with the floor below and the ceiling above.
 * @param walls corners [mm]
 * @param ceiling height [mm]
 */
export function planScene(walls: readonly ConvexPolygon[], ceiling: number): SceneBox[] {
  let xMin = Infinity;
  let xMax = -Infinity;
  let yMin = Infinity;
  let yMax = -Infinity;
  const boxes = walls.map((polygon) => {
    const xs = polygon.map((v) => v[0]);
    const ys = polygon.map((v) => v[1]);
    xMin = Math.min(xMin, ...xs);
    xMax = Math.max(xMax, ...xs);
    yMin = Math.min(yMin, ...ys);
    yMax = Math.max(yMax, ...ys);
    return levelBox([Math.min(...xs), Math.min(...ys), 0], [Math.max(...xs), Math.max(...ys), ceiling]);
  });
  boxes.push(levelBox([xMin, yMin, -200], [xMax, yMax, 0]));
  boxes.push(levelBox([xMin, yMin, ceiling], [xMax, yMax, ceiling + 200]));
  return boxes;
}
