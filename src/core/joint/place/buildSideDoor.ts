import { walkedBack, type BuiltRow } from './builtRow';
import { behindFace, openBox, type Solid } from './solid';

/** A door and the passage across it [mm]. */
export interface SideDoorShape {
  readonly doorWidth: number;
  readonly doorHeight: number;
  readonly wall: number;
  readonly passageWidth: number;
  readonly ceiling: number;
  /** From the jamb nearer the closed end to that end; undefined: the passage goes on. */
  readonly deadEnd: number | undefined;
  readonly run: number;
}

/** So far a passage goes on that is open at its other end [mm]: beyond any piece. */
export const GOES_ON = 9000;

/**
 * A door into a passage across it, as `sideDoorPassages` describes it; the piece leaves to the left. The origin is the
 * door's middle in the outer face of its wall, x through the door; the passage runs along y. It ends at the plane
 * across the passage through the jamb on the left, or `run` beyond.
 */
export function buildDoorIntoPassage(shape: SideDoorShape): BuiltRow {
  const { doorWidth, doorHeight, wall, passageWidth, ceiling, run } = shape;
  const half = doorWidth / 2;
  const far = wall + passageWidth;
  const closed = -half - (shape.deadEnd ?? GOES_ON);
  const open = half + run;
  const high = Math.min(doorHeight, ceiling);
  const solids: Solid[] = [
    ...behindFace('wall', [0, half, 0], [wall, half, high], '+y'),
    ...behindFace('wall', [0, -half, 0], [wall, -half, high], '-y'),
    ...behindFace('floor', [0, -half, 0], [wall, half, 0], '-z'),
    ...behindFace('head', [0, -half, high], [wall, half, high], '+z'),
    // Over the door and on both sides of it.
    ...behindFace('head', [wall, -half, high], [wall, half, ceiling], '-x', Math.max(1e-3, wall)),
    ...behindFace('wall', [wall, half, 0], [wall, open, ceiling], '-x', Math.max(1e-3, wall)),
    ...behindFace('wall', [wall, closed, 0], [wall, -half, ceiling], '-x', Math.max(1e-3, wall)),
    ...behindFace('wall', [far, closed, 0], [far, open, ceiling], '+x'),
    ...behindFace('facing wall', [wall, closed, 0], [far, closed, ceiling], '-y'),
    ...behindFace('floor', [wall, closed, 0], [far, open, 0], '-z'),
    ...behindFace('ceiling', [wall, closed, ceiling], [far, open, ceiling], '+z'),
  ];
  return {
    entry: { at: [0, 0, 0], heading: 0 },
    exit: { at: [wall + passageWidth / 2, open, 0], heading: Math.PI / 2 },
    entrySection: { width: doorWidth, height: high },
    exitSection: { width: passageWidth, height: ceiling },
    solids,
    open: [
      openBox([wall, closed, 0], [far, open, ceiling]),
      ...(wall > 0 ? [openBox([0, -half, 0], [wall, half, high])] : []),
    ],
  };
}

/**
 * The same walked the other way: out of a passage through a door in its side, to the right. `run` lies then beyond the
 * door: its wall and the run overlap, in the door's own section.
 */
export function buildDoorOutOfPassage(shape: SideDoorShape): BuiltRow {
  return walkedBack(buildDoorIntoPassage({ ...shape, wall: Math.max(shape.wall, shape.run), run: 0 }));
}
