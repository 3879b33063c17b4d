import type { Working } from '../measures/working';
import type { RoomSize } from './playRoom';
import { PRACTICE } from '../measures/practice';

/** A table, and what is laid down beside it while it is built. */
export interface BuildRoomInput {
  /** The built table, outside [mm]. */
  readonly tableLength: number;
  /** [mm] */
  readonly tableWidth: number;
  /** The largest piece laid down beside it [mm]. */
  readonly laidLength: number;
  /** [mm] */
  readonly laidBreadth: number;
  /** Free floor to work on round table and piece [mm]. */
  readonly strip: number;
}

/** Free floor for a person who kneels, bends and lifts [mm]: common practice, no source. */
export const WORKING_STRIP = 600;

/**
 * The clear floor to lay out and build a table: a working strip round the table, and the largest piece laid flat on one
 * side of it, with a strip on its free sides. The piece lies along the side or along the end of the table, whichever
 * takes the smaller floor; it may turn either way.
 *
 * @source the strip is common practice, no source; the rest is adding up.
 * @param input lengths [mm]
 * @returns floor [mm], the longer size first
 * @example
 * buildRoom({ tableLength: 2400, tableWidth: 1350, laidLength: 2000, laidBreadth: 1000, strip: 600 }) // { length: 4150, width: 3600 }
 */
export function buildRoom(input: BuildRoomInput, working?: Working): RoomSize {
  const { tableLength, tableWidth, strip } = input;
  const step = (what: string, formula: string, value: number | string, unit: string): void =>
    working?.({ what, formula, value, unit, source: PRACTICE });
  let best: RoomSize = { length: Infinity, width: Infinity };
  let where = '';
  for (const [along, square] of [
    [input.laidLength, input.laidBreadth],
    [input.laidBreadth, input.laidLength],
  ] as const) {
    for (const atSide of [true, false]) {
      const [side, other] = atSide ? [tableLength, tableWidth] : [tableWidth, tableLength];
      const one = Math.max(side, along) + 2 * strip;
      const two = other + square + 3 * strip;
      const floor = { length: Math.max(one, two), width: Math.min(one, two) };
      if (floor.length * floor.width >= best.length * best.width) continue;
      best = floor;
      where = atSide ? 'along the side of the table' : 'along the end of the table';
    }
  }
  step('Where the piece lies', 'the smaller floor', where, '');
  step('Floor length', 'table, piece and the strips between and around them, the longer', best.length, 'mm');
  step('Floor width', 'the shorter', best.width, 'mm');
  return best;
}
