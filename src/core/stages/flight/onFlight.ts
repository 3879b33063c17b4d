import { moved } from '../../space/vector';
import type { PieceSize } from '../../measures/piece';
import { turnOfAxes } from '../../motion/attitude';
import { sizesOfHold, type Hold } from '../../motion/hold';
import type { KeyAttitude } from '../../space/motion';

/**
 * The piece held on a flight, its underside just above the line of nosings.
 * @param padding [mm a side]
 * @param out level unit direction out along the flight
 * @param slope rise of the line of nosings per mm outward
 * @param edge a point of the line of nosings, midway across the flight [mm]
 * @param headroom plumb above the line of nosings [mm]
 * @param away how far out its middle is, level [mm]
 */
export function onFlight(
  piece: PieceSize,
  hold: Hold,
  padding: number,
  out: readonly [number, number],
  slope: number,
  edge: readonly [number, number, number],
  headroom: number,
  away: number,
): KeyAttitude {
  const stretch = Math.sqrt(1 + slope * slope);
  const t: [number, number, number] = [out[0] / stretch, out[1] / stretch, slope / stretch];
  const up: [number, number, number] = [
    (-out[0] * slope) / stretch,
    (-out[1] * slope) / stretch,
    1 / stretch,
  ];
  const side: [number, number, number] = [-out[1], out[0], 0];
  const upright = Math.max(0, sizesOfHold(piece, hold).upright + 2 * padding);
  // A third of what is free below it, and no more than a hand's breadth.
  const free = headroom / stretch - upright;
  const height = upright / 2 + Math.min(40, free / 2);
  return {
    at: moved(moved(edge, t, away * stretch), up, height),
    turn: turnOfAxes(hold, t, side, up),
  };
}

/**
 * Padding [mm a side] with which the held piece fills the flight's width or its clear height.
 * @param width clear width of the flight [mm]
 * @param headroom of the flight, plumb [mm]
 * @param slope rise of the line of nosings per mm
 */
export function paddingOnFlight(
  piece: PieceSize,
  hold: Hold,
  width: number,
  headroom: number,
  slope: number,
): number {
  const { across, upright } = sizesOfHold(piece, hold);
  return Math.min(width - across, headroom / Math.sqrt(1 + slope * slope) - upright) / 2;
}
