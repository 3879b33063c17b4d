import type { MeasureName, StageName } from '../table/stageMeasures';
import type { MeasureRange } from '../table/possibleRange';

const range = (least: number, most: number, source: string): MeasureRange => ({ least, most, source });

const PRACTICE = 'common practice, no source';

/** Of a leaf of 610 (BS 4787, from memory) about 560 is left clear. */
const DOOR_WIDTH = range(
  560,
  1800,
  'clear openings of leaves from 610 (BS 4787, from memory) to a pair of doors',
);
const DOOR_HEIGHT = range(1850, 3000, 'round the 1981 of BS 4787, from memory');
const PASSAGE_WIDTH = range(600, 4000, 'round the 900 to 1200 of Approved Document M; older houses less');
const CLEAR_HEIGHT = range(1900, 5000, PRACTICE);
const STAIR_WIDTH = range(600, 2000, 'round the 36 in of IRC R311.7, 31 1/2 in beside a handrail');
const HEADROOM = range(
  1800,
  4000,
  'Approved Document K 1.11-1.12: 2000 over a stair, 1800 at the side of a loft stair',
);
// The least and the greatest of the classes of stair.
const RISE = range(150, 220, 'Approved Document K table 1.1');
const GOING = range(220, 400, 'Approved Document K table 1.1, 220 to 300 in a private stair');
const WALL = range(50, 700, `from a stud partition to a stone wall: ${PRACTICE}`);
const RAIL = range(700, 1300, `round a handrail's height: ${PRACTICE}`);
const SPACE = range(500, 10000, PRACTICE);
const LIFT = 'ISO 4190-1, cars of 450 to 1000 kg and larger, partly from memory';

const STAIR: Partial<Record<MeasureName, MeasureRange>> = {
  width: STAIR_WIDTH,
  height: HEADROOM,
  rise: RISE,
  going: GOING,
};

const PLAUSIBLE: Readonly<Record<StageName, Partial<Record<MeasureName, MeasureRange>>>> = {
  door: { width: DOOR_WIDTH, height: DOOR_HEIGHT, wall: WALL },
  'side door': {
    width: DOOR_WIDTH,
    height: DOOR_HEIGHT,
    wall: WALL,
    widthOut: PASSAGE_WIDTH,
    ceiling: CLEAR_HEIGHT,
    depth: range(0, 20000, PRACTICE),
  },
  passage: { width: PASSAGE_WIDTH, height: CLEAR_HEIGHT, length: range(300, 30000, PRACTICE) },
  corner: {
    width: PASSAGE_WIDTH,
    widthOut: PASSAGE_WIDTH,
    height: CLEAR_HEIGHT,
    turn: range(30, 120, PRACTICE),
  },
  flight: {
    ...STAIR,
    risers: range(2, 36, 'Approved Document K 1.18: no more than 36 in a row, from memory'),
    length: range(300, 15000, PRACTICE),
    footCeiling: CLEAR_HEIGHT,
    footSpace: SPACE,
    headCeiling: CLEAR_HEIGHT,
    headSpace: SPACE,
  },
  'quarter landing': { ...STAIR, widthOut: STAIR_WIDTH, overRail: RAIL, ceiling: HEADROOM },
  'half landing': {
    ...STAIR,
    well: range(0, 2000, PRACTICE),
    depth: range(600, 3000, 'as deep as the flight is wide: Approved Document K 1.20'),
    overRail: RAIL,
    ceiling: HEADROOM,
  },
  // The going of a winding tread is measured on the walking line, where Approved Document K asks for the same.
  winder: { ...STAIR, turn: range(30, 180, PRACTICE) },
  lift: {
    width: range(700, 1500, LIFT),
    height: range(1900, 2500, LIFT),
    widthOut: range(800, 2500, LIFT),
    depth: range(900, 3000, LIFT),
    ceiling: range(2000, 3000, LIFT),
    ratedLoad: range(200, 5000, LIFT),
  },
  room: {
    length: range(1500, 15000, PRACTICE),
    width: range(1500, 15000, PRACTICE),
    height: CLEAR_HEIGHT,
  },
};

const RUN = range(0, 30000, PRACTICE);

/**
 * The range outside which a measure is doubted, never refused: mm, turn in degrees, rated load in kg. Undefined
 * where the stage does not use the measure.
 */
export function plausibleRange(stage: StageName, measure: MeasureName): MeasureRange | undefined {
  return measure === 'run' ? RUN : PLAUSIBLE[stage][measure];
}

export const within = (value: number, { least, most }: Pick<MeasureRange, 'least' | 'most'>): boolean =>
  value >= least && value <= most;
