import { levelBox } from '../../motion/planScene';
import type { SceneBox } from '../../space/motion';
import { quaternionFromAxes } from '../../space/quaternion';
import type { Vec3 } from './frame';
import { AXES, byAxis } from '../../space/vector';

/** What a solid is, for a reason or a drawing. */
export type SolidPart =
  | 'wall'
  | 'facing wall'
  | 'floor'
  | 'ceiling'
  | 'head'
  | 'riser'
  | 'nosings'
  | 'flight ceiling'
  | 'tread'
  | 'rail'
  | 'ground';

/**
 * A solid behind a face that bounds the free space. How far it reaches behind that face says nothing, so there is
 * one that is nearly as thin as the face, for where the other would stand in another row's space.
 */
export interface Solid {
  readonly part: SolidPart;
  readonly box: SceneBox;
  readonly thin: SceneBox;
}

/** How far solids reach behind their faces [mm]. */
export const THICK = 120;
/** The same where there is other space behind [mm]: by so much, at most, it may jut out there. */
export const THIN = 0.4;

/** Directions in which a solid lies behind its face. */
export type Behind = '+x' | '-x' | '+y' | '-y' | '+z' | '-z';

/**
 * The solid behind an axis-parallel face from one corner to the opposite one; the face has no extent in the direction
 * that it is told to lie behind. Nothing where the face is empty.
 * @param depth how far it may reach [mm]
 */
export function behindFace(part: SolidPart, a: Vec3, b: Vec3, behind: Behind, depth = THICK): Solid[] {
  const axis = behind[1] === 'x' ? 0 : behind[1] === 'y' ? 1 : 2;
  const low = byAxis((k) => Math.min(a[k], b[k]));
  const high = byAxis((k) => Math.max(a[k], b[k]));
  if (AXES.some((k) => k !== axis && !(high[k] - low[k] > 1e-9))) return [];
  const box = (thickness: number): SceneBox =>
    behind[0] === '+'
      ? levelBox(
          low,
          byAxis((k) => (k === axis ? low[k] + thickness : high[k])),
        )
      : levelBox(
          byAxis((k) => (k === axis ? high[k] - thickness : low[k])),
          high,
        );
  return [{ part, box: box(depth), thin: box(Math.min(depth, THIN)) }];
}

/**
 * The solid behind a sloping face: from `from` to `to` (any two points of one upright plane through its middle),
 * `width` across; all in [mm].
 * @param side 1: the solid lies above the face, -1: below it
 */
export function behindSlope(part: SolidPart, from: Vec3, to: Vec3, width: number, side: 1 | -1): Solid[] {
  const d: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const length = Math.hypot(...d);
  const plan = Math.hypot(d[0], d[1]);
  if (!(plan > 1e-9) || !(width > 1e-9)) return [];
  const along: Vec3 = [d[0] / length, d[1] / length, d[2] / length];
  const left: Vec3 = [-d[1] / plan, d[0] / plan, 0];
  const up: Vec3 = [
    left[1] * along[2] - left[2] * along[1],
    left[2] * along[0] - left[0] * along[2],
    left[0] * along[1] - left[1] * along[0],
  ];
  // left x along points down for a right-handed along, left, up; so up is along x left.
  const upward: Vec3 = [-up[0], -up[1], -up[2]];
  const turn = quaternionFromAxes(along, left, upward);
  const box = (thickness: number): SceneBox => ({
    centre: byAxis((k) => (from[k] + to[k]) / 2 + (upward[k] * side * thickness) / 2),
    size: [length, width, thickness],
    turn,
  });
  return [{ part, box: box(THICK), thin: box(THIN) }];
}

/**
 * The solid behind an upright face in plan from one point to another, on the right-hand side of that direction.
 * @param low height of its lower edge [mm]
 * @param high height of its upper edge [mm]
 */
export function behindWall(
  part: SolidPart,
  from: readonly [number, number],
  to: readonly [number, number],
  low: number,
  high: number,
): Solid[] {
  const d = [to[0] - from[0], to[1] - from[1]] as const;
  const length = Math.hypot(...d);
  if (!(length > 1e-9) || !(high - low > 1e-9)) return [];
  const along: Vec3 = [d[0] / length, d[1] / length, 0];
  const left: Vec3 = [-along[1], along[0], 0];
  const turn = quaternionFromAxes(along, left, [0, 0, 1]);
  const box = (thickness: number): SceneBox => ({
    centre: [
      (from[0] + to[0]) / 2 - (left[0] * thickness) / 2,
      (from[1] + to[1]) / 2 - (left[1] * thickness) / 2,
      (low + high) / 2,
    ],
    size: [length, thickness, high - low],
    turn,
  });
  return [{ part, box: box(THICK), thin: box(THIN) }];
}

/** A box of free space between two corners. */
export const openBox = levelBox;
