import type { PieceSize, Pose } from '../measures/piece';

/**
 * How a piece is held level between two stages: first letter the size that lies along the way, second the
 * size that is upright. `LB` is on edge and lengthwise, `TB` on edge and crosswise (moved crabwise), `LT`
 * flat and lengthwise, `BT` flat and crosswise, `BL` and `TL` on end.
 */
export type Hold = 'LT' | 'BT' | 'LB' | 'TB' | 'BL' | 'TL';

export const ALL_HOLDS: readonly Hold[] = ['LT', 'BT', 'LB', 'TB', 'BL', 'TL'];

const POSE_BY_UPRIGHT = { T: 'flat', B: 'on edge', L: 'on end' } as const;

/** The trade's name for the way it is held. */
export function poseOfHold(hold: Hold): Pose {
  return POSE_BY_UPRIGHT[hold[1] as 'L' | 'B' | 'T'];
}

/** Sizes [mm] along the way, across it and upright. */
export function sizesOfHold(
  piece: PieceSize,
  hold: Hold,
): { along: number; across: number; upright: number } {
  const { length, breadth, thickness } = piece;
  switch (hold) {
    case 'LT':
      return { along: length, across: breadth, upright: thickness };
    case 'BT':
      return { along: breadth, across: length, upright: thickness };
    case 'LB':
      return { along: length, across: thickness, upright: breadth };
    case 'TB':
      return { along: thickness, across: length, upright: breadth };
    case 'BL':
      return { along: breadth, across: thickness, upright: length };
    case 'TL':
      return { along: thickness, across: breadth, upright: length };
  }
}
