import { rotate, type Quaternion } from '../../space/quaternion';
import type { SceneBox } from '../../space/motion';
import type { Vec3 } from '../place/frame';
import { AXES, between, byAxis, moved, nextAxis } from '../../space/vector';

/** Points looked at along an edge. */
const ALONG = 24;

/**
 * Nearest points of two boxes that do not overlap, for a drawing: of the points along the edges of each the nearest
 * to the other, so at most a few mm off where two edges cross. Points and distance in mm.
 */
export function nearestPoints(
  first: SceneBox,
  second: SceneBox,
): { readonly first: Vec3; readonly second: Vec3; readonly distance: number } {
  let best = { first: first.centre, second: second.centre, distance: Infinity };
  const consider = (a: Vec3, b: Vec3): void => {
    const distance = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    if (distance < best.distance) best = { first: a, second: b, distance };
  };
  for (const p of edgePoints(first, second)) consider(p, nearestIn(second, p));
  for (const p of edgePoints(second, first)) consider(nearestIn(first, p), p);
  return best;
}

function nearestIn({ centre, size, turn }: SceneBox, p: Vec3): Vec3 {
  const back: Quaternion = [turn[0], -turn[1], -turn[2], -turn[3]];
  const own = rotate(back, between(centre, p));
  const kept = byAxis((k) => Math.max(-size[k] / 2, Math.min(size[k] / 2, own[k])));
  return moved(centre, rotate(turn, kept), 1);
}

/** Distance of a point from a box [mm], 0 in it. */
export function pointDistance(box: SceneBox, p: Vec3): number {
  const near = nearestIn(box, p);
  return Math.hypot(near[0] - p[0], near[1] - p[1], near[2] - p[2]);
}

/** Points along a box's edges; where an edge is far longer than the other box, only those near that. */
function edgePoints(box: SceneBox, other: SceneBox): Vec3[] {
  const points: Vec3[] = [];
  const back: Quaternion = [box.turn[0], -box.turn[1], -box.turn[2], -box.turn[3]];
  const at = rotate(back, between(box.centre, other.centre));
  const reach = Math.hypot(...other.size) / 2 + 100;
  for (const axis of AXES) {
    const half = box.size[axis] / 2;
    const low = Math.max(-half, Math.min(half, at[axis] - reach));
    const high = Math.max(-half, Math.min(half, at[axis] + reach));
    for (const a of [-0.5, 0.5]) {
      for (const b of [-0.5, 0.5]) {
        for (let n = 0; n <= ALONG; n++) {
          const along = low + ((high - low) * n) / ALONG;
          const own = byAxis((k) => (k === axis ? along : (k === nextAxis(axis) ? a : b) * box.size[k]));
          points.push(moved(box.centre, rotate(box.turn, own), 1));
        }
      }
    }
  }
  return points;
}
