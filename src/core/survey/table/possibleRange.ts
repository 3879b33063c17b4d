import type { MeasureName, StageName } from './stageMeasures';

/** A range, ends included, and where it comes from. */
export interface MeasureRange {
  readonly least: number;
  readonly most: number;
  readonly source: string;
}

const WAY: MeasureRange = {
  least: 100,
  most: 20000,
  source: 'what every function of this add-in takes: inches and metres typed bare fall outside',
};
const SPACE: MeasureRange = { least: 0, most: 20000, source: 'a space may be nothing: 0 mm' };
const LONG: MeasureRange = {
  least: 100,
  most: 100000,
  source: 'ours: metres typed bare fall outside, and a carry of 100 m is done on wheels',
};
const STEP: MeasureRange = {
  least: 50,
  most: 1000,
  source: 'ours: centimetres and inches typed bare fall outside; what is built anywhere lies well within',
};

const POSSIBLE: Readonly<Record<MeasureName, MeasureRange>> = {
  width: WAY,
  widthOut: WAY,
  height: WAY,
  ceiling: WAY,
  depth: WAY,
  length: WAY,
  turn: { least: 1, most: 120, source: 'beyond 120 degrees a way doubles back, which is a half landing' },
  rise: STEP,
  going: STEP,
  risers: { least: 1, most: 100, source: 'ours: no flight has more' },
  well: SPACE,
  wall: { least: 0, most: 5000, source: 'ours: no house has a thicker wall' },
  overRail: { least: 0, most: 5000, source: 'ours: no rail of a stair is higher; 0: walls' },
  footCeiling: WAY,
  footSpace: SPACE,
  headCeiling: WAY,
  headSpace: SPACE,
  run: { ...LONG, least: 0 },
  ratedLoad: { least: 50, most: 20000, source: 'ours: a number of persons typed for kg falls below' },
};

const DEAD_END: MeasureRange = SPACE;
const WINDER_TURN: MeasureRange = { least: 1, most: 180, source: 'winding treads may turn a stair back' };

/** The range outside which a measure is refused: mm, turn in degrees, rated load in kg, risers a count. */
export function possibleRange(stage: StageName | undefined, measure: MeasureName): MeasureRange {
  if (measure === 'depth' && stage === 'side door') return DEAD_END;
  if (measure === 'turn' && stage === 'winder') return WINDER_TURN;
  if (measure === 'length' && stage !== 'room') return LONG;
  return POSSIBLE[measure];
}

/** A bare 0 is a plain answer: no well, no wall, no rail. */
export const isPlainZero = (measure: MeasureName): boolean =>
  measure === 'well' || measure === 'wall' || measure === 'overRail';
