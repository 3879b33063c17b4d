import type { PlanarPlace } from '../geometry/planar/planarWorld';

/** Turned at most so far between two places [rad]. */
const MOST_TURN = 0.6;

/** The same path with no turn between two places so large that its direction could be mistaken. */
export function smallTurns(path: readonly PlanarPlace[]): PlanarPlace[] {
  return path.flatMap((to, k) => {
    const from = path[k - 1];
    if (!from) return [to];
    const parts = Math.max(1, Math.ceil(Math.abs(to.angle - from.angle) / MOST_TURN));
    return Array.from({ length: parts }, (_, n) => {
      const share = (n + 1) / parts;
      return {
        x: from.x + (to.x - from.x) * share,
        y: from.y + (to.y - from.y) * share,
        angle: from.angle + (to.angle - from.angle) * share,
      };
    });
  });
}
