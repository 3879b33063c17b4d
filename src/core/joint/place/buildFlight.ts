import type { BuiltRow } from './builtRow';
import { straightSolids } from './buildStraight';
import { behindFace, behindSlope, behindWall, openBox, type Solid } from './solid';

/** A flight going up [mm]. */
export interface FlightShape {
  readonly width: number;
  readonly headroom: number;
  readonly rise: number;
  readonly going: number;
  readonly risers: number;
  /** Its trimmer is where its ceiling line meets this; undefined: the line begins at the first riser. */
  readonly footCeiling: number | undefined;
  /** Level floor of the flight's own before its first riser and after its last nosing, as wide as the flight. */
  readonly footFloor: number;
  readonly headFloor: number;
  readonly headCeiling: number | undefined;
  /** How far its ceiling line may run on over the floor before the first riser, its own or another row's. */
  readonly floorBefore: number;
  /** The way ends at that end, before a wall. */
  readonly footWall: boolean;
  readonly headWall: boolean;
  /** Sides that stand, seen upward. */
  readonly walls: 'both' | 'left' | 'right' | 'none';
}

/** How far a flight's ceiling line runs on over the floor before its first riser [mm]. */
export function ceilingBeforeRiser(
  f: Pick<FlightShape, 'headroom' | 'rise' | 'going' | 'footCeiling'>,
): number {
  if (f.footCeiling === undefined) return 0;
  return Math.max(0, ((f.headroom + f.rise - f.footCeiling) * f.going) / f.rise);
}

/**
 * A flight as it is walked up: x along it, its first riser at x = 0 on the lower floor, plumb; from its nosing on all
 * is solid below the line of nosings, up to the last nosing at the upper floor. The ceiling line runs `headroom` plumb
 * above; before the trimmer the foot's ceiling holds, and from the last nosing on the head's.
 */
export function buildFlight(f: FlightShape): BuiltRow {
  const { width, headroom, rise, going, risers } = f;
  const half = width / 2;
  const slope = rise / going;
  const X = (risers - 1) * going;
  const Z = risers * rise;
  const line = (x: number): number => rise + headroom + slope * x;
  const trimmer = f.footCeiling === undefined ? 0 : (f.footCeiling - headroom - rise) / slope;
  const from = Math.max(-f.floorBefore, Math.min(trimmer, X));
  const footHeight = f.footCeiling ?? rise + headroom;
  const headHeight = f.headCeiling ?? headroom;
  const top = Math.max(line(X), trimmer > X ? footHeight : 0);
  const solids: Solid[] = [
    ...behindFace('riser', [0, -half, 0], [0, half, rise], '+x'),
    ...behindSlope('nosings', [0, 0, rise], [X, 0, Z], width, -1),
    ...(X > from ? behindSlope('flight ceiling', [from, 0, line(from)], [X, 0, line(X)], width, 1) : []),
    ...(trimmer > 0
      ? behindFace('ceiling', [0, -half, footHeight], [Math.min(trimmer, X), half, footHeight], '+z')
      : []),
    // Where the ceiling line could not run on as far as the trimmer, what hangs down there.
    ...(trimmer < from && line(from) > footHeight
      ? behindFace('head', [from, -half, footHeight], [from, half, line(from)], '-x')
      : []),
  ];
  const lowest = (a: number): number => (a > 0 ? rise + slope * a : 0);
  const highest = (a: number, b: number): number => Math.max(line(b), trimmer > a ? footHeight : 0);
  const sides: [boolean, 1 | -1][] = [
    [f.walls === 'both' || f.walls === 'left', 1],
    [f.walls === 'both' || f.walls === 'right', -1],
  ];
  for (const [stands, side] of sides) {
    if (!stands) continue;
    const y = side * half;
    for (const [a, b] of partsBetween(Math.min(0, from), X)) {
      const heights = [lowest(a), highest(a, b)] as const;
      solids.push(
        ...(side > 0
          ? behindWall('wall', [b, y], [a, y], ...heights)
          : behindWall('wall', [a, y], [b, y], ...heights)),
      );
    }
  }
  if (f.footFloor > 0) {
    const floor = { length: f.footFloor, width, height: footHeight };
    const end = from < 0 ? { over: -from, height: line(0) } : undefined;
    solids.push(...straightSolids({ ...floor, end }, -f.footFloor));
  }
  if (f.footWall) {
    solids.push(
      ...behindFace('facing wall', [-f.footFloor, -half, 0], [-f.footFloor, half, footHeight], '-x'),
    );
  }
  if (f.headFloor > 0) {
    const upper = straightSolids({ length: f.headFloor, width, height: headHeight }, X);
    solids.push(...upper.map((solid) => raised(solid, Z)));
    // The step in the ceiling over the last nosing.
    const own = top - Z;
    if (headHeight > own) {
      solids.push(...behindFace('head', [X, -half, Z + own], [X, half, Z + headHeight], '-x'));
    } else if (headHeight < own) {
      solids.push(...behindFace('head', [X, -half, Z + headHeight], [X, half, Z + own], '+x'));
    }
  }
  if (f.headWall) {
    const x = X + f.headFloor;
    solids.push(...behindFace('facing wall', [x, -half, Z], [x, half, Z + headHeight], '+x'));
  }
  const parts = X > 0 ? partsBetween(0, X) : [];
  const floors = [
    ...(f.footFloor > 0 ? [openBox([-f.footFloor, -half, 0], [0, half, footHeight])] : []),
    ...(f.headFloor > 0 ? [openBox([X, -half, Z], [X + f.headFloor, half, Z + headHeight])] : []),
  ];
  return {
    entry: { at: [-f.footFloor, 0, 0], heading: 0 },
    exit: { at: [X + f.headFloor, 0, Z], heading: 0 },
    entrySection: { width, height: f.footFloor > 0 ? footHeight : Math.max(footHeight, line(0)) },
    exitSection: { width, height: f.headFloor > 0 ? headHeight : top - Z },
    solids,
    open: [
      // Within the slope of each part.
      ...parts.flatMap(([a, b]) =>
        line(a) > rise + slope * b ? [openBox([a, -half, rise + slope * b], [b, half, line(a)])] : [],
      ),
      ...floors,
    ],
    openAtMost: [
      ...parts.map(([a, b]) => openBox([a, -half, lowest(a)], [b, half, highest(a, b)])),
      ...floors,
    ],
  };
}

/**
 * A flight's walls and its free space are told in parts no longer than this [mm], each from the nosings to the ceiling
 * there: in one part they would reach down to its foot and up to its head all along it, and so across what lies there.
 */
const PARTS = 800;

/** From one place along a flight to a farther one in equal parts: where each begins and ends. */
function partsBetween(from: number, to: number): [number, number][] {
  const count = Math.max(1, Math.ceil((to - from) / PARTS));
  const at = (k: number): number => from + ((to - from) * k) / count;
  return Array.from({ length: count }, (_, k) => [at(k), at(k + 1)]);
}

/** A solid so much higher [mm]. */
export function raised(solid: Solid, by: number): Solid {
  const up = (box: Solid['box']): Solid['box'] => ({
    ...box,
    centre: [box.centre[0], box.centre[1], box.centre[2] + by],
  });
  return { ...solid, box: up(solid.box), thin: up(solid.thin) };
}
