/** The stages of a route, in the trade's words. */
export const STAGE_NAMES = [
  'door',
  'side door',
  'passage',
  'corner',
  'flight',
  'quarter landing',
  'half landing',
  'winder',
  'lift',
  'room',
] as const;

export type StageName = (typeof STAGE_NAMES)[number];

/** The measures of a row, by the header of its column in camel case; lengths in mm, turn in degrees, rated load in kg. */
export const MEASURE_NAMES = [
  'width',
  'widthOut',
  'height',
  'ceiling',
  'depth',
  'length',
  'turn',
  'rise',
  'going',
  'risers',
  'well',
  'wall',
  'overRail',
  'footCeiling',
  'footSpace',
  'headCeiling',
  'headSpace',
  'run',
  'ratedLoad',
] as const;

export type MeasureName = (typeof MEASURE_NAMES)[number];

/** What was measured at one stage. A measure that was not taken is absent. */
export type StageMeasures = Readonly<Partial<Record<MeasureName, number>>>;

/** A measure that cannot be taken as it stands in its cell. */
export interface RefusedMeasure {
  readonly measure: MeasureName;
  /** What the cell holds. */
  readonly got: unknown;
  /** A clause that continues "… cannot be taken:". */
  readonly why: string;
}

/** One row of a route, read: nothing in it has been guessed at or repaired. */
export interface StageRow {
  readonly survey: string;
  /** The step as written: a number, or NaN when it is missing or no number. */
  readonly step: number;
  /** The stage, or undefined when the word is not one of ours. */
  readonly stage: StageName | undefined;
  /** The stage as written. */
  readonly stageText: string;
  readonly measures: StageMeasures;
  /** Measures that hold something that cannot be taken: refused, not skipped. */
  readonly refused: readonly RefusedMeasure[];
  readonly note: string;
  /** Zero-based place in the range as given, header not counted. */
  readonly rowIndex: number;
}
