import { entryAt } from '../lists/entryAt';
import type { PieceSize, Pose } from '../measures/piece';

/**
 * How a piece is held level between two stages: first letter the size that lies along the way, second the
 * size that is upright. `LB` is on edge and lengthwise, `TB` on edge and crosswise (moved crabwise), `LT`
 * flat and lengthwise, `BT` flat and crosswise, `BL` and `TL` on end.
 */
export type Hold = 'LT' | 'BT' | 'LB' | 'TB' | 'BL' | 'TL';

/** Every hold; its place here is its number in a route. */
export const ALL_HOLDS: readonly Hold[] = ['LT', 'BT', 'LB', 'TB', 'BL', 'TL'];

/** Every hold, the ones that mostly leave most on a stair first. */
export const LIKELIEST_FIRST: readonly Hold[] = ['LB', 'LT', 'BL', 'TL', 'BT', 'TB'];

/** Held crosswise instead of lengthwise, the same size upright. */
export const CROSSED: Readonly<Record<Hold, Hold>> = {
  LT: 'BT',
  BT: 'LT',
  LB: 'TB',
  TB: 'LB',
  BL: 'TL',
  TL: 'BL',
};

/** The hold with this number in `ALL_HOLDS`, as chains and passages of a route name it. */
export const holdAt = (number: number): Hold => entryAt(ALL_HOLDS, number);

/** A side of a piece: its length, breadth or thickness. */
export type PieceSide = 'L' | 'B' | 'T';

/** The piece's own axes: which way each side lies in it. */
export const SIDE_AXES = { L: [1, 0, 0], B: [0, 1, 0], T: [0, 0, 1] } as const;

interface HeldSides {
  readonly along: PieceSide;
  readonly across: PieceSide;
  readonly upright: PieceSide;
}

const SIDES: Readonly<Record<Hold, HeldSides>> = {
  LT: { along: 'L', across: 'B', upright: 'T' },
  BT: { along: 'B', across: 'L', upright: 'T' },
  LB: { along: 'L', across: 'T', upright: 'B' },
  TB: { along: 'T', across: 'L', upright: 'B' },
  BL: { along: 'B', across: 'T', upright: 'L' },
  TL: { along: 'T', across: 'B', upright: 'L' },
};

/** Which side of the piece lies along the way, which across it, and which is upright. */
export const sidesOfHold = (hold: Hold): HeldSides => SIDES[hold];

/** The trade's name for a piece with this side upright. */
export const POSE_BY_UPRIGHT: Readonly<Record<PieceSide, Pose>> = {
  T: 'flat',
  B: 'on edge',
  L: 'on end',
};

/** The trade's name for the way it is held. */
export const poseOfHold = (hold: Hold): Pose => POSE_BY_UPRIGHT[SIDES[hold].upright];

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
