import type { FunctionDescription } from '../description';

/**
 * The most time that one cell of a result takes [ms], where that is short: regression only, rough means on a busy
 * machine with a margin of three. Functions with one number that are not here and look at a piece in
 * a space search for its motion.
 */
const CLEARANCES: Readonly<Record<string, number>> = {
  OPENING: 0.1,
  DIAGONAL: 0.05,
  DIAGONALANGLE: 0.05,
  CORNER: 0.2,
  CORNERLENGTH: 0.4,
  UPEND: 0.05,
  PITCH: 0.05,
  FLIGHT: 0.2,
  FACINGDOOR: 1,
};

/** Any other number that comes from a formula [ms]. */
const FORMULA = 0.1;

/** Tables that are no larger than their formula [ms]. */
const TABLES: Readonly<Record<string, number>> = { PLAYROOM: 0.1, BUILDROOM: 1, CHECKROW: 1 };

/** The most time that one cell of a function's result takes [ms]; Infinity where it may take long. */
export function cellCost({ id, kind, group }: FunctionDescription): number {
  if (kind === 'table') return TABLES[id] ?? Infinity;
  return CLEARANCES[id] ?? (group === 'Clearance' ? Infinity : FORMULA);
}
