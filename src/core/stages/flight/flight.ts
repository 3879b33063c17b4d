import { degrees } from '../../measures/angle';
import { rectangleThroughOpening, type RectangleFit } from '../../geometry/rectangleThroughOpening';
import type { PieceSize } from '../../measures/piece';
import type { Working } from '../../measures/working';

/** A straight flight between its walls. */
export interface FlightMeasures {
  /** Clear width [mm]. */
  readonly width: number;
  /** Headroom [mm], measured plumb above the line of nosings. */
  readonly headroom: number;
  /** [mm] */
  readonly rise: number;
  /** [mm] */
  readonly going: number;
}

/** Clear height of the passage square to the pitch line [mm]: headroom x cos(pitch). */
export const clearSquareToPitch = ({ headroom, rise, going }: FlightMeasures): number =>
  (headroom * going) / Math.hypot(rise, going);

/**
 * Fit of a piece that travels up a straight flight along the pitch line.
 *
 * Model: side walls `width` apart; below, the plane through the nosings, which is conservative since the
 * piece may dip between them only by shrinking; above, a plane parallel to it, `headroom` plumb over the line
 * of nosings. The passage is a tube of width x headroom cos(pitch); the piece travels along its length, tilted
 * with the pitch, the section breadth x thickness turned by any angle.
 * @source Carver's condition (Wetzel, Mathematics Magazine 73, 2000, 204-211) across the pitch
 * @returns clearance [mm a side] and how far [rad] the section is turned
 */
export function flightFit(measures: FlightMeasures, piece: PieceSize): RectangleFit {
  return rectangleThroughOpening(
    measures.width,
    clearSquareToPitch(measures),
    piece.breadth,
    piece.thickness,
  );
}

/**
 * Clearance on the straight part of a flight [mm a side], with its working.
 * @example
 * flightClearance({ width: 900, headroom: 2000, rise: 190, going: 240 },
 *   { length: 1830, breadth: 930, thickness: 25 }) // 319.05: on edge, half of 2000 cos(pitch) - 930
 */
export function flightClearance(measures: FlightMeasures, piece: PieceSize, working?: Working): number {
  const { clearance, angle } = flightFit(measures, piece);
  working?.({
    what: 'Clear height square to the pitch line',
    formula: 'headroom x cos(atan(rise / going))',
    value: clearSquareToPitch(measures),
    unit: 'mm',
    source: 'headroom is measured plumb: Approved Document K 1.11',
  });
  working?.({
    what: 'Best turn of the section breadth x thickness across the pitch',
    formula: 'square on, or cos t - sin t = (a - b)/(p - q)',
    value: degrees(angle),
    unit: 'degrees',
    source: 'Carver 1957; Wetzel 2000, pp. 204-211',
  });
  working?.({
    what: 'Clearance on the flight',
    formula: 'greatest c with (p+2c) cos t + (q+2c) sin t <= a and (p+2c) sin t + (q+2c) cos t <= b',
    value: clearance,
    unit: 'mm a side',
    source: 'Carver 1957; Wetzel 2000, pp. 204-211, solved for the padding',
  });
  return clearance;
}
