/** Minutes of a job, each by its name. */
export interface JobRates {
  readonly minutes: Readonly<Record<RateName, number>>;
  /** Minutes of setting up for builds that are named on their own. */
  readonly setUpOf: ReadonlyMap<string, number>;
}

/**
 * An EXAMPLE, to be replaced by the firm's own figures: our own round numbers, no source. A trip is one piece
 * carried in, and the walk back.
 */
export const EXAMPLE_RATES = {
  /** Unload, unwrap and put down. */
  'Load, each piece': 6,
  'Carry 10 m, each trip': 0.6,
  'Rise, each trip': 0.12,
  'Turn, each trip': 1.5,
  'Set-up, each table': 75,
  'Set-up, each piece': 12,
} as const;

/** The name of one rate of a job. */
export type RateName = keyof typeof EXAMPLE_RATES;

/** Every rate of a job, in the order in which they are listed. */
export const RATE_NAMES = Object.keys(EXAMPLE_RATES) as readonly RateName[];

/** How a row that gives the whole set-up of one build begins. */
export const SET_UP_OF = 'Set-up of ';
