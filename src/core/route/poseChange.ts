import type { PieceSize } from '../measures/piece';
import { ALL_HELD, heldSizes, poseOfHeld, type Held } from '../stages/held';
import type { StageMeasures, StageName } from '../survey/stageMeasures';

/** Free space in which a piece can be turned over [mm], as seen along the way. */
export interface TurningSpace {
  readonly along: number;
  readonly across: number;
  readonly height: number;
  /** The way may run along either side: a room's door can be in any wall. */
  readonly eitherWay?: boolean;
}

/**
 * The space a stage has for changing the pose, before the piece goes on through it and after; undefined where
 * it has none. Only a room, a landing and a passage with a length have any.
 */
export function turningSpaces(
  stage: StageName,
  m: StageMeasures,
): { readonly before: TurningSpace; readonly after: TurningSpace } | undefined {
  const same = (space: TurningSpace) => ({ before: space, after: space });
  if (stage === 'room') {
    return same({ along: m.length!, across: m.width!, height: m.height!, eitherWay: true });
  }
  if (stage === 'passage' && m.length !== undefined) {
    return same({ along: m.length, across: m.width!, height: m.height! });
  }
  const height = m.ceiling ?? m.height!;
  if (stage === 'half landing') {
    return same({ along: m.depth!, across: 2 * m.width! + m.well!, height });
  }
  if (stage === 'quarter landing') {
    // Coming up, the landing is as deep as the upper flight is wide.
    return {
      before: { along: m.widthOut!, across: m.width!, height },
      after: { along: m.width!, across: m.widthOut!, height },
    };
  }
  return undefined;
}

/** Greatest c with (p+2c)^2 + (q+2c)^2 <= d^2, where a side below 0 counts as 0. */
function diagonalClearance(d: number, p: number, q: number): number {
  const inside = 2 * d * d - (p - q) ** 2;
  if (inside >= 0) {
    const clearance = (Math.sqrt(inside) - (p + q)) / 4;
    if (clearance >= -Math.min(p, q) / 2) return clearance;
  }
  return Math.min((d - Math.max(p, q)) / 2, -Math.min(p, q) / 2);
}

/**
 * Clearance while a piece is turned a quarter about one axis, from one way of being held to another: the two
 * sizes that change places sweep their diagonal both ways, the third stays.
 * @source the diagonal of the turning rectangle, as in `upend`; -Infinity where more than one turn is needed
 */
function quarterTurn(space: TurningSpace, piece: PieceSize, from: Held, to: Held): number {
  const before = heldSizes(piece, from);
  const after = heldSizes(piece, to);
  const { along, across, height } = space;
  const sweep = (d: number, p: number, q: number, size: number, room: number): number =>
    Math.min(diagonalClearance(d, p, q), (room - size) / 2);
  if (before.upright === after.upright && from[1] === to[1]) {
    return sweep(Math.min(along, across), before.along, before.across, before.upright, height);
  }
  if (from[0] === to[0]) {
    return sweep(Math.min(across, height), before.across, before.upright, before.along, along);
  }
  if (from[0] === to[1] && from[1] === to[0]) {
    return sweep(Math.min(along, height), before.along, before.upright, before.across, across);
  }
  return -Infinity;
}

const COUNT = ALL_HELD.length;

/**
 * Clearance of changing from each way of being held to each other in a space, by quarter turns one after the
 * other: row-major, 6 x 6, Infinity on the diagonal where nothing is changed.
 */
export function poseChanges(space: TurningSpace, piece: PieceSize): number[] {
  const table = oneWay(space, piece);
  if (!space.eitherWay) return table;
  // Which way the piece comes in is not known, so the worse of the two counts, unless it can be turned in plan.
  const other = oneWay({ ...space, along: space.across, across: space.along }, piece);
  return table.map((value, i) => Math.min(value, other[i]!));
}

function oneWay(space: TurningSpace, piece: PieceSize): number[] {
  const table: number[] = [];
  for (let i = 0; i < COUNT; i++) {
    for (let j = 0; j < COUNT; j++) {
      table.push(i === j ? Infinity : quarterTurn(space, piece, ALL_HELD[i]!, ALL_HELD[j]!));
    }
  }
  for (let k = 0; k < COUNT; k++) {
    for (let i = 0; i < COUNT; i++) {
      for (let j = 0; j < COUNT; j++) {
        const through = Math.min(table[i * COUNT + k]!, table[k * COUNT + j]!);
        if (through > table[i * COUNT + j]!) table[i * COUNT + j] = through;
      }
    }
  }
  return table;
}

/** Clearance of leaning the piece about the direction of travel and back, held a given way. */
export function leaningRoom(space: TurningSpace, piece: PieceSize, held: Held): number {
  const { along, across, upright } = heldSizes(piece, held);
  const one = (a: number, w: number): number =>
    Math.min(diagonalClearance(Math.min(w, space.height), across, upright), (a - along) / 2);
  const way = one(space.along, space.across);
  return space.eitherWay ? Math.max(way, one(space.across, space.along)) : way;
}

/** What is done to the piece, in the trade's words. */
export function changeWords(from: Held, to: Held): string {
  const [before, after] = [poseOfHeld(from), poseOfHeld(to)];
  if (before === after) {
    if (after === 'on end') return 'turned about';
    return to[0] === 'L' ? 'turned lengthwise' : 'turned crosswise';
  }
  if (after === 'on end') return 'stood on end';
  if (after === 'flat') return 'laid flat';
  return before === 'flat' ? 'stood on edge' : 'laid down on edge';
}
