import { found, refused, type Outcome } from '../measures/problem';
import type { Working } from '../measures/working';
import { PRACTICE } from '../measures/practice';

/** A piece on a flight, and the place that a carrier beside it needs. */
export interface StandingInput {
  /** Length of the piece along the way it is carried [mm]. */
  readonly length: number;
  /** Thickness of the piece across the way, as it is carried [mm]. */
  readonly across: number;
  /** Clear width of the flight [mm]. */
  readonly width: number;
  /** [mm] */
  readonly rise: number;
  /** [mm] */
  readonly going: number;
  /** Length of the piece that one carrier takes up [mm]. */
  readonly gripLength: number;
  /** Width that a carrier takes up beside the piece [mm]. */
  readonly bodyWidth: number;
}

/** Length of a piece that one carrier takes up, shoulder to shoulder [mm]: common practice, no source. */
export const GRIP_LENGTH = 600;
/** Width that a carrier takes up beside a piece [mm]: common practice, no source. */
export const BODY_WIDTH = 450;

/**
 * How many people can stand and take hold of a piece on a flight, one at each end and others beside it where the flight
 * leaves room for a body. Carriers on one side stand whole treads apart. It counts places, not what they may carry: no
 * team factor is published above 3, and none at all for stairs.
 *
 * @source the lengths are common practice, no source; the rest is counting.
 * @param input lengths [mm]
 * @returns how many, from 2
 * @problems `impossible` when the piece is wider than the flight.
 * @example
 * standing({ length: 1980, across: 60, width: 1000, rise: 200, going: 250, gripLength: 600, bodyWidth: 450 }) // 4
 */
export function standing(input: StandingInput, working?: Working): Outcome<number> {
  const { length, across, width, gripLength, bodyWidth } = input;
  const beside = width - across;
  if (beside < 0) {
    return refused({
      kind: 'impossible',
      argument: 'width',
      got: width,
      because: `the piece takes up ${across} mm across the flight, which is more than the flight has`,
    });
  }
  const nosings = Math.hypot(input.rise, input.going);
  // A sliver over a whole number of treads is rounding of the square root, not another tread.
  const treads = Math.ceil(gripLength / nosings - 1e-9);
  const apart = treads * nosings;
  const sides = Math.min(2, Math.floor(beside / bodyWidth));
  const between = Math.max(0, length - 2 * gripLength);
  const places = Math.floor(between / apart + 1e-9);
  const count = 2 + sides * places;
  if (working) {
    const step = (what: string, formula: string, value: number, unit: string, source: string): void =>
      working({ what, formula, value, unit, source });
    step('Room beside the piece', 'width - across', beside, 'mm', 'geometry');
    step('Sides with room for a body', 'whole body_width beside it, at most 2', sides, '', PRACTICE);
    step('Nosing to nosing', 'sqrt(rise^2 + going^2)', nosings, 'mm', 'geometry');
    step('Carriers apart', 'grip_length, up to whole treads', apart, 'mm', PRACTICE);
    step('Length between the end grips', 'length - 2 grip_length, at least 0', between, 'mm', PRACTICE);
    step('Places on a side', 'whole carriers in that length', places, '', 'counting');
    step('People who can stand and grip', '2 ends + sides x places', count, '', PRACTICE);
  }
  return found(count);
}
