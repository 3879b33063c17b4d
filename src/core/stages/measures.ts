/** A range, ends included, and where it comes from. */
export interface MeasureRange {
  readonly least: number;
  readonly most: number;
  readonly source: string;
}

/**
 * Whether a value lies in a range, ends included; both in one unit.
 */
export const within = (value: number, { least, most }: Pick<MeasureRange, 'least' | 'most'>): boolean =>
  value >= least && value <= most;

/** What a measure is of, which settles its unit: [mm], [degrees] as written in a cell, [kg] or a count. */
export type Quantity = 'length' | 'angle' | 'mass' | 'count';

/** The unit in which a quantity is written; a count has none. */
export const UNIT_OF: Readonly<Record<Quantity, string>> = {
  length: 'mm',
  angle: 'degrees',
  mass: 'kg',
  count: '',
};

/** What is true of a measure at whatever stage it is taken. */
export interface Measure {
  readonly quantity: Quantity;
  /** Outside this a figure is refused, unless a stage has a range of its own. */
  readonly possible: MeasureRange;
}

/** The range of every clear width and height [mm]. */
export const CLEAR: MeasureRange = {
  least: 100,
  most: 20000,
  source: 'what every function of this add-in takes: inches and metres typed bare fall outside',
};
/** What the word `open` stands for where the sky is the ceiling [mm]: the highest that is taken. */
export const SKY = CLEAR.most;
/** The range of a space [mm] of which there may be none. */
export const SPACE: MeasureRange = { least: 0, most: 20000, source: 'a space may be nothing: 0 mm' };
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

const length = (possible: MeasureRange): Measure => ({ quantity: 'length', possible });

/**
 * The measures of a row, by the header of its column in camel case. A new measure is a line here and an entry
 * at each stage that has it (`StageKind`).
 */
export const MEASURES = {
  width: length(CLEAR),
  widthOut: length(CLEAR),
  height: length(CLEAR),
  ceiling: length(CLEAR),
  depth: length(CLEAR),
  length: length(LONG),
  turn: {
    quantity: 'angle',
    possible: {
      least: 1,
      most: 120,
      source: 'beyond 120 degrees a way doubles back, which is a half landing',
    },
  },
  rise: length(STEP),
  going: length(STEP),
  risers: { quantity: 'count', possible: { least: 1, most: 100, source: 'ours: no flight has more' } },
  treads: { quantity: 'count', possible: { least: 1, most: 12, source: 'ours: no turn has more' } },
  well: length(SPACE),
  wall: length({ least: 0, most: 5000, source: 'ours: no house has a thicker wall' }),
  overRail: length({ least: 0, most: 5000, source: 'ours: no rail of a stair is higher; 0: walls' }),
  footCeiling: length(CLEAR),
  footSpace: length(SPACE),
  headCeiling: length(CLEAR),
  headSpace: length(SPACE),
  run: length({ ...LONG, least: 0 }),
  lowWidth: length(CLEAR),
  lowHeight: length({ ...CLEAR, most: 3000 }),
  ratedLoad: {
    quantity: 'mass',
    possible: { least: 50, most: 20000, source: 'ours: a number of persons typed for kg falls below' },
  },
} as const satisfies Readonly<Record<string, Measure>>;

/** The name of a measure of a survey. */
export type MeasureName = keyof typeof MEASURES;

/** In the order in which they are read and named. */
export const MEASURE_NAMES = Object.keys(MEASURES) as readonly MeasureName[];

/** What was measured at one stage, each in its unit. A measure that was not taken is absent. */
export type StageMeasures = Readonly<Partial<Record<MeasureName, number>>>;

/** The same where a measure may be named and not be there. */
export type LooseStageMeasures = Readonly<Partial<Record<MeasureName, number | undefined>>>;
