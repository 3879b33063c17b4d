import { degrees } from '../../measures/angle';
import { rectangleThroughOpening, type RectangleFit } from '../../geometry/rectangleThroughOpening';
import type { Working } from '../../measures/working';

/** An opening and one face of a piece [mm]. */
export interface FaceInOpening {
  readonly width: number;
  readonly height: number;
  readonly faceLength: number;
  readonly faceWidth: number;
}

/**
 * How one face lies best in an opening, with its working.
 * @source Carver's condition (Wetzel, Mathematics Magazine 73, 2000, 204-211)
 * @param working takes the steps, the result last
 * @returns clearance [mm a side] and the angle [rad] of the face's long side to the opening's
 */
export function faceThroughOpening(
  { width, height, faceLength, faceWidth }: FaceInOpening,
  working?: Working,
): RectangleFit {
  const fit = rectangleThroughOpening(width, height, faceLength, faceWidth);
  working?.({
    what: 'Square on: the long side along the long side',
    formula: 'min(a - p, b - q) / 2',
    value:
      Math.min(
        Math.max(width, height) - Math.max(faceLength, faceWidth),
        Math.min(width, height) - Math.min(faceLength, faceWidth),
      ) / 2,
    unit: 'mm a side',
    source: 'the two sides',
  });
  working?.({
    what: 'Best turn',
    formula: 'square on, or where both sides leave the same: cos t - sin t = (a - b)/(p - q)',
    value: degrees(fit.angle),
    unit: 'degrees',
    source: 'Carver 1957; Wetzel 2000, pp. 204-211',
  });
  working?.({
    what: 'Clearance at the best turn',
    formula: 'greatest c with (p+2c) cos t + (q+2c) sin t <= a and (p+2c) sin t + (q+2c) cos t <= b',
    value: fit.clearance,
    unit: 'mm a side',
    source: 'Carver 1957; Wetzel 2000, pp. 204-211, solved for the padding',
  });
  return fit;
}
