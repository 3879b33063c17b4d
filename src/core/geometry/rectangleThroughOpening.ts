/** How a rectangle lies best in an opening. */
export interface RectangleFit {
  /** Even padding [mm a side] that the rectangle could wear and still fit; negative when it does not fit. */
  readonly clearance: number;
  /** Angle [rad, 0 to pi/2] between the rectangle's long side and the opening's long side. */
  readonly angle: number;
}

/**
 * The greatest padding with which a rectangle fits in a rectangular opening, turned by any angle.
 *
 * With the long side p at angle t to the opening's long side a, the padded rectangle needs
 * (p+2c) cos t + (q+2c) sin t <= a and (p+2c) sin t + (q+2c) cos t <= b, so that each side of the opening
 * allows a padding c(t) that has no maximum inside 0..pi/2: the derivative of (a - p cos t - q sin t)/(cos t
 * + sin t) changes from - to +. The greatest of the lesser of the two is therefore at an end or where both
 * are equal, cos t - sin t = (a - b)/(p - q).
 *
 * @source the condition is Carver's (Carver 1957; Wetzel, Mathematics Magazine 73, 2000, 204-211), solved
 * for the padding. A side that the padding would make negative counts as 0; then the rectangle is a segment
 * and fits up to the opening's diagonal.
 *
 * @param side1 one side of the opening [mm], positive
 * @param side2 the other side [mm], positive
 * @param face1 one side of the rectangle [mm], not negative
 * @param face2 the other side [mm], not negative
 * @example rectangleThroughOpening(900, 2000, 930, 25) // { clearance: 437.5, angle: 0 }
 */
export function rectangleThroughOpening(
  side1: number,
  side2: number,
  face1: number,
  face2: number,
): RectangleFit {
  const a = Math.max(side1, side2);
  const b = Math.min(side1, side2);
  const p = Math.max(face1, face2);
  const q = Math.min(face1, face2);

  // Square on: long side along the long side is never worse than across it.
  let clearance = Math.min(a - p, b - q) / 2;
  let angle = 0;
  if (p > q) {
    const difference = (a - b) / (p - q);
    if (difference < 1) {
      // cos t - sin t = sqrt2 cos(t + pi/4)
      const t = Math.acos(difference / Math.SQRT2) - Math.PI / 4;
      const c = Math.cos(t);
      const s = Math.sin(t);
      const turned = (a - p * c - q * s) / (2 * (c + s));
      if (turned > clearance) {
        clearance = turned;
        angle = t;
      }
    }
  }
  if (clearance >= -q / 2) return { clearance, angle };

  // The padding would take the short side below 0: what is left is a segment, longest along the diagonal.
  const diagonal = (Math.hypot(a, b) - p) / 2;
  return { clearance: Math.max(Math.min(diagonal, -q / 2), -p / 2), angle: Math.atan2(b, a) };
}
