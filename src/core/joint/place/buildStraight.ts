import type { BuiltRow } from './builtRow';
import type { FlightCeiling } from './flightCeiling';
import { behindFace, openBox, type Solid } from './solid';

/** A straight from x = 0 on [mm], with part of its ceiling left out. */
export interface Straight {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** Over its beginning or end a flight's own ceiling runs on. */
  readonly start?: FlightCeiling | undefined;
  readonly end?: FlightCeiling | undefined;
}

/** The sides, the floor and the ceiling of a straight that begins at x = `from`. */
export function straightSolids({ length, width, height, start, end }: Straight, from = 0): Solid[] {
  if (!(length > 0)) return [];
  const half = width / 2;
  const to = from + length;
  const ceilingFrom = from + (start?.over ?? 0);
  const ceilingTo = to - (end?.over ?? 0);
  const high = Math.max(height, start?.height ?? 0, end?.height ?? 0);
  return [
    ...behindFace('wall', [from, half, 0], [to, half, high], '+y'),
    ...behindFace('wall', [from, -half, 0], [to, -half, high], '-y'),
    ...behindFace('floor', [from, -half, 0], [to, half, 0], '-z'),
    ...(ceilingTo > ceilingFrom
      ? behindFace('ceiling', [ceilingFrom, -half, height], [ceilingTo, half, height], '+z')
      : []),
  ];
}

/** A door with its wall, or a passage: x along the way from its entry plane. */
export function buildStraight(straight: Straight): BuiltRow {
  const { length, width, height, start, end } = straight;
  return {
    entry: { at: [0, 0, 0], heading: 0 },
    exit: { at: [length, 0, 0], heading: 0 },
    entrySection: { width, height: Math.max(height, start?.height ?? 0) },
    exitSection: { width, height: Math.max(height, end?.height ?? 0) },
    solids: straightSolids(straight),
    open: length > 0 ? [openBox([0, -width / 2, 0], [length, width / 2, height])] : [],
  };
}
