import type { PieceSize } from '../measures/piece';
import { ALL_HOLDS, sizesOfHold, poseOfHold, type Hold } from '../motion/hold';
import type { TurningSpace } from '../motion/turningSpace';

/**
 * The padding [mm a side] with which a rectangle's diagonal is as long as a space is wide: the greatest c with
 * (p+2c)^2 + (q+2c)^2 <= d^2, where a side below 0 counts as 0.
 * @param d the space [mm]
 * @param p side of the rectangle [mm]
 * @param q its other side [mm]
 * @example diagonalClearance(500, 300, 400) // 0
 */
export function diagonalClearance(d: number, p: number, q: number): number {
  const inside = 2 * d * d - (p - q) ** 2;
  if (inside >= 0) {
    const clearance = (Math.sqrt(inside) - (p + q)) / 4;
    if (clearance >= -Math.min(p, q) / 2) return clearance;
  }
  return Math.min((d - Math.max(p, q)) / 2, -Math.min(p, q) / 2);
}

const COUNT = ALL_HOLDS.length;
const hold = (name: Hold): number => ALL_HOLDS.indexOf(name);

// Quarter turns, each between two ways of being held, with the sizes that change places and the one that stays.
// In plan, about the upright; about the way; and about the line across it.
type Quarter = readonly [from: number, to: number, one: SizeName, other: SizeName, stays: SizeName];
type SizeName = keyof PieceSize;
const IN_PLAN: readonly Quarter[] = [
  [hold('LT'), hold('BT'), 'length', 'breadth', 'thickness'],
  [hold('LB'), hold('TB'), 'length', 'thickness', 'breadth'],
  [hold('BL'), hold('TL'), 'breadth', 'thickness', 'length'],
];
const ABOUT_THE_WAY: readonly Quarter[] = [
  [hold('LT'), hold('LB'), 'breadth', 'thickness', 'length'],
  [hold('BT'), hold('BL'), 'length', 'thickness', 'breadth'],
  [hold('TB'), hold('TL'), 'length', 'breadth', 'thickness'],
];
const ACROSS_THE_WAY: readonly Quarter[] = [
  [hold('LT'), hold('TL'), 'length', 'thickness', 'breadth'],
  [hold('LB'), hold('BL'), 'length', 'breadth', 'thickness'],
  [hold('BT'), hold('TB'), 'breadth', 'thickness', 'length'],
];

/**
 * Clearance [mm a side] of changing from each way of being held to each other in a space, by quarter turns one after the
 * other: row-major, 6 x 6, Infinity on the diagonal where nothing is changed. In a quarter turn the two sizes
 * that change places sweep their diagonal both ways, and the third stays.
 * @source the diagonal of the turning rectangle, as in `upend`
 */
export function poseChanges(space: TurningSpace, piece: PieceSize): number[] {
  const { along, across, height } = space;
  const table = oneWay(along, across, height, piece);
  if (!space.eitherWay || along === across) return table;
  // Which way the piece comes in is not known, so the worse of the two counts.
  const other = oneWay(across, along, height, piece);
  for (let i = 0; i < table.length; i++) if (other[i]! < table[i]!) table[i] = other[i]!;
  return table;
}

function oneWay(along: number, across: number, height: number, piece: PieceSize): number[] {
  const table = new Array<number>(COUNT * COUNT).fill(-Infinity);
  for (let i = 0; i < COUNT; i++) table[i * COUNT + i] = Infinity;
  enter(table, IN_PLAN, piece, Math.min(along, across), height);
  enter(table, ABOUT_THE_WAY, piece, Math.min(across, height), along);
  enter(table, ACROSS_THE_WAY, piece, Math.min(along, height), across);
  // The widest way by several quarter turns.
  for (let k = 0; k < COUNT; k++) {
    for (let i = 0; i < COUNT; i++) {
      const first = table[i * COUNT + k]!;
      if (i === k || first === -Infinity) continue;
      for (let j = 0; j < COUNT; j++) {
        const second = table[k * COUNT + j]!;
        const through = first < second ? first : second;
        if (through > table[i * COUNT + j]!) table[i * COUNT + j] = through;
      }
    }
  }
  return table;
}

function enter(
  table: number[],
  quarters: readonly Quarter[],
  piece: PieceSize,
  sweep: number,
  room: number,
): void {
  for (const [from, to, one, other, stays] of quarters) {
    const clearance = Math.min(diagonalClearance(sweep, piece[one], piece[other]), (room - piece[stays]) / 2);
    table[from * COUNT + to] = clearance;
    table[to * COUNT + from] = clearance;
  }
}

/** Clearance [mm a side] of leaning the piece about the direction of travel and back, by way of being held. */
export const leaningRoom = (space: TurningSpace, piece: PieceSize): number[] =>
  roomToTurn(space, piece, (sizes, along, across, height) =>
    Math.min(
      diagonalClearance(Math.min(across, height), sizes.across, sizes.upright),
      (along - sizes.along) / 2,
    ),
  );

/** Clearance [mm a side] of tilting the piece in the plane of travel by any angle and back, by way of being held. */
export const tiltingRoom = (space: TurningSpace, piece: PieceSize): number[] =>
  roomToTurn(space, piece, (sizes, along, across, height) =>
    Math.min(
      diagonalClearance(Math.min(along, height), sizes.along, sizes.upright),
      (across - sizes.across) / 2,
    ),
  );

/** A clearance by way of being held; where the way may run along either side of the space, the worse of the two. */
function roomToTurn(
  { along, across, height, eitherWay }: TurningSpace,
  piece: PieceSize,
  clearance: (sizes: ReturnType<typeof sizesOfHold>, along: number, across: number, height: number) => number,
): number[] {
  return ALL_HOLDS.map((name) => {
    const sizes = sizesOfHold(piece, name);
    const one = clearance(sizes, along, across, height);
    return eitherWay ? Math.min(one, clearance(sizes, across, along, height)) : one;
  });
}

/** What is done to the piece, in the trade's words. @example changeWords('LT', 'LB') // 'stood on edge' */
export function changeWords(from: Hold, to: Hold): string {
  const [before, after] = [poseOfHold(from), poseOfHold(to)];
  if (before === after) {
    if (after === 'on end') return 'turned about';
    return to[0] === 'L' ? 'turned lengthwise' : 'turned crosswise';
  }
  if (after === 'on end') return 'stood on end';
  if (after === 'flat') return 'laid flat';
  return before === 'flat' ? 'stood on edge' : 'laid down on edge';
}
