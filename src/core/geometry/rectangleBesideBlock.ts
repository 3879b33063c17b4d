import { leastBetween } from './goldenSection';

/** A section that is narrower below: of `width` and `height`, and up to `lowHeight` only `lowWidth` wide [mm]. */
export interface SectionBesideBlock {
  readonly width: number;
  readonly height: number;
  readonly lowWidth: number;
  readonly lowHeight: number;
}

/** How a rectangle leans past the block. */
export interface BesideBlockFit {
  /** [mm a side] */
  readonly clearance: number;
  /** Of its side `long` from the level [rad], strictly between level and upright. */
  readonly angle: number;
  /** How far above the floor the padded rectangle can be held at least [mm]. */
  readonly raise: number;
}

/** What leans by less stands beside the block or above it [rad]. */
const LEAST_LEAN = Math.PI / 360;

/** Angles first looked at. */
const SAMPLES = 90;

/**
 * The greatest padding with which a rectangle leans past the block in a lower corner of a section, over its upper inner
 * edge. A rectangle and a block that do not meet are parted by a side of one of them: by a side of the block it lies
 * wholly beside it or wholly above it, which are openings of their own; here it is parted by its own side, so that the
 * block's inner corner lies beyond that. Pushed away from the block, up against wall and ceiling, nothing is lost, and
 * for each angle the padding is linear, so that only the angle is searched: every clearance found is sufficient.
 * Which side the block stands on makes no difference: the section is mirrored.
 * @source separating axes of two convex figures, textbook
 * @param long long side of the rectangle [mm]
 * @param short its short side [mm]
 */
export function leaningBesideBlock(section: SectionBesideBlock, long: number, short: number): BesideBlockFit {
  const { width, height, lowWidth, lowHeight } = section;
  const paddingAt = (angle: number): number => {
    const [s, c] = [Math.sin(angle), Math.cos(angle)];
    const both = s + c;
    return Math.min(
      (width - long * c - short * s) / (2 * both),
      (height - long * s - short * c) / (2 * both),
      (lowWidth * s + (height - lowHeight) * c - long * s * c - short) / (2 * (1 + s * c)),
    );
  };
  const quarter = Math.PI / 2;
  let best = { clearance: -Infinity, angle: quarter / 2 };
  for (let i = 1; i < SAMPLES; i++) {
    const from = (quarter * (i - 1)) / SAMPLES;
    const { at, value: least } = leastBetween((x) => -paddingAt(x), from, from + (2 * quarter) / SAMPLES, 40);
    const value = -least;
    if (value > best.clearance && at > LEAST_LEAN && at < quarter - LEAST_LEAN)
      best = { clearance: value, angle: at };
  }
  const { clearance, angle } = best;
  const [s, c] = [Math.sin(angle), Math.cos(angle)];
  const padded = { long: long + 2 * clearance, short: short + 2 * clearance };
  const wide = padded.long * c + padded.short * s;
  const high = padded.long * s + padded.short * c;
  // As low as the block lets it, against the wall: (corner - middle) along the outward normal of its lower side.
  const middle = lowHeight - ((lowWidth - wide / 2) * s - padded.short / 2) / c;
  return { clearance, angle, raise: Math.max(0, middle - high / 2) };
}
