/**
 * The firm of the sample month. Firm, places and customers are invented; nothing here describes anybody's
 * real house, route or order.
 */
export const FIRM = {
  name: 'Quernholt Table Carriers',
  place: 'Skellbridge',
  month: 'October',
  year: 2026,
} as const;

/** Said on every sheet that shows names or prices. */
export const INVENTED = 'Example data: the firm, its places and its customers are invented.';

/** Padding that the firm insists on [mm a side]: a gloved hand, 25 to 40; common practice, no source. */
export const ALLOWANCE = 25;

/** How far off a measurement may be [mm]: common practice, no source. */
export const TAPE = 5;
