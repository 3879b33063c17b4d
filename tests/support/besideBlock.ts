type Point = readonly [number, number];

/** A section of `width` and `height`, with a block in its lower right corner from `lowWidth` on, up to `lowHeight` [mm]. */
export type BlockedSection = Readonly<Record<'width' | 'height' | 'lowWidth' | 'lowHeight', number>>;

/** Corners of a rectangle about (x, y) with its side `long` at an angle from the level. */
export const cornersOf = (x: number, y: number, long: number, short: number, angle: number): Point[] => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ].map(([i, j]): Point => [
    x + (i! * long * c - j! * short * s) / 2,
    y + (i! * long * s + j! * short * c) / 2,
  ]);
};

/** Whether it lies in the section and meets no more of the block than it touches: by its own corners and the block's. */
export function fitsBesideBlock(
  points: readonly Point[],
  { width, height, lowWidth, lowHeight }: BlockedSection,
  slack = 1e-6,
): boolean {
  const inside = points.every(
    ([x, y]) => x >= -slack && x <= width + slack && y >= -slack && y <= height + slack,
  );
  if (!inside) return false;
  // Clip the rectangle to the block (Sutherland and Hodgman): an area that is left is a contact.
  let clipped: Point[] = [...points];
  const clip = (value: (p: Point) => number): void => {
    const next: Point[] = [];
    clipped.forEach((p, i) => {
      const q = clipped[(i + 1) % clipped.length]!;
      const [a, b] = [value(p), value(q)];
      if (a > slack) next.push(p);
      if (a > slack !== b > slack) {
        const t = (slack - a) / (b - a);
        next.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
      }
    });
    clipped = next;
  };
  clip(([x]) => x - lowWidth);
  clip(([, y]) => lowHeight - y);
  let area = 0;
  clipped.forEach(([x, y], i) => {
    const [u, v] = clipped[(i + 1) % clipped.length]!;
    area += x * v - u * y;
  });
  return Math.abs(area) / 2 < 1e-3;
}

/**
 * Whether a rectangle fits at any of many angles. What fits anywhere fits pushed away from the block, into the upper left
 * corner, so that only angles are tried.
 * @param step of the angles [degrees]
 */
export function fitsAtSomeAngle(section: BlockedSection, long: number, short: number, step: number): boolean {
  for (let tilt = -90 + step; tilt < 90; tilt += step) {
    const angle = (tilt * Math.PI) / 180;
    const wide = long * Math.cos(angle) + short * Math.abs(Math.sin(angle));
    const high = long * Math.abs(Math.sin(angle)) + short * Math.cos(angle);
    if (fitsBesideBlock(cornersOf(wide / 2, section.height - high / 2, long, short, angle), section, 1e-9))
      return true;
  }
  return false;
}

/**
 * The lowest place of a rectangle at any angle and anywhere across, by trying: undefined where none was found.
 * @param step of the angles [degrees], of the places the section in as many parts
 */
export function lowestPlace(
  section: BlockedSection,
  long: number,
  short: number,
  { step, parts }: { readonly step: number; readonly parts: number },
): number | undefined {
  let lowest: number | undefined;
  for (let tilt = -90 + step; tilt < 90; tilt += step) {
    const angle = (tilt * Math.PI) / 180;
    const wide = long * Math.cos(angle) + short * Math.abs(Math.sin(angle));
    const high = long * Math.abs(Math.sin(angle)) + short * Math.cos(angle);
    for (let i = 0; i <= parts; i++) {
      for (let j = 0; j <= parts; j++) {
        const x = wide / 2 + ((section.width - wide) * i) / parts;
        const raise = ((section.height - high) * j) / parts;
        if (lowest !== undefined && raise >= lowest) continue;
        if (fitsBesideBlock(cornersOf(x, raise + high / 2, long, short, angle), section, 1e-9))
          lowest = raise;
      }
    }
  }
  return lowest;
}
