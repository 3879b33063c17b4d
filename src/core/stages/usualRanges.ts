import { PRACTICE } from '../measures/practice';
import type { MeasureRange } from './measures';

export { PRACTICE };

/**
 * A range, ends included, in the measure's own unit, with where it comes from.
 */
export const range = (least: number, most: number, source: string): MeasureRange => ({ least, most, source });

/** Of a leaf of 610 (BS 4787, from memory) about 560 is left clear. */
export const DOOR_WIDTH = range(
  560,
  1800,
  'clear openings of leaves from 610 (BS 4787, from memory) to a pair of doors',
);
/** Of a door, clear [mm]. */
export const DOOR_HEIGHT = range(1850, 3000, 'round the 1981 of BS 4787, from memory');
/** Of a passage, clear [mm]. */
export const PASSAGE_WIDTH = range(
  600,
  4000,
  'round the 900 to 1200 of Approved Document M; older houses less',
);
/** From the floor to the ceiling [mm]. */
export const CLEAR_HEIGHT = range(1900, 5000, PRACTICE);
/** Of a stair, clear [mm]. */
export const STAIR_WIDTH = range(600, 2000, 'round the 36 in of IRC R311.7, 31 1/2 in beside a handrail');
/** Plumb over the nosings of a stair [mm]. */
export const HEADROOM = range(
  1800,
  4000,
  'Approved Document K 1.11-1.12: 2000 over a stair, 1800 at the side of a loft stair',
);
/** Of one step [mm]. The least and the greatest of the classes of stair. */
export const RISE = range(150, 220, 'Approved Document K table 1.1');
/** Of one step [mm]. */
export const GOING = range(220, 400, 'Approved Document K table 1.1, 220 to 300 in a private stair');
/** Of a wall with a door in it [mm]. */
export const WALL = range(50, 700, `from a stud partition to a stone wall: ${PRACTICE}`);
/** Of a wall with a door in it that was not measured [mm]: a stud partition, plastered; common practice, no source. */
export const WALL_NOT_GIVEN = 110;
/** Of a handrail over the floor of a landing [mm]. */
export const RAIL_HEIGHT = range(700, 1300, `round a handrail's height: ${PRACTICE}`);
/** From the last riser to the facing wall [mm]. */
export const FLOOR_SPACE = range(500, 10000, PRACTICE);
