import { attitudeInPlan, type TurnedHold } from '../../motion/attitude';
import { CROSSED, ALL_HOLDS, sizesOfHold, type Hold } from '../../motion/hold';
import { paddedPiece, type PieceSize } from '../../measures/piece';
import type { Quaternion } from '../../space/quaternion';

/** How the piece is carried over a floor: its hold as seen along some direction in plan, turned out of level or not. */
export interface Carriage extends TurnedHold {
  /** The direction in plan [rad] along which the hold is meant. */
  readonly yaw: number;
}

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

/** The attitude of a piece that is carried so. */
export const turnOfCarriage = (carriage: Carriage): Quaternion => attitudeInPlan(carriage, carriage.yaw);

/** How a level piece is held as seen along another direction `heading` [rad], square to the first or along it. */
export const holdSeenAlong = ({ hold, yaw }: Carriage, heading: number): Hold =>
  Math.abs(Math.sin(yaw - heading)) < Math.SQRT1_2 ? hold : CROSSED[hold];

/** Whether two ways of being held stand alike: the one is reached from the other by moving and turning in plan alone. */
export const standsAlike = (a: TurnedHold, b: TurnedHold): boolean =>
  a.turned === undefined && b.turned === undefined
    ? a.hold[1] === b.hold[1]
    : a.turned === b.turned && a.hold === b.hold && Math.abs((a.tilt ?? 0) - (b.tilt ?? 0)) < 1e-6;

const THIRD = (hold: Hold): string => ['L', 'B', 'T'].find((x) => !hold.includes(x)) ?? '';

/** Whether one quarter turn leads from one hold to the other. */
const quarterApart = (a: Hold, b: Hold): boolean =>
  Number(a[0] === b[0]) + Number(a[1] === b[1]) + Number(THIRD(a) === THIRD(b)) === 1;

/**
 * The rows of holds, by quarter turns one after the other, that lead from one hold to another or to the one crosswise to
 * it, the shortest first: a piece too long to be stood up from on edge may be laid flat before.
 */
export function quarterTurns(from: Hold, to: Hold): Hold[][] {
  const found: Hold[][] = [];
  let rows: Hold[][] = [[from]];
  for (let length = 1; length <= 3; length++) {
    rows = rows.flatMap((row) =>
      ALL_HOLDS.filter((hold) => !row.includes(hold) && quarterApart(row[row.length - 1] ?? from, hold)).map(
        (hold) => [...row, hold],
      ),
    );
    for (const row of rows) {
      const last = row[row.length - 1];
      // Only the last may stand so: what comes after it is a turn in plan.
      const early = row.slice(1, -1).some((hold) => hold[1] === to[1]);
      if (last && last[1] === to[1] && !early) found.push(row.slice(1));
    }
  }
  return found;
}
