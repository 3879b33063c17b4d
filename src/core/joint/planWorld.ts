import { boxPolygon, type ConvexPolygon, type PlanarBox } from '../geometry/planar/planarWorld';
import type { SceneBox } from '../space/motion';
import { rotate } from '../space/quaternion';
import type { JointBlock, JointRow } from './jointRow';
import { placeRoute, type PlacedRoute, type PlacedSolid } from './place/placedRoute';
import type { Frame } from './place/frame';

/** A block placed with the straights at its ends, in coordinates that begin where the first straight does. */
export interface PlacedBlock {
  readonly placed: PlacedRoute;
  readonly solids: readonly PlacedSolid[];
  /** Length of the straight that was put before its first row [mm]; 0 where it begins on open ground. */
  readonly lead: number;
  /** The same after its last row. */
  readonly trail: number;
  /** Planes where the way begins and ends, straights included; the end is undefined where it ends in a room. */
  readonly start: Frame;
  readonly end: Frame | undefined;
}

/** Longer by this [mm] than the longest piece are the straights at the ends. */
const LENGTH_BEYOND = 40;
/** Open ground that counts, on each side and onward [mm]. */
export const GROUND = 6500;
/** Between two widths that are one: so that a door as wide as its passage is still told from it [mm]. */
const A_HAIR = 1e-6;

/**
 * Places a block with a straight at each end that goes on, longer than `longest` [mm].
 */
export function placeBlock(block: JointBlock, longest: number): PlacedBlock {
  const { rows, before, after } = block;
  const bare = placeRoute(rows);
  const first = bare.rows[0];
  const last = bare.rows[bare.rows.length - 1];
  const length = longest + LENGTH_BEYOND;
  const straight = (section: { readonly width: number; readonly height: number }): JointRow => ({
    stage: 'passage',
    measures: { width: section.width + A_HAIR, height: section.height, length },
  });
  const leads = before === 'straight' && first !== undefined;
  const trails = after === 'straight' && last?.exitSection !== undefined;
  const placed = placeRoute([
    ...(leads ? [straight(first.entrySection)] : []),
    ...rows,
    ...(trails ? [straight(last.exitSection)] : []),
  ]);
  const begin = placed.rows[0];
  const finish = placed.rows[placed.rows.length - 1];
  return {
    placed,
    // No ground beyond the ends of a straight that goes on.
    solids: placed.solids.filter(
      ({ row }) =>
        !(row < 0 && leads) && !(row >= rows.length + (leads ? 1 : 0) + (trails ? 1 : 0) && trails),
    ),
    lead: leads ? length : 0,
    trail: trails ? length : 0,
    start: begin?.entry ?? { at: [0, 0, 0], heading: 0 },
    end: finish?.exitSection === undefined ? undefined : finish.exit,
  };
}

/** What stands in the way of something that keeps between two heights [mm], in plan. */
export function plansBetween(
  solids: readonly { readonly box: SceneBox }[],
  low: number,
  high: number,
): ConvexPolygon[] {
  const plans: ConvexPolygon[] = [];
  for (const { box } of solids) {
    const half = box.size[2] / 2;
    if (box.centre[2] - half >= high - 1e-6 || box.centre[2] + half <= low + 1e-6) continue;
    plans.push(planOf(box));
  }
  return plans;
}

/**
 * A length [mm] rounded to a millionth of a millimetre, so that a wall turned by quarter turns is exactly square: the sides of one as
 * thin as its face are too short to tell their direction from rounded corners.
 */
export const snapped = (value: number): number => Math.round(value * 1e6) / 1e6;

/** The plan of an upright box. */
function planOf({ centre, size, turn }: SceneBox): ConvexPolygon {
  if (turn[0] === 1) {
    const [x, y] = [size[0] / 2, size[1] / 2];
    return boxPolygon(centre[0] - x, centre[1] - y, centre[0] + x, centre[1] + y);
  }
  const a = rotate(turn, [size[0] / 2, 0, 0]);
  const b = rotate(turn, [0, size[1] / 2, 0]);
  return (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
  ).map(
    ([i, j]) => [snapped(centre[0] + i * a[0] + j * b[0]), snapped(centre[1] + i * a[1] + j * b[1])] as const,
  );
}

/**
 * A wall right across a plane of the way, behind it.
 * @param width of the way there [mm]
 * @param forward how far beyond the plane the wall's face stands [mm]
 */
export function wallAcross({ at, heading }: Frame, width: number, forward: number): ConvexPolygon {
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  const half = width / 2 + 300;
  const [near, far] = forward > 0 ? [0, 100] : [-100, 0];
  const point = (x: number, y: number) => [at[0] + c * x - s * y, at[1] + s * x + c * y] as const;
  return [point(near, -half), point(far, -half), point(far, half), point(near, half)];
}

/** A box around all of them, so much larger on each side [mm]. */
export function boundsOf(polygons: readonly ConvexPolygon[], more: number): PlanarBox {
  let [xMin, xMax, yMin, yMax] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const polygon of polygons) {
    for (const [x, y] of polygon) {
      xMin = Math.min(xMin, x);
      xMax = Math.max(xMax, x);
      yMin = Math.min(yMin, y);
      yMax = Math.max(yMax, y);
    }
  }
  return { xMin: xMin - more, xMax: xMax + more, yMin: yMin - more, yMax: yMax + more };
}
