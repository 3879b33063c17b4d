/** Stairs [mm] that several tests walk. Invented; steep and low, as old houses have them (common practice, no source). */

/** Of a narrow house, a stride behind its front door. */
export const FRONT_STAIR = {
  width: 800,
  height: 2000,
  rise: 200,
  going: 230,
  risers: 13,
  footCeiling: 2400,
} as const;

/** At whose head the way turns within a metre. */
export const TURN_AT_HEAD = {
  width: 860,
  height: 2050,
  rise: 195,
  going: 240,
  risers: 13,
  headCeiling: 2400,
} as const;

/** Down to a cellar, with less floor at its head than a slate is long. */
export const CELLAR_STAIR = {
  width: 850,
  height: 1950,
  rise: 200,
  going: 230,
  risers: 12,
  footCeiling: 2300,
  footSpace: 6000,
  headCeiling: 2300,
  headSpace: 900,
} as const;
