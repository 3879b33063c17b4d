import type { ConvexPolygon, PlanarPlace, PlanarWorld } from './planarWorld';

/**
 * A lower bound of the distance [mm] between a rectangle of half sides hp, hq and a convex polygon: the
 * widest gap along the normals of either; negative when none parts them.
 */
function gapTo(polygon: ConvexPolygon, hp: number, hq: number, place: PlanarPlace): number {
  const c = Math.cos(place.angle);
  const s = Math.sin(place.angle);
  let best = -Infinity;
  // Along the rectangle's own sides.
  let uLow = Infinity;
  let uHigh = -Infinity;
  let vLow = Infinity;
  let vHigh = -Infinity;
  for (const [x, y] of polygon) {
    const dx = x - place.x;
    const dy = y - place.y;
    const u = dx * c + dy * s;
    const v = dy * c - dx * s;
    if (u < uLow) uLow = u;
    if (u > uHigh) uHigh = u;
    if (v < vLow) vLow = v;
    if (v > vHigh) vHigh = v;
  }
  best = Math.max(uLow - hp, -uHigh - hp, vLow - hq, -vHigh - hq);
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const [ax, ay] = polygon[j]!;
    const [bx, by] = polygon[i]!;
    const length = Math.hypot(bx - ax, by - ay);
    const nx = (by - ay) / length;
    const ny = (ax - bx) / length;
    const reach = hp * Math.abs(nx * c + ny * s) + hq * Math.abs(ny * c - nx * s);
    const gap = nx * (place.x - ax) + ny * (place.y - ay) - reach;
    if (gap > best) best = gap;
  }
  return best;
}

/**
 * Whether a rectangle meets no obstacle at a place.
 * @param p side at the place's angle [mm]
 * @param q the other side [mm]
 */
export function placeFree(world: PlanarWorld, p: number, q: number, place: PlanarPlace): boolean {
  return world.obstacles.every((o) => gapTo(o, p / 2, q / 2, place) > 0);
}

/**
 * Shows that a rectangle p x q meets nothing on the whole straight move between two places (position in a
 * line, angle at an even rate): where the gap at the middle is more than any point can move in half the time,
 * the move is free; else each half is looked at.
 * @param p side at the places' angle [mm]
 * @param q the other side [mm]
 * @param depth how often the move is halved at most [count]
 * @returns true: it is free all the way; false proves nothing
 */
export function edgeFree(
  world: PlanarWorld,
  p: number,
  q: number,
  from: PlanarPlace,
  to: PlanarPlace,
  depth = 12,
): boolean {
  const hp = p / 2;
  const hq = q / 2;
  const radius = Math.hypot(hp, hq);
  const near = world.obstacles;
  const look = (
    obstacles: readonly ConvexPolygon[],
    a: PlanarPlace,
    b: PlanarPlace,
    left: number,
  ): boolean => {
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, angle: (a.angle + b.angle) / 2 };
    const travel = (Math.hypot(b.x - a.x, b.y - a.y) + Math.abs(b.angle - a.angle) * radius) / 2 + 1e-9;
    const doubtful = obstacles.filter((o) => gapTo(o, hp, hq, middle) <= travel);
    if (doubtful.length === 0) return true;
    if (left === 0) return false;
    if (doubtful.some((o) => gapTo(o, hp, hq, middle) <= 0)) return false;
    return look(doubtful, a, middle, left - 1) && look(doubtful, middle, b, left - 1);
  };
  return look(near, from, to, depth);
}
