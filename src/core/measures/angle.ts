/** A right angle [rad], exactly what `radians(90)` gives, so that formulas for it are taken on equality. */
export const RIGHT_ANGLE = Math.PI / 2;

/** An angle as it is written in a cell [degrees], in radians. */
export const radians = (degrees: number): number =>
  degrees === 90 ? RIGHT_ANGLE : (degrees * Math.PI) / 180;

/** An angle [rad] as it is read by people [degrees]. */
export const degrees = (angle: number): number => (angle * 180) / Math.PI;

/** An angle [rad] as it was written in a cell [degrees], without the rounding of the conversion. */
export const asWritten = (angle: number): number => Math.round(degrees(angle) * 1e9) / 1e9;
