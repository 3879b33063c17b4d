import type { Hand } from '../jointRow';
import type { BuiltRow } from './builtRow';
import type { FlightCeiling } from './flightCeiling';
import { behindFace, openBox, type Solid } from './solid';

/** A room whose length lies along the way in [mm]. */
export interface RoomShape {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** Where the way leaves it: in the wall across, in a side wall, or not at all. */
  readonly leaves: 'across' | Hand | 'nowhere';
  /** Over its beginning or end a flight's own ceiling runs on. */
  readonly start?: FlightCeiling | undefined;
  readonly end?: FlightCeiling | undefined;
}

/** A room: x along the way in from the wall in which it is entered. */
export function buildRoom({ length, width, height, leaves, start, end }: RoomShape): BuiltRow {
  const half = width / 2;
  const across = leaves === 'across' || leaves === 'nowhere';
  const solids: Solid[] = [
    ...behindFace('floor', [0, -half, 0], [length, half, 0], '-z'),
    ...behindFace(
      'ceiling',
      [start?.over ?? 0, -half, height],
      [length - (end?.over ?? 0), half, height],
      '+z',
    ),
  ];
  const high = Math.max(height, start?.height ?? 0, end?.height ?? 0);
  if (leaves !== 'left') solids.push(...behindFace('wall', [0, half, 0], [length, half, high], '+y'));
  if (leaves !== 'right') solids.push(...behindFace('wall', [0, -half, 0], [length, -half, high], '-y'));
  if (leaves !== 'across') {
    solids.push(...behindFace('facing wall', [length, -half, 0], [length, half, high], '+x'));
  }
  const side = leaves === 'left' ? 1 : -1;
  return {
    entry: { at: [0, 0, 0], heading: 0 },
    exit: across
      ? { at: [length, 0, 0], heading: 0 }
      : { at: [length / 2, side * half, 0], heading: (side * Math.PI) / 2 },
    entrySection: { width, height: Math.max(height, start?.height ?? 0) },
    exitSection:
      leaves === 'nowhere'
        ? undefined
        : {
            width: across ? width : length,
            height: Math.max(height, end?.height ?? 0),
          },
    solids,
    open: [openBox([0, -half, 0], [length, half, height])],
  };
}
