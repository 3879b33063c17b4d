import type { WalkKey } from '../joint/walk/carrier';
import { SIDE_AXES, type PieceSide } from '../motion/hold';
import { rotate } from '../space/quaternion';
import { between } from '../space/vector';

/** While it is carried on it turns slower than this [rad a mm]; faster, it is stood up or laid down. */
const CARRIED = 1e-3;

/** How far [rad] a side of the piece, upright in its pose, is from the plumb line. */
function fromPlumb(turn: WalkKey['turn'], upright: PieceSide): number {
  const angle = Math.acos(Math.min(1, Math.abs(rotate(turn, SIDE_AXES[upright])[2])));
  return angle < 1e-6 ? 0 : angle;
}

/** Which of the tilts of a part of a motion is meant. */
export type TiltMeant = 'carried' | 'greatest' | 'least';

/**
 * A tilt [rad] of a row's part of a motion: how far the side that is upright in the pose is out of plumb.
 * @param upright the side that is upright in the pose
 * @param meant `carried`: the greatest in which it is carried on, what is only passed through while it is stood up or laid
 * down left out; `greatest` and `least`: of all places
 * @returns undefined where nothing of the row is drawn
 */
export function heldTilt(
  keys: readonly WalkKey[],
  row: number,
  upright: PieceSide,
  meant: TiltMeant = 'carried',
): number | undefined {
  const own = keys.flatMap((key, k) => {
    const before = keys[k - 1];
    if (key.row !== row || !before || key.rides) return [];
    const tilt = fromPlumb(key.turn, upright);
    const moved = Math.hypot(...between(before.at, key.at));
    return [{ tilt, carried: Math.abs(tilt - fromPlumb(before.turn, upright)) <= CARRIED * moved }];
  });
  if (own.length === 0) return undefined;
  if (meant === 'least') return Math.min(...own.map(({ tilt }) => tilt));
  const counted = meant === 'carried' ? own.filter(({ carried }) => carried) : own;
  return Math.max(0, ...counted.map(({ tilt }) => tilt));
}
