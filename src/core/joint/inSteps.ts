import type { PlanarPlace } from '../geometry/planar/planarWorld';

/**
 * A path of straight moves and turns on the spot with more places on it, so near that no point of a rectangle moves
 * farther than a step between two.
 *
 * @param radius from the rectangle's middle to its corners [mm]
 * @param step [mm]
 */
export function inSteps(path: readonly PlanarPlace[], radius: number, step: number): PlanarPlace[] {
  return path.flatMap((to, n) => {
    const from = path[n - 1];
    if (!from) return [to];
    const far = Math.hypot(to.x - from.x, to.y - from.y) + Math.abs(to.angle - from.angle) * radius;
    const parts = Math.max(1, Math.ceil(far / step));
    return Array.from({ length: parts }, (_, k) => {
      const at = (one: number, other: number): number => one + ((other - one) * (k + 1)) / parts;
      return { x: at(from.x, to.x), y: at(from.y, to.y), angle: at(from.angle, to.angle) };
    });
  });
}
