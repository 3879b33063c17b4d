import { attitudeInPlan, type TurnedHold } from '../../motion/attitude';
import { sizesOfHold, type Hold } from '../../motion/hold';
import { paddedPiece, type PieceSize } from '../../measures/piece';
import type { Quaternion } from '../../space/quaternion';

/** How the piece is carried over a floor: its hold as seen along some direction in plan, turned out of level or not. */
export interface Carriage extends TurnedHold {
  /** The direction in plan [rad] along which the hold is meant. */
  readonly yaw: number;
}

/** Held crosswise instead of lengthwise, the same size upright. */
export const CROSSED: Readonly<Record<Hold, Hold>> = {
  LT: 'BT',
  BT: 'LT',
  LB: 'TB',
  TB: 'LB',
  BL: 'TL',
  TL: 'BL',
};

/** Sizes [mm] in plan along the hold's direction and across it, and the height, with a padding. */
export function carriedSizes(
  piece: PieceSize,
  { hold, turned, tilt = 0 }: TurnedHold,
  padding: number,
): { readonly p: number; readonly q: number; readonly height: number } {
  const { along, across, upright } = sizesOfHold(paddedPiece(piece, padding), hold);
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  if (turned === 'tilted') return { p: along * c + upright * s, q: across, height: along * s + upright * c };
  if (turned === 'leaning')
    return { p: along, q: across * c + upright * s, height: across * s + upright * c };
  return { p: along, q: across, height: upright };
}

export const turnOfCarriage = (carriage: Carriage): Quaternion => attitudeInPlan(carriage, carriage.yaw);

/** How a level piece is held as seen along another direction, square to the first or along it. */
export const holdSeenAlong = ({ hold, yaw }: Carriage, heading: number): Hold =>
  Math.abs(Math.sin(yaw - heading)) < Math.SQRT1_2 ? hold : CROSSED[hold];

/** The same way of standing: it can be reached by moving and turning in plan alone. */
export const standsAlike = (a: TurnedHold, b: TurnedHold): boolean =>
  a.turned === undefined && b.turned === undefined
    ? a.hold[1] === b.hold[1]
    : a.turned === b.turned && a.hold === b.hold && Math.abs((a.tilt ?? 0) - (b.tilt ?? 0)) < 1e-6;

const THIRD = (hold: Hold): string => ['L', 'B', 'T'].find((x) => !hold.includes(x)) ?? '';

/** Whether one quarter turn leads from one hold to the other. */
export const quarterApart = (a: Hold, b: Hold): boolean =>
  Number(a[0] === b[0]) + Number(a[1] === b[1]) + Number(THIRD(a) === THIRD(b)) === 1;
