/** A turn [degrees] in radians; a right angle exactly, since the right-angle formula is taken on equality. */
export const turnRadians = (degrees: number): number =>
  degrees === 90 ? Math.PI / 2 : (degrees * Math.PI) / 180;
