/** A unit in which a bare number may have been meant, and what it would then be. */
export interface UnitMeant {
  readonly unit: string;
  /** In the measure's own unit [mm or kg]. */
  readonly value: number;
}

// Exact: international yard and pound agreement, 1959.
const UNITS: readonly { readonly unit: string; readonly factor: number }[] = [
  { unit: 'cm', factor: 10 },
  { unit: 'in', factor: 25.4 },
  { unit: 'm', factor: 1000 },
  { unit: 'ft', factor: 304.8 },
];

/**
 * The units of length in which a bare number would be an ordinary measure. Nothing is changed by it: the number
 * is only said to be doubtful.
 * @param got what the cell holds; a text names its own unit, so nothing is guessed about it
 * @param usual what is ordinary [mm]
 * @example unitsMeant(76, { least: 560, most: 1800 }) // [{ unit: 'cm', value: 760 }]
 */
export function unitsMeant(
  got: unknown,
  usual: { readonly least: number; readonly most: number } | undefined,
): readonly UnitMeant[] {
  if (typeof got !== 'number' || !usual || !(got > 0) || got >= usual.least) return [];
  return UNITS.map(({ unit, factor }) => ({ unit, value: got * factor })).filter(
    ({ value }) => value >= usual.least && value <= usual.most,
  );
}
