import type { BuiltRow } from './builtRow';
import { behindFace, openBox, type Solid } from './solid';

/** A straight from x = 0 on [mm], with part of its ceiling left out. */
export interface Straight {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** Over so much of its beginning and end [mm] a flight's own ceiling runs on. */
  readonly flightCeiling?: { readonly atStart: number; readonly atEnd: number };
}

/** The sides, the floor and the ceiling of a straight that begins at x = `from`. */
export function straightSolids({ length, width, height, flightCeiling }: Straight, from = 0): Solid[] {
  if (!(length > 0)) return [];
  const half = width / 2;
  const to = from + length;
  const ceilingFrom = from + (flightCeiling?.atStart ?? 0);
  const ceilingTo = to - (flightCeiling?.atEnd ?? 0);
  const high = height + (flightCeiling ? 2000 : 0);
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
  const { length, width, height } = straight;
  const section = { width, height };
  return {
    entry: { at: [0, 0, 0], heading: 0 },
    exit: { at: [length, 0, 0], heading: 0 },
    entrySection: section,
    exitSection: section,
    solids: straightSolids(straight),
    open: length > 0 ? [openBox([0, -width / 2, 0], [length, width / 2, height])] : [],
  };
}
