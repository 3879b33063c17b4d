import { quaternionFromAxes } from '../../space/quaternion';
import type { SceneBox } from '../../space/motion';
import type { BuiltRow } from './builtRow';
import { behindSlope, behindWall, openBox, THIN, type Solid, type SolidPart } from './solid';

/** Winding treads as they are walked up and to the left [mm, rad]. */
export interface WinderShape {
  readonly width: number;
  readonly headroom: number;
  readonly turn: number;
  readonly rise: number;
  readonly going: number;
  readonly treads: number;
  /** Clear width of the upper flight. */
  readonly widthOut: number;
}

/**
 * The turn of a winder stair, in the coordinates of `winderStage` but for the height: the inner edge at the origin, x
 * along the lower flight, whose last nosing lies one going before the first winding one. Treads and ceilings are
 * quarters of the plane seen from the inner edge, cut off beyond the outer walls.
 */
export function buildWinder(shape: WinderShape): BuiltRow {
  const { width: W, widthOut: out, headroom: H, turn, rise, going, treads } = shape;
  const u = [Math.cos(turn), Math.sin(turn)] as const;
  const right = [u[1], -u[0]] as const;
  // The floor of the entry plane is the last tread of the lower flight.
  const wide = Math.max(W, out);
  const far = 3 * wide;
  const top = (treads + 1) * rise + H;
  const sector = (part: SolidPart, angle: number, side: 1 | -1, low: number, high: number): Solid => {
    const d = [Math.cos(angle), Math.sin(angle)] as const;
    const l = [-d[1] * side, d[0] * side] as const;
    const box = (z0: number, z1: number): SceneBox => ({
      centre: [(d[0] * far + l[0] * far) / 2, (d[1] * far + l[1] * far) / 2, (z0 + z1) / 2],
      size: [far, far, z1 - z0],
      turn: quaternionFromAxes([d[0], d[1], 0], [-d[1], d[0], 0], [0, 0, 1]),
    });
    const thick = side > 0 ? box(high - rise, high) : box(low, low + 400);
    return { part, box: thick, thin: side > 0 ? box(high - rise, high) : box(low, low + THIN) };
  };
  const outer = [right[0] * out, right[1] * out] as const;
  // Where the outer walls meet, back along the upper flight's from its first nosing.
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const meets = turn > 1e-9 && s > 1e-9;
  const back = meets ? (W - out * c) / s : 0;
  const corner = meets ? (out - W * c) / s : 0;
  const facing = turn > (120 * Math.PI) / 180;
  const solids: Solid[] = [
    ...behindSlope('nosings', [-going, -W / 2, 0], [0, -W / 2, rise], W, -1),
    ...behindSlope('flight ceiling', [-going, -W / 2, H], [0, -W / 2, rise + H], W, 1),
    ...behindWall('wall', [0, 0], [-going, 0], 0, top),
    ...behindWall('wall', [-going, -W], [facing ? W : Math.max(0, corner), -W], 0, top),
    ...behindWall(
      'wall',
      [outer[0] - u[0] * (facing ? wide * 2 : back), outer[1] - u[1] * (facing ? wide * 2 : back)],
      outer,
      0,
      top,
    ),
    ...(facing ? behindWall('facing wall', [W, -W], [W, 2 * wide], 0, top) : []),
  ];
  for (let i = 0; i < treads; i++) {
    const from = -Math.PI / 2 + (turn * i) / treads;
    const to = -Math.PI / 2 + (turn * (i + 1)) / treads;
    const height = (i + 1) * rise;
    solids.push(sector('tread', from, 1, 0, height), sector('flight ceiling', to, -1, height + H, 0));
  }
  return {
    entry: { at: [-going, -W / 2, 0], heading: 0 },
    exit: { at: [outer[0] / 2, outer[1] / 2, treads * rise], heading: turn },
    entrySection: { width: W, height: H },
    exitSection: { width: out, height: H + 0 },
    solids,
    open: [openBox([0, -0.7 * W, treads * rise], [0.7 * W, 0, rise + H])],
  };
}
