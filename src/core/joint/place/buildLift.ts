import type { BuiltRow } from './builtRow';
import { raised } from './buildFlight';
import { behindFace, openBox, type Solid } from './solid';

/** A lift whose door faces the way [mm]. */
export interface LiftShape {
  readonly doorWidth: number;
  readonly doorHeight: number;
  readonly carWidth: number;
  readonly carDepth: number;
  readonly carHeight: number;
  /** The way goes on from it, on another floor. */
  readonly goesOn: boolean;
}

/** How high it goes [mm]: the floors beyond are then clear of what lies below. */
export const LIFT_TRAVEL = 40000;

/**
 * A lift car as `liftCarPassages` describes it: the door's middle at the origin, x into the car. Where the way goes on
 * the car stands there too, `LIFT_TRAVEL` higher, and the piece leaves by the same door.
 */
export function buildLift(lift: LiftShape): BuiltRow {
  const { carWidth, carDepth, carHeight, goesOn } = lift;
  const door = Math.min(lift.doorWidth, carWidth) / 2;
  const head = Math.min(lift.doorHeight, carHeight);
  const half = carWidth / 2;
  const car: Solid[] = [
    ...behindFace('wall', [0, half, 0], [carDepth, half, carHeight], '+y'),
    ...behindFace('wall', [0, -half, 0], [carDepth, -half, carHeight], '-y'),
    ...behindFace('facing wall', [carDepth, -half, 0], [carDepth, half, carHeight], '+x'),
    ...behindFace('floor', [0, -half, 0], [carDepth, half, 0], '-z'),
    ...behindFace('ceiling', [0, -half, carHeight], [carDepth, half, carHeight], '+z'),
    ...behindFace('wall', [0, door, 0], [0, half, carHeight], '-x', 1e-3),
    ...behindFace('wall', [0, -half, 0], [0, -door, carHeight], '-x', 1e-3),
    ...behindFace('head', [0, -door, head], [0, door, carHeight], '-x', 1e-3),
  ];
  const section = { width: 2 * door, height: head };
  const up = goesOn ? LIFT_TRAVEL : 0;
  return {
    entry: { at: [0, 0, 0], heading: 0 },
    exit: { at: [0, 0, up], heading: Math.PI },
    entrySection: section,
    exitSection: goesOn ? section : undefined,
    solids: goesOn ? [...car, ...car.map((solid) => raised(solid, up))] : car,
    open: [
      openBox([0, -half, 0], [carDepth, half, carHeight]),
      ...(goesOn ? [openBox([0, -half, up], [carDepth, half, up + carHeight])] : []),
    ],
  };
}
