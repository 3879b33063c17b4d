import type { BuiltRow } from './builtRow';
import { behindFace, openBox, type Solid } from './solid';

/** A quarter landing as it is walked up and to the left [mm]. */
export interface QuarterShape {
  readonly widthIn: number;
  readonly widthOut: number;
  readonly ceiling: number;
}

/**
 * The place of a quarter landing, in the coordinates of `quarterLandingAnswer`: x 0..widthOut from the lower flight's
 * edge, y 0..widthIn, the upper flight beyond y = widthIn. Its flights are other rows.
 */
export function buildQuarterLanding({ widthIn: a, widthOut: b, ceiling: C }: QuarterShape): BuiltRow {
  return {
    entry: { at: [0, a / 2, 0], heading: 0 },
    exit: { at: [b / 2, a, 0], heading: Math.PI / 2 },
    entrySection: { width: a, height: C },
    exitSection: { width: b, height: C },
    solids: [
      ...behindFace('wall', [0, 0, 0], [b, 0, C], '-y'),
      ...behindFace('facing wall', [b, 0, 0], [b, a, C], '+x'),
      ...behindFace('floor', [0, 0, 0], [b, a, 0], '-z'),
      ...behindFace('ceiling', [0, 0, C], [b, a, C], '+z'),
    ],
    open: [openBox([0, 0, 0], [b, a, C])],
  };
}

/** A half landing as it is walked up and to the left [mm]. */
export interface HalfShape {
  readonly flightWidth: number;
  readonly well: number;
  readonly depth: number;
  readonly ceiling: number;
  /** Between the flights it is solid up to the ceiling; else only up to a handrail. */
  readonly spine: boolean;
}

/**
 * The place of a half landing, in the coordinates of `halfLandingAnswer`: x 0..depth from the flights' edge, y across
 * both flights. Its flights are other rows, and so are the sides of the spine between them.
 */
export function buildHalfLanding({ flightWidth: W, well, depth, ceiling: C, spine }: HalfShape): BuiltRow {
  const across = 2 * W + well;
  const end: Solid[] = spine ? behindFace('wall', [0, W, 0], [0, W + well, C], '-x') : [];
  return {
    entry: { at: [0, W / 2, 0], heading: 0 },
    exit: { at: [0, W + well + W / 2, 0], heading: Math.PI },
    entrySection: { width: W, height: C },
    exitSection: { width: W, height: C },
    solids: [
      ...behindFace('wall', [0, 0, 0], [depth, 0, C], '-y'),
      ...behindFace('wall', [0, across, 0], [depth, across, C], '+y'),
      ...behindFace('facing wall', [depth, 0, 0], [depth, across, C], '+x'),
      ...behindFace('floor', [0, 0, 0], [depth, across, 0], '-z'),
      ...behindFace('ceiling', [0, 0, C], [depth, across, C], '+z'),
      ...end,
    ],
    open: [openBox([0, 0, 0], [depth, across, C])],
  };
}
